/** A block of ingredient lines and steps resolved into a component. */
import { type HeaderLine, nameKey } from 'nappe-grammar';
import { type Interval, interval } from '../quantities/interval.ts';
import { unknownUnit } from './amounts.ts';
import { headingPlace, type NamedBlock, notesIn, placeIn, problemsIn, under } from './blocks.ts';
import { bothPossible } from './choices.ts';
import { type GuardReader, guardReader } from './guards.ts';
import type { Choice, Component, Condition, Guarded, Place, RawFinding, ScopeEntry, SourceLine, Step } from './model.ts';
import type { Names } from './names.ts';
import { nearestNames } from './nearest.ts';
import { sourceLineOf } from './source-line.ts';

/** A header line of the formula's own block that holds for this component too, with its place. */
export interface InheritedHeader {
  readonly block: string;
  readonly index: number;
  readonly line: HeaderLine;
  readonly condition: Condition | null;
}

export interface ComponentSource {
  readonly block: NamedBlock;
  readonly file: string;
  readonly name: string;
  readonly isAssembly: boolean;
  /** The formula's own block, whose ingredient lines and steps are its one component. */
  readonly isFormulaBlock: boolean;
  readonly inherited: readonly InheritedHeader[];
}

export interface Resolved {
  readonly component: Component;
  readonly findings: readonly RawFinding[];
}

export function resolveComponent(source: ComponentSource, names: Names): Resolved {
  const { block, isFormulaBlock } = source;
  const findings: RawFinding[] = [];
  const report = (finding: RawFinding): void => {
    findings.push(finding);
  };
  const guards = guardReader(block.id, names.choices, report);
  const condition = isFormulaBlock ? null : guards.condition(block.heading?.guard ?? null, 0);
  const notes = notesIn(block.lines);
  const lines = linesOf(source, names, guards, notes.at, report);
  const steps = stepsOf(block, guards, notes.at, report);
  if (!isFormulaBlock) {
    findings.push(...underGuards(problemsIn(block), lines, steps));
    misplacedHeaders(source, report);
  }
  const basis = basisOf(source, lines, report);
  const losses = lossesOf(source, guards);
  findings.push(...duplicateNames(block, lines, steps, names.choices));
  const component: Component = {
    id: block.id,
    name: source.name,
    key: nameKey(source.name),
    file: source.file,
    isAssembly: source.isAssembly,
    place: headingPlace(block),
    condition,
    basis,
    losses,
    lines,
    steps,
    notes: isFormulaBlock ? [] : notes.block,
    scope: scopeOf(lines, steps, names),
    choicesUsed: [
      ...new Set([...guards.used, ...losses.flatMap((loss) => loss.condition?.all.map(({ choice }) => choice) ?? [])]),
    ],
  };
  return { component, findings: findings.map((finding) => under(finding, [condition])) };
}

/** What is wrong with a line is wrong where the line is there; what is no notation is wrong always. */
function underGuards(
  problems: readonly RawFinding[],
  lines: readonly SourceLine[],
  steps: readonly Step[],
): readonly RawFinding[] {
  if (problems.length === 0) return problems;
  const conditions = new Map([...lines, ...steps].map(({ place, condition }) => [place.line, condition]));
  return problems.map((problem) =>
    problem.code === 'syntax' ? problem : under(problem, [conditions.get(problem.place.line) ?? null]),
  );
}

const sayNothing = (): void => undefined;

/** Unknown ingredients of a block for which nearest kinds are looked for. */
const mostProposals = 25;

