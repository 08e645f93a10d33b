/** Mass is conserved through every step but the ones that say they lose it. */
import fc from 'fast-check';
import type { Matter, Run, StepRecord } from 'nappe';
import { describe, expect, test } from 'vitest';
import { generated, runOf, runsOf, seed, textOf, written } from './formulas.ts';

/** Heat drives off water; sieves, baths and soaking hold back or drain; the rest of what is put by is told apart. */
const loses: ReadonlySet<string> = new Set([
  'heat',
  'cook',
  'boil',
  'reduce',
  'bake',
  'toast',
  'dry',
  'caramelise',
  'fry',
  'strain',
  'press',
  'bloom',
  'soak',
  'discard',
  'grease',
]);

const middle = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2;
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const gramsOf = (matters: readonly Matter[]) => ({
  low: sum(matters.map(({ grams }) => grams.low)),
  high: sum(matters.map(({ grams }) => grams.high)),
});

/** What went in, and what the vessel held already. */
const taken = ({ inputs, onto }: StepRecord): readonly Matter[] => [
  ...inputs.map(({ matter }) => matter),
  ...(onto ? [onto] : []),
];

function conserves(record: StepRecord): void {
  const { step, result } = record;
  if (record.inputs.length === 0) return;
  if (record.reserved) {
    // What remains is told as the result; what was put by is what was taken.
    expect(record.reserved.grams).toEqual(record.inputs[0]?.matter.grams);
    return;
  }
  const before = gramsOf(taken(record));
  const tolerance = 1e-6 * Math.max(1, before.high);
  const lost = loses.has(step.node.verb) || step.node.clauses.some(({ word }) => word === 'losing');
  expect(result.grams.high, step.node.text).toBeLessThanOrEqual(before.high + tolerance);
  if (lost) expect(result.grams.low, step.node.text).toBeGreaterThanOrEqual(0);
  else expect(result.grams.low, step.node.text).toBeGreaterThanOrEqual(before.low - tolerance);
}

/** Composition, parts and mass tell the same figure. */
function agrees(matter: Matter, where: string): void {
  for (const body of matter.layers ?? [matter]) {
    const mass = middle(body.grams);
    const known = sum(Object.values(body.composition)) + body.unknownGrams;
    const parts = sum(body.parts.map(({ grams }) => grams)) - middle(body.evaporated);
    // Kinds are known to half a percent of their mass.
    expect(Math.abs(known - mass), `composition after ${where}`).toBeLessThanOrEqual(0.01 * mass + 0.5);
    expect(Math.abs(parts - mass), `parts after ${where}`).toBeLessThanOrEqual(0.005 * mass + 0.05);
    for (const grams of Object.values(body.composition)) expect(grams).toBeGreaterThanOrEqual(-1e-9);
  }
}

function holds(run: Run): void {
  for (const record of run.records) {
    conserves(record);
    agrees(record.result, record.step.node.text);
  }
}

describe('step by step', () => {
  test('of generated formulas', () => {
    fc.assert(
      fc.property(generated, (formula) => holds(runOf(textOf(formula)))),
      { seed, numRuns: 300 },
    );
  });

  test.each(written.map((one) => [one.path.split('/').slice(-2).join('/'), one] as const))('of %s', (_, one) => {
    for (const run of runsOf(one)) holds(run);
  });
});

test('what a formula leaves weighs what was weighed, less what its steps say they lose', () => {
  const keeps = (text: string): boolean => ![...loses].some((verb) => text.includes(`  ${verb} `));
  fc.assert(
    fc.property(generated, (formula) => {
      const text = textOf(formula);
      fc.pre(keeps(text));
      const run = runOf(text);
      fc.pre(run.findings.length === 0);
      const weighed = sum(formula.lines.map(({ grams }) => grams));
      expect(middle(run.result!.grams)).toBeCloseTo(weighed, 6);
    }),
    { seed, numRuns: 200 },
  );
});
