/** Intervals: every measured or computed figure of the run is a closed interval `[low, high]`, low <= high. */

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const interval = (a: number, b: number = a): Interval => (a <= b ? { low: a, high: b } : { low: b, high: a });

export const middle = (x: Interval): number => (x.low + x.high) / 2;

export const add = (a: Interval, b: Interval): Interval => ({ low: a.low + b.low, high: a.high + b.high });

export const subtract = (a: Interval, b: Interval): Interval => ({ low: a.low - b.high, high: a.high - b.low });

/** Times a number, which may be negative. */
export const times = (x: Interval, factor: number): Interval => interval(x.low * factor, x.high * factor);

/** The smallest interval that holds both. */
export const hull = (a: Interval, b: Interval): Interval => ({ low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) });

/** What both hold, or null where they are apart. */
export function intersect(a: Interval, b: Interval): Interval | null {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  return low <= high ? { low, high } : null;
}

export const contains = (x: Interval, value: number): boolean => x.low <= value && value <= x.high;

/** At least zero at both ends. */
export const positive = (x: Interval): Interval => ({ low: Math.max(0, x.low), high: Math.max(0, x.high) });
