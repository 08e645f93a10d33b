/** The trace of the notation's own example, step by step, against figures reckoned by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { contains, type Interval, middle } from '../quantities/interval.ts';
import { log10Of } from './matter-of.ts';
import { contents, grams, ran } from './ran-text.ts';
import { traceJson } from './trace-json.ts';

const text = readFileSync(new URL('../../../samples/hojicha-bavarois.nappe', import.meta.url), 'utf8');
const tea = ran(text, ['tea', 'glass']);
const raspberry = ran(text, ['raspberry', 'cut']);

const within = (x: Interval, low: number, high: number): void => {
  expect(x.low).toBeGreaterThanOrEqual(low);
  expect(x.high).toBeLessThanOrEqual(high);
};

test('nothing is left over, used twice or unknown, whatever is chosen', () => {
  for (const serving of ['glass', 'mould', 'cut'])
    for (const flavour of ['tea', 'raspberry']) expect(ran(text, [serving, flavour]).findings).toEqual([]);
});

describe('mass', () => {
  test('nine grams of sheets take up fifty-four of water: six times', () => {
    expect(grams(tea.step('bloom').result)).toBe(63);
    expect(grams(raspberry.step('bloom').result)).toBe(91);
  });

  test('tea goes in, tea comes out, and it holds back up to three times its mass', () => {
    expect(contents(tea.step('infuse').result)).toContain('roasted green tea 12');
    const { result } = tea.step('strain');
    expect(contents(result)).not.toContain('tea');
    // 400 g less up to 3 % of steam and up to 36 g held back.
    within(result.grams, 400 * 0.97 - 36 - 1, 400);
  });

  test('the custard weighs what went in, less steam', () => {
    // 240 + 60 + 110 + 90 + 13 + 78 + 100 = 691 g, less up to 3 % of 300 g and of 500 g.
    within(raspberry.step('add raspberry').result.grams, 691 - 9 - 15, 691);
    // 320 g of cream more.
    within(raspberry.step('fold').result.grams, 1011 - 24, 1011);
  });

  test('of the part that is known the composition adds up to the mass', () => {
    for (const { result } of [...tea.run.records, ...raspberry.run.records]) {
      const sum = Object.values(result.composition).reduce((a, b) => a + b, 0) + result.unknownGrams;
      expect(sum / middle(result.grams)).toBeCloseTo(1, 2);
    }
  });
});

describe('temperature', () => {
  test('tempered: 400 g of dairy at 70-84 °C into 200 g of yolk and sugar', () => {
    // Specific heats of whole milk 3.87, cream 3.2, yolk 2.8, sugar 1.25 J/(g·K) (tables, from memory): 3.6 and 2.1 together.
    const by = (dairy: number, liaison: number): number => (400 * 3.6 * dairy + 200 * 2.1 * liaison) / (400 * 3.6 + 200 * 2.1);
    const { computed } = tea.step('temper');
    expect(contains({ low: computed!.low - 1, high: computed!.high + 1 }, by(77, 9.7))).toBe(true);
    expect(computed!.high).toBeLessThan(by(84, 13) + 2);
  });

  test('a written reading overrides what was computed', () => {
    expect(tea.step('cook').written).toEqual({ low: 82, high: 84 });
    expect(tea.step('cook').result.heat.celsius).toEqual({ low: 82, high: 84 });
    expect(tea.step('cook').result.heat.basis).toBe('written');
    expect(raspberry.step('cool').result.heat.celsius).toEqual({ low: 27, high: 30 });
  });

  test('cold gelatin and purée cool the custard', () => {
    // (567 · 3.3 · 83 + 63 · 4.0 · 11) / (567 · 3.3 + 63 · 4.0) = 74.4 °C with 3.3 and 4.0 J/(g·K).
    expect(contains(tea.step('add gelatin').computed!, 74.4)).toBe(true);
    expect(raspberry.step('add raspberry').computed!.high).toBeLessThan(raspberry.step('add gelatin').computed!.low);
  });

  test('after every fold addition: 28, 25 and 22 °C of 33, as the design shows it, and never outside the parts', () => {
    const { additions } = tea.step('fold');
    expect(additions.length).toBe(4);
    for (const [i, celsius] of [28, 25, 22].entries()) expect(contains(additions[i]!.celsius, celsius)).toBe(true);
    for (const [i, { celsius, grams: weighed }] of additions.entries()) {
      expect(middle(weighed)).toBeCloseTo(80, 6);
      within(celsius, 2, i === 0 ? 34 : additions[i - 1]!.celsius.high);
    }
    expect(tea.step('fold').result.heat.celsius).toEqual(additions[3]!.celsius);
  });
});

describe('states', () => {
  test('gelatin: dry, bloomed, dissolved, set; 9 g of 200 bloom', () => {
    const states = ['bloom', 'add gelatin', 'cool', 'fold', 'chill'].map((words) => tea.step(words).result.gelatin);
    expect(tea.block('custard').lines.find(({ line }) => line.name === 'gelatin')?.matter.gelatin).toBe('dry');
    expect(states).toEqual(['bloomed', 'dissolved', 'dissolved', 'dissolved', 'set']);
    expect(tea.step('chill').result.gelatin200).toBeCloseTo(9, 9);
  });

  test('phases and foam', () => {
    expect(tea.step('bloom').result.phase).toBe('gel');
    expect(tea.step('cool').result.phase).toBe('liquid');
    expect(tea.step('whip').result).toMatchObject({ phase: 'foam', foam: { kind: 'cream', low: 'soft', high: 'medium' } });
    const { foam } = tea.step('fold').result;
    expect(foam?.kind).toBe('cream');
    expect(foam!.overrun.high).toBeLessThan(tea.step('whip').result.foam!.overrun.high);
  });

  test('the yolk is cooked past five powers of ten of Salmonella', () => {
    const yolk = tea.step('cook').result.parts.find(({ line }) => line.name === 'egg yolk')!;
    expect(yolk.reached).toBe(82);
    expect(log10Of(yolk)).toBeGreaterThan(5);
    expect(log10Of(tea.step('whisk').result.parts.find(({ line }) => line.name === 'egg yolk')!)).toBe(0);
  });

  test('it fills the twelve glasses it makes, and the two rings', () => {
    expect(contains(tea.step('portion').millilitres!, 1200)).toBe(true);
    // 2 · π · 8² · 3 cm.
    expect(contains(raspberry.step('pour').millilitres!, 1206)).toBe(true);
  });
});

describe('names and order', () => {
  test('the block that is needed runs before the one that needs it', () => {
    const order = tea.run.blocks.map(({ component }) => component.name);
    expect(order.indexOf('assembly')).toBe(2);
  });

  test('each step names its result: `as`, or the name it kept', () => {
    expect(tea.step('heat').names[0]).toBe('dairy');
    expect(tea.step('cook').names[0]).toBe('liaison');
    expect(tea.step('fold').names[0]).toBe('custard');
  });

  test('every record is followed by those that took what it left', () => {
    const { later } = tea.run;
    expect(later.get(tea.step('bloom'))).toEqual([tea.step('add gelatin')]);
    expect(later.get(tea.step('whip'))).toEqual([tea.step('fold')]);
    expect(later.get(tea.step('chill'))).toBeUndefined();
  });
});

test('as JSON: ids of lines and steps, inputs by id, ranges as pairs, round figures', () => {
  const json = traceJson(tea.run, { fileOf: () => 'hojicha.nappe', lineOf: ({ line }) => line + 1 });
  expect(json).toMatchObject({ version: 1, formula: 'Hojicha bavarois', choices: { serving: 'glass', flavour: 'tea' } });
  expect(json.ingredients.find(({ name }) => name === 'whole milk')).toMatchObject({ kind: 'whole milk', grams: 240 });
  const ids = new Set([...json.ingredients, ...json.steps].map(({ id }) => id));
  expect(ids.size).toBe(json.ingredients.length + json.steps.length);
  for (const step of json.steps) for (const input of step.inputs) expect(ids).toContain(input.id);
  const fold = json.steps.find(({ verb }) => verb === 'fold')!;
  expect(fold.block).toBe('assembly');
  expect(fold.inputs.map(({ name }) => name)).toEqual(['custard', 'whipped cream']);
  expect(fold.additions?.length).toBe(4);
  expect(fold.gelatin).toEqual({ state: 'dissolved', grams200: 9 });
  expect(fold.foam?.stage).toBe('soft-medium');
  const cook = json.steps.find(({ verb }) => verb === 'cook')!;
  expect(cook.celsius).toEqual([82, 84]);
  expect(cook.lethality?.log10 ?? 0).toBeGreaterThan(5);
});
