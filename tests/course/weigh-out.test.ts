/** Weigh-out: what the cards weigh, summed to the gram; counts; costs to the cent; one list in every output. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeCard } from '../../compiler/src/card/index.ts';
import type { Order } from '../../compiler/src/card/order.ts';
import {
  weighOut,
  weighOutCsv,
  weighOutHtml,
  weighOutJson,
  weighOutMdast,
  weighOutText,
} from '../../compiler/src/weigh-out/index.ts';
import { order, samples, type Wanted } from './support.ts';

interface Json {
  readonly version: 1;
  readonly items: readonly {
    readonly name: string;
    readonly kind: string | null;
    readonly grams: number | null;
    readonly written: string;
    readonly stored: string;
    readonly cost: number | null;
    readonly for: readonly { readonly formula: string; readonly grams: number | null }[];
  }[];
  readonly costs?: readonly {
    readonly currency: string;
    readonly total: number;
    readonly formulas: readonly {
      readonly formula: string;
      readonly cost: number;
      readonly portions: number | null;
      readonly perPortion: number | null;
    }[];
    readonly unpriced: readonly string[];
  }[];
}

const json = (...orders: Order[]): Json => weighOutJson(weighOut(orders)) as Json;
const cents = (amount: number): number => Math.round(amount * 100 + 1e-7) / 100;

/** What the card of the same order shows to weigh, by kind; batches and draws are weighed elsewhere on it. */
function cardGrams(source: string, wanted: Wanted): Map<string, number> {
  const { workspace, unit, formula, selection, positions } = order(source, wanted);
  const card = makeCard(
    { workspace, unit, formula, selection, positions, diagnostics: [], allowed: [] },
    { date: '2025-11-25', ...(wanted.for !== undefined && { for: wanted.for }) },
  );
  if ('problem' in card) throw new Error(card.problem);
  const components = new Set([...card.components.map(({ name }) => name)]);
  const sums = new Map<string, number>();
  for (const { ingredients } of card.components)
    for (const { name, kind, grams } of ingredients) {
      if (grams === null || (kind !== null && components.has(kind))) continue;
      const key = kind ?? name;
      sums.set(key, (sums.get(key) ?? 0) + grams);
    }
  return sums;
}

function listGrams({ items }: Json): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { name, kind, grams } of items) if (grams !== null) sums.set(kind ?? name, (sums.get(kind ?? name) ?? 0) + grams);
  return sums;
}

const rounded = (sums: Map<string, number>) =>
  Object.fromEntries([...sums].map(([key, grams]) => [key, Math.round(grams * 100) / 100]).sort());

