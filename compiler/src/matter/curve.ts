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
 * Interpolate, truncate, project (Oliveira & Takahashi 2020, ACM TOMS 47:5, κ1 0.2/(high - low), κ2 2, n0 1): never more than one step
 * beyond what bisection needs, and a fifth of it on the smooth curves of this folder.
 */
export function inverse(rising: (x: number) => number, target: number, low: number, high: number, tolerance = 1e-12): number {
  let below = low;
  let above = high;
  let under = rising(low) - target;
  let over = rising(high) - target;
  if (under >= 0) return low;
  if (over <= 0) return high;
  const half = Math.max(tolerance / 2, Number.EPSILON * Math.max(Math.abs(low), Math.abs(high)));
  const most = Math.ceil(Math.log2((high - low) / (2 * half))) + 1;
  const truncation = 0.2 / (high - low);
  for (let step = 0; step <= most && above - below > 2 * half; step++) {
    const middle = (below + above) / 2;
    const straight = (over * below - under * above) / (over - under);
    const side = Math.sign(middle - straight);
    const shift = truncation * (above - below) ** 2;
    const truncated = shift <= Math.abs(middle - straight) ? straight + side * shift : middle;
    const room = half * 2 ** (most - step) - (above - below) / 2;
    const x = Math.abs(truncated - middle) <= room ? truncated : middle - side * room;
    const difference = rising(x) - target;
    if (difference === 0) return x;
    if (difference < 0) [below, under] = [x, difference];
    else [above, over] = [x, difference];
  }
  return (below + above) / 2;
}
