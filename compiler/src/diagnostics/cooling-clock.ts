/** The clock of cooling: how long a mass is on its way from 57 °C, everything not known taken at its quickest. */
import { type CoolingMedium, coolingMedia, quickestSeconds, surelyWithin, twoStageLimits } from '../matter/cooling.ts';
import { interval, middle } from '../quantities/interval.ts';
import { clauseOf } from '../run/clauses.ts';
import { makesOf } from '../run/makes.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { isPerishable } from './look-perishable.ts';

/** °C: where the clock starts, and its two marks (FDA Food Code 2022, 3-501.14). */
export const marks = { start: 57, first: 21, last: 5 } as const;

export interface Late {
  readonly record: StepRecord;
  readonly mark: 'first' | 'last';
  readonly seconds: number;
  /** False: it is not there yet when the step ends. */
  readonly reached: boolean;
}

/** Where perishable matter that left `hot` warmer than 57 °C is too late at a mark; null where it may be in time. */
export function lateAfter(run: Run, hot: StepRecord, next: StepRecord): Late | null {
  if (hot.result.heat.celsius.low < marks.start || next.result.heat.celsius.low >= marks.start) return null;
  if (!isPerishable(hot.result)) return null;
  const clock = { celsius: marks.start, seconds: 0 };
  // Most matter is cold in time by a coarse reckoning, stirred; only where it is not is every case tried.
  return follow(run, hot.result, next, clock, true) && follow(run, hot.result, next, clock, false);
}

/** How far a mass has come: everything at its quickest. */
interface Clock {
  readonly celsius: number;
  readonly seconds: number;
}

const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'rest', 'freeze', 'proof', 'thaw']);

/** Goes on from a step until it is cold, hot again or late; where there are several ways, only if all are. */
function follow(run: Run, before: Matter, record: StepRecord, clock: Clock, coarse: boolean): Late | null {
  const after = record.result.heat;
  if (after.heated?.step === record.step && after.celsius.low > clock.celsius) return null;
  if (!isPerishable(record.result)) return null;
  const end = Math.min(clock.celsius, coldEnd(record));
  const pace = paceOf(run, before, record, clock.celsius, end, coarse);
  for (const mark of ['first', 'last'] as const) {
    if (clock.celsius <= marks[mark]) continue;
    const reached = end <= marks[mark];
    const seconds = clock.seconds + (reached ? pace.to(marks[mark]) : pace.whole);
    if (seconds > (mark === 'first' ? twoStageLimits.to21 : twoStageLimits.to5)) return { record, mark, seconds, reached };
  }
  if (end <= marks.last) return null;
  const next = { celsius: end, seconds: clock.seconds + pace.whole };
  const ways = (run.later.get(record) ?? []).map((later) => follow(run, record.result, later, next, coarse));
  return ways.every((way) => way !== null) ? (ways[0] ?? null) : null;
}

/** The coldest it may be after a step, by what is written or reckoned. */
const coldEnd = ({ result: { heat } }: StepRecord): number =>
  heat.basis === 'written' && heat.written && Number.isFinite(heat.written.low) ? heat.written.low : heat.celsius.low;

/** Seconds below 57 °C that a step takes at its quickest, and those until a reading on the way. */
interface Pace {
  readonly whole: number;
  readonly to: (celsius: number) => number;
}

function paceOf(run: Run, before: Matter, record: StepRecord, from: number, end: number, coarse: boolean): Pace {
  const { verb } = record.step.node;
  const isHot = before.heat.celsius.low > marks.start;
  const written = clauseOf(record.step.node, 'for') ? (record.seconds?.range.low ?? null) : null;
  const model = (to: number): number => quickest(run, before, record, from, to, coarse);
  if (!cooling.has(verb)) {
    // Steeped, strained or poured: what it cools on the way from the boil takes no time that counts.
    const whole = isHot ? 0 : (record.seconds?.range.low ?? 0);
    return { whole, to: () => whole };
  }
  if (written === null) return { whole: model(end), to: model };
  // A stay as a whole: by its end it is as cold as is written, but it may be so long before.
  if (verb !== 'cool') return { whole: written, to: (celsius) => Math.min(model(celsius), written) };
  // A written time is shared out by the model, for which a bound is not good enough.
  const exact = (start: number, to: number): number => quickest(run, before, record, start, to, false);
  const all = exact(Math.max(before.heat.celsius.low, from), end);
  const scale = all > 0 ? written / all : 0;
  return scale > 0
    ? { whole: scale * exact(from, end), to: (celsius) => scale * exact(from, celsius) }
    : { whole: written, to: () => written };
}

function quickest(run: Run, matter: Matter, record: StepRecord, from: number, to: number, coarse: boolean): number {
  const medium = mediumOf(record);
  // What is written was reached, whatever the surroundings are thought to be.
  const around = record.surroundings ?? coolingMedia[medium].celsius;
  const share = shareOfPiece(run, record, matter);
  const seconds = (coarse ? surelyWithin : quickestSeconds)({
    composition: thermalComposition(matter),
    grams: share * middle(matter.grams),
    millilitres: share * middle(millilitresOf(matter)),
    medium,
    surroundings: interval(Math.min(around.low, to - 1), Math.max(around.high, around.low)),
    vessel: vesselOf(record),
    from,
    to,
  });
  return seconds ?? 0;
}

/** Grams in one small vessel, where `makes` does not count them (common practice, no source: the least that is usual). */
const least = 80;
const small = /\b(glass|jar|cup|ramekin|mould|sphere|half-sphere|cylinder|cone|cube|bar)$/;
/** mm deep in what is flat, where `equipment` does not say. */
const shallow = 15;
const flat = /\b(tray|sheet|mat|plate|frame|dish|tin)$/;

/** What lies in one glass or mould cools by itself. */
function shareOfPiece(run: Run, { mould }: StepRecord, matter: Matter): number {
  if (mould === null) return 1;
  const makes = makesOf(run.formula, run.selection)?.yield;
  if (makes?.count && makes.noun?.key === mould) return 1 / Math.max(1, makes.count * run.factor);
  return small.test(mould) ? Math.min(1, least / Math.max(1e-9, middle(matter.grams))) : 1;
}

function vesselOf({ vessel, mould }: StepRecord) {
  if (vessel === null) return mould !== null && flat.test(mould) ? { depthMm: shallow } : {};
  return {
    ...(vessel.deepMm === null ? {} : { depthMm: vessel.deepMm }),
    ...(vessel.wideMm === null ? {} : { diameterMm: vessel.wideMm }),
  };
}

const mediumOf = ({ medium }: StepRecord): CoolingMedium =>
  medium !== null && medium in coolingMedia ? (medium as CoolingMedium) : 'still air';
