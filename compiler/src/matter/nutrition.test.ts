/** Checks of nutrition against Annex XIV, published compositions and the roundings of the EU and the United States. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import {
  type EuNutrient,
  nutritionOfPortion,
  nutritionPer100g,
  roundEu,
  roundUs,
  sodiumOf,
  type UsNutrient,
  usCaloriesPer100g,
} from './nutrition.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

describe('energy', () => {
  test('Annex XIV: 10 g of fat are 370 kJ and 90 kcal (not 376.6 kJ); sugar 1700 and 400, ethanol 2900 and 700 per 100 g', () => {
    const tenFat = nutritionPer100g(of({ water: 90, milkFat: 10 }), 6, 0);
    expect(tenFat.kJ).toBeCloseTo(370, 9);
    expect(tenFat.kcal).toBeCloseTo(90, 9);
    expect(nutritionPer100g(of({ sucrose: 100 }), 0, 0)).toMatchObject({ kJ: 1700, kcal: 400 });
    expect(nutritionPer100g(of({ alcohol: 100 }), 0, 0)).toMatchObject({ kJ: 2900, kcal: 700 });
  });

  test('cocoa powder, SR28 19165: 359 kcal by the EU factors, 433 by 4-4-9 (reference reckoning), against 228 in SR28', () => {
    const cocoa = of({ water: 3, protein: 19.6, cocoaButter: 13.7, otherSugars: 1.75, starch: 19.15, fibre: 37, ash: 5.8 });
    expect(nutritionPer100g(cocoa, 8, 0).kcal).toBeCloseTo(359, 0);
    expect(usCaloriesPer100g(cocoa)).toBeCloseTo(433, 0);
  });

  test('egg white, SR28 01124: 48 kcal by the factors; lemon juice 09152: 31 (reference reckoning)', () => {
    expect(
      nutritionPer100g(of({ water: 87.57, protein: 10.9, otherFat: 0.17, otherSugars: 0.73, ash: 0.63 }), 0, 0).kcal,
    ).toBeCloseTo(48, 0);
    expect(
      nutritionPer100g(of({ water: 92.31, protein: 0.35, otherFat: 0.24, otherSugars: 6.6, fibre: 0.3, ash: 0.2 }), 0, 0).kcal,
    ).toBeCloseTo(31, 0);
  });

  test('size does not matter, portions go in proportion, salt is sodium times 2.5', () => {
    const grams = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, grams, (water, milkFat, sucrose, size) => {
        const one = nutritionPer100g(of({ water, milkFat, sucrose }), milkFat * 0.6, 0.1);
        const more = nutritionPer100g(
          of({ water: water * size, milkFat: milkFat * size, sucrose: sucrose * size }),
          milkFat * 0.6 * size,
          0.1 * size,
        );
        for (const key of Object.keys(one) as EuNutrient[]) {
          expect(more[key]).toBeCloseTo(one[key], 5);
          expect(nutritionOfPortion(one, 50)[key]).toBeCloseTo(one[key] / 2, 9);
        }
      }),
    );
    expect(sodiumOf(2.5)).toBe(1000);
  });
});

describe('rounding', () => {
  test.each<[EuNutrient, number, string]>([
    // Commission guidance on tolerances, December 2012, section 6.
    ['kJ', 1234.4, '1234'],
    ['kcal', 294.5, '295'],
    ['fat', 12.49, '12'],
    ['fat', 9.96, '10'],
    ['fat', 0.51, '0.5'],
    ['fat', 0.5, '<0.5'],
    ['sugars', 0, '0'],
    ['protein', 3.25, '3.3'],
    ['saturates', 0.1, '<0.1'],
    ['saturates', 0.14, '0.1'],
    ['saturates', 22.5, '23'],
    ['salt', 1.25, '1.3'],
    ['salt', 0.124, '0.12'],
    ['salt', 0.0125, '<0.01'],
  ])('EU %s %d → %s', (nutrient, amount, printed) => expect(roundEu(nutrient, amount)).toBe(printed));

  test.each<[UsNutrient, number, string]>([
    // FDA Food Labeling Guide, Appendix H.
    ['calories', 4.9, '0'],
    ['calories', 47, '45'],
    ['calories', 50, '50'],
    ['calories', 294, '290'],
    ['calories', 295, '300'],
    ['fat', 0.49, '0'],
    ['fat', 3.2, '3'],
    ['fat', 4.8, '5'],
    ['saturated', 5.4, '5'],
    ['cholesterol', 1.9, '0'],
    ['cholesterol', 5, 'less than 5'],
    ['cholesterol', 63, '65'],
    ['sodium', 4, '0'],
    ['sodium', 138, '140'],
    ['sodium', 144, '140'],
    ['carbohydrate', 0.4, '0'],
    ['sugars', 0.7, 'less than 1'],
    ['protein', 3.5, '4'],
  ])('US %s %d → %s', (nutrient, amount, printed) => expect(roundUs(nutrient, amount)).toBe(printed));
});
