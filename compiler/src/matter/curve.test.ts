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

test('ends within three times the turns of bisection, however the function bends, jumps or stands still', () => {
  const shapes: readonly ((x: number, bend: number, at: number) => number)[] = [
    (x, bend, at) => Math.sign(x - at) * Math.abs(x - at) ** bend,
    (x, _, at) => (x < at ? -1 : 1),
    (x, bend, at) => (x < at ? -1e-9 : 1e9) * Math.abs(x - at) ** bend,
    (x, bend, at) => Math.floor((x - at) * bend),
    (x, bend, at) => (x < at ? Number.NEGATIVE_INFINITY : x ** bend),
  ];
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...shapes), number(0.05, 20), number(0.01, 99), (shape, bend, at) => {
      let turns = 0;
      const found = inverse(
        (x) => {
          turns += 1;
          return shape(x, bend, at);
        },
        0,
        0,
        100,
      );
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found).toBeLessThanOrEqual(100);
      expect(turns).toBeLessThanOrEqual(3 * Math.log2(100 / 1e-12));
    }),
    { numRuns: 2000 },
  );
});
