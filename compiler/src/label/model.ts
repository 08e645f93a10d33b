/** The label: the declaration a seller needs for what a formula makes, as data. */
import type { NutritionTable } from '../card/nutrition-table.ts';
import type { Named } from './allergens.ts';

export type Region = 'eu' | 'us';

export interface Label {
  readonly file: string;
  readonly formula: string;
  readonly region: Region;
  readonly choices: Readonly<Record<string, string>>;
  /** False where the checker found errors. */
  readonly checked: boolean;
  /** In descending order of mass. */
  readonly ingredients: readonly Declared[];
  /** Names whose allergens are not known. */
  readonly unknown: readonly string[];
  /** Of the region's list, over everything weighed. */
  readonly contains: readonly Named[];
  /** Null where the composition of something is not known. */
  readonly nutrition: NutritionTable | null;
  /** Of all that is made. */
  readonly netGrams: number | null;
  /** `83 g each`. */
  readonly netQuantity: string | null;
  /** `2 days at 0–4 °C`; null where the formula does not say. */
  readonly storage: string | null;
  /** ISO 8601: the day made, and the last day by the formula's `keeps`. */
  readonly made: string;
  readonly lastDay: string | null;
  /** It has a date to use it by, and not one it is best before. */
  readonly perishable: boolean;
  /** What the rules ask for and no formula says: for the seller to fill in. */
  readonly toFill: readonly string[];
  readonly cautions: readonly string[];
}

export interface Declared {
  /** As the list says it: `sugar`, `gelling agent: agar (E 406)`. */
  readonly name: string;
  /** Grams in what is made, water less what boils off; null where only some is used. */
  readonly grams: number | null;
  /** Of what is made, mass %. */
  readonly share: number;
  /** The share, where it stands beside the name: the name of the food or a choice promises this ingredient. Null else. */
  readonly percent: number | null;
  /** Made of several ingredients itself: its own list, from its packet, belongs behind its name. */
  readonly compound: boolean;
  /** Steeped and strained out, or greased with: nothing of its mass is counted, and it stands last. */
  readonly strained: boolean;
  /** Names to set off. */
  readonly allergens: readonly string[];
}
