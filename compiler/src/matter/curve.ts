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
 * The x in [low, high] at which a non-decreasing function reaches `target`, by bisection to within `tolerance`; an end where it lies
 * outside.
 */
export function inverse(rising: (x: number) => number, target: number, low: number, high: number, tolerance = 1e-12): number {
  if (rising(low) >= target) return low;
  if (rising(high) <= target) return high;
  let below = low;
  let above = high;
  for (let i = 0; i < 60 && above - below > tolerance; i += 1) {
    const x = (below + above) / 2;
    if (rising(x) < target) below = x;
    else above = x;
  }
  return (below + above) / 2;
}
