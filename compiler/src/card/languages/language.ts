/** What a language brings to a card: labels, units, names and the sentence of every step. One file a language implements it. */
import type { Allergen } from '../../catalogue/kind.ts';
import type { Phrase } from '../sentence.ts';

/** A thing a step names: an ingredient, matter on the bench, or a vessel. */
export interface Term {
  /** Translated where it is a catalogue name, else as written. */
  readonly text: string;
  /** Formatted: `480 g`. Null where the step takes no weighed amount. */
  readonly amount: string | null;
  /** `60 g of` (the amount says how much), a fraction as `1/3`, or `rest`. */
  readonly part: 'quantity' | 'rest' | { readonly fraction: number } | null;
  /** `vessel`: what the matter goes into; `many` where several are filled. */
  readonly vessel: 'one' | 'many' | null;
}

/** A step with its numbers formatted and its names translated; the language only puts them in order. */
export interface StepWords {
  readonly verb: string;
  readonly operands: readonly Term[];
  /** `portion 100 ml`: into each vessel. */
  readonly each: string | null;
  /** `check …`. */
  readonly check: string | null;
  /** `do "…"`: as written. */
  readonly doing: string | null;
  readonly into: Term | null;
  readonly over: Term | null;
  readonly inside: Term | null;
  /** `cut into 24 bars of 9 x 3 cm`, formatted. */
  readonly pieces: string | null;
  readonly additions: { readonly count: string; readonly single: boolean; readonly tools: readonly string[] } | null;
  readonly turns: { readonly count: string; readonly kinds: readonly string[] } | null;
  /** The vocabulary's word: `ice bath`. */
  readonly medium: string | null;
  readonly atRoom: boolean;
  readonly with: readonly Term[];
  readonly tool: string | null;
  readonly to:
    | { readonly kind: 'temperature' | 'mass' | 'length' | 'brix'; readonly text: string }
    | { readonly kind: 'peak'; readonly peaks: readonly string[] }
    | null;
  readonly at: string | null;
  readonly for: string | null;
  readonly until: string | null;
  readonly whileWhipping: boolean;
  readonly level: 'low' | 'medium' | 'high' | null;
  readonly using: string | null;
  readonly losing: string | null;
  readonly as: string | null;
}

export type ReasonKey =
  | 'egg thickens'
  | 'egg safe'
  | 'starch cooks'
  | 'syrup'
  | 'caramel'
  | 'fold cream'
  | 'fold chocolate'
  | 'fold white'
  | 'gelatin melts'
  | 'gelatin sets'
  | 'chocolate melts'
  | 'chocolate works'
  | 'ganache'
  | 'glaze'
  | 'butter'
  | 'cold'
  | 'frozen';

export type CautionKey =
  | 'egg'
  | 'raw egg'
  | 'egg undercooked'
  | 'hot sugar'
  | 'hot fat'
  | 'cooling'
  | 'cold storage'
  | 'raw flour'
  | 'alcohol'
  | 'no plan';

export type NutritionRow = 'energy' | 'fat' | 'saturates' | 'carbohydrate' | 'sugars' | 'fibre' | 'protein' | 'salt';

/** Every fixed word of a card. */
export interface Labels {
  readonly by: string;
  readonly version: string;
  readonly printed: string;
  readonly makes: string;
  readonly served: string;
  readonly keeps: string;
  readonly choices: string;
  readonly scaling: string;
  readonly ingredients: string;
  readonly method: string;
  readonly amount: string;
  readonly usMeasure: string;
  readonly ingredient: string;
  readonly share: string;
  readonly bakers: string;
  readonly assembly: string;
  readonly from: string;
  readonly some: string;
  readonly critical: string;
  readonly additions: string;
  readonly temperatureLine: string;
  readonly danger: string;
  readonly timeCompressed: string;
  readonly window: string;
  readonly step: string;
  readonly time: string;
  readonly starts: string;
  readonly ends: string;
  readonly differences: string;
  readonly instead: string;
  readonly notThere: string;
  readonly allergens: string;
  readonly contains: string;
  readonly noAllergens: string;
  readonly unknownAllergens: string;
  readonly freeFrom: string;
  readonly nutrition: string;
  readonly per100: string;
  readonly nutritionUnknown: string;
  readonly nutritionBasis: string;
  readonly storage: string;
  readonly cautions: string;
  readonly allowed: string;
  readonly noReason: string;
  readonly unchecked: string;
  readonly uncheckedWhy: string;
  readonly line: string;
  readonly why: string;
  readonly rows: Readonly<Record<NutritionRow, string>>;
  readonly us: {
    readonly calories: string;
    readonly fat: string;
    readonly saturates: string;
    readonly sodium: string;
    readonly carbohydrate: string;
    readonly fibre: string;
    readonly sugars: string;
    readonly protein: string;
    readonly lessThan: string;
    readonly notStated: string;
  };
}

