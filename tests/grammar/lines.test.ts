/** Every line form of the notation, read to the tree; expected values from the notation's page. */

import { type Line, parse, parseLine } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { bare, example, lineOf, problemsOf } from './helpers.ts';

test('the whole formula of the notation reads without a problem', () => {
  expect(problemsOf(example)).toEqual([]);
  const kinds = new Map<Line['kind'], number>();
  for (const line of parse(example).lines) kinds.set(line.kind, (kinds.get(line.kind) ?? 0) + 1);
  expect(Object.fromEntries(kinds)).toEqual({ block: 4, header: 9, note: 2, blank: 4, ingredient: 10, step: 17 });
  expect(parse(example).blocks.map((block) => block.heading?.word)).toEqual(['formula', 'component', 'component', 'assembly']);
});

describe('quantities', () => {
  const cases: [string, number, number, string][] = [
    ['240 g milk', 240, 240, 'g'],
    ['240g milk', 240, 240, 'g'],
    ['1.2 KG milk', 1.2, 1.2, 'kg'],
    ['½ cup milk', 0.5, 0.5, 'cup'],
    ['1½ cups milk', 1.5, 1.5, 'cup'],
    ['1 1/2 Tbsps milk', 1.5, 1.5, 'tbsp'],
    ['3/4 oz. milk', 0.75, 0.75, 'oz'],
    ['2 fl oz milk', 2, 2, 'floz'],
    ['30-35 g milk', 30, 35, 'g'],
    ['30–35 g milk', 30, 35, 'g'],
    ['30 - 35 g milk', 30, 35, 'g'],
    ['30..35 g milk', 30, 35, 'g'],
    ['30 g-35 g milk', 30, 35, 'g'],
    ['900 g-1 kg milk', 0.9, 1, 'kg'],
    ['12 % milk', 12, 12, '%'],
    ['2 pcs milk', 2, 2, 'pc'],
    ['2 milk', 2, 2, 'pc'],
    ['some milk', 0, 0, 'some'],
    ['\t240\u00a0g  milk', 240, 240, 'g'],
    ['10 grams milk', 10, 10, 'g'],
    ['2 ounces milk', 2, 2, 'oz'],
  ];
  test.each(cases)('%s', (text, low, high, unit) => {
    const line = lineOf('ingredient', text);
    expect(line.problems).toEqual([]);
    expect(line.quantity.base).toMatchObject({ low, high, unit });
    expect(line.name.key).toBe('milk');
  });

  test('overrides stand behind the quantity, a plain number has its unit', () => {
    const line = lineOf('ingredient', '9 g (mould 11 g, cut 13) gelatin');
    expect(line.quantity.overrides.map(({ value, then }) => [value.key, then.low, then.unit])).toEqual([
      ['mould', 11, 'g'],
      ['cut', 13, 'g'],
    ]);
  });

  test('each, and a word that may be a mistyped unit', () => {
    expect(lineOf('ingredient', '1 pc each raspberry').quantity.base.each).toBe(true);
    expect(lineOf('ingredient', '3 large eggs').quantity.base.doubtfulUnit?.text).toBe('large');
    expect(lineOf('ingredient', '3 eggs').quantity.base.doubtfulUnit).toBeUndefined();
  });
});

test('names run to a comma, a guard or the end, and hold digits in an ingredient line', () => {
  const line = lineOf('ingredient', '500 g  Flour T55 1150, is rye flour 1150  unless gluten-free // bought');
  expect(bare(line)).toMatchObject({
    problems: [],
    name: { text: 'Flour T55 1150', key: 'flour t55 1150' },
    attributes: [{ kind: 'is', name: { key: 'rye flour 1150' } }],
    guard: { word: 'unless', values: [{ key: 'gluten-free' }] },
    comment: { text: 'bought' },
  });
  expect(lineOf('ingredient', '5 g "cream of tartar"').name).toMatchObject({ text: 'cream of tartar', quoted: true });
});

test('attributes in any order', () => {
  const text = '100 g x, "finely chopped", 4 °C, 35 % fat, 65 brix, 200 bloom, pH 3.4, is lemon, as acid, raw, liquid';
  const line = lineOf('ingredient', text);
  expect(line.problems).toEqual([]);
  expect(line.attributes.map((attribute) => attribute.kind)).toEqual([
    'preparation',
    'temperature',
    'share',
    'brix',
    'bloom',
    'pH',
    'is',
    'as',
    'state',
    'phase',
  ]);
});

