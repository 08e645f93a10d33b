/** Checks of water activity against saturated sucrose, published figures and the edges of the formula. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { waterActivity } from './water-activity.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

test('saturated sucrose at 25 °C: 0.8466 by Norrish, 0.8472 by Starzak & Peacock 1997; crystals on top change nothing', () => {
  const saturated = waterActivity(of({ water: 32.5, sucrose: 67.5 }))!;
  expect(saturated.value).toBeCloseTo(0.8466, 3);
  expect(saturated.low).toBeLessThan(0.8472);
  expect(saturated.high).toBeGreaterThan(0.8472);
  expect(waterActivity(of({ water: 32.5, sucrose: 200 }))!.value).toBeCloseTo(0.8466, 3);
});

test.each([
  // Raoult's limit and published ranges: Fontana 2007, Water Activity in Foods, appendix (from memory).
  ['milk', { water: 88.13, protein: 3.15, milkFat: 3.25, otherSugars: 4.8, ash: 0.67 }, 0.99],
  ['egg yolk', { water: 52.31, protein: 15.86, otherFat: 26.54, otherSugars: 3.59, ash: 1.71 }, 0.98],
  ['honey of 17 % water, 82 % glucose and fructose', { water: 17.1, otherSugars: 82.4, ash: 0.2 }, 0.58],
] as const)('%s', (_, grams, published) => {
  const estimate = waterActivity(of(grams))!;
  expect(estimate.low).toBeLessThanOrEqual(published);
  expect(estimate.high).toBeGreaterThanOrEqual(published);
});

test('no estimate for flour, and none for what is dry', () => {
  expect(waterActivity(of({ water: 11.92, starch: 73, protein: 10.33, fibre: 2.7, ash: 0.47 }))).toBeNull();
  expect(waterActivity(of({ sucrose: 100 }))).toBeNull();
});

test('the value lies in its interval, more sugar never raises it, fat does not count', () => {
  const grams = fc.double({ min: 1, max: 300, noNaN: true });
  fc.assert(
    fc.property(grams, grams, grams, (water, sucrose, more) => {
      const a = waterActivity(of({ water, sucrose }))!;
      expect(a.low).toBeLessThanOrEqual(a.value);
      expect(a.value).toBeLessThanOrEqual(a.high);
      expect(waterActivity(of({ water, sucrose: sucrose + more }))!.value).toBeLessThanOrEqual(a.value);
      expect(waterActivity(of({ water, sucrose, milkFat: more }))!.value).toBe(a.value);
    }),
  );
});