/** How a factor came about, formatted, for the card to say. */
export interface ScalingWords {
  readonly factor: string;
  readonly from: string;
  readonly to: string;
}

/** Sentences about scaling. */
export interface ScalingSentences {
  readonly asWritten: string;
  count(words: ScalingWords): string;
  mass(words: ScalingWords): string;
  volume(words: ScalingWords): string;
  /** Between a mass and a volume, through the density of the finished mixture. */
  density(words: ScalingWords & { readonly density: string; readonly grams: string; readonly millilitres: string }): string;
  /** What is made, its volume and density, the air counted. */
  fills(words: { readonly grams: string; readonly millilitres: string; readonly density: string }): string;
  readonly lined: string;
  limit(words: { readonly factor: string; readonly amount: string; readonly name: string }): string;
  pieces(words: { readonly count: string; readonly name: string; readonly asked: string }): string;
  rounding(percent: string): string;
  readonly times: string;
  readonly vessels: string;
  batches(words: {
    readonly step: number;
    readonly vessel: string;
    readonly holds: string;
    readonly needs: string;
    readonly batches: number;
  }): string;
}

export interface Language {
  /** BCP 47. */
  readonly code: string;
  /** In the language itself. */
  readonly name: string;
  readonly decimal: '.' | ',';
  readonly quotes: readonly [string, string];
  readonly labels: Labels;
  readonly scaling: ScalingSentences;
  readonly units: Readonly<Record<'s' | 'min' | 'h' | 'tsp' | 'tbsp' | 'cup' | 'floz' | 'oz' | 'lb' | 'pc', string>>;
  /** `2 days`, the number formatted. */
  days(count: string, one: boolean): string;
  overnight(range: string): string;
  below(reading: string): string;
  above(reading: string): string;
  /** `4 °C, keeps 2 days`: the storage line. */
  keeping(duration: string, reading: string | null): string;
  /** A step another choice adds, after the card's step of that number (0: before the first). */
  after(step: number): string;
  /** `per glass (83 g)`; noun null where the language has no word for it. */
  perPiece(noun: string | null, grams: string): string;
  /** `24 glasses of 100 ml`; size null where none. */
  yield(count: string, noun: string, size: string | null): string;
  /** A noun of `makes` or of the vessel table, in its number; null where the language has none for it (kept as written). */
  noun(noun: string, count: number): string | null;
  /** The catalogue's name; `own` is the name in `Kind.fr` or the kind's name. Null keeps what is written. */
  kind(kind: { readonly name: string; readonly fr: string }): string | null;
  allergen(allergen: Allergen | 'nuts'): string;
  /** Wheat is a cereal that holds gluten: where both are in it, they are said as one. */
  readonly glutenOfWheat: string;
  /** What an ingredient line says of its ingredient: `35 % fat`, `pasteurised`, `sheet`. */
  attribute(attribute: AttributeWords): string;
  /** Gives a tool of the vocabulary's table its name; null keeps what is written. */
  tool(tool: string): string | null;
  step(words: StepWords): Phrase;
  readonly reasons: Readonly<Record<ReasonKey, (degrees: Degrees) => string>>;
  readonly cautions: Readonly<Record<CautionKey, (degrees: Degrees) => string>>;
}

/** Formats °C in the card's units: `35 °C`, `79–85 °C`, `95 °F`. */
export type Degrees = (low: number, high?: number) => string;

export type AttributeWords =
  | { readonly kind: 'share'; readonly of: 'fat' | 'cocoa' | 'sugar' | 'solids' | 'alcohol'; readonly percent: string }
  | { readonly kind: 'bloom'; readonly value: string }
  | { readonly kind: 'brix'; readonly value: string }
  | { readonly kind: 'pH'; readonly value: string }
  | { readonly kind: 'phase'; readonly phase: string }
  | { readonly kind: 'state'; readonly state: 'raw' | 'fresh' | 'canned' | 'pasteurised' };
