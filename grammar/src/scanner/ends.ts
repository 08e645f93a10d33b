/** Reads one end of a range: a number with its unit, where it has one. */

import type { NumberNode } from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';
import { digit, flagsAt } from './characters.ts';
import { readNumber } from './numbers.ts';
import { type Scan, skipSpaces } from './scan.ts';
import { readUnit } from './units.ts';

/** One end of a range: in its own unit, durations in seconds. */
export interface End extends NumberNode {
  readonly unit: UnitRow | null;
  /** Where the number itself stops, before its unit. */
  readonly numberEnd: number;
}

export function readEnd(scan: Scan, number: NumberNode): End {
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
    if (unit !== null || at !== end || factor !== 3600) {
      // What follows is no part of the time: whatever is wrong with it is said where it is read.
      scan.problem = problem;
      break;
    }
    seconds += part.value * 60;
    end = part.end;
    break;
  }
  return { value: seconds, start: number.start, end, numberEnd: number.end, unit: first };
}
