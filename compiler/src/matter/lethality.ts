/**
 * Lethality: how many powers of ten of Salmonella a hold at a temperature kills in egg, and the published times beside it.
 *
 * Formula: log10 reduction = seconds / D(t), D(t) = D_ref · 10^((t_ref - t)/z), times `sugarFactor` to the power of sugar/10 %;
 *   holds add up. Heating through and cooling down are not counted, which is on the safe side.
 * Source: the slowest published values. Yolk D60 0.69 min (Jordan et al. 2011, Food Microbiol., three S. Enteritidis and one
 *   Oranienburg in commercial yolk); whole egg D60 0.62 min, a fifth of the 5-log time of heat-resistant strains (Gurtler et al.,
 *   J. Food Prot., doi 10.4315/0362-028X.JFP-18-438); white D58.3 1.00 min at pH 8.2 (Schuman & Sheldon 1997, J. Food Prot. 60:6).
 *   z is the cautious end of what is published: 5.3 K above the reference temperature (Garibaldi 4.2-5.3), 3.54 K below it (Schuman &
 *   Sheldon 3.54-4.33). Sugar: Garibaldi, Straka & Ijichi 1969, Appl. Microbiol. (PMC377728): 10 % of sucrose multiplies D by 10 in
 *   yolk, by 2.2 in whole egg and white.
 * Range: D was measured at 55-66 °C and 0 and 10 % of sugar. Sugar is interpolated in the logarithm and held from 10 % on; hotter
 *   than 66 °C is extrapolation. Error: studies of one medium differ by a factor of 2-3 in D, for white of 15.
 * Vegetative Salmonella only: spores survive, so that quick cooling is a rule of its own. No food-safety plan follows from this.
 */

export type EggMedium = 'yolk' | 'whole egg' | 'white';

/** Matter kept at a temperature for a time; `sugarPercent` is sucrose and other sugars in the mass it was heated in. */
export interface Hold {
  readonly medium: EggMedium;
  readonly sugarPercent: number;
  readonly celsius: number;
  readonly seconds: number;
}

/** A published time at a temperature; `seconds` 0 means as soon as it is reached. */
export interface PublishedPair {
  readonly celsius: number;
  readonly seconds: number;
  readonly reference: string;
  readonly inForce: boolean;
}

export const organism = 'Salmonella';

/** What a log reduction of this file rests on, for traces and cards. */
export const reference = 'published D and z values: Jordan 2011, Gurtler 2018, Schuman & Sheldon 1997, Garibaldi 1969';

/**
 * What counts as enough: 5 powers of ten, what 21 CFR 118.3 calls a treatment of shell eggs (from memory). Studies of liquid egg also
 * speak of 7 (Palumbo et al. 1995); at the temperatures of a cooked custard the two are less than a second apart.
 */
export const targetLog = 5;

/** Powers of ten killed by holds one after another. */
export const logReduction = (...holds: readonly Hold[]): number =>
  holds.reduce((sum, hold) => sum + hold.seconds / decimalReduction(hold.medium, hold.sugarPercent, hold.celsius), 0);

/** Seconds at a temperature that kill so many powers of ten. */
export const timeNeeded = (medium: EggMedium, sugarPercent: number, celsius: number, log = targetLog): number =>
  log * decimalReduction(medium, sugarPercent, celsius);

/** D in seconds: the time in which nine of ten die. */
export function decimalReduction(medium: EggMedium, sugarPercent: number, celsius: number): number {
  const { seconds, celsius: at, sugarFactor } = values[medium];
  const z = celsius > at ? zAbove : zBelow;
  return seconds * 10 ** ((at - celsius) / z) * sugarFactor ** (Math.min(mostSugar, Math.max(0, sugarPercent)) / mostSugar);
}

/**
 * Published times for an egg mixture. The Food Code's are for egg dishes without sugar to speak of (below 2 %, where the former
 * federal table begins to call egg sugared); the boiled custard of FDA's advice has its sugar in it.
 */
