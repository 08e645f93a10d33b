/** Widening an input interval never narrows an output: what was possible before still is. */
import fc from 'fast-check';
import type { Interval, Run } from 'nappe';
import { describe, expect, test } from 'vitest';
import { coolingTime, temperatureAfter } from '../../compiler/src/matter/cooling.ts';
import { settingRange } from '../../compiler/src/matter/gelatin.ts';
import { mixtureTemperature } from '../../compiler/src/matter/heat-balance.ts';
import { type Generated, generated, lineText, runOf, seed, textOf } from './formulas.ts';

/**
 * Of a figure: a balance takes masses, and a volume densities, at the middle of what steam and warmth allow, so that a wider range
 * moves both by a little.
 */
const rounding = { celsius: 0.5, grams: 1e-6, millilitres: 0.02 } as const;

/** Of the models by themselves, which search to a hundredth of a degree. */
const searched = 0.01;

function holdsAll(outer: Interval, inner: Interval, tolerance: number, where: string): void {
  expect(outer.low, where).toBeLessThanOrEqual(inner.low + tolerance);
  expect(outer.high, where).toBeGreaterThanOrEqual(inner.high - tolerance);
}

function neverNarrower(narrow: Run, wide: Run): void {
  expect(wide.records.length).toBe(narrow.records.length);
  narrow.records.forEach((record, i) => {
    const other = wide.records[i]!;
    const where = record.step.node.text;
    holdsAll(other.result.heat.celsius, record.result.heat.celsius, rounding.celsius, `temperature after ${where}`);
    holdsAll(
      other.result.grams,
      record.result.grams,
      rounding.grams * Math.max(1, record.result.grams.high),
      `mass after ${where}`,
    );
    if (record.computed && other.computed) holdsAll(other.computed, record.computed, rounding.celsius, `balance of ${where}`);
    record.additions.forEach(({ celsius }, n) => {
      holdsAll(other.additions[n]!.celsius, celsius, rounding.celsius, `addition ${n + 1} of ${where}`);
    });
    // Which foam it is follows from where the warmest of it came from: no figure, so nothing to widen.
    if (record.millilitres && other.millilitres && record.result.foam?.kind === other.result.foam?.kind)
      holdsAll(
        other.millilitres,
        record.millilitres,
        rounding.millilitres * Math.max(1, record.millilitres.high),
        `volume after ${where}`,
      );
  });
}

/** The same formula with one line's figure written as a range around it. */
function widened(formula: Generated, index: number, write: (text: string, line: Generated['lines'][number]) => string): string {
  const i = index % formula.lines.length;
  const lines = formula.lines.map((line, n) => (n === i ? write(lineText(line), line) : lineText(line)));
  return ['formula Generated', ...lines, ...formula.steps.map((step) => `  ${step}`), ''].join('\n');
}

describe('in generated formulas', () => {
  test('of a line’s temperature', () => {
    fc.assert(
      fc.property(
        generated,
        fc.nat(20),
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: 1, max: 8 }),
        (formula, index, down, up) => {
          const text = widened(formula, index, (line, { celsius }) =>
            line.replace(/-?\d+ °C$/, `${celsius - down}..${celsius + up} °C`),
          );
          neverNarrower(runOf(textOf(formula)), runOf(text));
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  test('of a line’s mass, about its middle', () => {
    fc.assert(
      fc.property(generated, fc.nat(20), fc.double({ min: 0.01, max: 0.5, noNaN: true }), (formula, index, share) => {
        const text = widened(formula, index, (line, { grams }) => {
          const by = Math.round(grams * share * 100) / 100;
          return line.replace(/^ {2}\d+ g/, `  ${(grams - by).toFixed(2)}-${(grams + by).toFixed(2)} g`);
        });
        const narrow = runOf(textOf(formula));
        const wide = runOf(text);
        narrow.records.forEach((record, i) => {
          const { grams } = record.result;
          const other = wide.records[i]!.result.grams;
          holdsAll(other, grams, 1e-6 * Math.max(1, grams.high), record.step.node.text);
        });
      }),
      { seed, numRuns: 200 },
    );
  });
});

const interval = (low: number, high: number): fc.Arbitrary<Interval> =>
  fc
    .tuple(fc.double({ min: low, max: high, noNaN: true }), fc.double({ min: low, max: high, noNaN: true }))
    .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));

const wider = fc.record({ down: fc.double({ min: 0, max: 10, noNaN: true }), up: fc.double({ min: 0, max: 10, noNaN: true }) });

const composition = fc
  .record({
    water: fc.double({ min: 1, max: 500, noNaN: true }),
    milkFat: fc.double({ min: 0, max: 200, noNaN: true }),
    cocoaButter: fc.double({ min: 0, max: 200, noNaN: true }),
    sucrose: fc.double({ min: 0, max: 300, noNaN: true }),
    protein: fc.double({ min: 0, max: 80, noNaN: true }),
  })
  .map((known) => ({ otherFat: 0, otherSugars: 0, starch: 0, fibre: 0, ash: 0, alcohol: 0, ...known }));

describe('in the models', () => {
  test('the temperature of a mixture', () => {
    fc.assert(
      fc.property(composition, composition, interval(-10, 100), interval(-10, 100), wider, (a, b, x, y, { down, up }) => {
        const mixed = (celsius: Interval): Interval =>
          mixtureTemperature([
            { composition: a, celsius },
            { composition: b, celsius: y },
          ]);
        holdsAll(mixed({ low: x.low - down, high: x.high + up }), mixed(x), searched, 'mixture');
      }),
      { seed, numRuns: 200 },
    );
  });

  const mass = (of: typeof composition extends fc.Arbitrary<infer C> ? C : never) => {
    const grams = Object.values(of).reduce((a, b) => a + b, 0);
    return { composition: of, grams, millilitres: grams / 1.05, medium: 'fridge' as const };
  };

  test('the time to cool, and the temperature after a time', () => {
    fc.assert(
      fc.property(composition, interval(30, 95), interval(60, 7200), wider, (of, from, seconds, { down, up }) => {
        const wide = { low: from.low - down, high: from.high + up };
        const narrowTime = coolingTime({ ...mass(of), from, to: 20 });
        const wideTime = coolingTime({ ...mass(of), from: wide, to: 20 });
        holdsAll(wideTime!.seconds, narrowTime!.seconds, 1, 'time to cool');
        holdsAll(
          temperatureAfter({ ...mass(of), from: wide, seconds }),
          temperatureAfter({ ...mass(of), from, seconds }),
          searched,
          'after a time',
        );
        const longer = { low: Math.max(0, seconds.low - 60 * down), high: seconds.high + 60 * up };
        holdsAll(
          temperatureAfter({ ...mass(of), from, seconds: longer }),
          temperatureAfter({ ...mass(of), from, seconds }),
          searched,
          'after a longer time',
        );
      }),
      { seed, numRuns: 60 },
    );
  });

  test('the setting range of gelatin rises with its share', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 5, noNaN: true }), fc.double({ min: 1, max: 3, noNaN: true }), (share, times) => {
        expect(settingRange(share * times).low).toBeGreaterThanOrEqual(settingRange(share).low);
        expect(settingRange(share * times).high).toBeGreaterThanOrEqual(settingRange(share).high);
      }),
      { seed },
    );
  });
});
