/**
 * Chocolate: melting, cooling and working temperatures by kind, what water does to it, and ganache as an emulsion.
 *
 * Source: windows are the hull of McGee 2004, On Food and Cooking, a couverture maker's book and an appliance manual, which
 *   overlap for dark and milk; for white they do not (cool to 24-25 or 26-27 °C). Polymorphs of cocoa butter: Wille & Lutton 1966,
 *   J. Am. Oil Chem. Soc. Limits of heat for unmixed chocolate, seizing and ganache are common practice, no source.
 * Range: couverture with its usual milk fat; milk fat lowers every figure. Error: ±1 K; seizing between 0.5 and 2 % of water.
 */
import { type Interval, interval } from '../quantities/interval.ts';
import { type Composition, fatOf, nothing, sugarsOf } from './composition.ts';
import { solubility, syrupDensity } from './sugar.ts';
import { density } from './thermal.ts';

export type ChocolateKind = 'dark' | 'milk' | 'white';

export interface ChocolateWindows {
  /** °C to which it is melted so that no crystal is left. */
  readonly melt: Interval;
  /** °C to which it is cooled to form crystals. */
  readonly cool: Interval;
  /** °C at which it is dipped, coated and moulded. */
  readonly work: Interval;
  /** °C above which, unmixed, it scorches or thickens. */
  readonly hottest: number;
}

export const chocolateWindows: Readonly<Record<ChocolateKind, ChocolateWindows>> = {
  dark: { melt: interval(45, 55), cool: interval(28, 29), work: interval(31, 32), hottest: 55 },
  milk: { melt: interval(40, 50), cool: interval(27, 28), work: interval(29, 31), hottest: 50 },
  white: { melt: interval(40, 50), cool: interval(24, 27), work: interval(27, 30), hottest: 50 },
};

/** Melting points in °C of the crystal forms of cocoa butter; tempering leaves form V alone. */
export const polymorphs = { I: 17.3, II: 23.3, III: 25.5, IV: 27.3, V: 33.8, VI: 36.3 } as const;

/** Water, % of melted chocolate and water together, between which the chocolate seizes: less does nothing, more makes a sauce. */
export const seizing: Interval = interval(1, 15);

/** Whether melted chocolate seizes with so much water. */
export function seizes(chocolateGrams: number, waterGrams: number): boolean {
  const percent = (100 * waterGrams) / (chocolateGrams + waterGrams);
  return percent >= seizing.low && percent <= seizing.high;
}

/** Fat over fat plus water at which a ganache for piping or moulding holds together. */
export const ganacheFatShare: Interval = interval(0.25, 0.6);

/** °C at which a ganache is emulsified: warmer than its fat sets, cooler than it parts. */
export const ganacheCelsius: Interval = interval(32, 60);

/** Fat over fat plus water (0-1); null for a mixture with neither. */
export function fatShareOfEmulsion(c: Composition): number | null {
  const both = fatOf(c) + c.water;
  return both > 0 ? fatOf(c) / both : null;
}

/**
 * Share (0-1) of the emulsion's volume that is fat, the syrup around it being water and as much of the sugars as water holds at 20
 * °C (solubility of sucrose): sweet chocolate makes more syrup of the same water. Null for a mixture with neither. Estimate, ±0.03.
 */
export function fatVolumeOfEmulsion(c: Composition): number | null {
  const most = solubility(20) / 100;
  const sugars = Math.min(sugarsOf(c), (c.water * most) / (1 - most));
  const syrup = c.water + sugars;
  const fat = density({ ...nothing, cocoaButter: 1 }, 20);
  const millilitres = fatOf(c) / fat;
  const around = syrup > 0 ? syrup / syrupDensity((100 * sugars) / syrup) : 0;
  return millilitres + around > 0 ? millilitres / (millilitres + around) : null;
}
