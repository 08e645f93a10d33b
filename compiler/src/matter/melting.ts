/**
 * Melting: how much of milk fat and cocoa butter is solid at a temperature, and the heat a mixture holds, melting included.
 *
 * Formula: H(t) = Σ m ∫cp dt (thermal.ts) - solid fat · heat of fusion - ice · 333.6 J/g (freezing.ts); 0 J is everything
 *   liquid at 0 °C.
 * Source: milk fat, typical solid fat content by NMR (from memory; within the 50-66 % at 5 °C and 15-30 % at 20 °C measured over
 *   two years at 19 sites, "Australian milk fat", abstract), heat of fusion 80.8 J/g (Abd El-Rahman, Shalabi & Kilara 1998,
 *   Milchwissenschaft 53:77). Cocoa butter in form V, solid fat content of West African butter (from memory), melted out at 36.3
 *   °C (form VI, Wille & Lutton 1966), heat of fusion 137 J/g (from memory). Ice 333.6 J/g (CRC Handbook).
 * Range: -40-150 °C, fat that has had hours to crystallise. Error: ±8 points of solid fat (season, feed, origin), ±15 % of the
 *   heat of cocoa butter. Other fats count as liquid at every temperature: too low by up to 110 J/g for hard plant fats.
 */
import type { Composition } from './composition.ts';
import { type Curve, inverse, valueAt } from './curve.ts';
import { iceGrams } from './freezing.ts';
import { heatAboveZero, heatCapacityOf, sensibleHeat } from './thermal.ts';

/** Whether the fat has crystallised as far as it will at its temperature, or is all still melted. */
export type FatState = 'crystallised' | 'melted';

/** Error of either solid share, as a share. */
export const solidFatError = 0.08;

/** J/g of wholly solid fat. */
export const heatOfFusion = { milkFat: 80.8, cocoaButter: 137, ice: 333.6 } as const;

/** Solid share (0-1) of milk fat that was kept at a temperature. */
export const solidMilkFat = (celsius: number): number => valueAt(milkFatCurve, celsius) / 100;

/** Solid share (0-1) of cocoa butter that was kept, tempered, at a temperature. */
export const solidCocoaButter = (celsius: number): number => valueAt(cocoaButterCurve, celsius) / 100;

/** Heat in J that a mixture, given in grams, holds above itself at 0 °C and all liquid; rises with temperature. */
export const enthalpy = (c: Composition, celsius: number, fat: FatState = 'crystallised'): number => enthalpyOf(c)(celsius, fat);

/** `enthalpy` of one mixture at many temperatures. */
export function enthalpyOf(c: Composition): (celsius: number, fat: FatState) => number {
  const capacity = heatCapacityOf(c);
  return (celsius, fat) => {
    const ice = iceGrams(c, celsius);
    const asIce = ice === 0 ? 0 : ice * (heatAboveZero('ice', celsius) - heatAboveZero('water', celsius) - heatOfFusion.ice);
    return sensibleHeat(capacity, celsius) + asIce - (fat === 'melted' ? 0 : fusionOfFat(c, celsius));
  };
}

/** Heat in J that the solid fat of a mixture took to melt, kept at a temperature. */
export function fusionOfFat({ milkFat, cocoaButter }: Composition, celsius: number): number {
  const ofMilkFat = milkFat === 0 ? 0 : milkFat * solidMilkFat(celsius) * heatOfFusion.milkFat;
  return cocoaButter === 0 ? ofMilkFat : ofMilkFat + cocoaButter * solidCocoaButter(celsius) * heatOfFusion.cocoaButter;
}

/** Temperature in °C at which a mixture holds so much heat, between -60 and 300 °C. */
export function temperatureAt(c: Composition, joules: number, fat: FatState = 'crystallised'): number {
  const heat = enthalpyOf(c);
  return inverse((celsius) => heat(celsius, fat), joules, -60, 300);
}

const milkFatCurve: Curve = [
  [-40, 100],
  [0, 60],
  [5, 55],
  [10, 45],
  [15, 32],
  [20, 20],
  [25, 12],
  [30, 6],
  [35, 1],
  [40, 0],
];

const cocoaButterCurve: Curve = [
  [-20, 100],
  [0, 92],
  [20, 76],
  [25, 70],
  [30, 45],
  [35, 1],
  [36.3, 0],
];
