/** Reads words: runs that make a name, connectives, and quoted text. */

import { limits } from '../limits.ts';
import type { Duration, Name, Span } from '../tree.ts';
import { nameKey } from '../vocabulary/names.ts';
import { overnight } from '../vocabulary/units.ts';
import { flagsAt, letter, nameFlags, numberFlags } from './characters.ts';
import { blame, insertFix, pushToken, type Scan, shown, skipSpaces } from './scan.ts';
import { connectiveAt, DurationToken, NameToken, RestToken, UnlessToken, WhenToken } from './tokens.ts';

/** The token type of the connective that is the word between two places, if it is one. */
export function connectiveIn(text: string, start: number, end: number): ReturnType<typeof connectiveAt> {
  const length = end - start;
  if (length < 2 || length > 6) return undefined;
  const word = text.slice(start, end);
  const type = connectiveAt(word);
  if (type !== undefined) return type;
  const first = text.charCodeAt(start);
  return first >= 65 && first <= 90 ? connectiveAt(word.toLowerCase()) : undefined;
}

export function wordEnd(text: string, from: number, end: number): number {
  let at = from;
  while (at < end && (flagsAt(text, at) & nameFlags) !== 0) at++;
  return at;
}

/**
 * Reads a run of words from `at`, where a letter stands: pushes the name and, where the run ends in one, the
 * connective. Returns where to go on.
 */
export function readWords(scan: Scan, at: number): number {
  const { text, end } = scan;
  let start = at;
  let runEnd = at;
  let spaced = true;
  for (;;) {
    const stop = wordEnd(text, start, end);
    const type = connectiveIn(text, start, stop) ?? restOf(scan, start, stop);
    if (type !== undefined) {
      if (runEnd > at) pushName(scan, at, runEnd, spaced);
      pushToken(scan, type, start, stop);
      // A choice value may be called overnight.
      if (type === WhenToken || type === UnlessToken) scan.timed = false;
      return stop;
    }
    if (scan.timed && isOvernight(scan, start, stop)) {
      if (runEnd > at) pushName(scan, at, runEnd, spaced);
      pushToken(scan, DurationToken, start, stop, overnightAt({ start, end: stop }));
      return stop;
    }
    if (runEnd > at && (start - runEnd !== 1 || text.charCodeAt(runEnd) !== 32)) spaced = false;
    runEnd = stop;
    start = skipSpaces(text, stop, end);
    if (start < end && start > stop && (flagsAt(text, start) & letter) !== 0) continue;
    pushName(scan, at, runEnd, spaced);
    return runEnd;
  }
}

/** `rest` is a connective only before `of`. */
function restOf(scan: Scan, start: number, stop: number): typeof RestToken | undefined {
  const { text, end } = scan;
  if (stop - start !== 4 || text.slice(start, stop).toLowerCase() !== 'rest') return undefined;
  const next = skipSpaces(text, stop, end);
  const isOf = text.slice(next, next + 2).toLowerCase() === 'of' && wordEnd(text, next, end) === next + 2;
  return isOf ? RestToken : undefined;
}

/** `overnight` where no name goes on after it (`overnight oats`) and no value (`(overnight 12 h)`). */
function isOvernight(scan: Scan, start: number, stop: number): boolean {
  const { text, end } = scan;
  if (stop - start !== 9 || text.slice(start, stop).toLowerCase() !== 'overnight') return false;
  const next = skipSpaces(text, stop, end);
  if (next >= end) return true;
  const flags = flagsAt(text, next);
  if ((flags & letter) !== 0) return connectiveIn(text, next, wordEnd(text, next, end)) !== undefined;
  return (flags & numberFlags) === 0;
}

/** `overnight` as a duration at a place. */
export function overnightAt({ start, end }: Span): Duration {
  return { kind: 'duration', ...overnight, ranged: true, overnight: true, start, end };
}

/** Pushes the words between two places as one name; `spaced` says that single spaces stand between them. */
export function pushName(scan: Scan, start: number, end: number, spaced: boolean): void {
  const written = scan.text.slice(start, end);
  pushToken(scan, NameToken, start, end, makeName(scan, spaced ? written : singleSpaces(written), start, end, false));
}

const closers: Readonly<Record<string, string>> = { '"': '"', '“': '”', '„': '“', '«': '»', '”': '”' };

export function isQuote(character: string): boolean {
  return character in closers;
}

/** Quoted text from the quote at `at` to its closing one, which is asked for where it is missing. */
export function readQuoted(scan: Scan, at: number): number {
  const { text, end } = scan;
  const close = closingQuote(text, at, end);
  const inside = close < 0 ? end : close;
  const stop = close < 0 ? end : close + 1;
  const content = text.slice(at + 1, inside);
  const span = { start: at, end: stop };
  if (close < 0) blame(scan, span, 'The closing quote `"` is missing.', [insertFix('Add the closing quote', end, '"')]);
  else if (content.trim() === '') blame(scan, span, 'Nothing stands between these quotes; write a name or a text there.');
  pushToken(scan, NameToken, at, stop, makeName(scan, content, at, stop, true));
  return stop;
}

/** Where the quote opened at `at` closes, or -1. */
export function closingQuote(text: string, at: number, end: number): number {
  const close = closers[text[at]!]!;
  for (let place = at + 1; place < end; place++) {
    const character = text[place]!;
    if (character === close || character === '"') return place;
  }
  return -1;
}

function makeName(scan: Scan, text: string, start: number, end: number, quoted: boolean): Name {
  if (text.length <= limits.name) return { text, key: nameKey(text), quoted, start, end };
  blame(scan, { start, end }, `A name has at most ${limits.name} characters; ${shown(text)} has ${text.length}.`);
  const cut = text.slice(0, limits.name);
  return { text: cut, key: nameKey(cut), quoted, start, end };
}

function singleSpaces(text: string): string {
  return text
    .split(/\s+/u)
    .filter((word) => word !== '')
    .join(' ');
}
