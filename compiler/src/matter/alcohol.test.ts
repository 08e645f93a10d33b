/** Alcohol left after heating, against the published retention factors. */
import { describe, expect, it } from 'vitest';
import { middle } from '../quantities/interval.ts';
import { alcoholLeft } from './alcohol.ts';

describe('alcohol left', () => {
  // USDA Table of Nutrient Retention Factors, release 6 (2007): share of the alcohol left after simmering or baking, stirred in.
  it.each([
    [15, 0.4],
    [30, 0.35],
    [60, 0.25],
    [90, 0.2],
    [120, 0.1],
    [150, 0.05],
  ])('holds the published share after %d min', (minutes, share) => {
    const { low, high } = alcoholLeft(minutes * 60);
    expect(low).toBeLessThan(share);
    expect(high).toBeGreaterThan(share);
    expect(Math.sqrt(low * high)).toBeCloseTo(share, 10);
  });

  it('leaves most where it was only stirred into something hot (85 %, the same table), and never more than there was', () => {
    const { low, high } = alcoholLeft(0);
    expect(low).toBeLessThan(0.85);
    expect(high).toBe(1);
  });

  it('leaves less the longer it boils', () => {
    const shares = [0, 5, 15, 40, 100, 150, 400].map((minutes) => middle(alcoholLeft(minutes * 60)));
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
  });
});
