/** Reads lengths joined by `x`, and times of day. */

import type { NumberNode } from '../tree.ts';
import { unitOf } from '../vocabulary/index.ts';
import { digit, flagsAt } from './characters.ts';
import { type End, readEnd } from './ends.ts';
import { readNumber, startsNumber } from './numbers.ts';
import type { Dimensions, Measure } from './payloads.ts';
import { blame, insertFix, pushToken, type Scan, skipSpaces } from './scan.ts';
import * as token from './tokens.ts';

/** `16 x 3 cm`, `9x3 cm`; -1 where no `x` and number follow. */
export function readDimensions(scan: Scan, first: End): number {
  const parts = [first];
  for (;;) {
    const next = afterTimes(scan, parts[parts.length - 1]!.end);
    if (next < 0) break;
    parts.push(readEnd(scan, readNumber(scan, next)!));
  }
  if (parts.length === 1) return -1;
  const last = parts[parts.length - 1]!;
  const span = { start: first.start, end: last.end };
  let unit = last.unit ?? first.unit;
  if (unit === null) blame(scan, span, 'Lengths need a unit: `mm` or `cm`.', [insertFix('Add cm', last.end, ' cm')]);
  else if (unit.kind !== 'length') blame(scan, span, '`x` joins lengths, in `mm` or `cm`.');
  if (unit?.kind !== 'length') unit = unitOf('cm')!;
  const lengths = parts.map((part) => part.value * (part.unit?.kind === 'length' ? part.unit : unit).factor);
  pushToken(scan, token.DimensionsToken, span.start, span.end, { kind: 'dimensions', lengths, ...span } satisfies Dimensions);
  return last.end;
}

function afterTimes(scan: Scan, from: number): number {
  const at = skipSpaces(scan.text, from, scan.end);
  if (at >= scan.end || !'xX×'.includes(scan.text[at]!)) return -1;
  const next = skipSpaces(scan.text, at + 1, scan.end);
  return startsNumber(scan, next) ? next : -1;
}

/** `18:30`; -1 where it is none. */
export function readClock(scan: Scan, number: NumberNode): number {
  const { text } = scan;
  const { start, end } = number;
  if (text.charCodeAt(end) !== 58 || end - start > 2 || number.value > 23) return -1;
  const stop = end + 3;
  if (stop > scan.end || !isSixty(text.slice(end + 1, stop))) return -1;
  if (stop < scan.end && (flagsAt(text, stop) & digit) !== 0) return -1;
  const clock: Measure = { kind: 'clock', text: text.slice(start, stop), quoted: false, start, end: stop };
  pushToken(scan, token.ClockToken, start, stop, clock);
  return stop;
}

function isSixty(minutes: string): boolean {
  return [...minutes].every((character) => character >= '0' && character <= '9') && Number(minutes) < 60;
}
