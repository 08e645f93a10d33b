/** Words of the `ingredient` block and of `free from`, one row a word. */

import type { FactLine } from '../tree.ts';

export type FactWord = FactLine['word'];

export interface FactRow {
  readonly word: FactWord;
  readonly meaning: string;
  readonly example: string;
  readonly template: string;
}

export const facts: readonly FactRow[] = [
  fact('like', 'Takes everything not written here from this kind.', 'like hazelnut paste', 'like <kind>'),
  fact('water', 'Water, mass %.', 'water 17 %', 'water <17> %'),
  fact('milk fat', 'Milk fat, mass %.', 'milk fat 35 %', 'milk fat <35> %'),
  fact('cocoa butter', 'Cocoa butter, mass %.', 'cocoa butter 38 %', 'cocoa butter <38> %'),
  fact('other fat', 'Any other fat, mass %.', 'other fat 30 %', 'other fat <30> %'),
  fact('sucrose', 'Table sugar, mass %.', 'sucrose 50 %', 'sucrose <50> %'),
  fact('other sugars', 'Sugars other than sucrose, mass %.', 'other sugars 8 %', 'other sugars <8> %'),
  fact('starch', 'Starch, mass %.', 'starch 70 %', 'starch <70> %'),
  fact('protein', 'Protein, mass %.', 'protein 12 %', 'protein <12> %'),
  fact('fibre', 'Dietary fibre, mass %.', 'fibre 6 %', 'fibre <6> %'),
  fact('ash', 'Minerals, mass %.', 'ash 1 %', 'ash <1> %'),
  fact('alcohol', 'Alcohol, mass %.', 'alcohol 32 %', 'alcohol <32> %'),
  fact('density', 'Grams per millilitre.', 'density 1.42 g/ml', 'density <1.0> g/ml'),
  fact('each', 'What one piece weighs.', 'each 18 g', 'each <18> g'),
  fact('phase', 'What it is at room temperature.', 'phase liquid', 'phase <liquid>'),
  fact('pH', 'How acid it is.', 'pH 3.4', 'pH <3.4>'),
  fact('allergen', 'Allergens it holds.', 'allergen milk', 'allergen <milk>'),
  fact('absorbs', 'How much liquid it takes up when soaked, in % of its mass.', 'absorbs 250 %', 'absorbs <250> %'),
  fact('stored', 'Where it is kept.', 'stored chilled', 'stored <chilled|ambient|frozen>'),
];

export const storages = ['chilled', 'ambient', 'frozen'] as const;

export interface AllergenRow {
  readonly word: string;
  /** `nuts` holds every nut; the others stand for themselves. */
  readonly group: string | null;
  /** Words people write for it; refused with this one proposed. */
  readonly also: readonly string[];
}

export const allergens: readonly AllergenRow[] = [
  alone('gluten'),
  alone('wheat'),
  alone('milk', 'dairy', 'lactose'),
  alone('egg'),
  alone('nuts', 'tree nuts', 'tree nut'),
  alone('peanut', 'groundnut'),
  alone('soy', 'soya', 'soja', 'soybean'),
  alone('sesame'),
  alone('fish'),
  alone('crustacean', 'shellfish', 'shrimp'),
  alone('mollusc', 'mollusk', 'squid'),
  alone('celery', 'celeriac'),
  alone('mustard'),
  alone('lupin', 'lupine'),
  alone('sulphite', 'sulfite', 'sulphur dioxide'),
  ...['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia'].map(nut),
];

/** Words `free from` and `allergen` know. */
export const allergenWords: readonly string[] = allergens.map((row) => row.word);

function alone(word: string, ...also: string[]): AllergenRow {
  return { word, group: null, also };
}

function nut(word: string): AllergenRow {
  return { word, group: 'nuts', also: word.includes('-') ? [word.replace('-', ' ')] : [] };
}

function fact(word: FactWord, meaning: string, example: string, template: string): FactRow {
  return { word, meaning, example, template };
}
