/** Reads what starts with a number: quantities, temperatures, durations, lengths, shares and plain numbers, and their ranges. */

import type { Numbers } from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';
import { readClock, readDimensions } from './dimensions.ts';
import { type End, readEnd } from './ends.ts';
import { isDash, readNumber, startsNumber } from './numbers.ts';
import { type Measure, pushByKind } from './payloads.ts';
import { blame, pushToken, type Scan, shown, skipSpaces } from './scan.ts';
import { DensityToken } from './tokens.ts';
import { readUnit } from './units.ts';

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
  pushToken(scan, DensityToken, numbers.start, volume.end, density);
  return volume.end;
}
