/**
 * Alcohol: what is left of it after heating.
 *
 * Formula: the share left after so long a heating, straight between the published times; added to something hot and taken off the
 *   heat, 85 % is left.
 * Source: USDA Table of Nutrient Retention Factors, release 6 (2007), nutrient 221: baked or simmered, stirred in, 15 min 40 %,
 *   30 min 35 %, 1 h 25 %, 1.5 h 20 %, 2 h 10 %, 2.5 h 5 %. It rests on Augustin et al. 1992, J. Am. Diet. Assoc. 92:486 (from memory).
 * Range: dishes in open pans and dishes, near the boil. Error: the share left lies within a factor of 1.5 either way; a wide pan loses
 *   more, a narrow or covered one less.
 */
import { type Interval, interval } from '../quantities/interval.ts';
import { type Curve, valueAt } from './curve.ts';

/** °C from which heating drives alcohol off: ethanol boils at 78.4 °C, its mixtures with water above that. */
export const drivesOffFrom = 78;

/** Share (0–1) of the alcohol left after so many seconds near the boil; 0 seconds: stirred into something hot. */
export function alcoholLeft(seconds: number): Interval {
  const left = valueAt(published, seconds / 60);
  return interval(left / statedFactor, Math.min(1, left * statedFactor));
}

/** Minutes and share left. */
const published: Curve = [
  [0, 0.85],
  [15, 0.4],
  [30, 0.35],
  [60, 0.25],
  [90, 0.2],
  [120, 0.1],
  [150, 0.05],
];

const statedFactor = 1.5;