function linesOf(
  { block, isAssembly, isFormulaBlock }: ComponentSource,
  names: Names,
  guards: GuardReader,
  notes: ReadonlyMap<number, readonly string[]>,
  report: (finding: RawFinding) => void,
): readonly SourceLine[] {
  const siblings = new Set(block.lines.flatMap((line) => (line.kind === 'ingredient' ? [line.name.key] : [])));
  const lines: SourceLine[] = [];
  const proposals = { left: mostProposals };
  block.lines.forEach((node, index) => {
    if (node.kind !== 'ingredient') return;
    // Of a line that cannot be read whole nothing more is said: it is one diagnostic.
    const isWhole = node.problems.every(({ code }) => code !== 'syntax');
    const quiet = isWhole ? report : sayNothing;
    const own = notes.get(index) ?? [];
    const line = sourceLineOf(node, index, { block: block.id, names, guards, siblings, notes: own, proposals, report: quiet });
    lines.push(line);
    if (node.quantity.base.each && !isAssembly && !isFormulaBlock) {
      const message = '`each` counts the pieces of `makes`, so it stands only in the assembly; write what this component weighs.';
      report({ code: 'syntax', place: placeIn(block.id, index, node.quantity.base), numbers: { message } });
    }
  });
  return lines;
}

function stepsOf(
  block: NamedBlock,
  guards: GuardReader,
  notes: ReadonlyMap<number, readonly string[]>,
  report: (finding: RawFinding) => void,
): readonly Step[] {
  const steps: Step[] = [];
  block.lines.forEach((node, index) => {
    if (node.kind !== 'step') return;
    const values = guards.step(node, index);
    const condition = guards.condition(node.guard, index);
    for (const { part, name } of node.operands) {
      const word = part?.kind === 'quantity' ? part.quantity.base.doubtfulUnit : undefined;
      if (word) report(under(unknownUnit(block.id, index, word, name, true), [condition]));
    }
    steps.push({
      id: `${block.id}:${index}`,
      place: placeIn(block.id, index, node.span),
      node,
      condition,
      values,
      notes: notes.get(index) ?? [],
    });
  });
  return steps;
}

/** Of the headers only `basis` and `loss` stand in a component. */
function misplacedHeaders({ block }: ComponentSource, report: (finding: RawFinding) => void): void {
  block.lines.forEach((line, index) => {
    if (line.kind !== 'header' || line.word === 'basis' || line.word === 'loss') return;
    const message = `\`${line.word}\` says something of the whole formula; write it under the line \`formula\`.`;
    report({ code: 'syntax', place: placeIn(block.id, index, line.wordSpan), numbers: { message } });
  });
}

function basisOf(
  { block, inherited, isFormulaBlock }: ComponentSource,
  lines: readonly SourceLine[],
  report: (finding: RawFinding) => void,
): Component['basis'] {
  const own = block.lines.flatMap((line, index) =>
    line.kind === 'header' && line.word === 'basis' ? [{ line, block: block.id, index }] : [],
  );
  const formulas = (isFormulaBlock ? [] : inherited).flatMap(({ line, block, index }) =>
    line.word === 'basis' ? [{ line, block, index }] : [],
  );
  for (const { line, block: where, index } of [...own, ...formulas]) {
    if (line.name === null) return { kind: 'total' };
    const { key, text } = line.name;
    const place = placeIn(where, index, line.name);
    if (lines.some((other) => other.key === key)) return { kind: 'line', key, place };
    if (where !== block.id) continue;
    const [near] = nearestNames(
      key,
      lines.map((other) => ({ key: other.key, text: other.name })),
      1,
    );
    report({
      code: 'unknown-name',
      place,
      numbers: { name: text, nearest: near ?? null },
      fixes: near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ ...place, text: near }] }],
    });
  }
  return { kind: 'total' };
}

function lossesOf({ block, inherited, isFormulaBlock }: ComponentSource, guards: GuardReader): readonly Guarded<Interval>[] {
  const losses: Guarded<Interval>[] = [];
  if (!isFormulaBlock)
    block.lines.forEach((line, index) => {
      if (line.kind === 'header' && line.word === 'loss')
        losses.push(lossOf(line.percent, guards.condition(line.guard, index), placeIn(block.id, index, line.span)));
    });
  for (const { line, condition, block: where, index } of inherited)
    if (line.word === 'loss') losses.push(lossOf(line.percent, condition, placeIn(where, index, line.span)));
  return losses;
}

const lossOf = (
  percent: { readonly low: number; readonly high: number },
  condition: Condition | null,
  place: Place,
): Guarded<Interval> => ({
  value: interval(percent.low / 100, percent.high / 100),
  condition,
  place,
});