describe('sums', () => {
  it.each(samples)('%s weighs what its card weighs, to the gram', (name) => {
    expect(rounded(listGrams(json(order(name))))).toEqual(rounded(cardGrams(name, {})));
  });

  it('weigh what the scaled cards weigh, whatever the sizes', () => {
    const sized: readonly (readonly [string, string, string[]])[] = [
      ['samples/course/lesson-1-custard.nappe', 'glasses', ['glass']],
      ['samples/course/lesson-2-ganache.nappe', 'glasses', []],
      ['samples/course/lesson-3-meringue.nappe', 'moulds', ['mould']],
      ['samples/blackcurrant-mousse.nappe', 'glasses', []],
    ];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat({ max: sized.length - 1 }), fc.integer({ min: 1, max: 90 })), { minLength: 1, maxLength: 4 }),
        (picks) => {
          const wanted = picks.map(([index, count]) => {
            const [name, noun, values] = sized[index]!;
            return { name, wanted: { for: `${count} ${noun}`, with: values } };
          });
          const list = json(...wanted.map((one) => order(one.name, one.wanted)));
          const cards = new Map<string, number>();
          for (const one of wanted)
            for (const [key, grams] of cardGrams(one.name, one.wanted)) cards.set(key, (cards.get(key) ?? 0) + grams);
          expect(rounded(listGrams(list))).toEqual(rounded(cards));
          for (const item of list.items) {
            const parts = item.for.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
            expect(parts).toBeCloseTo(item.grams ?? 0, 6);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('put one thing in one row, whatever each formula calls it, and other products in others', () => {
    const text = `formula Three
  100 g  cream, 35 % fat, 4 °C
  50 g   cream, 35 % fat, as second cream
  30 g   cream, 40 % fat, as rich cream
  20 g   water
  10 g   cold water, 10 °C
  5 g    gelatin, sheet, 200 bloom
  5 g    gelatin, sheet, 160 bloom, as weak gelatin
  stir cream, second cream, rich cream, water, cold water, gelatin, weak gelatin
`;
    const { items } = json(order({ text }));
    expect(items.map(({ name, grams }) => [name, grams])).toEqual([
      ['cream, 35 % fat', 150],
      ['cream, 40 % fat', 30],
      ['gelatin, sheet, 200 bloom', 5],
      ['gelatin, sheet, 160 bloom', 5],
      ['water', 30],
    ]);
  });

  it('keep a bag for every component, with its lines', () => {
    const list = weighOut([order('samples/course/lesson-3-meringue.nappe')]);
    expect(list.bags.map(({ component }) => component)).toEqual(['base', 'Italian meringue (230 g)', 'assembly']);
    const inBags = list.bags.reduce((sum, bag) => sum + bag.grams, 0);
    expect(inBags).toBeCloseTo(
      list.items.reduce((sum, { grams }) => sum + (grams ?? 0), 0),
      6,
    );
  });

  it('list what is only “some”, without a mass', () => {
    const { items } = json(order({ text: 'formula Dusted\n  100 g  caster sugar\n  some  icing sugar\n' }));
    expect(items.find(({ name }) => name === 'icing sugar')).toMatchObject({ grams: null, written: 'some', cost: null });
  });
});

describe('storage and counts', () => {
  it('says where each thing is kept', () => {
    const text =
      'formula Kept\n  100 g  cream, 35 % fat\n  100 g  frozen raspberries\n  100 g  caster sugar\n  50 g  strawberry, frozen\n';
    expect(json(order({ text })).items.map(({ name, stored }) => [name, stored])).toEqual([
      ['cream', 'chilled'],
      ['frozen raspberries', 'frozen'],
      ['strawberry', 'frozen'],
      ['caster sugar', 'dry'],
    ]);
  });

  // Piece masses: USDA SR28 01123-01125 (whole egg 50 g, yolk 17 g, white 33 g), as in the catalogue.
  it('counts eggs and pods, whole ones', () => {
    const text = 'formula Counted\n  100 g  egg yolk\n  2 pc  egg\n  1 pc  vanilla pod\n  66 g  egg white, pasteurised\n';
    const written = Object.fromEntries(json(order({ text })).items.map((item) => [item.name, item.written]));
    expect(written).toEqual({
      'egg yolk': '100 g (≈ 6 pc)',
      egg: '2 pc (100 g)',
      'vanilla pod': '1 pc (3 g)',
      'egg white': '66 g',
    });
  });
});

describe('costs', () => {
  const priced = (lines: string, prices: string): { text: string } => ({
    text: `prices EUR\n${prices}\nformula Priced\n  makes 8 glasses\n${lines}`,
  });

  it('are reckoned per kg, per l and per piece, to the cent', () => {
    const source = priced(
      '  750 g  cream, 35 % fat\n  500 ml  whole milk\n  3 pc  egg\n  200 g  water\n',
      '  5.20 per kg cream\n  1.15 per l whole milk\n  0.32 per pc egg\n',
    );
    const { items, costs } = json(order(source));
    const cost = Object.fromEntries(items.map(({ name, cost: amount }) => [name, amount]));
    // By hand: 0.750 kg x 5.20 = 3.90; 0.5 l x 1.15 = 0.575 to the cent, of the grams a scale shows; 3 x 0.32 = 0.96.
    expect(cost).toMatchObject({ cream: 3.9, egg: 0.96, water: null });
    expect(Math.abs((cost['whole milk'] ?? 0) - 0.575)).toBeLessThanOrEqual(0.006);
    const total = cents(3.9 + 0.96 + (cost['whole milk'] ?? 0));
    expect(costs).toEqual([
      {
        currency: 'EUR',
        total,
        formulas: [{ formula: 'Priced', cost: expect.closeTo(total, 2), portions: 8, perPortion: cents(total / 8) }],
        unpriced: ['water'],
      },
    ]);
  });

  it('add up: items to the total, and each formula’s to what it weighs', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 1, max: 9999 }), { minLength: 3, maxLength: 3 }),
        (grams, prices) => {
          const names = ['cream', 'caster sugar', 'butter'] as const;
          const source = priced(
            names.map((name, index) => `  ${grams[index]} g  ${name}\n`).join(''),
            names.map((name, index) => `  ${(prices[index]! / 100).toFixed(2)} per kg ${name}\n`).join(''),
          );
          const { items, costs } = json(order(source));
          for (const [index, name] of names.entries())
            expect(items.find((item) => item.name === name)?.cost).toBeCloseTo(
              cents((grams[index]! * prices[index]!) / 100_000),
              9,
            );
          const total = items.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
          expect(costs?.[0]?.total).toBeCloseTo(total, 9);
          expect(costs?.[0]?.formulas[0]?.cost).toBeCloseTo(total, 1);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are shared over formulas by what each takes', () => {
    const list = json(
      order('samples/course/lesson-1-custard.nappe', { for: '24 glasses' }),
      order('samples/course/lesson-2-ganache.nappe', { for: '24 glasses' }),
    );
    const [cost] = list.costs ?? [];
    const sum = (cost?.formulas ?? []).reduce((total, formula) => total + formula.cost, 0);
    expect(Math.abs(sum - (cost?.total ?? 0))).toBeLessThan(0.05);
    expect(cost?.formulas.map(({ portions }) => portions)).toEqual([24, 24]);
    for (const { cost: whole, portions, perPortion } of cost?.formulas ?? [])
      expect(perPortion).toBe(cents(whole / (portions ?? 1)));
  });

  it('take a base’s ingredients at the price of the formula that takes it', () => {
    const list = json(order('samples/course/lesson-1-custard.nappe'));
    expect(list.items.find(({ name }) => name === 'egg yolk')?.cost).toBe(cents(0.092 * 14));
  });

  it('are left out where nobody wrote a price', () => {
    const list = json(order('samples/panna-cotta.nappe'));
    expect(list).not.toHaveProperty('costs');
    expect(list.items.every(({ cost }) => cost === null)).toBe(true);
    expect(Object.keys(list.items[0] ?? {})).toEqual(['name', 'kind', 'grams', 'written', 'stored', 'cost', 'for']);
  });
});

