/** Checks of the heat balance: water into water, ice into water, and the laws every mixture keeps. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { type HeatPart, mixtureTemperature } from './heat-balance.ts';
import { enthalpy } from './melting.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });
const at = (composition: Composition, low: number, high = low, coldFat = false): HeatPart => ({
  composition,
  celsius: { low, high },
  coldFat,
});

describe('worked examples', () => {
  test('school physics: equal parts of water at 80 and 20 °C give 50 °C, one part to three 35 °C', () => {
    const half = mixtureTemperature([at(of({ water: 100 }), 80), at(of({ water: 100 }), 20)]);
    expect(half.low).toBeCloseTo(50, 0);
    expect(half.high).toBe(half.low);
    expect(mixtureTemperature([at(of({ water: 100 }), 80), at(of({ water: 300 }), 20)]).low).toBeCloseTo(35, 0);
  });

  test('school physics: 100 g of ice at 0 °C melts in 300 g of water at 40 °C and leaves it at 10 °C (334 and 4.19 J)', () => {
    // (300 · 4.19 · 40 - 100 · 334) / (400 · 4.19) = 10.1 °C
    expect(mixtureTemperature([at(of({ water: 100 }), -0.001), at(of({ water: 300 }), 40)]).low).toBeCloseTo(10.1, 0);
  });

  test('melting the fat of cold whipped cream takes more heat than sensible heat alone (hand reckoning)', () => {
    // SR28 01053, 100 g at 4 °C into 100 g of water at 34 °C. Without melting: (418·34 + 324·4)/742 = 20.9 °C. At 17 °C the fat is
    // 27 % solid, at 4 °C 56 %: 36.08 g · 0.29 · 80.8 J = 845 J less, over 742 J/K: 1.1-1.2 K colder.
    const cream = of({ water: 57.81, protein: 2.84, milkFat: 36.08, otherSugars: 2.74, ash: 0.53 });
    const { low, high } = mixtureTemperature([at(cream, 4, 4, true), at(of({ water: 100 }), 34)]);
    expect(high - low).toBeLessThan(1e-6);
    expect(low).toBeGreaterThan(19.1);
    expect(low).toBeLessThan(20.1);
  });
});

describe('properties', () => {
  const grams = fc.double({ min: 0.5, max: 500, noNaN: true });
  const composition = fc
    .tuple(grams, grams, grams, grams)
    .map(([water, milkFat, cocoaButter, sucrose]) => of({ water, milkFat, cocoaButter, sucrose }));
  const part = fc
    .tuple(composition, fc.double({ min: -25, max: 110, noNaN: true }), fc.double({ min: 0, max: 30, noNaN: true }), fc.boolean())
    .map(([c, low, width, coldFat]) => at(c, low, low + width, coldFat));
  const parts = fc.array(part, { minLength: 1, maxLength: 4 });

  test('a mixture is never colder than its coldest part nor warmer than its warmest', () => {
    fc.assert(
      fc.property(parts, (all) => {
        const { low, high } = mixtureTemperature(all);
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(Math.min(...all.map((p) => p.celsius.low)));
        expect(high).toBeLessThanOrEqual(Math.max(...all.map((p) => p.celsius.high)));
      }),
    );
  });

  test('widening an input never narrows the output', () => {
    fc.assert(
      fc.property(parts, fc.double({ min: 0, max: 10, noNaN: true }), (all, more) => {
        const [first, ...rest] = all as [HeatPart, ...HeatPart[]];
        const wider = { ...first, celsius: { low: first.celsius.low - more, high: first.celsius.high + more } };
        const narrow = mixtureTemperature(all);
        const wide = mixtureTemperature([wider, ...rest]);
        expect(wide.low).toBeLessThanOrEqual(narrow.low + 1e-9);
        expect(wide.high).toBeGreaterThanOrEqual(narrow.high - 1e-9);
      }),
    );
  });

  test('heat is conserved where the fat is in balance throughout', () => {
    fc.assert(
      fc.property(fc.array(composition, { minLength: 2, maxLength: 3 }), fc.integer({ min: -20, max: 80 }), (all, start) => {
        const cold = all.map((c, i) => at(c, start + 10 * i, start + 10 * i, true));
        const t = mixtureTemperature(cold).low;
        const before = cold.reduce((sum, p) => sum + enthalpy(p.composition, p.celsius.low), 0);
        const after = cold.reduce((sum, p) => sum + enthalpy(p.composition, t), 0);
        expect(Math.abs(after - before) / (1 + Math.abs(before))).toBeLessThan(1e-6);
      }),
    );
  });

  test('the order of the parts does not matter, and parts without mass count for nothing', () => {
    fc.assert(
      fc.property(parts, (all) => {
        const turned = mixtureTemperature([...all].reverse());
        const padded = mixtureTemperature([...all, at(nothing, -100, 500)]);
        for (const other of [turned, padded]) {
          expect(other.low).toBeCloseTo(mixtureTemperature(all).low, 6);
          expect(other.high).toBeCloseTo(mixtureTemperature(all).high, 6);
        }
      }),
    );
  });

  test('no mass at all has no temperature', () => expect(mixtureTemperature([at(nothing, 5)]).low).toBeNaN());
});
