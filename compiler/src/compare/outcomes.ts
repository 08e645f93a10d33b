/** What follows from two versions: allergens that came or went, diagnostics gained and lost, nutrition. */
import { nutritionOf } from '../card/nutrition.ts';
import type { Allergen } from '../catalogue/kind.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { combinations, defaultSelection } from '../resolve/choices.ts';
import type { Formula } from '../resolve/model.ts';
import { runFormula } from '../run/run.ts';
import type { CompareInput } from './compare.ts';
import type { Change } from './model.ts';
import { paired } from './pairing.ts';

/** Over every combination: what came in and what went. */
export function allergenChanges(old: Formula, next: Formula): readonly Change[] {
  const [before, after] = [allergensIn(old), allergensIn(next)];
  const change = (name: Allergen, gone: boolean): Change => ({
    kind: 'allergen',
    component: next.name,
    name,
    old: gone ? 'contains' : null,
    new: gone ? null : 'contains',
    oldLine: null,
    newLine: null,
  });
  return [
    ...[...before].filter((name) => !after.has(name)).map((name) => change(name, true)),
    ...[...after].filter((name) => !before.has(name)).map((name) => change(name, false)),
  ];
}

function allergensIn(formula: Formula): ReadonlySet<Allergen> {
  const found = new Set<Allergen>();
  for (const selection of combinations(formula.choices))
    for (const block of runFormula(formula, selection).blocks)
      for (const { line } of block.lines)
        if (line.substance.is === 'kind') for (const allergen of line.substance.kind.allergens) found.add(allergen);
  return found;
}

/** Diagnostics by code, as often as they stand there: what was gained and what was lost. */
export function diagnosticChanges(old: CompareInput, next: CompareInput): readonly Change[] {
  const say = (diagnostic: Diagnostic, lost: boolean): Change => ({
    kind: 'diagnostic',
    component: next.formula.name,
    name: diagnostic.code,
    old: lost ? diagnostic.message : null,
    new: lost ? null : diagnostic.message,
    oldLine: lost ? diagnostic.line : null,
    newLine: lost ? null : diagnostic.line,
  });
  const { left, come } = paired(
    old.diagnostics,
    next.diagnostics,
    (a, b) => a.code === b.code && a.message === b.message,
    (a, b) => a.code === b.code,
  );
  return [...left.map((one) => say(one, true)), ...come.map((one) => say(one, false))];
}

/** Figures of what is served per 100 g, under the default choices. */
export function nutritionChanges(old: Formula, next: Formula): readonly Change[] {
  const [before, after] = [factsOf(old), factsOf(next)];
  return Object.keys(after)
    .filter((name) => before[name] !== undefined && figure(before[name]) !== figure(after[name] as number))
    .map((name) => ({
      kind: 'nutrition',
      component: next.name,
      name,
      old: `${figure(before[name] as number)}${unit(name)} in 100 g`,
      new: `${figure(after[name] as number)}${unit(name)} in 100 g`,
      oldLine: null,
      newLine: null,
    }));
}

function factsOf(formula: Formula): Readonly<Record<string, number>> {
  const makes = { text: '', count: null, noun: null, grams: null, millilitres: null };
  return { ...nutritionOf(runFormula(formula, defaultSelection(formula)), makes).per100g };
}

/** Energy to the whole unit, the rest to a tenth of a gram below ten grams. */
const figure = (value: number): string => (Math.abs(value) >= 10 ? value.toFixed(0) : value.toFixed(1));

const unit = (name: string): string => (name === 'kJ' || name === 'kcal' ? '' : ' g');