export function publishedPairs(medium: EggMedium, sugarPercent: number): readonly PublishedPair[] {
  const sugared = sugarPercent >= 2;
  const former = formerEggProducts
    .filter((row) => row.medium === medium && sugarPercent >= row.sugarFrom && sugarPercent < row.sugarBelow)
    .map((row) => pair(row.celsius, row.seconds, 'former 9 CFR 590.570, table I (1971-2022)', false));
  return [...(sugared ? [] : foodCode), ...custard, ...frozenDessertMix, ...former];
}

/** A published pair that holds one after another satisfy, one in force before one that is not; null where they satisfy none. */
export function pairMet(...holds: readonly Hold[]): PublishedPair | null {
  const pairs = holds[0] ? publishedPairs(holds[0].medium, Math.max(...holds.map((hold) => hold.sugarPercent))) : [];
  const secondsAtLeast = (celsius: number): number =>
    holds.reduce((sum, hold) => sum + (hold.celsius >= celsius ? hold.seconds : 0), 0);
  const met = ({ celsius, seconds }: PublishedPair): boolean =>
    holds.some((hold) => hold.celsius >= celsius) && secondsAtLeast(celsius) >= seconds;
  return pairs.filter((p) => p.inForce).find(met) ?? pairs.find(met) ?? null;
}

/** Whether holds are enough: the target is reached, or a published pair that is in force. */
export const sufficient = (...holds: readonly Hold[]): boolean =>
  logReduction(...holds) >= targetLog || (pairMet(...holds)?.inForce ?? false);

const zAbove = 5.3;
const zBelow = 3.54;

/** Most sugar the published values cover, %. */
export const mostSugar = 10;

/** D in seconds at a reference temperature, and what 10 % of sugar multiplies it by. */
const values: Record<EggMedium, { seconds: number; celsius: number; sugarFactor: number }> = {
  yolk: { seconds: 0.69 * 60, celsius: 60, sugarFactor: 10 },
  'whole egg': { seconds: 0.62 * 60, celsius: 60, sugarFactor: 2.2 },
  white: { seconds: 1.0 * 60, celsius: 58.3, sugarFactor: 2.2 },
};

const pair = (celsius: number, seconds: number, source: string, inForce = true): PublishedPair => ({
  celsius,
  seconds,
  reference: source,
  inForce,
});

/** Printed °C of the table; the regulation is a set of steps and is not interpolated. */
const foodCode: readonly PublishedPair[] = [
  pair(63, 180, 'FDA Food Code 2022, 3-401.11(A)(2)'),
  pair(66, 60, 'FDA Food Code 2022, 3-401.11(A)(2)'),
  pair(68, 17, 'FDA Food Code 2022, 3-401.11(A)(2)'),
  pair(70, 0, 'FDA Food Code 2022, 3-401.11(A)(2)'),
];

const custard: readonly PublishedPair[] = [pair(71, 0, 'FDA advice for a cooked egg base with sugar, 160 °F')];

const frozenDessertMix: readonly PublishedPair[] = [
  pair(69, 1800, 'Grade "A" Pasteurized Milk Ordinance, eggnog and frozen dessert mix'),
  pair(80, 25, 'Grade "A" Pasteurized Milk Ordinance, eggnog and frozen dessert mix'),
  pair(83, 15, 'Grade "A" Pasteurized Milk Ordinance, eggnog and frozen dessert mix'),
];

/** °F of the table as exact °C. */
const fahrenheit = (degrees: number): number => ((degrees - 32) * 5) / 9;

const formerRow = (medium: EggMedium, sugarFrom: number, sugarBelow: number, degrees: number, minutes: number) => ({
  medium,
  sugarFrom,
  sugarBelow,
  celsius: fahrenheit(degrees),
  seconds: minutes * 60,
});

const formerEggProducts = [
  formerRow('white', 0, 2, 134, 3.5),
  formerRow('white', 0, 2, 132, 6.2),
  formerRow('whole egg', 0, 2, 140, 3.5),
  formerRow('whole egg', 2, 12, 142, 3.5),
  formerRow('whole egg', 2, 12, 140, 6.2),
  formerRow('yolk', 0, 2, 142, 3.5),
  formerRow('yolk', 0, 2, 140, 6.2),
  formerRow('yolk', 2, 100, 146, 3.5),
  formerRow('yolk', 2, 100, 144, 6.2),
];
