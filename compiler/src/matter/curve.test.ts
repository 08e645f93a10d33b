/** Checks of the shared curve and its inverse. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inverse, valueAt } from './curve.ts';

test('is straight between points and held at the ends', () => {
  const curve = [
    [0, 10],
    [10, 20],
    [20, 0],
  ] as const;
  expect([-5, 0, 5, 10, 15, 20, 25].map((x) => valueAt(curve, x))).toEqual([10, 10, 15, 20, 10, 0, 0]);
});

test('inverse undoes a rising function', () => {
  fc.assert(
    fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (x) => {
      expect(inverse((v) => v ** 3 + v, x ** 3 + x, -5, 5)).toBeCloseTo(x, 9);
    }),
  );
});

test('a target out of reach gives the nearer end', () => {
  expect(inverse((x) => x, 9, 0, 5)).toBe(5);
  expect(inverse((x) => x, -9, 0, 5)).toBe(0);
});
