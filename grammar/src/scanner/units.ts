/** Reads a unit after a number, in any spelling and case, with or without a space. */

import { type UnitRow, unitOf } from '../vocabulary/index.ts';
import { digit, flagsAt, joiner, letter } from './characters.ts';
import { isDash } from './numbers.ts';
import { blame, replaceFix, type Scan, skipSpaces } from './scan.ts';

export interface UnitRead {
  readonly row: UnitRow;
  readonly end: number;
}

/** Words that begin a spelling of two words. */
const openers = new Set(['deg', 'degs', 'degree', 'degrees', 'fl', 'fluid']);
const longestUnit = 11;

/** The unit at `at` or after spaces, or null where the next word is none. */
export function readUnit(scan: Scan, at: number): UnitRead | null {
  const { text, end } = scan;
  const from = skipSpaces(text, at, end);
  if (from >= end) return null;
  const code = text.charCodeAt(from);
  if (code > 127 || code === 37) {
    const sign = readSign(scan, from, code);
    if (sign !== null) return sign;
  }
  const stop = lettersEnd(scan, from);
  if (stop === from || stop - from > longestUnit) return null;
  const word = text.slice(from, stop);
  const row = unitOf(word);
  if (row !== undefined) return endsThere(scan, stop, row) ? { row, end: withPoint(scan, stop, row) } : null;
  return openers.has(word.toLowerCase()) ? readTwoWords(scan, word.toLowerCase(), stop) : null;
}

/** `%`, `°C`, `° C`, `ºC`, `℃`; a lone `°` is refused. */
function readSign(scan: Scan, from: number, code: number): UnitRead | null {
  if (code === 37) return { row: unitOf('%')!, end: from + 1 };
  if (code === 0x2103 || code === 0x2109) return { row: unitOf(code === 0x2103 ? '°c' : '°f')!, end: from + 1 };
  if (code !== 0xb0 && code !== 0xba && code !== 0x2da) return null;
  const at = skipSpaces(scan.text, from + 1, scan.end);
  const stop = lettersEnd(scan, at);
  const word = scan.text.slice(at, stop).toLowerCase();
  const row = unitOf(`°${word}`) ?? unitOf(word);
  if (row !== undefined && (row.kind === 'temperature' || row.kind === 'brix' || row.kind === 'bloom')) return { row, end: stop };
  const span = { start: from, end: from + 1 };
  const fixes = [replaceFix('Write °C', span, '°C'), replaceFix('Write °F', span, '°F')];
  blame(scan, span, 'A temperature says which degrees it means: `°C` or `°F`.', fixes);
  return { row: unitOf('°c')!, end: from + 1 };
}

function readTwoWords(scan: Scan, first: string, firstEnd: number): UnitRead | null {
  const afterPoint = scan.text.charCodeAt(firstEnd) === 46 ? firstEnd + 1 : firstEnd;
  const from = skipSpaces(scan.text, afterPoint, scan.end);
  const stop = lettersEnd(scan, from);
  if (stop === from || stop - from > longestUnit) return null;
  const opener = first === 'degs' ? 'deg' : first;
  const row = unitOf(`${opener} ${scan.text.slice(from, stop).toLowerCase()}`);
  return row !== undefined && endsThere(scan, stop, row) ? { row, end: withPoint(scan, stop, row) } : null;
}

/** A unit is a word of its own: `5 l` but not `5 l-shaped`; only `1h30` goes on with a digit. */
function endsThere(scan: Scan, stop: number, row: UnitRow): boolean {
  if (stop >= scan.end) return true;
  const flags = flagsAt(scan.text, stop);
  if ((flags & (digit | joiner | letter)) === 0) return true;
  if ((flags & digit) !== 0) return row.kind === 'duration';
  if (!isDash(scan.text.charCodeAt(stop))) return false;
  return stop + 1 >= scan.end || (flagsAt(scan.text, stop + 1) & letter) === 0;
}

/** `oz.`, `tbsp.`: the point belongs to the abbreviation. */
function withPoint(scan: Scan, stop: number, row: UnitRow): number {
  const abbreviates = row.kind === 'mass' || row.kind === 'volume' || row.kind === 'duration' || row.kind === 'piece';
  if (!abbreviates || stop >= scan.end || scan.text.charCodeAt(stop) !== 46) return stop;
  return stop + 1 === scan.end || ' ,)'.includes(scan.text[stop + 1]!) ? stop + 1 : stop;
}

function lettersEnd(scan: Scan, from: number): number {
  let at = from;
  while (at < scan.end && (flagsAt(scan.text, at) & letter) !== 0) at++;
  return at;
}