/** A thing with a name, for finding two of one name. */
export interface Declared {
  readonly key: string;
  readonly text: string;
  readonly condition: Condition | null;
  readonly place: Place;
}

/** Names that lines and `as` declare twice in one combination; `as` of the very thing that has the name declares nothing new. */
function duplicateNames(
  block: NamedBlock,
  lines: readonly SourceLine[],
  steps: readonly Step[],
  choices: readonly Choice[],
): readonly RawFinding[] {
  const declared: Declared[] = lines.map(({ key, name, condition, namePlace }) => ({
    key,
    text: name,
    condition,
    place: namePlace,
  }));
  let current: ReadonlySet<string> = new Set();
  for (const { node, condition, place } of steps) {
    const named = node.clauses.find((clause) => clause.word === 'as');
    const acted = actedOn(node, current);
    if (named?.word === 'as' && !acted.has(named.name.key) && !consumes(node, named.name.key))
      declared.push({ key: named.name.key, text: named.name.text, condition, place: placeIn(block.id, place.line, named.name) });
    const after = leavesAlone.has(node.verb) ? current : named?.word === 'as' ? new Set([...acted, named.name.key]) : acted;
    // Where the step is not there, what was current before stays so.
    current = condition === null ? after : new Set([...current, ...after]);
  }
  declared.sort((a, b) => a.place.line - b.place.line);
  return duplicates(declared, choices);
}

/** The step takes in all of what has the name, so the name is free for its result. */
const consumes = ({ verb, operands }: Step['node'], key: string): boolean =>
  verb !== 'reserve' && operands.some(({ name, part }) => part === null && name.key === key);

/** Steps after which the current matter is what it was. */
const leavesAlone: ReadonlySet<string> = new Set(['reserve', 'discard', 'check', 'do']);

/** Names the matter has that a step leaves, as far as the text alone tells: of its one operand, of the other party, or of the current matter. */
function actedOn(node: Step['node'], current: ReadonlySet<string>): ReadonlySet<string> {
  for (const clause of node.clauses)
    if ((clause.word === 'into' || clause.word === 'over' || clause.word === 'in') && 'key' in clause.target)
      return new Set([clause.target.key]);
  const [first, second] = node.operands;
  if (first === undefined || node.verb === 'add' || node.verb === 'fold') return current;
  if (node.verb === 'reserve' || second !== undefined || first.part !== null) return new Set();
  return new Set([first.name.key]);
}

/** One finding for each thing whose name an earlier one has in some combination. */
export function duplicates(declared: readonly Declared[], choices: readonly Choice[]): readonly RawFinding[] {
  const byKey = new Map<string, Declared[]>();
  const findings: RawFinding[] = [];
  for (const thing of declared) {
    const earlier = byKey.get(thing.key) ?? [];
    const first = earlier.find((other) => bothPossible(other.condition, thing.condition, choices));
    if (first)
      findings.push(
        under(
          {
            code: 'duplicate-name',
            place: thing.place,
            numbers: { name: thing.text },
            related: [{ place: first.place, message: `${first.text} is declared here first` }],
          },
          [first.condition, thing.condition],
        ),
      );
    byKey.set(thing.key, [...earlier, thing]);
  }
  return findings;
}

/** The components and taken things this block's steps may mean; the names they do not mention are there for proposals. */
function scopeOf(lines: readonly SourceLine[], steps: readonly Step[], names: Names): ReadonlyMap<string, ScopeEntry> {
  const own = new Set(lines.map(({ key }) => key));
  const scope = new Map<string, ScopeEntry>();
  const asked = mentioned(steps);
  for (const key of asked) {
    const entry = own.has(key) ? null : names.entry(key);
    if (entry) scope.set(key, entry);
  }
  for (const [key, entry] of names.all) if (!asked.has(key) && !own.has(key)) scope.set(key, entry);
  return scope;
}

function mentioned(steps: readonly Step[]): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const { node } of steps) {
    for (const { name } of node.operands) keys.add(name.key);
    for (const clause of node.clauses) {
      if (clause.word === 'with') for (const { name } of clause.operands) keys.add(name.key);
      else if ('target' in clause && 'key' in clause.target) keys.add(clause.target.key);
    }
  }
  return keys;
}
