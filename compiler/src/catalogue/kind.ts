/** A kind: one row of the catalogue, what is known of an ingredient before a formula says more. */
import type { Composition } from '../matter/composition.ts';

export type Phase =
  | 'liquid'
  | 'powder'
  | 'crystal'
  | 'solid'
  | 'sheet'
  | 'paste'
  | 'foam'
  | 'gel'
  | 'dough'
  | 'batter'
  | 'frozen';

export type Storage = 'chilled' | 'ambient' | 'frozen';

export type Allergen =
  | 'gluten'
  | 'wheat'
  | 'milk'
  | 'egg'
  | 'peanut'
  | 'soy'
  | 'sesame'
  | 'fish'
  | 'crustacean'
  | 'mollusc'
  | 'celery'
  | 'mustard'
  | 'lupin'
  | 'sulphite'
  | 'almond'
  | 'hazelnut'
  | 'walnut'
  | 'cashew'
  | 'pecan'
  | 'brazil-nut'
  | 'pistachio'
  | 'macadamia';

/**
 * What a kind is to the models; a kind may be several. Rules ask for traits, never for names.
 * `cream` is dairy cream alone (not plant cream, not mascarpone); `purée`, `juice`, `fruit` are fruit.
 */
export type Trait =
  // dairy
  | 'milk'
  | 'cream'
  | 'butter'
  | 'mascarpone'
  | 'fresh cheese'
  | 'cultured dairy'
  | 'plant cream'
  | 'plant milk'
  | 'coconut'
  // egg
  | 'whole egg'
  | 'egg yolk'
  | 'egg white'
  // sugar
  | 'sugar'
  | 'syrup'
  | 'icing sugar'
  | 'invert'
  // chocolate
  | 'dark chocolate'
  | 'milk chocolate'
  | 'white chocolate'
  | 'cocoa mass'
  | 'cocoa butter'
  | 'cocoa powder'
  // starch and flour
  | 'flour'
  | 'wheat flour'
  | 'cereal starch'
  | 'root starch'
  | 'waxy starch'
  // gelling and thickening
  | 'gelatin'
  | 'instant gelatin'
  | 'gelatin mass'
  | 'agar'
  | 'carrageenan'
  | 'gellan'
  | 'high-methoxyl pectin'
  | 'low-methoxyl pectin'
  | 'gum'
  // fruit
  | 'fruit'
  | 'berry'
  | 'purée'
  | 'juice'
  | 'citrus'
  | 'protease fruit'
  // nuts
  | 'nut'
  | 'nut paste'
  | 'nut flour'
  // fats
  | 'oil'
  | 'solid fat'
  // others
  | 'water'
  | 'alcohol'
  | 'acid'
  | 'leavening'
  | 'salt'
  | 'yeast'
  /** Gives its taste to a liquid and is strained out: tea leaf, vanilla pod, peel, spice, coffee bean. */
  | 'infusable'
  | 'crumbs'
  | 'baked'
  | 'glitter';

/** Where a figure is from, as a reader can find it again. */
export interface Source {
  /** `USDA SR28 01077`, `common practice, no source`, `from memory`, `computed`. */
  readonly text: string;
}

export interface Kind {
  /** The name a kitchen uses, lower case, British spelling: `whole milk`, `caster sugar`. Unique. */
  readonly name: string;
  /** Other names, American spellings and plurals included; unique over the catalogue. */
  readonly synonyms: readonly string[];
  /** Mass fractions, summing to 1 within 0.005; null where the composition is not known. */
  readonly composition: Composition | null;
  /** g/ml as measured out (loose for powders, unpacked); null where not known. */
  readonly density: number | null;
  /** Grams of one piece (edible part), where the kind is counted; null else. */
  readonly piece: number | null;
  readonly phase: Phase;
  readonly storage: Storage;
  readonly allergens: readonly Allergen[];
  readonly traits: readonly Trait[];
  /** pH where it matters (fruit, dairy, egg); null where not known. */
  readonly pH: number | null;
  /** Dry grams take up so many grams of liquid, as a factor (2.5 = 250 %); null where not known. */
  readonly absorbs: number | null;
  /** Saturated share of all fat (0–1), for nutrition. */
  readonly saturated: number;
  /** Grams of salt (sodium x 2.5) in one gram. */
  readonly salt: number;
  /** True where the kind is sold pasteurised as a rule (milk, cream, carton egg). */
  readonly pasteurised: boolean;
  readonly source: Source;
  /** French name for cards, where it has one. */
  readonly fr: string;
}
