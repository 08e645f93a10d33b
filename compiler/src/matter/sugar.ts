/**
 * Sugar: boiling point of a syrup against its concentration, solubility, density, Baumé, and the trade's stages.
 *
 * Boiling: a_w · p_water(t) = p_air, with ln γ_w = Q/(R T) · x² (1 + a x + b x²), x the mole fraction of sucrose, Q = -17638
 *   J/mol, a = -1.0038, b = -0.24653 (Starzak & Peacock 1997, Zuckerindustrie 122:380). Range 0-98 % sucrose; above, it is an
 *   extrapolation and no longer a safe guide. Error ±1.5 K to 95 %, ±4 K to 98 %. Glucose, fructose and invert sugar in it
 *   count as glucose (Norrish) in the same water: an estimate, ±4 K; for glucose syrup it reads too high.
 * Solubility: w = 64.447 + 0.08222 t + 1.66169e-3 t² - 1.558e-6 t³ - 4.63e-8 t⁴, mass % of sucrose, 0-100 °C (Vavrinecz; from
 *   memory). It is chosen among the published ones because it gives the usual 67.5 % at 25 °C and stays within 1.5 % of a
 *   refiner's handbook; Mohos 2010 reads 1-2 % higher at 20-40 °C and up to 3.5 % lower at 60-100 °C (g per 100 g of water).
 * Density: ρ20 = 998.20 + 385.18 w + 135.37 w² + 40.93 w³ - 3.96 w⁴ + 13.49 w⁵ - 17.29 w⁶, kg/m³, w the mass share (ICUMSA
 *   SPS-4, at 20 °C; from memory, within 0.05 % of NIST Circular 440), away from 20 °C as Choi & Okos expand. Range 0-95 %.
 * Baumé: 145 - 145/ρ, the American modulus, ρ relative to water at 20 °C.
 */
import type { Interval } from '../quantities/interval.ts';
import { nothing } from './composition.ts';
import { inverse } from './curve.ts';
import { molarMassOfWater, norrish, solutes } from './norrish.ts';
import { airPressure, vapourPressure } from './steam.ts';
import { density } from './thermal.ts';

/** Grams of water, sucrose and other sugars, all dissolved; a `Composition` is one. */
export interface Syrup {
  readonly water: number;
  readonly sucrose: number;
  readonly otherSugars: number;
}

/** What a tradition means by a stage, in °C at sea level. */
export interface StageRange {
  readonly tradition: 'McGee 2004' | 'United States confectionery' | 'classical French';
  readonly name: string;
  readonly celsius: Interval;
}

/** Most concentrated sucrose solution the boiling point is stated for, mass %. */
export const mostConcentrated = 98;

/** Boiling point in °C of a sucrose solution of so many mass %; for invert and glucose in it see `boilingPointOfSyrup`. */
export const boilingPoint = (percent: number, altitudeMetres = 0): number =>
  boilingPointOfSyrup({ water: 100 - percent, sucrose: percent, otherSugars: 0 }, altitudeMetres);

/** Boiling point in °C of a syrup; as water's where nothing is dissolved, 250 where no water is left. */
export function boilingPointOfSyrup(syrup: Syrup, altitudeMetres = 0): number {
  const pressure = airPressure(altitudeMetres);
  return inverse((celsius) => waterActivityOfSyrup(syrup, celsius) * vapourPressure(celsius), pressure, 0, 250);
}

/** Mass % of sucrose in a syrup that boils at so many °C; 0 at water's boiling point and below. */
export const concentrationAt = (celsius: number, altitudeMetres = 0): number =>
  percentBoilingAt((percent) => ({ water: 100 - percent, sucrose: percent, otherSugars: 0 }), celsius, altitudeMetres, 0, 99.5);

/** Grams of water left with these sugars once they have been boiled to so many °C; Infinity where that is no boil. */
export function waterLeft(sugars: Omit<Syrup, 'water'>, celsius: number, altitudeMetres = 0): number {
  const grams = sugars.sucrose + sugars.otherSugars;
  const syrupAt = (percent: number): Syrup => ({ ...sugars, water: (grams * (100 - percent)) / percent });
  const least = 0.001;
  const percent = grams <= 0 ? least : percentBoilingAt(syrupAt, celsius, altitudeMetres, least, 99.9);
  return percent <= least ? Number.POSITIVE_INFINITY : (grams * (100 - percent)) / percent;
}

/** The concentration whose vapour, at that boil, just reaches the pressure of the air: more sugar lowers it. */
const percentBoilingAt = (
  syrupAt: (percent: number) => Syrup,
  celsius: number,
  altitudeMetres: number,
  low: number,
  high: number,
): number =>
  inverse(
    (percent) => -waterActivityOfSyrup(syrupAt(percent), celsius),
    -airPressure(altitudeMetres) / vapourPressure(celsius),
    low,
    high,
  );

