/** The state of scanning one line: where it may read, the tokens so far and the first thing found wrong. */

import type { TokenType } from 'chevrotain';
import type { LineFix, Problem, Span } from '../tree.ts';
import { flagsAt, space } from './characters.ts';
import type { Token } from './tokens.ts';

export interface Scan {
  readonly text: string;
  /** Content ends here: before trailing space and comment. */
  readonly end: number;
  readonly tokens: Token[];
  /** One bad line costs one diagnostic: the first one found stays. */
  problem: Problem | null;
  /** `overnight` is a time here, as in a step; elsewhere it is a word like any other. */
  timed: boolean;
}

export function startScan(text: string, end: number): Scan {
  return { text, end, tokens: [], problem: null, timed: false };
}

export function pushToken(scan: Scan, tokenType: TokenType, start: number, end: number, payload?: unknown): void {
  scan.tokens.push({
    image: '',
    startOffset: start,
    endOffset: end,
    tokenTypeIdx: tokenType.tokenTypeIdx!,
    tokenType,
    payload,
  });
}

export function skipSpaces(text: string, at: number, end: number): number {
  let next = at;
  while (next < end && (text.charCodeAt(next) === 32 || (flagsAt(text, next) & space) !== 0)) next++;
  return next;
}

export function blame(
  scan: Scan,
  span: Span,
  message: string,
  fixes: readonly LineFix[] = [],
  code: Problem['code'] = 'syntax',
): void {
  scan.problem ??= { code, message, start: span.start, end: span.end, fixes };
}

export function replaceFix(title: string, span: Span, text: string): LineFix {
  return { title, edits: [{ start: span.start, end: span.end, text }] };
}

export function insertFix(title: string, at: number, text: string): LineFix {
  return { title, edits: [{ start: at, end: at, text }] };
}

/** A piece of the line as a message shows it: in backticks, cut where it is long. */
export function shown(text: string): string {
  return `\`${text.length > 40 ? `${text.slice(0, 39)}…` : text}\``;
}
