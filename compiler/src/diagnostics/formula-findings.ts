/** Everything wrong with one formula over its combinations, in block-relative places; remembered by the formula's identity. */
import { nameKey } from 'nappe-grammar';
import { allChecked, combinations, countCombinations, fixedBy, holds } from '../resolve/choices.ts';
import type { Choice, Formula, Place, RawFinding, Related, Selection } from '../resolve/model.ts';
import { percentFindings } from '../resolve/percentages.ts';
import { once } from '../run/once.ts';
import { runFormula } from '../run/run.ts';
import type { Run } from '../run/trace.ts';
import { excusedNames, hiddenBehind, isExcused, notDone, restsOnUndone, type Unsure, unsureOf } from './cascades.ts';
import { type Combined, combine, type Worded } from './combine.ts';
import { ruleOf, rules } from './registry.ts';
import type { Figures, Report, Rule } from './rule.ts';

/** Something of ours that broke, to be reported to us and not to the cook: what to send, and which formula met it. */
export interface Fault {
  /** The rule, or `run`. */
  readonly part: string;
  readonly formula: string;
  readonly message: string;
}

export interface FormulaFindings {
  readonly findings: readonly Combined[];
  readonly faults: readonly Fault[];
}

export interface Scope {
  /** Values that are fixed by name; the other choices in every combination. */
  readonly values: readonly string[];
  /** The formula stands for a component by itself, which nobody serves. */
  readonly bare: boolean;
}

const remembered = new WeakMap<Formula, Map<string, FormulaFindings>>();

export function findingsOf(formula: Formula, scope: Scope): FormulaFindings {
  const key = scope.values.map(nameKey).join(',');
  const known = remembered.get(formula) ?? new Map<string, FormulaFindings>();
  remembered.set(formula, known);
  const before = known.get(key);
  if (before) return before;
  const made = found(formula, scope);
  known.set(key, made);
  return made;
}

function found(formula: Formula, { values, bare }: Scope): FormulaFindings {
  const choices = narrowed(formula.choices, values);
  const selections = combinations(choices);
  const faults: Fault[] = [];
  const judges = rules.filter((rule) => rule.check !== undefined && !(bare && rule.served === true));
  const broken = new Set<Rule>();
  const percents = selections.map((selection) => (bare ? [] : percentFindings(formula, selection)));
  const unsure = unsureOf(formula, percents.flat());
  const all = selections.map((selection, i) =>
    underOne(formula, selection, percents[i] ?? [], { judges, broken, faults, unsure }),
  );
  const tooMany = countCombinations(choices) > allChecked ? [sampledNotice(formula, choices, selections)] : [];
  return { findings: combine([...all.map((findings) => [...findings, ...tooMany])], selections), faults };
}

/** Choices with the fixed ones at their one value. */
function narrowed(choices: readonly Choice[], values: readonly string[]): readonly Choice[] {
  const fixed = fixedBy(choices, values).values;
  return choices.map((choice) => (fixed[choice.name] === undefined ? choice : { ...choice, values: [fixed[choice.name] ?? ''] }));
}

interface Judging {
  readonly judges: readonly Rule[];
  /** Rules that broke once are left out from then on. */
  readonly broken: Set<Rule>;
  readonly faults: Fault[];
  readonly unsure: Unsure;
}

function underOne(formula: Formula, selection: Selection, percents: readonly RawFinding[], judging: Judging): readonly Worded[] {
  const worded: Worded[] = [];
  const put = (finding: RawFinding): void => {
    const made = word(finding, formula, judging.faults);
    if (made) worded.push(made);
  };
  for (const finding of formula.findings)
    if ((finding.conditions ?? []).every((condition) => holds(condition, selection))) put(finding);
  percents.forEach(put);
  const run = guarded(() => runFormula(formula, selection), 'run', formula, judging.faults);
  if (run === null) return worded;
  const takenAt = once(() => takersOf(run));
  const located = (finding: RawFinding): RawFinding => ({
    ...finding,
    related: [...(finding.related ?? []), ...takenAt()(finding.place)],
  });
  const excused = excusedNames(run.findings, run);
  for (const finding of run.findings)
    if (!hiddenBehind(finding, judging.unsure) && !isExcused(finding, excused)) put(located(finding));
  const failed = notDone(run);
  const without = failed.length > 0 ? unsureOf(formula, failed) : judging.unsure;
  let raised: RawFinding[] = [];
  let code = '';
  const report: Report = (finding) => void raised.push({ ...finding, code });
  for (const rule of judging.judges) {
    if (judging.broken.has(rule)) continue;
    code = rule.code;
    try {
      rule.check?.(run, report);
      for (const finding of raised)
        if (!judging.unsure.clouds(finding.place) && !without.clouds(finding.place) && !restsOnUndone(finding, run.findings))
          put(located(finding));
    } catch (error) {
      judging.broken.add(rule);
      tell(error, code, formula, judging.faults);
    }
    if (raised.length > 0) raised = [];
  }
  return worded;
}

/** Runs a part of ours; what it throws costs that part alone and is reported once. */
function guarded<T>(part: () => T, name: string, formula: Formula, faults: Fault[]): T | null {
  try {
    return part();
  } catch (error) {
    tell(error, name, formula, faults);
    return null;
  }
}

function tell(error: unknown, part: string, formula: Formula, faults: Fault[]): void {
  const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
  if (!faults.some((fault) => fault.part === part)) faults.push({ part, formula: formula.name, message });
}

/** A finding in the words of its code's rule. */
export function word(finding: RawFinding, formula: { readonly name: string }, faults: Fault[]): Worded | null {
  const rule = ruleOf(finding.code);
  if (!rule) {
    if (!faults.some((fault) => fault.part === finding.code))
      faults.push({ part: finding.code, formula: formula.name, message: 'no rule has this code' });
    return null;
  }
  try {
    return {
      code: finding.code,
      severity: finding.severity ?? rule.severities[0],
      place: finding.place,
      message: rule.message(finding.numbers),
      numbers: figuresOf(finding.numbers),
      related: finding.related ?? [],
      fixes: finding.fixes ?? [],
    };
  } catch (error) {
    faults.push({
      part: finding.code,
      formula: formula.name,
      message: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
    return null;
  }
}

/** The figures that decided; the grammar hands its sentence over as one, which the message already is. */
function figuresOf({ message: _, ...figures }: Figures): Figures {
  return figures;
}

/** For a place in a taken component: the lines that take it, innermost first. */
function takersOf(run: Run): (place: Place) => readonly Related[] {
  const takers = new Map<string, Place>();
  for (const { component, batchOf } of run.blocks)
    if (batchOf && !takers.has(component.id)) takers.set(component.id, batchOf.place);
  return (place) => {
    const related: Related[] = [];
    let taker = takers.get(place.block);
    while (taker !== undefined && related.length < 8) {
      related.push({ place: taker, message: 'taken here' });
      taker = takers.get(taker.block);
    }
    return related;
  };
}

function sampledNotice(formula: Formula, choices: readonly Choice[], selections: readonly Selection[]): Worded {
  const numbers = { combinations: countCombinations(choices), checked: selections.length, pairs: selections.length < 1024 };
  const rule = ruleOf('too-many-combinations');
  return {
    code: 'too-many-combinations',
    severity: 'notice',
    place: formula.choices[0]?.place ?? formula.place,
    message: rule?.message(numbers) ?? '',
    numbers,
    related: [],
    fixes: [],
  };
}
