/**
 * Compares two versions of a formula: lines, steps, headers, allergens and diagnostics; nutrition where nothing else explains it.
 *
 * White space, comments, notes and the order of ingredient lines and components mean nothing and are not compared.
 */

import { nutritionOf } from '../card/nutrition.ts';
import type { Allergen } from '../catalogue/kind.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { formatCelsius, formatDuration, formatPercent } from '../quantities/format.ts';
import { combinations, defaultSelection } from '../resolve/choices.ts';
import type { Component, Formula, Place } from '../resolve/model.ts';
import { type makesOf, runFormula } from '../run/run.ts';
import { type LinePair, lineChanges, pairLines } from './ingredients.ts';
import type { Change, Comparison } from './model.ts';
import { shapeOf } from './shape.ts';
import { stepChanges } from './steps.ts';

export interface CompareInput {
  /** As people name it. */
  readonly file: string;
  readonly formula: Formula;
  /** Line (from 1) of a place. */
  readonly lineOf: (place: Place) => number;
  /** The checker's, for this formula over every combination. */
  readonly diagnostics: readonly Diagnostic[];
}

export function compareFormulas(old: CompareInput, next: CompareInput): Comparison {
  const changes = [...headerChanges(old, next)];
  for (const [before, after] of pairComponents(old.formula, next.formula))
    changes.push(...componentChanges(old, next, before, after));
  const explained = changes.length > 0;
  changes.push(...allergenChanges(old, next), ...diagnosticChanges(old, next));
  if (!explained) changes.push(...nutritionChanges(old, next));
  return { old: old.file, new: next.file, formula: next.formula.name, changes };
}

type Paired = readonly [Component | null, Component | null];

/** Components by name; what is left over, as renamed, where most of its lines are the same. */
function pairComponents(old: Formula, next: Formula): readonly Paired[] {
  const before = [...old.components, ...(old.assembly ? [old.assembly] : [])];
  const after = [...next.components, ...(next.assembly ? [next.assembly] : [])];
  const pairs: Paired[] = [];
  let left = before;
  let come = after;
  const match = (same: (a: Component, b: Component) => boolean): void => {
    for (const a of [...left]) {
      const b = come.find((candidate) => same(a, candidate));
      if (!b) continue;
      pairs.push([a, b]);
      left = left.filter((one) => one !== a);
      come = come.filter((one) => one !== b);
    }
  };
  match(
    (a, b) =>
      a.key === b.key &&
      a.isAssembly === b.isAssembly &&
      shapeOf(a.condition?.guard.values ?? null, new Map()) === shapeOf(b.condition?.guard.values ?? null, new Map()),
  );
  match((a, b) => a.key === b.key && a.isAssembly === b.isAssembly);
  // A one-component formula carries its formula's name.
  match(
    (a, b) =>
      a.key === old.components[0]?.key &&
      b.key === next.components[0]?.key &&
      old.components.length === 1 &&
      next.components.length === 1 &&
      !a.isAssembly &&
      !b.isAssembly,
  );
  match((a, b) => !a.isAssembly && !b.isAssembly && likeness(a, b) >= 0.5);
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
): readonly Change[] {
  const component = after?.name ?? before?.name ?? '';
  const at = (side: CompareInput, place: Place | undefined): number | null => (place ? side.lineOf(place) : null);
  const pairs = pairLines(before?.lines ?? [], after?.lines ?? []);
  const changes: Change[] = [];
  if (before && after && before.key !== after.key && !before.isAssembly && old.formula.components.length > 1) {
    changes.push({
      kind: 'step',
      component,
      name: 'component',
      old: before.name,
      new: after.name,
      oldLine: at(old, before.place),
      newLine: at(next, after.place),
    });
  }
  for (const pair of pairs)
    for (const change of lineChanges(pair))
      changes.push({ ...change, component, oldLine: at(old, pair.old?.place), newLine: at(next, pair.new?.place) });
  for (const { oldStep, newStep, ...change } of stepChanges(
    before?.steps ?? [],
    after?.steps ?? [],
    renamesOf(old.formula, next.formula, before, after, pairs),
  ))
    changes.push({ ...change, component, oldLine: at(old, oldStep?.place), newLine: at(next, newStep?.place) });
  const losses = [lossText(before), lossText(after)] as const;
  if (losses[0] !== losses[1])
    changes.push({
      kind: 'share',
      component,
      name: 'loss',
      old: losses[0],
      new: losses[1],
      oldLine: at(old, before?.losses[0]?.place),
      newLine: at(next, after?.losses[0]?.place),
    });
  const guards = [guardText(before), guardText(after)] as const;
  if (before && after && guards[0] !== guards[1])
    changes.push({
      kind: 'step',
      component,
      name: 'component',
      old: guards[0],
      new: guards[1],
      oldLine: at(old, before.place),
      newLine: at(next, after.place),
    });
  return changes;
}

