/** A label: the declaration a seller needs for one formula, as data. */

import type { NutritionTable } from '../card/nutrition-table.ts';
import type { Allergen } from '../catalogue/kind.ts';

export type Region = 'eu' | 'us';

export interface LabelIngredient {
  readonly name: string;
  /** Grams as put in, water less what boils off; null where only some is used. */
  readonly grams: number | null;
  /** Of all that is put in, %, where the name of the food or a chosen flavour names it; null else. */
  readonly percent: number | null;
  /** That the region's rules ask for, in the words of the label. */
  readonly allergens: readonly string[];
  /** Itself made of several things: the declaration on its pack belongs here. */
  readonly compound: boolean;
  /** Steeped and strained out: only its taste is in the food. */
  readonly strained: boolean;
}

export interface Label {
  readonly file: string;
  readonly formula: string;
  readonly region: Region;
  readonly choices: Readonly<Record<string, string>>;
  /** In descending order of mass. */
  readonly ingredients: readonly LabelIngredient[];
  /** Every allergen of the region's list, from all that was weighed. */
  readonly contains: readonly { readonly key: Allergen; readonly name: string }[];
  /** Ingredients of which neither composition nor allergens are known. */
  readonly unknown: readonly string[];
  readonly netGrams: number | null;
  readonly nutrition: NutritionTable | null;
  readonly storage: string | null;
  /** ISO 8601: the day made, and the last day by the formula's `keeps`. */
  readonly made: string;
  readonly lastDay: string | null;
  readonly perishable: boolean;
  readonly cautions: readonly string[];
}
