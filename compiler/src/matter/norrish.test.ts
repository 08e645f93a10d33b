/** Checks of Norrish's equation against Starzak & Peacock and published concentrations. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { norrish } from './norrish.ts';

test('saturated sucrose at 25 °C, 67.5 %: 0.8466 (Starzak & Peacock 1997: 0.8472)', () => {
  expect(norrish('sucrose', 67.5, 32.5)).toBeCloseTo(0.8466, 3);
  expect(norrish('sucrose', 67.5, 32.5)).toBeCloseTo(0.8472, 2);
});

test.each([
  // Reference reckoning from the published K; the sucrose row is 0.9341 by Starzak & Peacock 1997.
  ['sucrose', 0.9348],
  ['glucose', 0.8923],
  ['fructose', 0.8931],
  ['glycerol', 0.8108],
] as const)('50 %% %s: %d', (solute, expected) => {
  expect(norrish(solute, 50, 50)).toBeCloseTo(expected, 3);
});

test('more of a substance never raises the activity, more water never lowers it', () => {
  const grams = fc.double({ min: 0.1, max: 500, noNaN: true });
  fc.assert(
    fc.property(grams, grams, grams, (solute, water, more) => {
      expect(norrish('sucrose', solute + more, water)).toBeLessThanOrEqual(norrish('sucrose', solute, water));
      expect(norrish('glucose', solute, water + more)).toBeGreaterThanOrEqual(norrish('glucose', solute, water));
    }),
  );
});
