/** Curve: the two numerical tools the models share, a piecewise-linear curve and the inverse of a rising function. */

/** Points `[x, y]` in rising order of x. */
export type Curve = readonly (readonly [x: number, y: number])[];

/** The curve's value at x, straight between its points and held at its ends. */
export function valueAt(curve: Curve, x: number): number {
  const first = curve[0]!;
  if (x <= first[0]) return first[1];
  for (let i = 1; i < curve.length; i += 1) {
    const [x1, y1] = curve[i]!;
    if (x <= x1) {
      const [x0, y0] = curve[i - 1]!;
      return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    }
  }
  return curve[curve.length - 1]![1];
}

/**
 * The x in [low, high] at which a non-decreasing function reaches `target`, to within `tolerance`; an end where it lies outside.
 *
 * Inverse quadratic interpolation where it may be trusted, else bisection (Chandrupatla 1997, Adv. Eng. Software 28:145).
 */
export function inverse(rising: (x: number) => number, target: number, low: number, high: number, tolerance = 1e-12): number {
  let newest = low;
  let ofNewest = rising(low) - target;
  if (ofNewest >= 0) return low;
  let other = high;
  let ofOther = rising(high) - target;
  if (ofOther <= 0) return high;
  const half = Math.max(tolerance / 2, Number.EPSILON * Math.max(Math.abs(low), Math.abs(high)));
  let share = 0.5;
  for (;;) {
    const x = newest + share * (other - newest);
    const difference = rising(x) - target;
    if (difference === 0) return x;
    // The root stays between the newest point and the other; the third is the one before.
    let third = newest;
    let ofThird = ofNewest;
    if (difference < 0 !== ofNewest < 0) {
      third = other;
      ofThird = ofOther;
      other = newest;
      ofOther = ofNewest;
    }
    newest = x;
    ofNewest = difference;
    const least = half / Math.abs(other - newest);
    if (least > 0.5) return Math.abs(ofNewest) < Math.abs(ofOther) ? newest : other;
    const xi = (newest - other) / (third - other);
    const phi = (ofNewest - ofOther) / (ofThird - ofOther);
    const isTrusted = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
    const quadratic =
      (ofNewest / (ofOther - ofNewest)) * (ofThird / (ofOther - ofThird)) +
      ((third - newest) / (other - newest)) * (ofNewest / (ofThird - ofNewest)) * (ofOther / (ofThird - ofOther));
    share = isTrusted ? Math.min(1 - least, Math.max(least, quadratic)) : 0.5;
  }
}
