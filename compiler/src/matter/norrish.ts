/**
 * Norrish's equation: how far one dissolved substance lowers the activity of water.
 *
 * Formula: a = X_w · exp(-K · X_s²), mole fractions, natural exponential (Norrish 1966; form as in Baeza et al. 2010,
 *   Food Bioprocess Technol. 3:87; Norrish printed K for powers of ten, 2.303 times smaller).
 * Source of K: sucrose 6.47 (Chirife et al. 1980, as public code has it); glucose 2.25, maltose 4.54 (from memory); fructose
 *   2.15 (published library); the salts of food have no K of their own and count as 20 mmol of ions a gram of ash, which gives
 *   milk and egg white their published freezing points.
 * Range: to saturation, 0-40 °C. Error: ±0.01.
 */

/** K and molar mass in g/mol; `ash` is per mole of ions. */
export const solutes = {
  sucrose: { k: 6.47, molarMass: 342.3 },
  glucose: { k: 2.25, molarMass: 180.16 },
  fructose: { k: 2.15, molarMass: 180.16 },
  maltose: { k: 4.54, molarMass: 342.3 },
  glycerol: { k: 1.16, molarMass: 92.1 },
  alcohol: { k: 0, molarMass: 46.07 },
  ash: { k: 0, molarMass: 50 },
} as const;

export type Solute = keyof typeof solutes;

export const molarMassOfWater = 18.015;

/** Activity of the water (0-1) in which so many grams of one substance are dissolved; 1 where there is no water to speak of. */
export function norrish(solute: Solute, soluteGrams: number, waterGrams: number): number {
  if (soluteGrams <= 0 || waterGrams <= 0) return 1;
  const { k, molarMass } = solutes[solute];
  const moles = soluteGrams / molarMass;
  const share = moles / (moles + waterGrams / molarMassOfWater);
  return (1 - share) * Math.exp(-k * share ** 2);
}
