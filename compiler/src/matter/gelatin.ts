/**
 * Gelatin: grades compared as grams of 200 bloom, sheets, water to bloom in, setting and melting, and what harms a gel.
 *
 * Formula: by concentration, strength goes with concentration squared, so grams compare by the square root of the bloom (Ward &
 *   Courts 1977, The Science and Technology of Gelatin, p. 509); by strength, grams times bloom is what counts (kitchen practice,
 *   sheet makers). Sources disagree; between 100 and 200 bloom the two laws are 41 % apart.
 *   Setting and melting temperature: T = T2 + 7.5 log10(share/2 %), the slope of Eldridge & Ferry's law of melting (from memory),
 *   T2 = 21 °C to set and 27 °C to melt.
 * Source: T2 lies on a teaching card (sets 20, melts 27 °C), the line stays within the published 16-29 °C to set and 21-34 °C to
 *   melt for dessert strengths. Range: 0.3-10 % of 200 bloom in a neutral, sweet mixture. Error: an estimate, ±3 K.
 */
import { type Interval, interval } from '../quantities/interval.ts';

export type GelatinLaw = 'concentration' | 'strength';

export interface SheetGrade {
  readonly name: 'bronze' | 'silver' | 'gold' | 'platinum';
  readonly bloom: Interval;
  /** Grams of one sheet. */
  readonly sheet: number;
}

/** Grams of 200 bloom that gel as so many grams of another grade do. */
export const as200 = (grams: number, bloom: number, law: GelatinLaw): number =>
  grams * (law === 'concentration' ? Math.sqrt(bloom / 200) : bloom / 200);

/** Grams of a grade that gel as so many grams of 200 bloom do. */
export const from200 = (grams200: number, bloom: number, law: GelatinLaw): number => grams200 / as200(1, bloom, law);

/** Trade compilation of 2008-2014; makers differ, and sheets of 2.5 and 5 g are sold without a grade. */
export const sheetGrades: readonly SheetGrade[] = [
  { name: 'bronze', bloom: interval(125, 155), sheet: 3.3 },
  { name: 'silver', bloom: interval(160), sheet: 2.5 },
  { name: 'gold', bloom: interval(190, 220), sheet: 2.0 },
  { name: 'platinum', bloom: interval(235, 265), sheet: 1.7 },
];

/** The grade a kind of gelatin is named for (`silver gelatin`); null for a kind that names none. */
export const gradeOf = (kind: string): SheetGrade | null =>
  sheetGrades.find(({ name }) => kind.toLowerCase() === `${name} gelatin`) ?? null;

/** °C at which a mixture with so many % of 200 bloom begins to set as it cools. */
export const settingRange = (share200: number): Interval => around(21, share200);

/** °C at which its gel, once set, melts again. */
export const meltingRange = (share200: number): Interval => around(27, share200);

/** Grams of water a gram of powder takes up: five to ten, five to six advised (makers' pages); common practice as the least. */
export const hydration = { least: 3, short: 4, advised: interval(5, 6), most: 10 } as const;

/** °C from which bloomed gelatin dissolves without fail (common practice, 33-35; makers dissolve at 50-60). */
export const dissolvesFrom = { least: 33, sure: 35 } as const;

/** What weakens dissolved gelatin: boiling, or a hold (seconds) at a temperature (°C); makers warn of long heating, limits are common practice. */
export const harmfulHolds: readonly { readonly celsius: number; readonly seconds: number }[] = [
  { celsius: 95, seconds: 60 },
  { celsius: 80, seconds: 600 },
];

/**
 * Heat that ends the enzymes of raw pineapple, kiwi, papaya, fig, melon and ginger (bromelain about 82 °C in a cookery text; canned
 * fruit does not harm a gel): reached, or held for so many seconds. Estimate.
 */
export const enzymesEnd: readonly { readonly celsius: number; readonly seconds: number }[] = [
  { celsius: 85, seconds: 0 },
  { celsius: 75, seconds: 300 },
];

/** Whether a hold ends those enzymes. */
export const endsEnzymes = (celsius: number, seconds: number): boolean =>
  enzymesEnd.some((limit) => celsius >= limit.celsius && seconds >= limit.seconds);

/** Whether a hold weakens gelatin already dissolved. */
export const weakensGelatin = (celsius: number, seconds: number): boolean =>
  harmfulHolds.some((limit) => celsius >= limit.celsius && seconds >= limit.seconds);

const statedError = 3;

// Below 0.3 % hardly a gel forms; the figure of 0.3 % is given for it.
function around(at2Percent: number, share200: number): Interval {
  const celsius = at2Percent + 7.5 * Math.log10(Math.max(0.3, share200) / 2);
  return interval(celsius - statedError, celsius + statedError);
}
