/** A mixture's temperature lies between its parts': never above the warmest, never below the coldest. */
import fc from 'fast-check';
import type { Interval, Matter, Run, StepRecord } from 'nappe';
import { describe, expect, test } from 'vitest';
import { heatTogether } from '../../compiler/src/run/heat.ts';
import { generated, runOf, runsOf, seed, textOf, written } from './formulas.ts';

/** Rounding of the bisection, K. */
const rounding = 1e-6;

function lies(celsius: Interval, between: readonly Matter[], where: string): void {
  const parts = between.filter(({ grams }) => grams.high > 0).flatMap((matter) => matter.layers ?? [matter]);
  const coldest = Math.min(...parts.map(({ heat }) => heat.celsius.low));
  const warmest = Math.max(...parts.map(({ heat }) => heat.celsius.high));
  expect(celsius.low, where).toBeGreaterThanOrEqual(coldest - rounding);
  expect(celsius.high, where).toBeLessThanOrEqual(warmest + rounding);
  expect(celsius.low, where).toBeLessThanOrEqual(celsius.high + rounding);
}

function check(run: Run): void {
  for (const record of run.records) checkRecord(record);
}

function checkRecord({ inputs, computed, additions, step, result }: StepRecord): void {
  const text = step.node.text;
  const parties = inputs.filter(({ role }) => role !== 'with').map(({ matter }) => matter);
  if (computed && parties.length > 1) lies(computed, parties, text);
  for (const addition of additions) lies(addition.celsius, parties, `an addition of ${text}`);
  expect(result.heat.celsius.low, text).toBeLessThanOrEqual(result.heat.celsius.high);
  expect(Number.isFinite(result.heat.celsius.low) && Number.isFinite(result.heat.celsius.high), text).toBe(true);
}

describe('step by step', () => {
  test('of generated formulas', () => {
    fc.assert(
      fc.property(generated, (formula) => check(runOf(textOf(formula)))),
      { seed, numRuns: 300 },
    );
  });

  test('of the written formulas, under every combination', () => {
    for (const one of written) for (const run of runsOf(one)) check(run);
  });
});

test('parts of one mass brought together again are as warm as it was', () => {
  fc.assert(
    fc.property(generated, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (formula, share) => {
      const [first] = runOf(textOf(formula)).blocks[0]!.lines;
      const { matter } = first!;
      const part = (of: number): Matter => ({
        ...matter,
        grams: { low: matter.grams.low * of, high: matter.grams.high * of },
        composition: Object.fromEntries(Object.entries(matter.composition).map(([name, grams]) => [name, grams * of])) as never,
      });
      const { celsius } = heatTogether([part(share), part(1 - share)]);
      expect(celsius.low).toBeCloseTo(matter.heat.celsius.low, 5);
      expect(celsius.high).toBeCloseTo(matter.heat.celsius.high, 5);
    }),
    { seed, numRuns: 100 },
  );
});

test('more of the warmer part never makes a mixture colder', () => {
  fc.assert(
    fc.property(generated, fc.double({ min: 1.01, max: 10, noNaN: true }), (formula, times) => {
      const [a, b] = runOf(textOf(formula)).blocks[0]!.lines.map(({ matter }) => matter);
      const [warm, cold] = a!.heat.celsius.low >= b!.heat.celsius.low ? [a!, b!] : [b!, a!];
      fc.pre(warm.heat.celsius.low >= cold.heat.celsius.low && warm.heat.celsius.high >= cold.heat.celsius.high);
      const more: Matter = {
        ...warm,
        grams: { low: warm.grams.low * times, high: warm.grams.high * times },
        composition: Object.fromEntries(Object.entries(warm.composition).map(([name, grams]) => [name, grams * times])) as never,
      };
      const before = heatTogether([warm, cold]).celsius;
      const after = heatTogether([more, cold]).celsius;
      expect(after.low).toBeGreaterThanOrEqual(before.low - rounding);
      expect(after.high).toBeGreaterThanOrEqual(before.high - rounding);
    }),
    { seed, numRuns: 200 },
  );
});
