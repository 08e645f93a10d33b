/**
 * Freezing: the temperature at which ice begins to form in a mixture, and how much of its water is ice below it.
 *
 * Formula: ice and solution are in balance where the activity of the water (Norrish and Ross, norrish.ts) equals that of ice,
 *   ln a = (H - C·T0)/R · (1/T0 - 1/T) + C/R · ln(T/T0), heat of fusion H = 6008 J/mol, difference of molar heat capacity
 *   C = 38.1 J/(mol·K), T0 = 273.15 K (thermodynamics of water). As ice forms, what is left grows stronger. 0.4 g of water a gram
 *   of protein never freezes (ASHRAE Refrigeration, "Thermal Properties of Foods"), and nothing more freezes below -33 °C, where
 *   sugar solutions turn to glass (Levine & Slade; from memory). Other sugars are taken half as glucose, half as maltose.
 * Range: -40-0 °C. Error: freezing point ±0.4 K, ±1.5 K from 50 % of sugar; ice ±0.06 g a gram of mixture. Supercooling is not
 *   counted.
 */
import type { Composition } from './composition.ts';
import { inverse } from './curve.ts';
import { norrish } from './norrish.ts';

/** Temperature in °C at which the first ice forms, at most 0; -40 where there is no water or too much dissolved in it. */
export function freezingPoint(c: Composition): number {
  const free = freezable(c);
  return free <= 0 ? -40 : inverse(activityOfIce, activityWith(c, free), -40, 0);
}

/** Grams of ice in a mixture, given in grams, once it has come to balance at a temperature. */
export function iceGrams(c: Composition, celsius: number): number {
  const free = freezable(c);
  if (celsius >= 0 || free <= 0) return 0;
  const balance = activityOfIce(Math.max(glass, celsius));
  return free - inverse((water) => activityWith(c, water), balance, 0, free, 1e-9 * free);
}

const glass = -33;

/** Water that can freeze: what protein does not hold. */
const freezable = (c: Composition): number => Math.max(0, c.water - 0.4 * c.protein);

// Sucrose counts whole: in the cold it stays dissolved beyond its solubility.
function activityWith(c: Composition, water: number): number {
  if (water <= 0) return 0;
  const otherSugars = Math.sqrt(norrish('glucose', c.otherSugars, water) * norrish('maltose', c.otherSugars, water));
  return norrish('sucrose', c.sucrose, water) * otherSugars * norrish('alcohol', c.alcohol, water) * norrish('ash', c.ash, water);
}

/** Activity of ice against supercooled water of the same temperature (0-1). */
function activityOfIce(celsius: number): number {
  const t0 = 273.15;
  const t = celsius + t0;
  const r = 8.314;
  return Math.exp(((6008 - 38.1 * t0) / r) * (1 / t0 - 1 / t) + (38.1 / r) * Math.log(t / t0));
}