const lossText = (component: Component | null): string | null =>
  component && component.losses.length > 0 ? component.losses.map(({ value }) => formatPercent(value)).join(', ') : null;

const guardText = (component: Component | null): string =>
  component?.condition
    ? `${component.condition.guard.word} ${component.condition.guard.values.map(({ key }) => key).join(', ')}`
    : 'always';

/** Names that mean the same matter in both: renamed lines, renamed components, and names given by `as` in the same place. */
function renamesOf(
  old: Formula,
  next: Formula,
  before: Component | null,
  after: Component | null,
  pairs: readonly LinePair[],
): ReadonlyMap<string, string> {
  const renames = new Map<string, string>();
  for (const pair of pairs) if (pair.old && pair.new && pair.old.key !== pair.new.key) renames.set(pair.old.key, pair.new.key);
  for (const [a, b] of pairComponents(old, next)) if (a && b && a.key !== b.key) renames.set(a.key, b.key);
  const given = (component: Component | null): string[] =>
    component?.steps.flatMap(({ node }) => node.clauses.flatMap((clause) => (clause.word === 'as' ? [clause.name.key] : []))) ??
    [];
  const [was, is] = [given(before), given(after)];
  const gone = was.filter((name) => !is.includes(name));
  const come = is.filter((name) => !was.includes(name));
  if (was.length === is.length && gone.length === come.length)
    for (const [index, name] of gone.entries()) renames.set(name, come[index]!);
  return renames;
}

function headerChanges(old: CompareInput, next: CompareInput): readonly Change[] {
  const changes: Change[] = [];
  const say = (
    kind: Change['kind'],
    name: string,
    before: string | null,
    after: string | null,
    oldPlace?: Place,
    newPlace?: Place,
  ): void => {
    if (before === after) return;
    changes.push({
      kind,
      component: next.formula.name,
      name,
      old: before,
      new: after,
      oldLine: oldPlace ? old.lineOf(oldPlace) : null,
      newLine: newPlace ? next.lineOf(newPlace) : null,
    });
  };
  const [a, b] = [old.formula, next.formula];
  say('yield', 'makes', makesText(a), makesText(b), a.makes[0]?.place, b.makes[0]?.place);
  say(
    'celsius',
    'served',
    textOf(a.served.map(({ value }) => formatCelsius(value))),
    textOf(b.served.map(({ value }) => formatCelsius(value))),
    a.served[0]?.place,
    b.served[0]?.place,
  );
  const keeps = (formula: Formula): string | null =>
    textOf(
      formula.keeps.map(
        ({ value }) => `${formatDuration(value.seconds)}${value.celsius ? ` at ${formatCelsius(value.celsius)}` : ''}`,
      ),
    );
  say('time', 'keeps', keeps(a), keeps(b), a.keeps[0]?.place, b.keeps[0]?.place);
  const claims = (formula: Formula): string | null => textOf(formula.freeFrom.map(({ allergen }) => allergen).sort());
  say('allergen', 'free from', claims(a), claims(b), a.freeFrom[0]?.place, b.freeFrom[0]?.place);
  const choices = (formula: Formula): string | null =>
    textOf(formula.choices.map(({ name, values }) => `${name}: ${values.join(', ')}`).sort());
  say('step', 'choice', choices(a), choices(b), a.choices[0]?.place, b.choices[0]?.place);
  say('share', 'gelatin', a.settings.gelatinLaw, b.settings.gelatinLaw);
  say('step', 'tagged', textOf([...a.settings.tags].sort()), textOf([...b.settings.tags].sort()));
  return changes;
}

