/** Rounding to what a scale shows. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundingError, scaleGrams, scaleStep } from './rounding.ts';

describe('what a scale shows', () => {
  it('is 1 g, 0.1 g below 10 g, 0.01 g below 1 g', () => {
    expect([480.4, 10, 9.96, 9.94, 1.04, 0.996, 0.994, 0.004].map(scaleGrams)).toEqual([480, 10, 10, 9.9, 1, 1, 0.99, 0]);
    expect([10, 9.99, 1, 0.999].map(scaleStep)).toEqual([1, 0.1, 0.1, 0.01]);
  });

  it('is never off by more than half its step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (grams) => {
        expect(Math.abs(scaleGrams(grams) - grams)).toBeLessThanOrEqual(scaleStep(grams) / 2 + 1e-9);
      }),
    );
  });

  it('adds up over a formula', () => {
    expect(roundingError([10.4, 10.4, 10.4])).toBeCloseTo(-1.2 / 31.2, 12);
    expect(roundingError([240, 160])).toBe(0);
    expect(roundingError([])).toBe(0);
  });
});
