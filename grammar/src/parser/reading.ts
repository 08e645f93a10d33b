/** One line under way: its text, its tokens, and what every kind of line has in common. */

import { blame, type Scan, startScan } from '../scanner/scan.ts';
import type { Guard, Problem, Span, Text } from '../tree.ts';
import type { Draft } from './drafts.ts';
import { problemOf } from './expectations.ts';
import { LineParser } from './line-parser.ts';

export interface LineReading {
  readonly text: string;
  /** The content, without indentation, trailing space and comment. */
  readonly span: Span;
  readonly comment: Text | null;
  readonly scan: Scan;
}

/** The part of every line's node that does not depend on its kind. */
export interface Base {
  readonly text: string;
  readonly span: Span;
  readonly comment: Text | null;
  readonly problems: readonly Problem[];
}

export function startReading(text: string, span: Span, comment: Text | null): LineReading {
  return { text, span, comment, scan: startScan(text, span.end) };
}

export function baseOf(reading: LineReading): Base {
  const { text, span, comment, scan } = reading;
  return { text, span, comment, problems: scan.problem === null ? noProblems : [scan.problem] };
}

const noProblems: readonly Problem[] = [];

/** Any rule of the parser that reads a whole line. */
export type LineRule = Exclude<
  { [Key in keyof LineParser]: LineParser[Key] extends () => void ? Key : never }[keyof LineParser],
  'performSelfAnalysis' | 'reset'
>;

// Made on first use: a parser's self-analysis is the dearest part of starting up.
let strict: LineParser | undefined;
let recovering: LineParser | undefined;

/**
 * Runs a rule over the tokens scanned so far; the first thing found wrong becomes the line's problem. Only a line that cannot be read
 * needs the parser that goes on past an error, and its analysis of what may follow what takes as long as all the rest.
 */
export function run(reading: LineReading, rule: LineRule): Draft {
  strict ??= new LineParser();
  let parser = strict;
  const { scan } = reading;
  parser.start(scan.tokens);
  parser[rule]();
  if (parser.failed) {
    recovering ??= new LineParser({ recovers: true });
    parser = recovering;
    parser.start(scan.tokens);
    parser[rule]();
  }
  if (scan.problem === null) {
    const [error] = parser.failed ? parser.errors : [];
    scan.problem = error === undefined ? parser.problem : problemOf(error, reading.text, reading.span.end);
  }
  return parser.draft;
}

/** Forgets the parsers, one of which an error inside the program may have left half-way. */
export function dropParser(): void {
  strict = undefined;
  recovering = undefined;
}

/** A guard on a line that takes none is refused. */
export function refuseGuard(reading: LineReading, guard: Guard | null, what: string): void {
  if (guard === null) return;
  const fix = { title: `Remove ${guard.word}`, edits: [{ start: guard.start, end: guard.end, text: '' }] };
  blame(reading.scan, guard, `${what} holds for every choice and takes no \`${guard.word}\`.`, [fix]);
}
