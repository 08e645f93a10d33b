/** The run behind a line: which formula it belongs to, under which choices it is looked at, and what was recorded there. */
import {
  type BlockRun,
  type Component,
  type Condition,
  combinations,
  type Formula,
  holds,
  type Run,
  runFormula,
  type Selection,
  type SourceLine,
  type Step,
  type StepRecord,
  selectionWith,
  type TraceStep,
  traceStep,
  type WeighedLine,
} from 'nappe';
import { blockAt, groupOf } from './names/groups.ts';
import type { Analysis } from './project.ts';

/** A formula as it ran under one choice of each. */
export interface Ran {
  readonly formula: Formula;
  readonly selection: Selection;
  /** Choices that are not at their first value, as words for a cook; empty where all are. */
  readonly with: string;
  readonly run: Run;
}

/** Where a line stands in the resolved formula; `component` null for headers and file-level blocks that are no components. */
export interface Standing {
  readonly formula: Formula;
  readonly component: Component | null;
  /** The line's number in its block. */
  readonly index: number;
}

export function standingOf({ file, unit, project, path }: Analysis, line: number): Standing | null {
  const block = blockAt(file, line);
  const { head } = groupOf(file, block);
  const startsAt = (id: string, first: number): boolean => unit.blockLines.get(id) === first;
  const formula = head
    ? unit.formulas.find(({ id }) => startsAt(id, head.first))
    : project.workspace.bases(path).find(({ id }) => startsAt(id, block.first));
  if (!formula) return null;
  const all = formula.assembly ? [...formula.components, formula.assembly] : formula.components;
  return { formula, component: all.find(({ id }) => startsAt(id, block.first)) ?? null, index: line - block.first };
}

/** The formula of the group a line stands in. */
export const formulaAt = (analysis: Analysis, line: number): Formula | null => standingOf(analysis, line)?.formula ?? null;

const ran = new WeakMap<Formula, Map<string, Ran>>();

/** The formula run under the values given, the other choices at their first. Null where a line of it breaks the run. */
export function runOf(formula: Formula, values: readonly string[]): Ran {
  return runUnder(formula, selectionWith(formula, values).selection);
}

export function runUnder(formula: Formula, selection: Selection): Ran {
  const known = ran.get(formula) ?? new Map<string, Ran>();
  ran.set(formula, known);
  const key = JSON.stringify(selection);
  let found = known.get(key);
  if (!found) {
    found = { formula, selection, with: withWords(formula, selection), run: runFormula(formula, selection) };
    known.set(key, found);
  }
  return found;
}

/** As asked for, or the first combination in which the conditions hold. */
export function runWhere(formula: Formula, values: readonly string[], conditions: readonly (Condition | null)[]): Ran {
  const asked = runOf(formula, values);
  const all = (selection: Selection) => conditions.every((condition) => holds(condition, selection));
  if (all(asked.selection)) return asked;
  const other = combinations(formula.choices).find(all);
  return other ? runUnder(formula, other) : asked;
}

const withWords = ({ choices }: Formula, selection: Selection): string =>
  choices
    .flatMap(({ name, values }) => (selection[name] !== undefined && selection[name] !== values[0] ? [selection[name]] : []))
    .join(', ');

export interface StepState {
  readonly ran: Ran;
  readonly step: Step;
  readonly record: StepRecord;
  readonly trace: TraceStep;
}

/** What the run recorded for a step's line; null where no combination has it or it did not run. */
export function stepAt(analysis: Analysis, line: number): StepState | null {
  const standing = standingOf(analysis, line);
  const step = standing?.component?.steps.find(({ place }) => place.line === standing.index);
  if (!standing?.component || !step) return null;
  const ran = runWhere(standing.formula, analysis.settings.choices, [standing.component.condition, step.condition]);
  return stateIn(ran, step);
}

export function stateIn(ran: Ran, step: Step): StepState | null {
  const { run } = ran;
  const all = run.records.filter((one) => one.step === step);
  const record = all.find((one) => run.blockOf.get(one)?.batchOf === null) ?? all[0];
  return record ? { ran, step, record, trace: traceStep(run, record, nowhere) } : null;
}

export interface LineState {
  readonly ran: Ran;
  readonly line: SourceLine;
  readonly component: Component;
  /** Null where the line is not there, or could not be weighed. */
  readonly weighed: WeighedLine | null;
  readonly block: BlockRun | null;
}

/** What an ingredient line weighs. */
export function weighedAt(analysis: Analysis, number: number): LineState | null {
  const standing = standingOf(analysis, number);
  const line = standing?.component?.lines.find(({ place }) => place.line === standing.index);
  if (!standing?.component || !line) return null;
  const ran = runWhere(standing.formula, analysis.settings.choices, [standing.component.condition, line.condition]);
  return weighedIn(ran, standing.component, line);
}

export function weighedIn(ran: Ran, component: Component, line: SourceLine): LineState {
  const block = blockOf(ran.run, component);
  return { ran, line, component, block, weighed: block?.lines.find((one) => one.line === line) ?? null };
}

/** The block's own run, not that of a batch for another. */
export const blockOf = (run: Run, component: Component): BlockRun | null =>
  run.blocks.find((block) => block.component === component && block.batchOf === null) ??
  run.blocks.find((block) => block.component === component) ??
  null;

/** Files and lines of the trace are not looked at. */
const nowhere = { fileOf: () => '', lineOf: () => 0 };
