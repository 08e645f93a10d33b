/** How rules look at a fold: which party is the foam, what kind of base it goes into, and what decides how warm that may be. */
import { middle } from '../quantities/interval.ts';
import type { Foam, Input, Matter, StepRecord } from '../run/trace.ts';
import { massOf, shareOfTraits, traitsOf } from './look.ts';

/** Base (what a foam goes into) and foam, whichever took the other in. */
export interface Fold {
  readonly base: Input;
  readonly foam: Input;
}

/** The pairs of foam and base that met; where both hold a foam, each is once the base of the other. */
export function pairsOf(record: StepRecord): readonly Fold[] {
  const parties = record.inputs.filter((input) => input.role !== 'with' && middle(input.matter.grams) > 0);
  return parties.flatMap((foam) =>
    foam.matter.foam === null ? [] : parties.filter((base) => base !== foam).map((base) => ({ base, foam })),
  );
}

/** The one pair of a fold: the base is what holds no foam, or less of one; null where nothing was folded or no foam was there. */
export function foldOf(record: StepRecord): Fold | null {
  if (record.step.node.verb !== 'fold') return null;
  const pairs = pairsOf(record);
  return pairs.find(({ base }) => base.matter.foam === null) ?? pairs.find(({ base }) => base.role === 'base') ?? null;
}

/** Whipped cream of milk or plants; the air of cream lives in its fat. */
export const isCream = (foam: Foam | null): foam is Foam => foam?.kind === 'cream' || foam?.kind === 'plant cream';

/** Whipped whites, however sugared and heated. */
export const isWhites = (foam: Foam | null): foam is Foam =>
  foam?.kind === 'french white' || foam?.kind === 'swiss white' || foam?.kind === 'italian white';

/** Cream that holds coconut fat, which is liquid from about 24 °C. */
export const isCoconut = (matter: Matter): boolean => shareOfTraits(matter, 'coconut') > 0.25;

export type ChocolateBase = 'dark' | 'milk' | 'white';

/** Cocoa butter, share of the base, from which the chocolate in it sets it (common practice, no source). */
const setsFrom: Readonly<Record<ChocolateBase, number>> = { dark: 0.12, milk: 0.06, white: 0.06 };

/** The chocolate that rules a melted base, where its cocoa butter is enough to; null where it is not. */
export function chocolateBaseOf(matter: Matter): ChocolateBase | null {
  if (matter.chocolate === 'none' || matter.chocolate === 'solid') return null;
  const kind = mostChocolate(matter);
  return kind !== null && cocoaButterShare(matter) >= setsFrom[kind] ? kind : null;
}

export const cocoaButterShare = (matter: Matter): number => matter.composition.cocoaButter / massOf(matter);

/** The kind of chocolate there is most of; cocoa mass and cocoa butter count as dark. */
export function mostChocolate(matter: Matter): ChocolateBase | null {
  const grams = { dark: 0, milk: 0, white: 0 };
  for (const part of matter.parts) {
    const traits = traitsOf(part);
    if (traits.includes('dark chocolate') || traits.includes('cocoa mass')) grams.dark += part.grams;
    if (traits.includes('milk chocolate')) grams.milk += part.grams;
    if (traits.includes('white chocolate')) grams.white += part.grams;
  }
  const [kind, most] = (Object.entries(grams) as [ChocolateBase, number][]).reduce((a, b) => (b[1] > a[1] ? b : a));
  return most > 0 ? kind : null;
}

/** Starch from which a cooked cream holds by itself, share of the mass; °C from which it counts as cooked (starch.ts). */
const bound = { share: 0.02, celsius: 80 } as const;

/** A cream bound by cooked starch: smooth or firm, it takes a foam. */
export function isStarchBound(matter: Matter): boolean {
  let starch = 0;
  for (const part of matter.parts) {
    const { substance } = part.line;
    const holds = substance.is === 'kind' && traitsOf(part).some((trait) => starchy.has(trait));
    if (holds && (part.baked || part.reached >= bound.celsius)) starch += part.grams * (substance.kind.composition?.starch ?? 0);
  }
  return starch / massOf(matter) >= bound.share;
}

const starchy: ReadonlySet<string> = new Set(['flour', 'wheat flour', 'cereal starch', 'root starch', 'waxy starch']);

/** A base that a set gel or chocolate does not spoil: bound by starch, smoothed since it cooled, or a foam itself. */
export const takesFoamCold = (base: Matter): boolean => isStarchBound(base) || base.smoothed || base.foam !== null;
