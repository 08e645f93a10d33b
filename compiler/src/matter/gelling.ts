/**
 * Gelling agents beside gelatin: how hot each must have been to dissolve, and how much of the whole makes a gel.
 *
 * Source: agar dissolves in boiling water, sets at 32-43 °C and melts again only near 85 °C (McGee 2004, On Food and Cooking; from
 *   memory); carrageenan from 75 °C, gellan from 90 °C, and the shares: common practice, no source. High-methoxyl pectin gels by sugar
 *   and acid, from 55 % of solids and below pH 3.5 (textbooks of confectionery; from memory).
 * Range: sweet, watery mixtures of a dessert. Error: ±3 K; strengths of one agent differ by half between makers.
 */
import { type Interval, interval } from '../quantities/interval.ts';

export type Agent = 'agar' | 'carrageenan' | 'gellan' | 'high-methoxyl pectin' | 'low-methoxyl pectin';

export interface GellingAgent {
  /** °C it must have reached to dissolve; null where a mixture that is cooked as usual does. */
  readonly dissolvesFrom: number | null;
  /** What to heat it to, °C. */
  readonly advised: Interval | null;
  /** Mass % of the gelled mass. */
  readonly share: Interval;
}

export const gellingAgents: Readonly<Record<Agent, GellingAgent>> = {
  agar: { dissolvesFrom: 90, advised: interval(92, 95), share: interval(0.2, 1.5) },
  carrageenan: { dissolvesFrom: 75, advised: interval(80, 85), share: interval(0.05, 1) },
  gellan: { dissolvesFrom: 90, advised: interval(92, 95), share: interval(0.05, 0.5) },
  'high-methoxyl pectin': { dissolvesFrom: null, advised: null, share: interval(0.7, 1.5) },
  'low-methoxyl pectin': { dissolvesFrom: null, advised: null, share: interval(0.5, 1.5) },
};

/** °C below which agar has begun to set, so that stirring and folding break its gel for good. */
export const agarSetsBelow = 38;

/** What high-methoxyl pectin needs to gel. */
export const highMethoxylNeeds = { solidsPercent: 55, pH: 3.5 } as const;
