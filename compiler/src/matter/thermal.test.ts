/** Checks of the thermal properties against ASHRAE's example, handbook tables and GNU units. */
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { conductivity, density, heatAboveZero, specificHeat } from './thermal.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

// USDA SR28 per 100 g, NDB 01077, 01053, 01125, 01124; carbohydrate by difference, all of it as sugar.
const milk = of({ water: 88.13, protein: 3.15, milkFat: 3.25, otherSugars: 4.8, ash: 0.67 });
const cream = of({ water: 57.81, protein: 2.84, milkFat: 36.08, otherSugars: 2.74, ash: 0.53 });
const yolk = of({ water: 52.31, protein: 15.86, otherFat: 26.54, otherSugars: 3.59, ash: 1.71 });
const white = of({ water: 87.57, protein: 10.9, otherFat: 0.17, otherSugars: 0.73, ash: 0.63 });
const syrup = (percent: number): Composition => of({ water: 100 - percent, sucrose: percent });

describe('specific heat', () => {
  test('ASHRAE Refrigeration, worked example: 150 kg of lamb cooled from 10 to 0 °C gives up 5390 kJ', () => {
    const lamb = of({ water: 73.42, protein: 20.29, otherFat: 5.25, ash: 1.06 });
    // The example's shares add up to 1.0002; it does not divide by their sum.
    const perKilogram = specificHeat(lamb, 5) * 1.0002;
    expect(perKilogram).toBeCloseTo(3.59, 2);
    expect(150 * perKilogram * 10).toBeGreaterThan(5370);
    expect(150 * perKilogram * 10).toBeLessThan(5410);
  });

  test('ASHRAE Refrigeration, table 3 (above freezing): within 3 % for asparagus, carrots and garlic', () => {
    const rows: [Composition, number][] = [
      [of({ water: 92.4, protein: 2.28, otherFat: 0.2, otherSugars: 2.44, fibre: 2.1, ash: 0.57 }), 4.03],
      [of({ water: 87.79, protein: 1.03, otherFat: 0.19, otherSugars: 7.14, fibre: 3.0, ash: 0.87 }), 3.92],
      [of({ water: 58.58, protein: 6.36, otherFat: 0.5, otherSugars: 30.97, fibre: 2.1, ash: 1.5 }), 3.17],
    ];
    for (const [food, printed] of rows) expect(Math.abs(specificHeat(food, 5) / printed - 1)).toBeLessThan(0.03);
  });

  test('NZIFST Unit Operations, appendix 7: milk 3.9 kJ/(kg·K)', () => {
    expect(specificHeat(milk, 20)).toBeCloseTo(3.9, 1);
  });

  test.each([
    ['milk', milk, 3.891, 3.894, 3.912, 3.927],
    ['cream', cream, 3.238, 3.247, 3.274, 3.289],
    ['yolk', yolk, 3.107, 3.117, 3.146, 3.162],
    ['white', white, 3.898, 3.901, 3.919, 3.933],
    ['50 % syrup', syrup(50), 2.867, 2.881, 2.918, 2.936],
    ['70 % syrup', syrup(70), 2.344, 2.363, 2.409, 2.429],
  ])('an independent reckoning of the table agrees for %s at 5, 20, 60 and 80 °C', (_, food, ...expected) => {
    [5, 20, 60, 80].forEach((celsius, i) => {
      expect(specificHeat(food, celsius)).toBeCloseTo(expected[i]!, 2);
    });
  });

  test("Sugar Technologists' Manual (from memory): strong syrups really take 4-7 % more, the error this model states", () => {
    const manual = (solids: number, celsius: number) =>
      4.1868 - 0.0297 * solids + 4.6e-5 * solids * 100 + 7.5e-5 * solids * celsius;
    expect(specificHeat(syrup(50), 20) / manual(50, 20)).toBeGreaterThan(0.95);
    expect(specificHeat(syrup(70), 20) / manual(70, 20)).toBeGreaterThan(0.92);
    expect(specificHeat(syrup(70), 20) / manual(70, 20)).toBeLessThan(0.95);
  });

  test('pure water: 4.18 J/(g·K) (GNU units: the 15 °C calorie)', () => {
    const calorie = Number(execFileSync('units', ['-t', 'calorie_15', 'J'], { encoding: 'utf8' }));
    expect(specificHeat(of({ water: 1 }), 15)).toBeCloseTo(calorie, 1);
  });
});

