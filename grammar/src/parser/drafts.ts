/** What the parser's rules hand on: the parts of a line as written, before their meaning is checked. */

import type { Measure } from '../scanner/payloads.ts';
import type { Guard, Name, Override, Span } from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';

/** A number with its unit and what stands in parentheses after it; the kinds are not compared yet. */
export interface Measured extends Span {
  readonly base: Measure;
  readonly overrides: readonly Override<Measure>[];
}

/** An operand as written: a name, a part of a name, or a bare measure. */
export interface RawOperand extends Span {
  readonly measured: Measured | null;
  /** `half` or another word before `of`; `rest`. */
  readonly part: Name | 'rest' | null;
  readonly name: Name | null;
  /** `60 xx of cream`: what stands where a unit should. */
  readonly unit: Name | null;
  /** `60 g butter`: a measure and a name without `of` between them. */
  readonly ofMissing: boolean;
}

/** `12 glasses of 100 ml` as written. */
export interface RawYield extends Span {
  readonly amount: Measure;
  readonly noun: Name | null;
  readonly size: Measure | null;
  /** The measure that has parentheses, which no yield takes. */
  readonly varied: Measured | null;
}

/** `in 4 additions: whisk, spatula` as written. */
export interface RawCounted extends Span {
  readonly measured: Measured;
  readonly noun: Name | null;
  /** `in 60 g of butter`: what stands after `of`. */
  readonly of: Name | null;
  readonly items: readonly Name[];
}

/** What stands after `until`. */
export interface RawSign extends Span {
  readonly name: Name | null;
  readonly measured: Measured | null;
  /** A connective or a second part, which asks for quotes. */
  readonly odd: Span | null;
}

/** `bare` for a measure whose clause word was forgotten. */
export type RawClauseWord =
  | 'bare'
  | 'to'
  | 'at'
  | 'for'
  | 'until'
  | 'into'
  | 'over'
  | 'in'
  | 'with'
  | 'while'
  | 'on'
  | 'using'
  | 'losing'
  | 'as';

export interface RawClause {
  readonly word: RawClauseWord;
  readonly wordSpan: Span;
  name: Name | null;
  measured: Measured | null;
  yield: RawYield | null;
  counted: RawCounted | null;
  sign: RawSign | null;
  operands: readonly RawOperand[];
  readonly start: number;
  end: number;
}

/** An attribute of an ingredient line as written. */
export interface RawAttribute extends Span {
  readonly word: 'is' | 'as' | 'pH' | null;
  readonly name: Name | null;
  readonly measured: Measured | null;
}

export interface RawEntry extends Span {
  readonly path: Name | null;
  readonly yield: RawYield | null;
  readonly values: readonly Name[];
}

export interface RawTaken {
  readonly name: Name;
  readonly as: Name | null;
}

/** What the rules fill in while they read a line; parts read before an error stay. The next line clears it. */
export interface Draft {
  name: Name | null;
  second: Name | null;
  names: readonly Name[];
  measured: Measured | null;
  /** Further measures, each with the word after it (`20 cm wide`). */
  readonly more: { readonly measured: Measured; readonly word: Name | null }[];
  readonly operands: RawOperand[];
  readonly clauses: RawClause[];
  readonly attributes: RawAttribute[];
  readonly entries: RawEntry[];
  readonly taken: RawTaken[];
  guard: Guard | null;
  /** Something stands after the guard, which should have ended the line. */
  guardInside: boolean;
  yield: RawYield | null;
  unit: UnitRow | null;
  clock: Measure | null;
}

/** Makes a draft ready for the next line: one is used for all, since a line is built before the next is read. */
export function clearDraft(draft: Draft): void {
  draft.name = draft.second = null;
  draft.names = [];
  draft.measured = null;
  draft.more.length = draft.operands.length = draft.clauses.length = 0;
  draft.attributes.length = draft.entries.length = draft.taken.length = 0;
  draft.guard = null;
  draft.guardInside = false;
  draft.yield = draft.unit = draft.clock = null;
}

export function emptyDraft(): Draft {
  return {
    name: null,
    second: null,
    names: [],
    measured: null,
    more: [],
    operands: [],
    clauses: [],
    attributes: [],
    entries: [],
    taken: [],
    guard: null,
    guardInside: false,
    yield: null,
    unit: null,
    clock: null,
  };
}
