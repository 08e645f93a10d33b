/**
 * Alcohol by volume, as labels have it, into mass share.
 *
 * Formula: w = v · ρ(ethanol) / ρ(liquid), the liquid's density from its ethanol–water part and its dissolved solids.
 * Source: density of ethanol–water at 20 °C, Perry's Chemical Engineers' Handbook (from memory; GNU units and CRC give pure
 *   ethanol 0.7893); dissolved sugar fills 0.62 ml/g (from memory, apparent specific volume of sucrose).
 * Range: 0–100 % by volume, up to 60 % solids, 20 °C. Error: ±0.2 points for spirits and wine, ±1 point for sweet liqueurs.
 */

/** g/ml at 20 °C, by mass % of ethanol in water. */
const densities: readonly (readonly [percent: number, density: number])[] = [
  [0, 0.9982],
  [5, 0.9894],
  [10, 0.9819],
  [15, 0.9751],
  [20, 0.9686],
  [25, 0.9617],
  [30, 0.9538],
  [35, 0.9449],
  [40, 0.9352],
  [45, 0.9247],
  [50, 0.9138],
  [60, 0.8911],
  [70, 0.8676],
  [80, 0.8434],
  [90, 0.818],
  [100, 0.7893],
];

const ethanol = 0.7893;
const sugarVolume = 0.62;

/**
 * Mass share of ethanol (0–1) and density (g/ml) of a liquid of so much alcohol by volume (%) and so many dissolved solids (0–1).
 * A share above 1 - solids says that there is no such liquid.
 */
export function volumeToMass(percentByVolume: number, solids: number): { readonly mass: number; readonly density: number } {
  const volume = percentByVolume / 100;
  let density = 1;
  // The two lean on each other; each round shrinks the error at least fourfold.
  for (let round = 0; round < 40; round++) {
    const mass = Math.min(1 - solids, (volume * ethanol) / density);
    density = 1 / ((1 - solids) / waterAndEthanol(mass / (1 - solids)) + solids * sugarVolume);
  }
  return { mass: (volume * ethanol) / density, density };
}

function waterAndEthanol(share: number): number {
  const percent = share * 100;
  const upper = Math.max(
    1,
    densities.findIndex(([at]) => at >= percent),
  );
  const [low, thin] = densities[upper - 1]!;
  const [high, thick] = densities[upper]!;
  return thin + ((percent - low) / (high - low)) * (thick - thin);
}
