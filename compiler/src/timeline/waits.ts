/** How long matter may stand between two steps, and whether it keeps until tomorrow. Limits are common practice, no source. */
import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import { type FoamKind, holdsMinutes } from '../matter/foam.ts';
import { clauseOf } from '../run/clauses.ts';
import type { Matter, StepRecord } from '../run/trace.ts';

/** Minutes that what `made` leaves may stand before `next` takes it; infinite where it keeps. */
export function mayStand(made: StepRecord, next: StepRecord): number {
  if (keepsOvernight(made)) return Number.POSITIVE_INFINITY;
  const { result } = made;
  if (result.foam && !isSet(result)) {
    // The foam goes on being whipped while the syrup cooks.
    if (clauseOf(next.step.node, 'while whipping')) return limits.whipping;
    return holdsMinutes[result.foam.kind as FoamKind] ?? limits.foam;
  }
  if (result.gelatin === 'bloomed') return limits.bloomed;
  // What is warmed again anyway may cool; chocolate, sugar and fat even set.
  if (warming.has(next.step.node.verb) && next.inputs.length === 1)
    return isStable(result) ? Number.POSITIVE_INFINITY : limits.other;
  return isWarm(result) && !isMeltedFat(result) ? limits.warm : limits.other;
}

const warming: ReadonlySet<string> = new Set(['heat', 'melt', 'boil', 'cook', 'reduce']);

/** Minutes. */
const limits = { warm: 15, foam: 20, whipping: 30, other: 45, bloomed: 60 } as const;

/** Cold, frozen, baked, or too sweet or dry to spoil: it is as good tomorrow. */
export function keepsOvernight({ result, step, surroundings }: StepRecord): boolean {
  if (result.frozen || result.baked) return true;
  const cold = result.heat.celsius.high <= coldCelsius;
  if (stayVerbs.has(step.node.verb) && (cold || (surroundings !== null && surroundings.high <= coldCelsius))) return true;
  if (result.foam && !isSet(result)) return false;
  return !isWarm(result) && isStable(result);
}

const stayVerbs: ReadonlySet<string> = new Set(['chill', 'freeze', 'rest', 'thaw', 'cool']);

const coldCelsius = 8;

const isSet = (matter: Matter): boolean => matter.gelatin === 'set' || matter.frozen || matter.baked;

/** Warmer than any kitchen: it cools as it stands. */
const isWarm = ({ heat }: Matter): boolean => heat.celsius.low > 26;

/** Melted butter stays melted for a while, wherever it stands. */
const isMeltedFat = ({ composition, chocolate }: Matter): boolean =>
  chocolate === 'none' && fatOf(composition) > 0.7 * total(composition);

/** Sifted flour, ground nuts and sugar, syrups of two parts of sugar to one of water. */
function isStable({ composition, grams, unknownGrams }: Matter): boolean {
  const mass = (grams.low + grams.high) / 2;
  if (mass <= 0 || unknownGrams > 0) return false;
  return composition.water / mass < 0.15 || sugarsOf(composition) >= 2 * composition.water;
}
