/** Percentages under one selection: whether they add up, and whether anything sets the size. */
import { middle } from '../quantities/interval.ts';
import { holds, pick } from './choices.ts';
import type { Component, Formula, RawFinding, Selection } from './model.ts';

/** Percentages are kept to a tenth in practice, so a sum may miss 100 by so much. */
const slack = 0.5;

/** `percent-total` and `needs-mass` of a formula under one selection. */
export function percentFindings(formula: Formula, selection: Selection): readonly RawFinding[] {
  const there = [...formula.components, ...(formula.assembly ? [formula.assembly] : [])].filter((component) =>
    holds(component.condition, selection),
  );
  return there.flatMap((component) => {
    const sums = sumsOf(component, selection);
    if (sums.lines === 0) return [];
    const total = totalFinding(component, sums);
    if (total) return [total];
    return sums.hasMass || isDrawnOn(component, there, selection) || isSizedByMakes(formula, selection)
      ? []
      : [unsized(component)];
  });
}

interface Sums {
  /** Lines in per cent. */
  readonly lines: number;
  readonly percent: number;
  /** Lines in grams stand beside those in per cent. */
  readonly beside: boolean;
  /** Something in it sets the size: grams, or for `basis NAME` that line in grams. */
  readonly hasMass: boolean;
}

function sumsOf(component: Component, selection: Selection): Sums {
  let lines = 0;
  let percent = 0;
  let basisInGrams = false;
  // Grams that could not be had are reported at their line; they would set the size.
  let beside = false;
  for (const line of component.lines) {
    if (!holds(line.condition, selection)) continue;
    const amount = pick(line.amount, selection);
    if (amount.measure === 'percent') {
      lines += 1;
      percent += middle(amount.value);
    } else if (amount.measure === 'grams' || amount.measure === 'unknown') {
      const weighs = amount.measure === 'unknown' || middle(amount.value) > 0;
      beside ||= weighs;
      if (component.basis.kind === 'line' && component.basis.key === line.key) basisInGrams = weighs;
    }
  }
  return { lines, percent, beside, hasMass: component.basis.kind === 'line' ? basisInGrams : beside };
}

function totalFinding(component: Component, { percent, beside }: Sums): RawFinding | null {
  if (component.basis.kind === 'line') return null;
  const wrong = beside ? percent >= 100 - 1e-9 : Math.abs(percent - 100) > slack;
  if (!wrong) return null;
  return {
    code: 'percent-total',
    place: component.place,
    numbers: { component: component.name, percent, beside, isAssembly: component.isAssembly },
  };
}

const unsized = (component: Component): RawFinding => ({
  code: 'needs-mass',
  place: component.place,
  numbers: { name: component.name, basis: component.basis.kind === 'line' ? component.basis.key : null },
});

/** `200 g custard` in another block sizes a custard that is all percentages. */
const isDrawnOn = (component: Component, there: readonly Component[], selection: Selection): boolean =>
  there.some((other) =>
    other.lines.some(
      ({ substance, amount, condition }) =>
        substance.is === 'own component' &&
        substance.component.key === component.key &&
        holds(condition, selection) &&
        pick(amount, selection).measure !== 'percent',
    ),
  );

/** `makes` with a mass, a volume, or pieces of a known size. */
function isSizedByMakes(formula: Formula, selection: Selection): boolean {
  return formula.makes.some(
    ({ value, condition }) =>
      holds(condition, selection) &&
      (value.quantity !== null || (value.count !== null && !value.lined && (value.size !== null || value.lengths !== null))),
  );
}