/** Activity of the water in a syrup near its boiling point (0-1); 0 where there is none. */
export function waterActivityOfSyrup({ water, sucrose, otherSugars }: Syrup, celsius: number): number {
  if (water <= 0) return 0;
  const moles = sucrose / solutes.sucrose.molarMass;
  const x = moles / (moles + water / molarMassOfWater);
  const exponent = (-17_638 / (8.314 * (celsius + 273.15))) * x ** 2 * (1 - 1.0038 * x - 0.24653 * x ** 2);
  return (1 - x) * Math.exp(exponent) * norrish('glucose', otherSugars, water);
}

/** Most sucrose a solution holds, mass %, held at 0 and 100 °C beyond them. */
export function solubility(celsius: number): number {
  const t = Math.min(100, Math.max(0, celsius));
  return 64.447 + 0.08222 * t + 1.66169e-3 * t ** 2 - 1.558e-6 * t ** 3 - 4.63e-8 * t ** 4;
}

/** Density in g/ml of a sucrose solution of so many degrees Brix (mass %). */
export function syrupDensity(brix: number, celsius = 20): number {
  const w = brix / 100;
  const at20 = [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289].reduce((sum, b, i) => sum + b * w ** (i + 1), waterAt20);
  const solution = { ...nothing, water: 100 - brix, sucrose: brix };
  return ((at20 / 1000) * density(solution, celsius)) / density(solution, 20);
}

/** Degrees Brix of a sucrose solution of so many g/ml at 20 °C; 0 for water and what is lighter. */
export const brixOf = (gramsPerMillilitre: number): number => inverse((brix) => syrupDensity(brix), gramsPerMillilitre, 0, 100);

/** Degrees Baumé (modulus 145) of so many degrees Brix, at 20 °C. */
export const baume = (brix: number): number => 145 - 145 / ((syrupDensity(brix) * 1000) / waterAt20);

/** Degrees Brix of so many degrees Baumé (modulus 145), at 20 °C. */
export const brixOfBaume = (degrees: number): number => brixOf(((145 / (145 - degrees)) * waterAt20) / 1000);

/**
 * Every published range of a stage of boiled sugar; empty for a word that is none. `caramel` means any caramel, `thread` and
 * the other English words include what the French tradition calls by them. A reading published alone stands for itself.
 */
export function stageRanges(name: string): readonly StageRange[] {
  const words = name
    .trim()
    .toLowerCase()
    .replaceAll('-', ' ')
    .replaceAll(/\s+/g, ' ')
    .replace(/ stage$/, '');
  return stages.filter((stage) => stage.name === words || stage.also.includes(words));
}

const waterAt20 = 998.2023;

/**
 * McGee: On Food and Cooking, 2004 (his hard-ball misprint of 240 °F put right). United States: confectionery table with 80,
 * 85, 87, 90, 95 and 99 % sugar. Classical: Escoffier's tradition. The same word is up to 10 K apart between them.
 */
const stages: readonly (StageRange & { readonly also: readonly string[] })[] = [
  ...rows('McGee 2004', [
    ['thread', 102, 113, 'filé'],
    ['soft ball', 113, 116, 'petit boulé'],
    ['firm ball', 118, 121, 'boulé'],
    ['hard ball', 121, 130, 'grand boulé'],
    ['soft crack', 132, 143, 'petit cassé'],
    ['hard crack', 149, 154, 'grand cassé', 'cassé'],
    ['light caramel', 170, 170, 'caramel'],
    ['medium caramel', 180, 182, 'caramel'],
    ['dark caramel', 188, 190, 'caramel'],
    ['black caramel', 210, 210],
  ]),
  ...rows('United States confectionery', [
    ['thread', 110, 112, 'filé'],
    ['soft ball', 112, 116, 'petit boulé'],
    ['firm ball', 118, 120, 'boulé'],
    ['hard ball', 121, 130, 'grand boulé'],
    ['soft crack', 132, 143, 'petit cassé'],
    ['hard crack', 146, 154, 'grand cassé', 'cassé'],
    ['light caramel', 160, 170, 'caramel', 'clear liquid'],
  ]),
  ...rows('classical French', [
    ['small thread', 103, 103, 'thread', 'petit filé', 'filé'],
    ['large thread', 107, 107, 'thread', 'grand filé', 'filé'],
    ['soft ball', 115, 115, 'petit boulé'],
    ['hard ball', 121, 121, 'grand boulé'],
    ['soft crack', 141, 141, 'petit cassé'],
    ['hard crack', 157, 157, 'grand cassé', 'cassé'],
    ['medium caramel', 182, 182, 'caramel'],
  ]),
];

/** Every word `stageRanges` knows, for proposals. */
export const stageNames: readonly string[] = [...new Set(stages.flatMap((stage) => [stage.name, ...stage.also]))];

function rows(tradition: StageRange['tradition'], table: [name: string, low: number, high: number, ...also: string[]][]) {
  return table.map(([name, low, high, ...also]) => ({ tradition, name, celsius: { low, high }, also }));
}
