/**
 * Starch: the temperature at which each class swells, thickens, and has thickened all it will.
 *
 * Source: gelatinisation ranges after BeMiller & Whistler, Starch (from memory; editions differ by a few degrees); pasting
 *   temperatures, where viscosity rises, a food-network encyclopaedia; the temperature that counts as cooked is common practice, no
 *   source: near 95 °C cereal starch is fully swollen; a custard with yolk must get hot enough to end the yolk's amylase, for which
 *   no published figure with sugar and starch was found (64.4 °C for 2.5 min in plain egg, Shrimpton 1962; 88 °C in kitchen writing).
 * Range: water in excess, neutral, little sugar. Error: ±3 K; sugar raises all of them, 10 K and more at 50 %.
 */
import { type Interval, interval } from '../quantities/interval.ts';

export type StarchClass = 'cereal' | 'root' | 'waxy';

export type StarchName = 'corn' | 'wheat' | 'rice' | 'potato' | 'tapioca' | 'waxy maize';

export interface StarchRow {
  readonly class: StarchClass;
  /** °C over which granules lose their order. */
  readonly gelatinisation: Interval;
  /** °C at which the mixture thickens; null where no figure is known. */
  readonly pasting: Interval | null;
}

export const starches: Readonly<Record<StarchName, StarchRow>> = {
  corn: { class: 'cereal', gelatinisation: interval(62, 72), pasting: interval(75, 80) },
  wheat: { class: 'cereal', gelatinisation: interval(52, 66), pasting: interval(80, 85) },
  rice: { class: 'cereal', gelatinisation: interval(61, 78), pasting: null },
  potato: { class: 'root', gelatinisation: interval(56, 68), pasting: interval(60, 65) },
  tapioca: { class: 'root', gelatinisation: interval(52, 70), pasting: interval(65, 70) },
  'waxy maize': { class: 'waxy', gelatinisation: interval(63, 72), pasting: interval(65, 70) },
};

/** °C to which a mixture thickened with such a starch must come: 93 cereal, 82 root and waxy, at least 88 with egg yolk in it. */
export const cookedFrom = (starch: StarchClass, withYolk: boolean): number =>
  Math.max(starch === 'cereal' ? 93 : 82, withYolk ? 88 : 0);
