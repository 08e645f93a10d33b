/**
 * Boiling: the boiling point of a mixture from what is dissolved in its water, and the hottest it can be written.
 *
 * Formula: it boils where a_w · p_water + x γ p_ethanol reaches the pressure of the air; sugars as in sugar.ts, ash by Norrish, x the
 *   mole share of ethanol with van Laar's coefficients ln γ1 = A/(1 + A x1/(B x2))², A = 1.6798, B = 0.9227 (Perry's Chemical Engineers'
 *   Handbook; from memory), ethanol's vapour by Antoine, log10(mmHg) = 8.20417 - 1642.89/(230.3 + t) (from memory).
 * Range: 60-150 °C, up to 98 % of sugar, water the phase that boils. Error: ±1.5 K, ±4 K with strong or invert syrups; a pan with
 *   little liquid shows more at its bottom than the liquid has.
 */
import { type Composition, fatOf, nothing, sugarsOf, total } from './composition.ts';
import { inverse } from './curve.ts';
import { molarMassOfWater, norrish, solutes } from './norrish.ts';
import { airPressure, standardPressure, vapourPressure } from './steam.ts';
import { waterActivityOfSyrup } from './sugar.ts';

/** Boiling point in °C of a mixture, given in grams; null where there is neither water nor alcohol to boil. */
export function boilingPointOf(c: Composition, altitudeMetres = 0): number | null {
  if (c.water + c.alcohol <= 0) return null;
  return inverse((celsius) => pressureOver(c, celsius), airPressure(altitudeMetres), 0, 250);
}

/**
 * Hottest temperature in °C a watery mixture can reach: its boiling point after losing nine tenths of its water and all alcohol.
 * Null where that sets no limit: fat outweighs water (butter browns), sugar is a third or more of sugar and water (syrup, jam and
 * caramel boil until they are sugar), or water is less than 30 % (doughs and pastes dry and brown).
 */
export function hottestPossible(c: Composition, altitudeMetres = 0): number | null {
  const sugarShare = sugarsOf(c) / (sugarsOf(c) + c.water);
  if (c.water < 0.3 * total(c) || c.water <= fatOf(c) || !(sugarShare < 1 / 3)) return null;
  return boilingPointOf({ ...c, water: c.water / 10, alcohol: 0 }, altitudeMetres);
}

const waterBoils = new Map<number, number>();

/** Boiling point in °C of water at an altitude. */
export function waterBoilsAt(altitudeMetres: number): number {
  let celsius = waterBoils.get(altitudeMetres);
  if (celsius === undefined) {
    celsius = boilingPointOf({ ...nothing, water: 1 }, altitudeMetres) ?? 100;
    waterBoils.set(altitudeMetres, celsius);
  }
  return celsius;
}

/** Vapour pressure in Pa over a mixture. */
function pressureOver(c: Composition, celsius: number): number {
  const ethanol = c.alcohol / solutes.alcohol.molarMass;
  const water = c.water / molarMassOfWater;
  const x = ethanol / (ethanol + water);
  const dissolved = waterActivityOfSyrup(c, celsius) * norrish('ash', c.ash, c.water);
  const waterPart = (1 - x) * activityCoefficient(0.9227, 1.6798, 1 - x) * dissolved * vapourPressure(celsius);
  const ethanolPart = x > 0 ? x * activityCoefficient(1.6798, 0.9227, x) * vapourPressureOfEthanol(celsius) : 0;
  return waterPart + ethanolPart;
}

/** Van Laar: γ of a component of mole share x with its own coefficient and the other's. */
function activityCoefficient(own: number, other: number, x: number): number {
  return x >= 1 ? 1 : Math.exp(own / (1 + (own * x) / (other * (1 - x))) ** 2);
}

const vapourPressureOfEthanol = (celsius: number): number =>
  (10 ** (8.20417 - 1642.89 / (230.3 + celsius)) * standardPressure) / 760;
