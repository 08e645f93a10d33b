/**
 * Nutrition: a declaration's figures from composition, and the roundings a label may print.
 *
 * Formula: energy = Σ grams · factor, kJ and kcal each from its own factors (Regulation (EU) 1169/2011, Annex XIV): carbohydrate 17/4,
 *   protein 17/4, fat 37/9, ethanol 29/7, fibre 8/2. EU carbohydrate leaves fibre out; the American "total carbohydrate" has it in, at
 *   4 kcal/g (21 CFR 101.9(c)(1)(i)(B); alcohol at 7, from memory). Salt = sodium x 2.5.
 * Rounding: Commission guidance on tolerances, December 2012; 21 CFR 101.9(c) as in FDA's Food Labeling Guide, Appendix H.
 * Range: mixtures without polyols and with few organic acids (which count 10/2.4 and 13/3). Error: that of the ingredients' composition,
 *   EU tolerance ±20 % for most figures; USDA's own kcal use other factors and differ by up to 10 %, for cocoa by half.
 */
import { type Composition, fatOf, sugarsOf, total } from './composition.ts';

/** Grams (kJ, kcal for energy) in some mass of food. Carbohydrate is without fibre. */
export interface NutritionFacts {
  readonly kJ: number;
  readonly kcal: number;
  readonly fat: number;
  readonly saturates: number;
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly fibre: number;
  readonly protein: number;
  readonly salt: number;
}

export type EuNutrient = keyof NutritionFacts;

export type UsNutrient =
  | 'calories'
  | 'fat'
  | 'saturated'
  | 'cholesterol'
  | 'sodium'
  | 'carbohydrate'
  | 'fibre'
  | 'sugars'
  | 'protein';

/** What 100 g of a mixture declare; composition, saturated fat and salt are grams of the whole mixture. NaN for nothing at all. */
export function nutritionPer100g(c: Composition, saturatedGrams: number, saltGrams: number): NutritionFacts {
  const per100 = 100 / total(c);
  const fat = fatOf(c);
  const carbohydrate = sugarsOf(c) + c.starch;
  const facts: NutritionFacts = {
    kJ: 17 * (carbohydrate + c.protein) + 37 * fat + 29 * c.alcohol + 8 * c.fibre,
    kcal: 4 * (carbohydrate + c.protein) + 9 * fat + 7 * c.alcohol + 2 * c.fibre,
    fat,
    saturates: saturatedGrams,
    carbohydrate,
    sugars: sugarsOf(c),
    fibre: c.fibre,
    protein: c.protein,
    salt: saltGrams,
  };
  return times(facts, per100);
}

/** The same for a portion of so many grams. */
export const nutritionOfPortion = (per100g: NutritionFacts, grams: number): NutritionFacts => times(per100g, grams / 100);

/** Calories an American label states before rounding, per 100 g of a mixture. */
export const usCaloriesPer100g = (c: Composition): number =>
  ((4 * (sugarsOf(c) + c.starch + c.fibre + c.protein) + 9 * fatOf(c) + 7 * c.alcohol) * 100) / total(c);

/** Milligrams of sodium in so many grams of salt. */
export const sodiumOf = (saltGrams: number): number => (saltGrams * 1000) / 2.5;

/** A figure as an EU label prints it, without its unit; traces print as `<0.5`. */
export function roundEu(nutrient: EuNutrient, amount: number): string {
  switch (nutrient) {
    case 'kJ':
    case 'kcal':
      return nearest(amount, 1);
    case 'salt':
      return traces(amount, 0.0125, '0.01') ?? (amount >= 1 ? nearest(amount, 0.1) : nearest(amount, 0.01));
    case 'saturates':
      return traces(amount, 0.1, '0.1') ?? grams(amount);
    default:
      return traces(amount, 0.5, '0.5') ?? grams(amount);
  }
}

/** A figure as an American label prints it, without its unit: calories, grams, or milligrams for cholesterol and sodium. */
export function roundUs(nutrient: UsNutrient, amount: number): string {
  switch (nutrient) {
    case 'calories':
      return amount < 5 ? '0' : nearest(amount, amount <= 50 ? 5 : 10);
    case 'fat':
    case 'saturated':
      return amount < 0.5 ? '0' : nearest(amount, amount < 5 ? 0.5 : 1).replace('.0', '');
    case 'cholesterol':
      return amount < 2 ? '0' : amount <= 5 ? 'less than 5' : nearest(amount, 5);
    case 'sodium':
      return amount < 5 ? '0' : nearest(amount, amount <= 140 ? 5 : 10);
    default:
      return amount < 0.5 ? '0' : amount < 1 ? 'less than 1' : nearest(amount, 1);
  }
}

const times = (facts: NutritionFacts, factor: number): NutritionFacts => ({
  kJ: facts.kJ * factor,
  kcal: facts.kcal * factor,
  fat: facts.fat * factor,
  saturates: facts.saturates * factor,
  carbohydrate: facts.carbohydrate * factor,
  sugars: facts.sugars * factor,
  fibre: facts.fibre * factor,
  protein: facts.protein * factor,
  salt: facts.salt * factor,
});

const traces = (amount: number, limit: number, printed: string): string | null =>
  amount <= 0 ? '0' : amount <= limit ? `<${printed}` : null;

/** To 0.1 below 10 g, to 1 from there; 9.96 is already 10. */
const grams = (amount: number): string => nearest(amount, amount >= 9.95 ? 1 : 0.1);

/** Rounded half up to a multiple of the step; a hair is added so that 0.15 in binary still counts as the half it is. */
function nearest(amount: number, step: number): string {
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  return (Math.floor(amount / step + 0.5 + 1e-9) * step).toFixed(decimals);
}
