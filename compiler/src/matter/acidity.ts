/**
 * Acidity: what the pH of a mixture lies between, from the pH of its parts.
 *
 * Formula: at the lowest the pH of the sourest part. At the highest the mean of the parts' pH by mass, since what is sour in a kitchen
 *   (fruit, wine, cultured dairy) is the better buffered, plus 0.5 · log10 of how many times parts without a pH of their own (sugar,
 *   water, fat) dilute them, which is what dilution does to a weak acid.
 * Source: chemistry of weak acids (Henderson-Hasselbalch); the upper bound is an estimate, no source.
 * Range: pH 2-9, no baking soda and no strong acid or alkali. Error: the interval is meant to be wide; nothing sharper is claimed.
 */
import type { Interval } from '../quantities/interval.ts';

export interface AcidPart {
  readonly grams: number;
  /** Null for what has no pH of its own. */
  readonly pH: number | null;
}

/** Null where no part has a pH. */
export function mixturePH(parts: readonly AcidPart[]): Interval | null {
  const known = parts.filter((part): part is AcidPart & { readonly pH: number } => part.pH !== null && part.grams > 0);
  const knownGrams = known.reduce((sum, part) => sum + part.grams, 0);
  if (knownGrams <= 0) return null;
  const grams = parts.reduce((sum, part) => sum + Math.max(0, part.grams), 0);
  const low = Math.min(...known.map((part) => part.pH));
  const mean = known.reduce((sum, part) => sum + part.pH * part.grams, 0) / knownGrams;
  const diluted = mean + 0.5 * Math.log10(grams / knownGrams);
  return { low, high: mean >= 7 ? mean : Math.min(7, diluted) };
}
