/** Custard told from dough, sponge and batter, by composition: what sets by its egg is read at its core, what bakes dry through is not. */
import { type Interval, middle } from '../quantities/interval.ts';
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
  const flour = gramsWith(body, 'flour', 'wheat flour', 'nut flour', 'crumbs', 'baked');
  if (flour > 0.05 * mass || body.composition.starch > 0.03 * mass) return false;
  return egg >= 0.05 * mass && egg <= 0.8 * mass && body.composition.water >= 0.4 * mass;
}

/** Seconds in the oven that heat a meringue through (pies of meringue are baked a quarter of an hour; from memory). */
const throughAfter = 900;

/** Whether this is a meringue only browned: whites and sugar, in the oven for a written time too short to heat it through. */
export function isBrownedMeringue(body: Matter, duration: Interval | null): boolean {
  if (duration === null || duration.high >= throughAfter || !body.foam?.kind.endsWith('white')) return false;
  return gramsWith(body, 'egg white', 'sugar', 'icing sugar', 'syrup', 'water') >= 0.85 * middle(body.grams);
}
