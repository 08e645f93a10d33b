/** Checks of melting against measured solid fat, polymorph temperatures and latent heats. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { enthalpy, solidCocoaButter, solidFatError, solidMilkFat, temperatureAt } from './melting.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

describe('solid fat', () => {
  test('Australian milk fat, 19 sites over two years: 49.9-66.1 % at 5 °C, 14.6-29.6 % at 20 °C; dropping point 30.5-35.4 °C', () => {
    expect(solidMilkFat(5)).toBeGreaterThan(0.499);
    expect(solidMilkFat(5)).toBeLessThan(0.661);
    expect(solidMilkFat(20)).toBeGreaterThan(0.146);
    expect(solidMilkFat(20)).toBeLessThan(0.296);
    for (const celsius of [30.5, 35.4]) expect(solidMilkFat(celsius)).toBeLessThan(solidFatError);
    expect(solidMilkFat(40)).toBe(0);
  });

  test('50 % of anhydrous milk fat has melted near 8.6 °C (Abd El-Rahman 1998), within the stated error', () => {
    expect(Math.abs(solidMilkFat(8.6) - 0.5)).toBeLessThan(solidFatError);
  });

  test('cocoa butter: form IV still solid below 27.3 °C, form V nearly gone at 33.8 °C, nothing left above form VI at 36.3 °C (Wille & Lutton 1966)', () => {
    expect(solidCocoaButter(25)).toBeGreaterThan(0.6);
    expect(solidCocoaButter(33.8)).toBeLessThan(0.15);
    expect(solidCocoaButter(36.3)).toBe(0);
  });
});

describe('enthalpy', () => {
  test('melting one gram of ice takes 333.6 J, heating it from 0 to 100 °C 418-419 J (CRC Handbook)', () => {
    const water = of({ water: 1 });
    expect(enthalpy(water, 0) - enthalpy(water, -0.001)).toBeCloseTo(333.6, 0);
    expect(enthalpy(water, 100)).toBeGreaterThan(417);
    expect(enthalpy(water, 100)).toBeLessThan(421);
  });

  test('NZIFST Unit Operations, appendix 7: freezing milk gives up 289 kJ/kg of latent heat, within 10 %', () => {
    const milk = of({ water: 88.13, protein: 3.15, milkFat: 3.25, otherSugars: 4.8, ash: 0.67 });
    // From just above freezing to -40 °C, less the sensible heat of frozen milk, about 2.0 kJ/(kg·K).
    const latent = (enthalpy(milk, 0) - enthalpy(milk, -40)) / 100 - 2.0 * 40;
    expect(Math.abs(latent / 289 - 1)).toBeLessThan(0.1);
  });

  test('melting milk fat from 5 to 40 °C takes 55 % of 80.8 J/g beside its sensible heat of 70 J/g', () => {
    const fat = of({ milkFat: 1 });
    expect(enthalpy(fat, 40) - enthalpy(fat, 5)).toBeCloseTo(0.55 * 80.8 + 2.015 * 35, 0);
    expect(enthalpy(fat, 40, 'melted') - enthalpy(fat, 5, 'melted')).toBeCloseTo(2.015 * 35, 0);
  });

  const grams = fc.double({ min: 1, max: 500, noNaN: true });
  const mixture = fc
    .tuple(grams, grams, grams, grams, grams)
    .map(([water, milkFat, cocoaButter, sucrose, protein]) => of({ water, milkFat, cocoaButter, sucrose, protein }));
  const celsius = fc.double({ min: -30, max: 120, noNaN: true });

  test('more heat is always warmer, and temperature and heat undo each other', () => {
    fc.assert(
      fc.property(mixture, celsius, celsius, (c, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        expect(enthalpy(c, Math.max(a, b))).toBeGreaterThan(enthalpy(c, Math.min(a, b)));
        expect(temperatureAt(c, enthalpy(c, a))).toBeCloseTo(a, 6);
        expect(temperatureAt(c, enthalpy(c, a, 'melted'), 'melted')).toBeCloseTo(a, 6);
      }),
    );
  });

  test('twice the mixture holds twice the heat', () => {
    fc.assert(
      fc.property(mixture, celsius, (c, t) => {
        const twice = of(Object.fromEntries(Object.entries(c).map(([k, v]) => [k, v * 2])));
        expect(enthalpy(twice, t) / 2 - enthalpy(c, t)).toBeCloseTo(0, 4);
      }),
    );
  });
});
