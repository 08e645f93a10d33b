/** Reads what starts with a number: quantities, temperatures, durations, lengths, shares and plain numbers, and their ranges. */

import type {
  Brix,
  Duration,
  Length,
  LengthUnit,
  NumberNode,
  Numbers,
  Quantity,
  QuantityUnit,
  Reading,
  Span,
  Text,
} from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';
import { unitOf } from '../vocabulary/index.ts';
import { digit, flagsAt } from './characters.ts';
import { isDash, readNumber, startsNumber } from './numbers.ts';
import { blame, insertFix, pushToken, type Scan, shown, skipSpaces } from './scan.ts';
import * as token from './tokens.ts';
import { readUnit } from './units.ts';

/** `16 x 3 cm`: lengths in millimetres, as many as were written. */
export interface Dimensions extends Span {
  readonly kind: 'dimensions';
  readonly lengths: readonly number[];
}

/** A number with its unit, as the payload of its token. */
export type Measure =
  | (Numbers & { readonly kind: 'number' | 'percent' | 'bloom' | 'density' })
  | (Text & { readonly kind: 'clock' })
  | Quantity
  | Reading
  | Duration
  | Length
  | Brix
  | Dimensions;

/** One end of a range: in its own unit, durations in seconds. */
interface End extends NumberNode {
  readonly unit: UnitRow | null;
  /** Where the number itself stops, before its unit. */
  readonly numberEnd: number;
}

/** Pushes the token that starts with a number at `at` and returns its end; -1 where no number starts there. */
export function readMeasure(scan: Scan, at: number): number {
  const number = readNumber(scan, at);
  if (number === null) return -1;
  const clock = readClock(scan, number);
  if (clock >= 0) return clock;
  const low = readEnd(scan, number);
  const dimensions = readDimensions(scan, low);
  if (dimensions >= 0) return dimensions;
  const next = afterSeparator(scan, low.end);
  if (next < 0) return pushMeasure(scan, low.unit, low, null);
  const high = readEnd(scan, readNumber(scan, next)!);
  return pushMeasure(scan, high.unit ?? low.unit, low, high);
}

function readEnd(scan: Scan, number: NumberNode): End {
  const unit = readUnit(scan, number.end);
  if (unit === null) return { value: number.value, start: number.start, end: number.end, numberEnd: number.end, unit: null };
  const row = unit.row;
  if (row.kind === 'duration') return readDuration(scan, number, row, unit.end);
  return { value: number.value, start: number.start, end: unit.end, numberEnd: number.end, unit: row };
}

/** `1 h 30 min`, `1h30`; each part smaller than the one before. */
function readDuration(scan: Scan, number: NumberNode, first: UnitRow, firstEnd: number): End {
  let seconds = number.value * first.factor;
  let end = firstEnd;
  let factor = first.factor;
  for (;;) {
    const at = skipSpaces(scan.text, end, scan.end);
    if (at >= scan.end || (flagsAt(scan.text, at) & digit) === 0) break;
    const problem = scan.problem;
    const part = readNumber(scan, at)!;
    const unit = readUnit(scan, part.end);
    if (unit !== null && unit.row.kind === 'duration' && unit.row.factor < factor) {
      seconds += part.value * unit.row.factor;
      factor = unit.row.factor;
      end = unit.end;
      continue;
    }
    scan.problem = problem;
    if (unit !== null || at !== end || factor !== 3600) break;
    seconds += part.value * 60;
    end = part.end;
    break;
  }
  return { value: seconds, start: number.start, end, numberEnd: number.end, unit: first };
}

/** Where the second number of a range starts, or -1. */
function afterSeparator(scan: Scan, from: number): number {
  const { text, end } = scan;
  const at = skipSpaces(text, from, end);
  if (at >= end) return -1;
  const code = text.charCodeAt(at);
  let after = -1;
  if (isDash(code) || code === 0x2026) after = at + 1;
  else if (code === 46 && text.charCodeAt(at + 1) === 46) after = text.charCodeAt(at + 2) === 46 ? at + 3 : at + 2;
  if (after < 0) return -1;
  const next = skipSpaces(text, after, end);
  return startsNumber(scan, next) ? next : -1;
}

function pushMeasure(scan: Scan, unit: UnitRow | null, low: End, high: End | null): number {
  const end = high?.end ?? low.end;
  const numbers = inOneUnit(scan, unit, low, high, end);
  pushByKind(scan, unit, numbers);
  return readDensityUnit(scan, unit, numbers, end);
}

