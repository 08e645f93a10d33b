/**
 * Water activity of a mixture: an estimate of how available its water is, and so of what can grow in it.
 *
 * Formula: Ross 1975, a_w = Π a_w,i, each dissolved substance alone in all the water; each by Norrish (norrish.ts). Only what is
 *   dissolved counts: sucrose no further than its solubility at the temperature; fat, starch and fibre not at all.
 * Source: as norrish.ts; Ross's product from memory.
 * Range: 0-40 °C, matter that is wet: at least a quarter of water in water, starch, protein and fibre. Drier matter binds its
 *   water and has none of this formula's activity.
 * Error: an estimate, ±0.01 above 0.95, ±0.02 to 0.90, ±0.03 below (Ross reads low in strong mixtures). `otherSugars` may be
 *   glucose or fructose (small molecules) or lactose, maltose and glucose syrup (large): the interval covers both readings.
 */
import type { Interval } from '../quantities/interval.ts';
import type { Composition } from './composition.ts';
import { norrish } from './norrish.ts';
import { solubility } from './sugar.ts';

/** Activity 0-1: the likeliest value and the interval it lies in. */
export interface WaterActivity extends Interval {
  readonly value: number;
}

/** Null where there is too little water for the formula. */
export function waterActivity(c: Composition, celsius = 25): WaterActivity | null {
  if (c.water <= 0 || c.water < (c.water + c.starch + c.protein + c.fibre) / 4) return null;
  const low = activity(c, celsius, 'glucose');
  const high = activity(c, celsius, 'maltose');
  const value = (low + high) / 2;
  return { value, low: Math.max(0, low - statedError(low)), high: Math.min(1, high + statedError(high)) };
}

/** Activity 0-1 of the water in a mixture as the formula has it, its other sugars all of one kind. */
export function activity(c: Composition, celsius: number, otherSugars: 'glucose' | 'maltose'): number {
  const mostSucrose = (c.water * solubility(celsius)) / (100 - solubility(celsius));
  return (
    norrish('sucrose', Math.min(c.sucrose, mostSucrose), c.water) *
    norrish(otherSugars, c.otherSugars, c.water) *
    norrish('alcohol', c.alcohol, c.water) *
    norrish('ash', c.ash, c.water)
  );
}

const statedError = (a: number): number => (a > 0.95 ? 0.01 : a > 0.9 ? 0.02 : 0.03);