describe('temperatures and durations', () => {
  const readings: [string, number, number, 'C' | 'F'][] = [
    ['82-84 °C', 82, 84, 'C'],
    ['82 C', 82, 82, 'C'],
    ['82degC', 82, 82, 'C'],
    ['82 ° C', 82, 82, 'C'],
    ['82 ºC', 82, 82, 'C'],
    ['180F', 180, 180, 'F'],
    ['-18 °C', -18, -18, 'C'],
    ['−20..−18 °C', -20, -18, 'C'],
    ['-18..-20 °C', -20, -18, 'C'],
    ['below 4 °C', Number.NEGATIVE_INFINITY, 4, 'C'],
    ['above 80 °C', 80, Number.POSITIVE_INFINITY, 'C'],
  ];
  test.each(readings)('cool to %s', (text, low, high, unit) => {
    const line = lineOf('step', `cool to ${text}`);
    expect(line.problems).toEqual([]);
    expect(bare(line.clauses[0])).toMatchObject({ word: 'to', target: { base: { kind: 'temperature', low, high, unit } } });
  });

  const durations: [string, number, number][] = [
    ['10 min', 600, 600],
    ['1 h 30 min', 5400, 5400],
    ['1h30', 5400, 5400],
    ['10-12 min', 600, 720],
    ['45 min-1 h', 2700, 3600],
    ['2 days', 172800, 172800],
    ['overnight', 28800, 50400],
  ];
  test.each(durations)('chill for %s', (text, low, high) => {
    const line = lineOf('step', `chill for ${text}`);
    expect(line.problems).toEqual([]);
    expect(bare(line.clauses[0])).toMatchObject({ word: 'for', target: { base: { kind: 'duration', low, high } } });
  });

  test('overnight also stands without for, and in a name', () => {
    expect(bare(lineOf('step', 'chill dough overnight').clauses)).toMatchObject([
      { word: 'for', target: { base: { overnight: true } } },
    ]);
    expect(lineOf('step', 'add overnight oats').operands[0]?.name.key).toBe('overnight oats');
  });
});

describe('steps', () => {
  test('operands', () => {
    const { operands, problems } = lineOf('step', 'whisk 60 g of cream, half of milk and 1/3 of egg, rest of sugar, salt');
    expect(problems).toEqual([]);
    expect(bare(operands)).toMatchObject([
      { name: { key: 'cream' }, part: { kind: 'quantity', quantity: { base: { low: 60, unit: 'g' } } } },
      { name: { key: 'milk' }, part: { kind: 'fraction', value: 0.5 } },
      { name: { key: 'egg' }, part: { kind: 'fraction', value: 1 / 3 } },
      { name: { key: 'sugar' }, part: { kind: 'rest' } },
      { name: { key: 'salt' }, part: null },
    ]);
  });

  const clauses: [string, object][] = [
    ['whip to soft-medium peak', { word: 'to', target: { base: { kind: 'peak', low: 'soft', high: 'medium' } } }],
    ['whip to very soft-soft peaks', { word: 'to', target: { base: { low: 'very soft', high: 'soft' } } }],
    ['whip until soft peak', { word: 'to', target: { base: { kind: 'peak', low: 'soft' } } }],
    ['reduce to 120 g', { word: 'to', target: { base: { kind: 'quantity', low: 120 } } }],
    ['boil to 65 brix', { word: 'to', target: { base: { kind: 'brix', low: 65 } } }],
    ['roll to 3 mm', { word: 'to', target: { base: { kind: 'length', low: 3 } } }],
    ['bake at 320 F', { word: 'at', target: { base: { unit: 'F', low: 320 } } }],
    ['cool at room', { word: 'at room' }],
    ['cook until just set', { word: 'until', sign: { text: 'just set', quoted: false } }],
    ['cook until "thick and glossy"', { word: 'until', sign: { text: 'thick and glossy', quoted: true } }],
    ['pour into ring', { word: 'into', target: { key: 'ring' } }],
    ['cut into 24 bars of 9 x 3 cm', { word: 'into', target: { count: 24, noun: { key: 'bar' }, lengths: [90, 30] } }],
    ['pour over egg white', { word: 'over', target: { key: 'egg white' } }],
    ['cool in ice bath', { word: 'in', target: { kind: 'medium', medium: 'ice bath' } }],
    ['cook in bain-marie', { word: 'in', target: { kind: 'medium', medium: 'water bath' } }],
    ['soak sponge in syrup', { word: 'in', target: { key: 'syrup' } }],
    ['cook in saucepan', { word: 'in', target: { key: 'saucepan' } }],
    [
      'fold a in 3 additions: whisk, spatula',
      { word: 'in', target: { kind: 'additions', tools: [{ text: 'whisk' }, { text: 'spatula' }] } },
    ],
    ['laminate a into b in 2 turns: double, single', { word: 'in', target: { kind: 'turns', count: 2 } }],
    ['garnish with raspberry, mint', { word: 'with', operands: [{ name: { key: 'raspberry' } }, { name: { key: 'mint' } }] }],
    ['caramelise with torch', { word: 'with tool', tool: { text: 'torch' } }],
    ['mix with "the big paddle"', { word: 'with tool', tool: { quoted: true } }],
    ['pour over egg white while whipping', { word: 'while whipping' }],
    ['whisk on high speed', { word: 'on', level: 'high' }],
    ['whisk using mixer bowl', { word: 'using', vessel: { key: 'mixer bowl' } }],
    ['boil losing 8-10 %', { word: 'losing', percent: { base: { low: 8, high: 10 } } }],
    ['blend as base', { word: 'as', name: { key: 'base' } }],
  ];
  test.each(clauses)('%s', (text, clause) => {
    const line = lineOf('step', text);
    expect(line.problems).toEqual([]);
    expect(bare(line.clauses.at(-1))).toMatchObject(clause);
  });

  test('amounts, checkpoints and free steps', () => {
    const amount = lineOf('step', 'portion 100 ml (mould 90) into glass').amount;
    expect(amount?.base).toMatchObject({ low: 100, unit: 'ml' });
    expect(amount?.overrides.map((each) => each.then)).toMatchObject([{ low: 90, unit: 'ml' }]);
    expect(bare(lineOf('step', 'check 65 brix').check)).toMatchObject({ base: { kind: 'brix', low: 65 } });
    expect(lineOf('step', 'do "wash // the bowl"').doing?.text).toBe('wash // the bowl');
    const upper = lineOf('step', 'COOL TO 30 °C (cut 27-30 °C) WHEN tea, mould');
    expect(bare(upper)).toMatchObject({ verb: 'cool', guard: { word: 'when', values: [{ key: 'tea' }, { key: 'mould' }] } });
    const target = upper.clauses[0]?.word === 'to' ? upper.clauses[0].target : null;
    expect(target?.overrides.map((each) => [each.value.key, each.then])).toMatchObject([['cut', { low: 27, high: 30 }]]);
  });
});

