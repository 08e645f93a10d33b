/** How rules look at chocolate: how much of a mass it is, which kind leads, and the free water beside it. */

import type { ChocolateKind } from '../matter/chocolate.ts';
import { sugarsOf } from '../matter/composition.ts';
import type { Matter, Part } from '../run/trace.ts';
import { gramsOfTraits, massOf, shareOfTraits, traitsOf } from './look.ts';

const chocolateTraits = ['dark chocolate', 'milk chocolate', 'white chocolate', 'cocoa mass'] as const;

/** Chocolate and cocoa mass, as a share (0-1) of the mass. */
export const chocolateShare = (matter: Matter): number => shareOfTraits(matter, ...chocolateTraits);

export const gramsOfChocolate = (matter: Matter): number => gramsOfTraits(matter, ...chocolateTraits);

/** Nothing but chocolate, with cocoa butter at most (share of the mass that something else may have; what sticks to a spoon). */
const strangers = 0.03;

/** The kind that leads a mass of nothing but chocolate; null where something else is in it. */
export function unmixedKind(matter: Matter): ChocolateKind | null {
  const chocolate = gramsOfChocolate(matter);
  if (chocolate + gramsOfTraits(matter, 'cocoa butter') < (1 - strangers) * massOf(matter) || chocolate < 0.5 * massOf(matter))
    return null;
  const grams = {
    dark: gramsOfTraits(matter, 'dark chocolate', 'cocoa mass'),
    milk: gramsOfTraits(matter, 'milk chocolate'),
    white: gramsOfTraits(matter, 'white chocolate'),
  };
  if (grams.dark >= grams.milk && grams.dark >= grams.white) return 'dark';
  return grams.milk >= grams.white ? 'milk' : 'white';
}

/** Mass share of water from which a part counts as wet: nuts, biscuit, honey and syrups hold theirs. */
const wetFrom = 0.3;

export const isChocolate = (part: Part): boolean =>
  traitsOf(part).some((trait) => (chocolateTraits as readonly string[]).includes(trait));

/** What is beside the chocolate that could wet it: grams of free water, and of fat that would coat it. */
export function besideChocolate(matter: Matter): { readonly water: number; readonly fat: number } {
  let water = 0;
  let fat = 0;
  for (const part of matter.parts) {
    const composition = part.line.substance.is === 'kind' ? part.line.substance.kind.composition : null;
    if (!composition || isChocolate(part)) continue;
    if (composition.water >= wetFrom) water += composition.water * part.grams;
    fat += (composition.milkFat + composition.otherFat + composition.cocoaButter) * part.grams;
  }
  return { water, fat };
}

/** Raw or cooked egg, as a share (0-1) of the mass. */
export const eggShare = (matter: Matter): number => shareOfTraits(matter, 'whole egg', 'egg yolk', 'egg white');

/** Sugar in sugar and water together (0-1): how far a syrup is boiled. */
export const sugarOfSyrup = ({ composition }: Matter): number => {
  const sugars = sugarsOf(composition);
  return sugars / Math.max(1e-9, sugars + composition.water);
};
