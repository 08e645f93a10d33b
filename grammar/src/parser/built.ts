/** What a clause is built into: its node, and the use of its word that the verb must take. */

import type { Scan } from '../scanner/scan.ts';
import type { Clause, Name, Operand, Span } from '../tree.ts';
import { type ClauseUse, levels, type VerbRow } from '../vocabulary/index.ts';
import type { RawClause } from './drafts.ts';

/** A clause with the use of its word that the verb must take. */
export interface Built {
  readonly use: ClauseUse;
  readonly clause: Clause;
  /** What `in` is followed by, where it is a part of a name. */
  readonly operand?: Operand | null;
}

/** Builds one clause word's clause; null where nothing can be made of it, which is then blamed. */
export type Builder = (scan: Scan, raw: RawClause, verb: VerbRow) => Built | null;

export type Part = Clause extends infer One ? (One extends Clause ? Omit<One, keyof Span | 'wordSpan'> : never) : never;

/** Puts the places of the raw clause to its meaning. */
export function built(raw: RawClause, use: ClauseUse, part: Part): Built {
  // Filled in rather than spread into a new object: this is one of the busiest places of parsing.
  const clause = part as { -readonly [Key in keyof Clause]: Clause[Key] };
  clause.wordSpan = raw.wordSpan;
  clause.start = raw.start;
  clause.end = raw.end;
  return { use, clause: clause as Clause };
}

/** `low`, `medium`, `high`, also as `low heat` and `high speed`. */
export function levelOf(name: Name): (typeof levels)[number] | undefined {
  const [first, second, third] = name.key.split(' ');
  if (third !== undefined || (second !== undefined && second !== 'heat' && second !== 'speed')) return undefined;
  return levels.find((level) => level === first);
}
