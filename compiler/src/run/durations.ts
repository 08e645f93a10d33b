/** Estimated durations of heating: energy over the power a pan takes up. An estimate, a factor of two either way. */

import type { Composition } from '../matter/composition.ts';
import { enthalpy } from '../matter/melting.ts';
import { type Interval, interval } from '../quantities/interval.ts';

/** Watts that go into the matter from a domestic to a catering ring (from memory; gas is lower, induction higher). */
const panWatts = { low: 500, high: 1500 } as const;

export function heatingSeconds(composition: Composition, from: Interval, to: Interval): Interval {
  const joules = (cold: number, warm: number): number => Math.max(0, enthalpy(composition, warm) - enthalpy(composition, cold));
  const least = joules(from.high, Math.max(from.high, to.low));
  const most = joules(from.low, Math.max(from.low, to.high));
  return interval(Math.max(30, least / panWatts.high), Math.max(60, most / panWatts.low));
}
