/** How rules look at what spoils: egg or dairy with water to spare, not sour, not baked dry. */
import { mixturePH } from '../matter/acidity.ts';
import { waterActivity } from '../matter/water-activity.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter } from '../run/trace.ts';
import { massOf, shareOfTraits } from './look.ts';

/** Food Code 2022, 1-201.10: above 0.92 of water activity and from pH 4.2 up it needs time and temperature control for safety. */
const limits = { waterActivity: 0.92, pH: 4.2 } as const;

/** Less egg and dairy than this does not make a preserve or a syrup perishable (common practice, no source). */
const leastShare = 0.05;

/** Certainly so: an estimate that leaves a doubt, or much of unknown composition, says nothing. */
export function isPerishable(matter: Matter): boolean {
  return bodiesOf(matter).some(
    (body) =>
      !body.baked &&
      body.unknownGrams < 0.2 * massOf(body) &&
      shareOfTraits(body, ...spoiling) >= leastShare &&
      (waterActivity(body.composition)?.low ?? 0) > limits.waterActivity &&
      (sourest(body) ?? 7) >= limits.pH,
  );
}

const spoiling = [
  ...(['whole egg', 'egg yolk', 'egg white'] as const),
  ...(['milk', 'cream', 'mascarpone', 'fresh cheese', 'cultured dairy'] as const),
] as const;

/** The lowest pH the mixture may have; a squeeze of lemon does not decide. */
function sourest(matter: Matter): number | null {
  const mass = massOf(matter);
  const parts = matter.parts
    .filter(({ grams }) => grams >= 0.02 * mass)
    .map(({ line, grams }) => ({
      grams,
      pH: line.pH ?? (line.substance.is === 'kind' ? line.substance.kind.pH : null),
    }));
  return mixturePH(parts)?.low ?? null;
}