/** Both ends in `unit`, low first; a positive range written from high to low is blamed. */
function inOneUnit(scan: Scan, unit: UnitRow | null, low: End, high: End | null, end: number): Numbers {
  const first = convert(scan, low, unit);
  const { start } = low;
  if (high === null) return { low: first, high: first, ranged: false, start, end };
  const second = convert(scan, high, unit);
  if (first <= second) return { low: first, high: second, ranged: true, start, end };
  // Cold ranges are written from either end: -18 to -20 °C.
  if (first >= 0 && second >= 0) blameReversed(scan, low, high);
  return { low: second, high: first, ranged: true, start, end };
}

function convert(scan: Scan, end: End, unit: UnitRow | null): number {
  if (unit === null) return end.value;
  if (end.unit === null) return unit.kind === 'duration' ? end.value * unit.factor : end.value;
  if (end.unit === unit || unit.kind === 'duration') {
    if (end.unit.kind === unit.kind) return end.value;
  } else if (end.unit.kind === unit.kind && unit.factor > 0) return (end.value * end.unit.factor) / unit.factor;
  blame(
    scan,
    end,
    `Both ends of a range have the same unit: ${shown(end.unit.word)} and ${shown(unit.word)} do not go together.`,
  );
  return end.value;
}

function blameReversed(scan: Scan, low: End, high: End): void {
  const both = low.unit !== null && high.unit !== null;
  const first = { start: low.start, end: both ? low.end : low.numberEnd };
  const second = { start: high.start, end: both ? high.end : high.numberEnd };
  const lowText = scan.text.slice(first.start, first.end);
  const highText = scan.text.slice(second.start, second.end);
  blame(
    scan,
    { start: low.start, end: high.end },
    `A range runs from low to high: ${shown(highText)} to ${shown(lowText)}.`,
    [
      {
        title: `Write ${highText}-${lowText}`,
        edits: [
          { ...first, text: highText },
          { ...second, text: lowText },
        ],
      },
    ],
    'range-reversed',
  );
}

function pushByKind(scan: Scan, unit: UnitRow | null, numbers: Numbers): void {
  const { start, end } = numbers;
  const payload = measureOf(unit, numbers);
  pushToken(scan, tokens[payload.kind], start, end, payload);
}

const tokens: Readonly<Record<Measure['kind'], typeof token.NumberToken>> = {
  number: token.NumberToken,
  percent: token.PercentToken,
  bloom: token.BloomToken,
  density: token.DensityToken,
  clock: token.ClockToken,
  quantity: token.QuantityToken,
  temperature: token.TemperatureToken,
  duration: token.DurationToken,
  length: token.LengthToken,
  brix: token.BrixToken,
  dimensions: token.DimensionsToken,
};

function measureOf(unit: UnitRow | null, numbers: Numbers): Measure {
  const { low, high, ranged, start, end } = numbers;
  switch (unit?.kind) {
    case undefined:
      return { kind: 'number', low, high, ranged, start, end };
    case 'percent':
    case 'bloom':
      return { kind: unit!.kind, low, high, ranged, start, end };
    case 'brix':
      return { kind: 'brix', low, high, start, end };
    case 'temperature':
      return { kind: 'temperature', low, high, ranged, unit: unit!.word === '°C' ? 'C' : 'F', start, end };
    case 'duration':
      return { kind: 'duration', low, high, ranged, overnight: false, start, end };
    case 'length':
      return { kind: 'length', low: low * unit!.factor, high: high * unit!.factor, unit: unit!.word as LengthUnit, start, end };
    default:
      return {
        kind: 'quantity',
        low,
        high,
        ranged,
        unit: unit!.word as QuantityUnit,
        unitWritten: true,
        each: false,
        start,
        end,
      };
  }
}

/** `1.42 g/ml`: turns the mass just pushed into a density. */
function readDensityUnit(scan: Scan, unit: UnitRow | null, numbers: Numbers, end: number): number {
  if (unit?.kind !== 'mass' || scan.text.charCodeAt(end) !== 47 || end + 1 >= scan.end) return end;
  const volume = readUnit(scan, end + 1);
  if (volume?.row.kind !== 'volume') return end;
  const factor = unit.factor / volume.row.factor;
  scan.tokens.pop();
  const density: Measure = {
    ...numbers,
    kind: 'density',
    low: numbers.low * factor,
    high: numbers.high * factor,
    end: volume.end,
  };
  pushToken(scan, token.DensityToken, numbers.start, volume.end, density);
  return volume.end;
}

/** `16 x 3 cm`, `9x3 cm`; -1 where no `x` and number follow. */
function readDimensions(scan: Scan, first: End): number {
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
function readClock(scan: Scan, number: NumberNode): number {
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
