/**
 * Foam: how much air each kind of foam holds at each stage, what folding leaves of it, and the volume and density that follow.
 *
 * Formula: overrun % = 100 (V_foam - V_mix)/V_mix = 100 (m_mix - m_foam)/m_foam at equal volume; ρ_foam = ρ_mix/(1 + overrun/100)
 *   (Goff, University of Guelph).
 * Source of the figures: cream, up to double its volume (Gisslen, Professional Cooking), 98 % from USDA SR28 cup weights, at most
 *   141-216 % on test (Bruhn & Bruhn 1988, J. Dairy Sci. 71:857); egg white up to eight times its volume (Friberg); French meringue
 *   0.15-0.25 g/ml, Italian 0.25-0.35 g/ml (from memory); the split by peak and the other kinds are common practice, no source.
 * Range: foams without siphon or gas. Error: the intervals are meant to hold nine foams in ten; a machine, an old egg or a warm
 *   room leaves them.
 */
import { hull, type Interval, interval, positive, times } from '../quantities/interval.ts';

export type FoamKind = 'cream' | 'whole egg' | 'yolk' | 'french white' | 'swiss white' | 'italian white' | 'fat' | 'gelatin';

export type FoamStage = 'very soft' | 'soft' | 'medium' | 'stiff' | 'over' | 'ribbon';

/** Overrun in % of a foam whipped to a stage, or to anything between two stages. */
export function overrunAt(kind: FoamKind, stage: FoamStage, upTo: FoamStage = stage): Interval {
  const table = overruns[kind];
  return hull(table[stage] ?? table.any, table[upTo] ?? table.any);
}

/** Millilitres of a foam whipped from so many millilitres of mix. */
export const foamVolume = (mixMillilitres: number, overrunPercent: Interval): Interval => ({
  low: mixMillilitres * (1 + overrunPercent.low / 100),
  high: mixMillilitres * (1 + overrunPercent.high / 100),
});

/** Millilitres of gas in such a foam. */
export const gasVolume = (mixMillilitres: number, overrunPercent: Interval): Interval =>
  times(overrunPercent, mixMillilitres / 100);

/** Overrun in % of matter of so many millilitres without its gas. */
export const overrunOfGas = (gasMillilitres: Interval, mixMillilitres: number): Interval =>
  positive(times(gasMillilitres, 100 / mixMillilitres));

/** Millilitres of gas left in a mixture once a foam has been folded into it, or it into the foam. */
export function gasAfterFolding(kind: FoamKind, gasMillilitres: Interval): Interval {
  const kept = keptByFolding[kind];
  return { low: gasMillilitres.low * kept.low, high: gasMillilitres.high * kept.high };
}

/** Density in g/ml of a foam whose mix has so many g/ml. */
export const foamDensity = (mixDensity: number, overrunPercent: Interval): Interval => ({
  low: mixDensity / (1 + overrunPercent.high / 100),
  high: mixDensity / (1 + overrunPercent.low / 100),
});

/** Overrun in % from the weights of equal volumes of mix and foam. */
export const overrunOfWeights = (mixGrams: number, foamGrams: number): number => (100 * (mixGrams - foamGrams)) / foamGrams;

/** Fat a dairy cream needs to hold air, mass %: 30 (Gisslen; Penfield & Campbell); below 25 it will not (common practice). */
export const fatToWhip = { good: 30, least: 25 } as const;

/** Minutes a foam holds before it must be folded (common practice, no source); no entry: no limit known. */
export const holdsMinutes: Readonly<Partial<Record<FoamKind, number>>> = { cream: 45, 'french white': 5 };

/** `any` stands for a stage the kind has no own figure for. */
const overruns: Record<FoamKind, Partial<Record<FoamStage, Interval>> & { readonly any: Interval }> = {
  cream: {
    'very soft': interval(35, 75),
    soft: interval(60, 95),
    medium: interval(75, 115),
    stiff: interval(90, 140),
    over: interval(30, 110),
    any: interval(35, 140),
  },
  'whole egg': { ribbon: interval(200, 400), any: interval(150, 400) },
  yolk: { ribbon: interval(80, 200), any: interval(60, 250) },
  'french white': {
    'very soft': interval(200, 450),
    soft: interval(250, 550),
    medium: interval(300, 650),
    stiff: interval(350, 780),
    over: interval(200, 700),
    any: interval(200, 780),
  },
  'swiss white': {
    soft: interval(150, 350),
    medium: interval(200, 450),
    stiff: interval(250, 550),
    over: interval(200, 550),
    any: interval(150, 550),
  },
  'italian white': {
    soft: interval(150, 350),
    medium: interval(200, 400),
    stiff: interval(220, 450),
    over: interval(200, 450),
    any: interval(150, 450),
  },
  fat: { any: interval(20, 100) },
  gelatin: { any: interval(100, 350) },
};

/** Share of the gas a fold leaves (common practice, no source). */
const keptByFolding: Record<FoamKind, Interval> = {
  cream: interval(0.7, 0.97),
  'whole egg': interval(0.5, 0.9),
  yolk: interval(0.6, 0.95),
  'french white': interval(0.4, 0.9),
  'swiss white': interval(0.5, 0.95),
  'italian white': interval(0.55, 0.95),
  fat: interval(0.6, 0.97),
  gelatin: interval(0.6, 0.95),
};
