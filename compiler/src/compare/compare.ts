/**
 * Compares two versions of a formula: lines, steps, headers, allergens and diagnostics; nutrition where nothing else explains it.
 *
 * White space, comments, notes and the order of ingredient lines and components mean nothing and are not compared.
 */
import type { Line } from 'nappe-grammar';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { formatPercent } from '../quantities/format.ts';
import type { Choice, Component, Formula, Place } from '../resolve/model.ts';
import { guardKey, guardWords } from './guards.ts';
import { headerChanges } from './headers.ts';
import { type LinePair, lineChanges, pairLines } from './ingredients.ts';
import type { Change, Comparison } from './model.ts';
import { type Renames, renamedResults, renamedValues, withRenames } from './names.ts';
import { allergenChanges, diagnosticChanges, nutritionChanges } from './outcomes.ts';
import { paired } from './pairing.ts';
import { stepChanges } from './steps.ts';

export interface CompareInput {
  /** As people name it. */
  readonly file: string;
  readonly formula: Formula;
  /** Line (from 1) of a place in the formula's own file; null for one in a file it takes from. */
  readonly lineOf: (place: Place) => number | null;
  /** The line as parsed. */
  readonly lineAt: (place: Place) => Line | null;
  /** The checker's, for this formula over every combination. */
  readonly diagnostics: readonly Diagnostic[];
}

export function compareFormulas(old: CompareInput, next: CompareInput): Comparison {
  const values = renamedValues(old.formula.choices, next.formula.choices);
  const components = pairComponents(old.formula, next.formula, withRenames(new Map(), ...values));
  const renames = withRenames(
    new Map(),
    ...values,
    ...components.flatMap(([a, b]) => (a && b && a.key !== b.key ? [{ old: a.name, new: b.name }] : [])),
  );
  const told = headerChanges(old, next, renames);
  const bases: Change[] = [];
  const seen = new Set<Component>();
  for (const [before, after] of components) {
    const compared = componentChanges(old, next, before, after, renames);
    told.push(...compared.changes);
    bases.push(...baseChanges(old, next, compared.lines, seen));
  }
  return {
    old: old.file,
    new: next.file,
    formula: next.formula.name,
    changes: [
      ...told,
      ...bases,
      ...allergenChanges(old.formula, next.formula),
      ...diagnosticChanges(old, next),
      // What a changed line or step does to the figures follows from it; what is changed elsewhere shows only there.
      ...(told.length === 0 || bases.length > 0 ? nutritionChanges(old.formula, next.formula) : []),
    ],
  };
}

/** A component of one version with the same of the other; null where there is none. */
type Paired = readonly [Component | null, Component | null];

/** Components by name; what is left over, as renamed, where most of its lines are the same. */
function pairComponents(old: Formula, next: Formula, renames: Renames): readonly Paired[] {
  const all = ({ components, assembly }: Formula) => [...components, ...(assembly ? [assembly] : [])];
  const guard = ({ condition }: Component, choices: readonly Choice[], names: Renames) => guardKey(condition, choices, names);
  const only = old.components.length === 1 && next.components.length === 1;
  const { pairs, left, come } = paired(
    all(old),
    all(next),
    (a, b) =>
      a.key === b.key && a.isAssembly === b.isAssembly && guard(a, old.choices, renames) === guard(b, next.choices, new Map()),
    (a, b) => a.key === b.key && a.isAssembly === b.isAssembly,
    // A one-component formula carries its formula's name.
    (a, b) => only && !a.isAssembly && !b.isAssembly,
    (a, b) => !a.isAssembly && !b.isAssembly && likeness(a, b) >= 0.5,
  );
  return [...pairs, ...left.map((one): Paired => [one, null]), ...come.map((one): Paired => [null, one])];
}

function likeness(a: Component, b: Component): number {
  const names = new Set(a.lines.map(({ key }) => key));
  const shared = b.lines.filter(({ key }) => names.has(key)).length;
  return shared / Math.max(1, a.lines.length, b.lines.length);
}

function componentChanges(
  old: CompareInput,
  next: CompareInput,
  before: Component | null,
  after: Component | null,
  outer: Renames,
): { readonly changes: readonly Change[]; readonly lines: readonly LinePair[] } {
  const changes: Change[] = [];
  const say = (change: Omit<Change, 'component' | 'oldLine' | 'newLine'>, from?: Place, to?: Place): void => {
    changes.push({
      ...change,
      component: after?.name ?? before?.name ?? '',
      oldLine: from ? old.lineOf(from) : null,
      newLine: to ? next.lineOf(to) : null,
    });
  };
  const choices = [old.formula.choices, next.formula.choices] as const;
  if (before && after && before.key !== after.key && before.name !== old.formula.name)
    say({ kind: 'step', name: 'renamed', old: before.name, new: after.name }, before.place, after.place);
  if (before && after && guardKey(before.condition, choices[0], outer) !== guardKey(after.condition, choices[1], new Map()))
    say(
      { kind: 'step', name: 'component', old: guardWords(before.condition), new: guardWords(after.condition) },
      before.place,
      after.place,
    );
  const versions = { renames: outer, choices, lineAt: [old.lineAt, next.lineAt] as const };
  const lines = pairLines(before?.lines ?? [], after?.lines ?? [], versions);
  for (const pair of lines) for (const change of lineChanges(pair, versions)) say(change, pair.old?.place, pair.new?.place);
  const results = renamedResults(before, after);
  for (const { old: was, new: is, oldStep, newStep } of results)
    say({ kind: 'step', name: 'renamed', old: was, new: is }, oldStep.place, newStep.place);
  const renames = withRenames(
    outer,
    ...lines.flatMap(({ old: a, new: b }) => (a && b && a.key !== b.key ? [{ old: a.name, new: b.name }] : [])),
    ...results,
  );
  for (const { oldStep, newStep, ...change } of stepChanges(before?.steps ?? [], after?.steps ?? [], { ...versions, renames }))
    say(change, oldStep?.place, newStep?.place);
  const losses = [lossText(before), lossText(after)] as const;
  if (losses[0] !== losses[1])
    say({ kind: 'share', name: 'loss', old: losses[0], new: losses[1] }, before?.losses[0]?.place, after?.losses[0]?.place);
  return { changes, lines };
}

const lossText = (component: Component | null): string | null =>
  component && component.losses.length > 0
    ? component.losses
        .map(({ value, condition }) => `${formatPercent(value)}${condition ? ` ${guardWords(condition)}` : ''}`)
        .join(', ')
    : null;

/** What changed inside the bases that both versions draw a batch of, each base once: `seen` are those already told. */
function baseChanges(old: CompareInput, next: CompareInput, lines: readonly LinePair[], seen: Set<Component>): readonly Change[] {
  return lines.flatMap(({ old: a, new: b }) => {
    if (a?.substance.is !== 'batch' || b?.substance.is !== 'batch') return [];
    const [before, after] = [a.substance.taken, b.substance.taken];
    if (before.component.key !== after.component.key || seen.has(after.component)) return [];
    seen.add(after.component);
    const inside = (input: CompareInput, formula: Formula | null): CompareInput =>
      formula ? { ...input, formula } : { ...input, formula: { ...input.formula, choices: [] } };
    const sides = [inside(old, before.formula), inside(next, after.formula)] as const;
    const compared = componentChanges(sides[0], sides[1], before.component, after.component, new Map());
    return [...compared.changes, ...baseChanges(sides[0], sides[1], compared.lines, seen)];
  });
}