describe('density', () => {
  test('handbook: 50 % sucrose 1230 kg/m³ at 20 °C (Choi & Okos 1225), crystal 1587', () => {
    expect(density(syrup(50), 20)).toBeCloseTo(1.2254, 3);
    expect(Math.abs(density(syrup(50), 20) / 1.23 - 1)).toBeLessThan(0.01);
    expect(Math.abs(density(syrup(100), 20) / 1.587 - 1)).toBeLessThan(0.01);
  });

  test('SR28 cup weights: milk 244 g, heavy cream 238 g in 236.6 ml, within 2.5 %', () => {
    expect(Math.abs(density(milk, 5) / (244 / 236.588) - 1)).toBeLessThan(0.025);
    expect(Math.abs(density(cream, 5) / (238 / 236.588) - 1)).toBeLessThan(0.025);
  });

  test('GNU units (CRC Handbook): ethanol', () => {
    const ethanol = Number(execFileSync('units', ['-t', 'ethanoldensity', 'g/cm^3'], { encoding: 'utf8' }));
    expect(density(of({ alcohol: 1 }), 20)).toBeCloseTo(ethanol, 3);
  });
});

describe('conductivity', () => {
  test.each([
    ['milk', milk, 0.566],
    ['cream', cream, 0.422],
    ['yolk', yolk, 0.414],
    ['white', white, 0.566],
    ['50 % syrup', syrup(50), 0.459],
  ])('an independent reckoning agrees for %s at 20 °C', (_, food, expected) => {
    expect(conductivity(food, 20)).toBeCloseTo(expected, 2);
  });

  test('NZIFST Unit Operations, appendix 7: k = 0.55 p + 0.26 (1 - p), within 10 % for milk', () => {
    expect(Math.abs(conductivity(milk, 10) / (0.55 * 0.8813 + 0.26 * 0.1187) - 1)).toBeLessThan(0.1);
  });
});

describe('properties', () => {
  const grams = fc.double({ min: 0.01, max: 1000, noNaN: true });
  const mixture = fc
    .tuple(grams, grams, grams, grams, grams)
    .map(([water, milkFat, sucrose, protein, ash]) => of({ water, milkFat, sucrose, protein, ash }));
  const celsius = fc.double({ min: -40, max: 150, noNaN: true });

  test('a mixture lies between its constituents, and its size does not matter', () => {
    fc.assert(
      fc.property(mixture, celsius, (c, t) => {
        expect(specificHeat(c, t)).toBeGreaterThan(0.9);
        expect(specificHeat(c, t)).toBeLessThan(6);
        const doubled = of(Object.fromEntries(Object.entries(c).map(([k, v]) => [k, v * 2])));
        expect(specificHeat(doubled, t)).toBeCloseTo(specificHeat(c, t), 9);
        expect(density(doubled, t)).toBeCloseTo(density(c, t), 9);
        expect(conductivity(doubled, t)).toBeCloseTo(conductivity(c, t), 9);
      }),
    );
  });

  test('heat above 0 °C is the sum of small steps of specific heat', () => {
    for (const t of [-30, 40, 90, 180]) {
      const steps = 20_000;
      let heat = 0;
      for (let i = 0; i < steps; i += 1) heat += (specificHeat(of({ milkFat: 1 }), ((i + 0.5) * t) / steps) * t) / steps;
      expect(heatAboveZero('fat', t)).toBeCloseTo(heat, 3);
    }
  });
});
