/** Writes a measure canonically: numbers as written, `-` or `..` between, one space, the unit's own word. */

import { flagsAt, fractionValue, letter } from '../scanner/characters.ts';
import { isDash, readNumber, startsNumber } from '../scanner/numbers.ts';
import { type Scan, skipSpaces, startScan } from '../scanner/scan.ts';
import { readUnit } from '../scanner/units.ts';
import { type UnitRow, unitOf } from '../vocabulary/index.ts';

/** A number and its unit; durations may hold several. */
interface Part {
  readonly number: string;
  readonly negative: boolean;
  readonly unit: UnitRow | null;
}

/** The measure between two places of an error-free line. */
export function printMeasure(text: string, start: number, end: number): string {
  const scan = startScan(text, end);
  if (!startsNumber(scan, start)) {
    const stop = wordStop(scan, start);
    const from = skipSpaces(text, stop, end);
    return `${text.slice(start, stop).toLowerCase()}${from < end ? ` ${printMeasure(text, from, end)}` : ''}`;
  }
  const sides: Part[][] = [[]];
  let times = false;
  let tail = '';
  let at = start;
  while (at < end) {
    if (startsNumber(scan, at) && (sides.at(-1)!.length === 0 || !isDash(text.charCodeAt(at))))
      at = readPart(scan, at, sides.at(-1)!);
    else {
      const rest = restOf(scan, at);
      if (rest.kind === 'tail') {
        tail = rest.text;
        break;
      }
      times ||= rest.kind === 'times';
      sides.push([]);
      at = rest.end;
    }
    at = skipSpaces(text, at, end);
  }
  return joinSides(sides, times) + tail;
}

function readPart(scan: Scan, at: number, side: Part[]): number {
  const number = readNumber(scan, at)!;
  const unit = readUnit(scan, number.end);
  const written = numberText(scan.text.slice(number.start, number.end));
  // `1h30` says minutes without the word.
  const implied = unit === null && side.length > 0 ? (unitOf('min') ?? null) : null;
  side.push({ number: written, negative: number.value < 0, unit: unit?.row ?? implied });
  return unit?.end ?? number.end;
}

type Rest = { readonly kind: 'range' | 'times'; readonly end: number } | { readonly kind: 'tail'; readonly text: string };

/** What stands between or after numbers: a range, an `x`, `/ml` or `each`. */
function restOf(scan: Scan, at: number): Rest {
  const { text, end } = scan;
  const code = text.charCodeAt(at);
  if (isDash(code) || code === 0x2026) return { kind: 'range', end: at + 1 };
  if (code === 46) return { kind: 'range', end: text.charCodeAt(at + 2) === 46 ? at + 3 : at + 2 };
  if ('xX×'.includes(text[at]!) && startsNumber(scan, skipSpaces(text, at + 1, end))) return { kind: 'times', end: at + 1 };
  if (code === 47) return { kind: 'tail', text: `/${readUnit(scan, at + 1)?.row.word ?? ''}` };
  return { kind: 'tail', text: ` ${text.slice(at, end).toLowerCase()}` };
}

/** The unit stands once where all sides have the same. */
function joinSides(sides: readonly Part[][], times: boolean): string {
  const last = sides.at(-1)!.at(-1)!.unit;
  const simple = sides.every((side) => side.length === 1 && (side[0]!.unit === last || side[0]!.unit === null));
  const first = sides[0]!.at(-1)!.unit;
  const unit = last ?? first;
  const negative = sides.some((side) => side.some((part) => part.negative));
  const between = times ? ' x ' : negative ? '..' : '-';
  if (simple || sides.every((side) => side.length === 1 && (side[0]!.unit ?? unit) === unit)) {
    return sides.map((side) => side[0]!.number).join(between) + unitText(unit);
  }
  return sides.map((side) => side.map((part) => part.number + unitText(part.unit)).join(' ')).join(between);
}

function unitText(unit: UnitRow | null): string {
  return unit === null ? '' : ` ${unit.word}`;
}

/** `.5` as `0.5`, `1 ½` as `1½`, `−18` as `-18`, `+4` as `4`. */
function numberText(written: string): string {
  const sign = isDash(written.charCodeAt(0)) ? '-' : '';
  const bare = sign !== '' || written.startsWith('+') ? written.slice(1) : written;
  const words = bare.split(/\s+/u).map((word) => word.replace('\u2044', '/'));
  const joined = fractionValue(words.at(-1)!.slice(-1)) === undefined ? words.join(' ') : words.join('');
  return sign + (joined.startsWith('.') ? `0${joined}` : joined);
}

function wordStop(scan: Scan, start: number): number {
  let at = start;
  while (at < scan.end && (flagsAt(scan.text, at) & letter) !== 0) at++;
  return at;
}
