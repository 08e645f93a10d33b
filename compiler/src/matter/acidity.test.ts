/** Checks of the pH bounds against published pH of mixtures and the laws of mixing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contains } from '../quantities/interval.ts';
import { mixturePH } from './acidity.ts';

describe('bounds', () => {
  test('lemon juice (pH 2.2-2.4, FDA list of approximate pH, from memory) diluted tenfold in water stays near pH 2.8', () => {
    const bounds = mixturePH([
      { grams: 10, pH: 2.3 },
      { grams: 90, pH: null },
    ])!;
    expect(contains(bounds, 2.7)).toBe(true);
    expect(bounds.high).toBeLessThan(3);
  });

  test('lemon curd, pH 3-4 (common practice): juice 2.3, egg 7.6, sugar and butter without', () => {
    const bounds = mixturePH([
      { grams: 150, pH: 2.3 },
      { grams: 150, pH: 7.6 },
      { grams: 150, pH: null },
      { grams: 100, pH: 6.2 },
    ])!;
    for (const pH of [3, 4]) expect(contains(bounds, pH)).toBe(true);
  });

  test('no part with a pH: nothing is said', () => {
    expect(mixturePH([{ grams: 100, pH: null }])).toBeNull();
    expect(mixturePH([])).toBeNull();
    expect(mixturePH([{ grams: 0, pH: 3 }])).toBeNull();
  });

  test('never sourer than the sourest part, never more alkaline than the mildest unless diluted, and more acid never raises a bound', () => {
    const part = fc.record({
      grams: fc.double({ min: 1, max: 500, noNaN: true }),
      pH: fc.double({ min: 2, max: 9, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 5 }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        (parts, grams) => {
          const bounds = mixturePH(parts)!;
          expect(bounds.low).toBe(Math.min(...parts.map((p) => p.pH)));
          expect(bounds.high).toBeLessThanOrEqual(Math.max(...parts.map((p) => p.pH)) + 1e-9);
          expect(bounds.low).toBeLessThanOrEqual(bounds.high + 1e-9);
          const sourer = mixturePH([...parts, { grams, pH: 2 }])!;
          expect(sourer.low).toBeLessThanOrEqual(bounds.low);
          expect(sourer.high).toBeLessThanOrEqual(bounds.high + 1e-9);
        },
      ),
    );
  });
});
