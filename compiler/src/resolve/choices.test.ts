/** Choices: conditions, overrides, and which combinations are run. */
import fc from 'fast-check';
import { parseLine } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { bothPossible, combinations, conditionOf, countCombinations, holds, pick, selectionFor } from './choices.ts';
import type { Choice, Condition, Formula, Selection } from './model.ts';

const place = { block: 'f', line: 0, start: 0, end: 0 };
const choice = (name: string, ...values: string[]): Choice => ({ name, values, place });
const serving = choice('serving', 'glass', 'mould', 'cut');
const flavour = choice('flavour', 'tea', 'raspberry');

function condition(guard: string): Condition | null {
  const line = parseLine(`blend ${guard}`, 'formula');
  if (line.kind !== 'step') throw new Error(guard);
  return conditionOf(line.guard, [serving, flavour], () => undefined);
}

describe('a guard', () => {
  const all = combinations([serving, flavour]);
  const where = (guard: string): string[] =>
    all.filter((selection) => holds(condition(guard), selection)).map((selection) => Object.values(selection).join(' '));

  test('values of one choice are alternatives', () => {
    expect(where('when mould, cut')).toEqual(['mould tea', 'mould raspberry', 'cut tea', 'cut raspberry']);
  });
  test('values of different choices must all hold', () => {
    expect(where('when mould, cut, tea')).toEqual(['mould tea', 'cut tea']);
  });
  test('`unless` is the opposite of the whole', () => {
    expect(where('unless mould, cut, tea')).toEqual(['glass tea', 'glass raspberry', 'mould raspberry', 'cut raspberry']);
  });
  test('values are compared folded', () => {
    expect(where('when GLASS, Tea')).toEqual(['glass tea']);
  });
  test('two can hold together or not', () => {
    expect(bothPossible(condition('when glass'), condition('when cut'), [serving, flavour])).toBe(false);
    expect(bothPossible(condition('when glass'), condition('when tea'), [serving, flavour])).toBe(true);
    expect(bothPossible(condition('when glass'), condition('unless glass'), [serving, flavour])).toBe(false);
    expect(bothPossible(null, condition('when glass'), [serving, flavour])).toBe(true);
  });
});

test('an override holds where its choice has its value', () => {
  // biome-ignore lint/suspicious/noThenProperty: the model's word.
  const varied = { base: 9, overrides: [{ choice: 'serving', value: 'mould', then: 11 }] };
  expect(combinations([serving]).map((selection) => pick(varied, selection))).toEqual([9, 11, 9]);
});

test('a taken formula follows choices of the same name, else its defaults', () => {
  const formula = { choices: [choice('Serving', 'Glass', 'Cut'), choice('size', 'small', 'large')] } as unknown as Formula;
  expect(selectionFor(formula, { serving: 'cut' })).toEqual({ Serving: 'Cut', size: 'small' });
  expect(selectionFor(formula, { serving: 'mould' })).toEqual({ Serving: 'Glass', size: 'small' });
  expect(selectionFor(null, { serving: 'cut' })).toEqual({});
});

describe('combinations', () => {
  test('without choices there is one', () => {
    expect(combinations([])).toEqual([{}]);
  });
  test('the defaults come first', () => {
    expect(combinations([serving, flavour])[0]).toEqual({ serving: 'glass', flavour: 'tea' });
  });

  const someChoices = fc
    .array(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 9 })
    .map((sizes) => sizes.map((size, c) => choice(`c${c}`, ...Array.from({ length: size }, (_, v) => `c${c}v${v}`))));

  test('all of them up to 64', () => {
    fc.assert(
      fc.property(someChoices, (choices) => {
        fc.pre(countCombinations(choices) <= 64);
        expect(new Set(combinations(choices).map((selection) => JSON.stringify(selection))).size).toBe(
          countCombinations(choices),
        );
      }),
    );
  });

  test('above 64 every pair of values of two choices occurs, in fewer rows', () => {
    fc.assert(
      fc.property(someChoices, (choices) => {
        fc.pre(countCombinations(choices) > 64);
        const rows = combinations(choices);
        expect(missingPairs(choices, rows)).toEqual([]);
        expect(rows.length).toBeLessThanOrEqual(countCombinations(choices));
      }),
    );
  });

  test('twenty choices of two take a handful of rows', () => {
    const choices = Array.from({ length: 20 }, (_, c) => choice(`c${c}`, `${c}a`, `${c}b`));
    const rows = combinations(choices);
    expect(missingPairs(choices, rows)).toEqual([]);
    expect(rows.length).toBeLessThanOrEqual(20);
  });

  test('where pairs would be too many, every value still occurs', () => {
    const choices = ['a', 'b', 'c'].map((name) => choice(name, ...Array.from({ length: 66 }, (_, v) => `${name}${v}`)));
    const rows = combinations(choices);
    for (const { name, values } of choices) expect(new Set(rows.map((row) => row[name])).size).toBe(values.length);
    expect(rows.length).toBeLessThan(1300);
  });
});

function missingPairs(choices: readonly Choice[], rows: readonly Selection[]): string[] {
  const missing: string[] = [];
  choices.forEach((first, i) => {
    for (const second of choices.slice(i + 1))
      for (const a of first.values)
        for (const b of second.values)
          if (!rows.some((row) => row[first.name] === a && row[second.name] === b)) missing.push(`${a} ${b}`);
  });
  return missing;
}
