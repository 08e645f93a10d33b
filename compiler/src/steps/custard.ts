/** Custard told from dough, sponge and batter, by composition: what sets by its egg is read at its core, what bakes dry through is not. */
import { middle } from '../quantities/interval.ts';
import type { Matter } from '../run/trace.ts';
import { gramsWith } from './foams.ts';

/**
 * Whether a body of what is put in the oven is a custard that sets by its egg: watery, with egg but not egg alone, without air, with
 * hardly any flour, nut flour or crumb, and more than a wash brushed on (limits are common practice, no source).
 */
export function isBakedCustard(body: Matter, whole: Matter): boolean {
  if (middle(body.grams) < 0.1 * middle(whole.grams)) return false;
  if (body.foam !== null || body.phase === 'dough' || body.phase === 'batter' || body.baked) return false;
  const mass = Math.max(1e-9, middle(body.grams));
  const egg = gramsWith(body, 'whole egg', 'egg yolk', 'egg white');
  const flour = gramsWith(body, 'flour', 'wheat flour', 'nut flour', 'crumbs');
  return egg >= 0.05 * mass && egg <= 0.8 * mass && flour <= 0.05 * mass && body.composition.water >= 0.4 * mass;
}