describe('headers', () => {
  const cases: [string, object][] = [
    ['by J. Doe // of when and into', { word: 'by', value: { text: 'J. Doe' } }],
    ['version 4b', { word: 'version', value: { text: '4b' } }],
    ['makes 1.2 kg', { word: 'makes', yield: { quantity: { low: 1.2, unit: 'kg' }, count: null } }],
    ['makes 12 cups of 100 ml', { word: 'makes', yield: { count: 12, noun: { key: 'cup' }, size: { low: 100 } } }],
    ['makes 2 cups', { word: 'makes', yield: { quantity: { low: 2, unit: 'cup' } } }],
    ['makes 40 macarons', { word: 'makes', yield: { count: 40, noun: { text: 'macarons' }, size: null } }],
    ['makes 12 glasses of 100 ml when glass', { word: 'makes', guard: { word: 'when' }, yield: { noun: { key: 'glass' } } }],
    ['makes 2 frames of 60x40x3 cm', { word: 'makes', yield: { noun: { key: 'frame' }, lengths: [600, 400, 30] } }],
    ['makes 8 half-spheres of 7 cm', { word: 'makes', yield: { noun: { key: 'half-sphere' }, lengths: [70] } }],
    [
      'makes 6 lined tart rings of 8 × 2 cm',
      { word: 'makes', yield: { lined: true, noun: { key: 'tart ring' }, lengths: [80, 20] } },
    ],
    ['choice serving: glass, mould', { word: 'choice', name: { key: 'serving' }, values: [{ key: 'glass' }, { key: 'mould' }] }],
    ['served at 4-6 °C', { word: 'served', at: { low: 4, high: 6 } }],
    ['keeps 2 d at 0-4 °C', { word: 'keeps', for: { low: 172800 }, at: { low: 0, high: 4 } }],
    ['free from nuts, milk', { word: 'free', allergens: [{ key: 'nuts' }, { key: 'milk' }] }],
    ['gelatin by strength', { word: 'gelatin', law: 'strength' }],
    ['tagged children, winter', { word: 'tagged', tags: [{ key: 'children' }, { key: 'winter' }] }],
    ['basis total', { word: 'basis', name: null }],
    ['basis plain flour', { word: 'basis', name: { key: 'plain flour' } }],
    ['loss 5 % when mould', { word: 'loss', percent: { low: 5 }, guard: { values: [{ key: 'mould' }] } }],
  ];
  test.each(cases)('%s', (text, header) => {
    const line = lineOf('header', text);
    expect(line.problems).toEqual([]);
    expect(bare(line)).toMatchObject(header);
  });
});