describe('outputs', () => {
  const orders = [
    order('samples/course/lesson-1-custard.nappe', { for: '24 glasses' }),
    order('samples/course/lesson-2-ganache.nappe', { for: '24 glasses' }),
  ];
  const list = weighOut(orders);

  it('say the same in text, HTML, Markdown and CSV', () => {
    const printed = [weighOutText(list), weighOutHtml(list), JSON.stringify(weighOutMdast(list)), weighOutCsv(list)];
    for (const { name, written } of list.items)
      for (const text of printed) {
        expect(text).toContain(name);
        expect(text.replaceAll('\u00a0', ' ')).toContain(written);
      }
  });

  // RFC 4180, sections 2.3 to 2.7.
  it('are CSV of one width, quoted where it must be, with no cell a spreadsheet would run', () => {
    const rows = weighOutCsv(list).split('\r\n');
    expect(rows.at(-1)).toBe('');
    const cells = (row: string): number => row.replace(/"(?:[^"]|"")*"/gu, 'x').split(',').length;
    expect(new Set(rows.slice(0, -1).map(cells)).size).toBe(1);
    expect(rows).toHaveLength(list.items.length + 2);
    const sum = weighOutCsv(weighOut([order({ text: 'formula Trick\n  10 g  "=1+1"\n  5 g  "a ""b"", c"\n' })]));
    expect(sum).toContain("'=1+1");
    expect(sum).not.toMatch(/(?:^|,)=/mu);
  });

  it('treat names as text', () => {
    const html = weighOutHtml(weighOut([order({ text: 'formula <b>Bold</b>\n  10 g  "<img src=x onerror=alert(1)>"\n' })]));
    expect(html).not.toContain('<img');
    expect(html).not.toContain('<b>Bold');
  });

  it('mark what is not checked through', () => {
    const [first] = orders;
    expect(weighOutText(weighOut(orders, new Set([first!])))).toContain('is not checked through');
  });
});
