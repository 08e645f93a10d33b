/** Reading a step's clauses under one selection: overrides picked, readings in °C. */
import {
  type Brix,
  type Clause,
  type ClauseWord,
  type Duration,
  type Name,
  nameKey,
  type Quantity,
  type Reading,
  type StepLine,
  type Varying,
} from 'nappe-grammar';
import { type Interval, interval } from '../quantities/interval.ts';
import { celsiusOf } from '../quantities/units.ts';
import type { Selection } from '../resolve/model.ts';

/** The chosen values by their keys: values are unique in a formula, so a value alone names its choice. */
export type Chosen = ReadonlySet<string>;

const chosen = new WeakMap<Selection, Chosen>();

export function chosenOf(selection: Selection): Chosen {
  let keys = chosen.get(selection);
  if (!keys) {
    keys = new Set(Object.values(selection).map(nameKey));
    chosen.set(selection, keys);
  }
  return keys;
}

export function pickVarying<T>(varying: Varying<T>, chosen: Chosen): T {
  for (const override of varying.overrides) if (chosen.has(override.value.key)) return override.then;
  return varying.base;
}

type ClauseOf<W extends ClauseWord> = Extract<Clause, { word: W }>;

export function clauseOf<W extends ClauseWord>(node: StepLine, word: W): ClauseOf<W> | null {
  for (const clause of node.clauses) if (clause.word === word) return clause as ClauseOf<W>;
  return null;
}

export type Target =
  | { readonly is: 'celsius'; readonly written: Interval; readonly ranged: boolean }
  | { readonly is: 'peak'; readonly low: PeakWord; readonly high: PeakWord }
  | { readonly is: 'mass'; readonly quantity: Quantity }
  | { readonly is: 'length' }
  | { readonly is: 'brix'; readonly brix: Interval };

type PeakWord = 'very soft' | 'soft' | 'medium' | 'stiff';

/** What `to` says ends the step. */
export function targetOf(node: StepLine, chosen: Chosen): Target | null {
  const clause = clauseOf(node, 'to');
  if (!clause) return null;
  const target = pickVarying(clause.target, chosen);
  switch (target.kind) {
    case 'temperature':
      return { is: 'celsius', written: celsiusOf(target), ranged: target.ranged };
    case 'peak':
      return { is: 'peak', low: target.low, high: target.high };
    case 'quantity':
      return { is: 'mass', quantity: target };
    case 'length':
      return { is: 'length' };
    case 'brix':
      return { is: 'brix', brix: interval(target.low, target.high) };
  }
}

/** The reading after `to`, where it is a temperature. */
export function toCelsiusOf(node: StepLine, chosen: Chosen): { written: Interval; ranged: boolean } | null {
  const target = targetOf(node, chosen);
  return target?.is === 'celsius' ? target : null;
}

export function atOf(node: StepLine, chosen: Chosen): { written: Interval; ranged: boolean } | null {
  const clause = clauseOf(node, 'at');
  if (!clause) return null;
  const reading = pickVarying(clause.target, chosen);
  return { written: celsiusOf(reading), ranged: reading.ranged };
}

export function durationOf(node: StepLine, chosen: Chosen): Interval | null {
  const clause = clauseOf(node, 'for');
  if (!clause) return null;
  const duration: Duration = pickVarying(clause.target, chosen);
  return interval(duration.low, duration.high);
}

export function checkOf(node: StepLine, chosen: Chosen): { celsius: Interval; ranged: boolean } | { brix: Interval } | null {
  if (!node.check) return null;
  const check: Reading | Brix = pickVarying(node.check, chosen);
  return check.kind === 'temperature'
    ? { celsius: celsiusOf(check), ranged: check.ranged }
    : { brix: interval(check.low, check.high) };
}

export const signOf = (node: StepLine): string | null => clauseOf(node, 'until')?.sign.text ?? null;

/** Share lost, 0–1, by `losing N %`. */
export function losingOf(node: StepLine, chosen: Chosen): Interval | null {
  const clause = clauseOf(node, 'losing');
  if (!clause) return null;
  const percent = pickVarying(clause.percent, chosen);
  return interval(percent.low / 100, percent.high / 100);
}

export function mediumOf(node: StepLine): string | null {
  const clause = clauseOf(node, 'in');
  return clause && 'kind' in clause.target && clause.target.kind === 'medium' ? clause.target.medium : null;
}

export function additionsOf(node: StepLine, chosen: Chosen): { count: Interval; tools: readonly string[] } | null {
  const clause = clauseOf(node, 'in');
  if (!clause || !('kind' in clause.target) || clause.target.kind !== 'additions') return null;
  const count = pickVarying(clause.target.count, chosen);
  return { count: interval(count.low, count.high), tools: clause.target.tools.map((tool) => tool.text) };
}

/** The names after `into`, `over` and `in`, which may be matter or vessels. */
export function partyOf(node: StepLine): { word: 'into' | 'over' | 'in'; name: Name } | null {
  for (const word of ['into', 'over', 'in'] as const) {
    const clause = clauseOf(node, word);
    if (clause && 'target' in clause && !('kind' in clause.target)) return { word, name: clause.target };
  }
  return null;
}