const textOf = (said: readonly string[]): string | null => (said.length === 0 ? null : said.join(', '));

/** The yield in words, each that some combination has. */
function makesText(formula: Formula): string | null {
  const said = new Set<string>();
  for (const { value, condition } of formula.makes) {
    const line = shapeOf(value, new Map());
    said.add(`${line}|${condition?.guard.values.map(({ key }) => key).join() ?? ''}`);
  }
  if (said.size === 0) return null;
  return formula.makes
    .map(
      ({ value, condition }) =>
        `${yieldWords(value)}${condition ? ` ${condition.guard.word} ${condition.guard.values.map(({ text }) => text).join(', ')}` : ''}`,
    )
    .join('; ');
}

function yieldWords(made: NonNullable<ReturnType<typeof makesOf>>['yield']): string {
  const quantity = made.size ?? made.quantity;
  const amount = quantity
    ? `${quantity.low === quantity.high ? quantity.low : `${quantity.low}-${quantity.high}`} ${quantity.unit}`
    : null;
  if (made.count === null) return amount ?? '';
  const size = made.lengths ? ` of ${made.lengths.map((mm) => mm / 10).join(' x ')} cm` : amount ? ` of ${amount}` : '';
  return `${made.count} ${made.lined ? 'lined ' : ''}${made.noun?.text ?? ''}${size}`.trim();
}

/** Over every combination: what came in and what went. */
function allergenChanges(old: CompareInput, next: CompareInput): readonly Change[] {
  const [before, after] = [allergensIn(old.formula), allergensIn(next.formula)];
  const change = (name: Allergen, gone: boolean): Change => ({
    kind: 'allergen',
    component: next.formula.name,
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
function diagnosticChanges(old: CompareInput, next: CompareInput): readonly Change[] {
  const come = beyond(next.diagnostics, old.diagnostics);
  const gone = beyond(old.diagnostics, next.diagnostics);
  const say = (diagnostic: Diagnostic, lost: boolean): Change => ({
    kind: 'diagnostic',
    component: next.formula.name,
    name: diagnostic.code,
    old: lost ? diagnostic.message : null,
    new: lost ? null : diagnostic.message,
    oldLine: lost ? diagnostic.line : null,
    newLine: lost ? null : diagnostic.line,
  });
  return [...gone.map((one) => say(one, true)), ...come.map((one) => say(one, false))];
}

function beyond(all: readonly Diagnostic[], others: readonly Diagnostic[]): readonly Diagnostic[] {
  const left = new Map<string, number>();
  for (const { code } of others) left.set(code, (left.get(code) ?? 0) + 1);
  return all.filter(({ code }) => {
    const there = left.get(code) ?? 0;
    if (there > 0) left.set(code, there - 1);
    return there === 0;
  });
}

/** Where no line, step or header changed, and yet what is served is another (a base or a house ingredient elsewhere). */
function nutritionChanges(old: CompareInput, next: CompareInput): readonly Change[] {
  const facts = ({ formula }: CompareInput): Record<string, number> => {
    const selection = defaultSelection(formula);
    const { per100g } = nutritionOf(runFormula(formula, selection), {
      text: '',
      count: null,
      noun: null,
      grams: null,
      millilitres: null,
    });
    return per100g ? { ...per100g } : {};
  };
  const [before, after] = [facts(old), facts(next)];
  return Object.keys(after)
    .filter((name) => before[name] !== undefined && figure(before[name]) !== figure(after[name]!))
    .map((name) => ({
      kind: 'nutrition',
      component: next.formula.name,
      name,
      old: figure(before[name]!),
      new: figure(after[name]!),
      oldLine: null,
      newLine: null,
    }));
}

const figure = (value: number): string => (Math.abs(value) >= 10 ? value.toFixed(0) : value.toFixed(1));
