/** The card: everything a scaled formula says on paper, as data. HTML, Markdown and JSON are printed from this one object. */
import type { Allergen } from '../catalogue/kind.ts';
import type { Allowed } from '../diagnostics/check.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import type { NutritionFacts } from '../matter/nutrition.ts';
import type { Selection } from '../resolve/model.ts';
import type { Units } from './measures.ts';
import type { Phrase } from './sentence.ts';

export type Detail = 'brief' | 'full';

export interface Card {
  readonly file: string;
  readonly formula: string;
  readonly by: string | null;
  readonly edition: string | null;
  /** ISO 8601 date the card was made. */
  readonly date: string;
  readonly language: string;
  readonly units: Units;
  readonly detail: Detail;
  readonly choices: Selection;
  /** False where the checker found errors: the card says so at its top. */
  readonly checked: boolean;
  readonly diagnostics: readonly Diagnostic[];
  /** Safety codes turned off by hand. */
  readonly allowed: readonly Allowed[];
  readonly factor: number;
  /** How the factor came about and what does not follow it, one sentence each. */
  readonly scaling: readonly string[];
  readonly makes: Makes;
  readonly served: string | null;
  readonly keeps: string | null;
  /** Markdown, as written. */
  readonly notes: readonly string[];
  readonly components: readonly CardComponent[];
  /** Mass % of what is served; empty where nothing is known. */
  readonly compositionPercent: Readonly<Record<string, number>>;
  readonly allergens: Allergens;
  readonly nutrition: Nutrition;
  readonly cautions: readonly string[];
  readonly differences: readonly Difference[];
  readonly temperature: TemperatureLine | null;
  /** Seconds from the first step to the last, waiting included, at the middle of what is written or estimated; null where unknown. */
  readonly seconds: number | null;
}

export interface Makes {
  readonly text: string;
  readonly count: number | null;
  readonly noun: string | null;
  readonly grams: number | null;
  readonly millilitres: number | null;
}

export interface CardComponent {
  readonly name: string;
  /** The file a taken base is from; null for the formula's own. */
  readonly from: string | null;
  readonly isAssembly: boolean;
  /** Of its result; null where it is empty. */
  readonly grams: number | null;
  readonly notes: readonly string[];
  /** True where flour is weighed: shares on flour are given. */
  readonly bakers: boolean;
  readonly ingredients: readonly CardIngredient[];
  readonly steps: readonly CardStep[];
}

export interface CardIngredient {
  readonly line: number;
  /** As the card's language calls it. */
  readonly name: string;
  /** Catalogue entry, or the component it is a batch of; null where not known. */
  readonly kind: string | null;
  /** `35 % fat`, `4 °C`, `pasteurised`, a preparation. */
  readonly attributes: readonly string[];
  readonly exactGrams: number | null;
  /** What a scale shows. */
  readonly grams: number | null;
  /** In the card's units: `480 g`, `6 pc (300 g)`, `some`. */
  readonly written: string;
  /** In cups and spoons where the units ask for it; null else. */
  readonly cups: string | null;
  /** Of everything weighed, %. */
  readonly percent: number | null;
  /** Of the flour in its component, %. */
  readonly bakersPercent: number | null;
  readonly notes: readonly string[];
}

export interface CardStep {
  /** Counts through the whole card. */
  readonly number: number;
  readonly line: number;
  readonly verb: string;
  readonly phrase: Phrase;
  readonly text: string;
  /** The written reading, °C. */
  readonly celsius: readonly [number, number] | null;
  readonly seconds: readonly [number, number] | null;
  readonly critical: boolean;
  /** Nothing to do meanwhile. */
  readonly waiting: boolean;
  readonly notes: readonly string[];
  /** Why its temperature is what it is. */
  readonly reasons: readonly string[];
  readonly stages: readonly Stage[];
}

/** One addition of a fold. */
export interface Stage {
  readonly amount: string;
  readonly tool: string | null;
  /** Of the mixture after it, computed. */
  readonly temperature: string | null;
}

export interface Allergens {
  readonly contains: readonly Allergen[];
  /** Ingredients whose allergens are not known. */
  readonly unknown: readonly string[];
  /** `free from`, as claimed. */
  readonly claims: readonly (Allergen | 'nuts')[];
}

export interface Nutrition {
  /** Null where the composition of something in it is not known. */
  readonly per100g: NutritionFacts | null;
  readonly perPortion: NutritionFacts | null;
  readonly portionGrams: number | null;
  readonly unknown: readonly string[];
}

/** What another value of a choice changes. */
export interface Difference {
  readonly choice: string;
  readonly value: string;
  readonly changes: readonly { readonly what: string; readonly now: string; readonly other: string }[];
}

export interface TemperatureLine {
  /** Components whose matter ends up in what is served, the longest way last. */
  readonly strands: readonly Strand[];
  /** Seconds; the drawing compresses long waits. */
  readonly points: readonly TimeMark[];
}

export interface Strand {
  readonly name: string;
  readonly moves: readonly Move[];
}

/** The temperature of matter through one step. */
export interface Move {
  readonly step: number;
  readonly text: string;
  /** Index into `points` where it starts and ends. */
  readonly from: number;
  readonly to: number;
  readonly start: readonly [number, number] | null;
  readonly end: readonly [number, number] | null;
  /** The written window, where the step has one. */
  readonly window: readonly [number, number] | null;
  /** After each addition of a fold. */
  readonly additions: readonly (readonly [number, number])[];
  /** How long it takes; `estimated` where nobody wrote it. */
  readonly seconds: readonly [number, number] | null;
  readonly estimated: boolean;
}

export interface TimeMark {
  readonly seconds: number;
}
