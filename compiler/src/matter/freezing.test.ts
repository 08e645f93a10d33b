/** Checks of freezing against published freezing points and ASHRAE's ice fraction. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { freezingPoint, iceGrams } from './freezing.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

describe('freezing point', () => {
  test.each([
    // CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions: sucrose, ethanol (from memory).
    ['10 % sucrose', { water: 90, sucrose: 10 }, -0.63],
    ['20 % sucrose', { water: 80, sucrose: 20 }, -1.46],
    ['30 % sucrose', { water: 70, sucrose: 30 }, -2.64],
    ['40 % sucrose', { water: 60, sucrose: 40 }, -4.45],
    ['10 % ethanol', { water: 90, alcohol: 10 }, -4.47],
    // Walstra, Dairy Science and Technology: milk -0.52 to -0.55 °C; egg white -0.45 °C (from memory).
    ['milk', { water: 88.13, protein: 3.15, milkFat: 3.25, otherSugars: 4.8, ash: 0.67 }, -0.54],
    ['egg white', { water: 87.57, protein: 10.9, otherFat: 0.17, otherSugars: 0.73, ash: 0.63 }, -0.45],
  ] as const)('%s', (_, grams, celsius) => {
    expect(Math.abs(freezingPoint(of(grams)) - celsius)).toBeLessThan(0.4);
  });

  test('water 0 °C; nothing to freeze -40 °C', () => {
    expect(freezingPoint(of({ water: 1 }))).toBeCloseTo(0, 9);
    expect(freezingPoint(of({ milkFat: 1 }))).toBe(-40);
  });
});

describe('ice', () => {
  test('activity of ice at -20 °C is 0.823 (vapour pressures 103.2 and 125.4 Pa, steam tables): a 0.823 solution begins to freeze there', () => {
    // 0.177 mol of ethanol in 0.823 mol of water.
    const point = freezingPoint(of({ water: 0.823 * 18.015, alcohol: 0.177 * 46.07 }));
    expect(Math.abs(point + 20)).toBeLessThan(0.1);
  });

  test("ASHRAE's beef carcass at -20 °C: 0.516 by Tchigeov's formula (52 % printed); this model within its stated 0.06", () => {
    // ASHRAE composition: water 0.58, protein 0.1748, fat 0.2211, ash 0.0079 (from memory); t_f -1.7 °C.
    const tchigeov = (1.105 * 0.58) / (1 + 0.7138 / Math.log(-1.7 + 20 + 1));
    expect(tchigeov).toBeCloseTo(0.516, 3);
    const beef = of({ water: 0.58, protein: 0.1748, otherFat: 0.2211, ash: 0.0079 });
    expect(Math.abs(iceGrams(beef, -20) - tchigeov)).toBeLessThan(0.06);
  });

  test('ice cream mix at -18 °C: about 72 % of its water is ice (Goff, University of Guelph; from memory)', () => {
    const mix = of({ water: 62, milkFat: 12, protein: 4, sucrose: 14, otherSugars: 7, ash: 1 });
    expect(Math.abs(iceGrams(mix, -18) / 62 - 0.72)).toBeLessThan(0.08);
  });

  test('colder never means less ice, never more than the water there is, none above the freezing point', () => {
    const grams = fc.double({ min: 1, max: 300, noNaN: true });
    const celsius = fc.double({ min: -40, max: 5, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, grams, celsius, celsius, (water, sucrose, protein, otherSugars, a, b) => {
        const c = of({ water, sucrose, protein, otherSugars });
        const cold = iceGrams(c, Math.min(a, b));
        const warm = iceGrams(c, Math.max(a, b));
        expect(cold).toBeGreaterThanOrEqual(warm - 1e-9);
        expect(warm).toBeGreaterThanOrEqual(0);
        expect(cold).toBeLessThanOrEqual(water);
        expect(iceGrams(c, freezingPoint(c) + 0.01)).toBeLessThan(water * 0.01);
      }),
    );
  });
});
