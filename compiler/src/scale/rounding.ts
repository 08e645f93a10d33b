/** Rounding to what a kitchen scale shows. */

/** The step of the scale at a load, in grams: 1 g; 0.1 g below 10 g; 0.01 g below 1 g. */
export function scaleStep(grams: number): number {
  const load = Math.abs(grams);
  return load < 1 ? 0.01 : load < 10 ? 0.1 : 1;
}

/** What the scale shows for a mass, in grams; off by no more than half a step. */
export function scaleGrams(grams: number): number {
  const perGram = Math.round(1 / scaleStep(grams));
  return Math.round(grams * perGram) / perGram;
}

/** By how much weighing the rounded amounts changes the total, as a signed share (0.01 = 1 %); 0 where there is nothing to weigh. */
export function roundingError(exact: readonly number[]): number {
  const total = exact.reduce((sum, grams) => sum + grams, 0);
  if (total <= 0) return 0;
  return exact.reduce((sum, grams) => sum + (scaleGrams(grams) - grams), 0) / total;
}

/** From here on the card shows the rounding error. */
export const notableRounding = 0.005;