test('blocks, takes and requests', () => {
  const lines = [
    'formula Tarte "au" citron, when and why // cold',
    'component "cream of the day" when tea',
    'take custard, équipe as kitchen from "../bases.nappe#Crème when"',
    'card for 24 glasses with glass, tea',
    'weigh-out "a.nappe" for 24 glasses with tea, glass, "sablé.nappe#Big one" for 3 kg',
    'timeline "a.nappe" ready 18:30',
    'compare "old.nappe" with "new.nappe"',
  ].map((text) => parseLine(text, 'formula'));
  expect(lines.flatMap((line) => line.problems)).toEqual([]);
  expect(lines.map(bare)).toMatchObject([
    { word: 'formula', name: { text: 'Tarte "au" citron, when and why' }, comment: { text: 'cold' } },
    { word: 'component', name: { key: 'cream of the day' }, guard: { word: 'when' } },
    {
      items: [{ name: { key: 'custard' }, as: null }, { as: { key: 'kitchen' } }],
      from: { path: '../bases.nappe', formula: 'Crème when' },
    },
    { entries: [{ reference: null, yield: { count: 24 }, choices: [{ key: 'glass' }, { key: 'tea' }] }] },
    {
      entries: [
        { choices: [{ key: 'tea' }, { key: 'glass' }] },
        { reference: { path: 'sablé.nappe', formula: 'Big one' }, yield: { quantity: { low: 3 } } },
      ],
    },
    { word: 'timeline', ready: { text: '18:30' } },
    { word: 'compare', entries: [{ reference: { path: 'old.nappe' } }, { reference: { path: 'new.nappe' } }] },
  ]);
});

test('the blocks in which a line is no step', () => {
  const text = `ingredient house praline
  like hazelnut paste
  Milk fat 3.5 %
  other sugars 8 %
  density 1.42 g/ml
  each 18 g
  ph 3.4
  allergen milk, hazelnut
  absorbs 250 %
  stored chilled
  | Roasted.
equipment
  mixer bowl 4.8 l
  saucepan 3 l, 20 cm wide, 12 cm deep
  fridge 3 °C
  altitude 800 m
prices EUR
  5.20 per kg cream 35 %
  0.32 per pc egg
component x`;
  expect(problemsOf(text)).toEqual([]);
  expect(parse(text).lines.map((line) => bare(line))).toMatchObject([
    { word: 'ingredient' },
    { kind: 'fact', word: 'like', name: { key: 'hazelnut paste' } },
    { kind: 'fact', word: 'milk fat', percent: { low: 3.5 } },
    { kind: 'fact', word: 'other sugars', percent: { low: 8 } },
    { kind: 'fact', word: 'density', value: { low: 1.42 } },
    { kind: 'fact', word: 'each', quantity: { low: 18, unit: 'g' } },
    { kind: 'fact', word: 'pH', value: { low: 3.4 } },
    { kind: 'fact', word: 'allergen', allergens: [{ key: 'milk' }, { key: 'hazelnut' }] },
    { kind: 'fact', word: 'absorbs', percent: { low: 250 } },
    { kind: 'fact', word: 'stored', storage: 'chilled' },
    { kind: 'note', markdown: 'Roasted.' },
    { word: 'equipment' },
    { kind: 'equipment', name: { key: 'mixer bowl' }, capacity: { low: 4.8, unit: 'l' } },
    { kind: 'equipment', capacity: { low: 3 }, wide: 200, deep: 120 },
    { kind: 'equipment', temperature: { low: 3 } },
    { kind: 'equipment', altitude: 800 },
    { word: 'prices', name: { text: 'EUR' } },
    { kind: 'price', amount: 5.2, per: 'kg', name: { key: 'cream 35 %' } },
    { kind: 'price', amount: 0.32, per: 'pc', name: { key: 'egg' } },
    { word: 'component' },
  ]);
});

test('comments stand at the start of a line or behind a space, outside quotes and notes', () => {
  expect(parseLine('// allow raw-egg, x: served at once', 'formula')).toMatchObject({
    kind: 'comment',
    allow: { codes: [{ text: 'raw-egg' }, { text: 'x' }], reason: { text: 'served at once' } },
  });
  expect(parseLine('// allowing', 'formula')).toMatchObject({ kind: 'comment', allow: null });
  expect(parseLine('| see // there', 'formula')).toMatchObject({ kind: 'note', markdown: 'see // there', comment: null });
  expect(lineOf('ingredient', '5 g x, "a // b" // c').comment?.text).toBe('c');
  expect(lineOf('block', 'formula http://x // y').name?.text).toBe('http://x');
});
