/** Which nouns are vessels, and in which of them one thing comes to lie on another. */
import { isVesselNoun, singularNoun } from 'nappe-grammar';

/** The noun in the singular where the name is a vessel's, else null. */
export const vesselNounOf = (key: string): string | null => (isVesselNoun(key) ? singularNoun(key) : null);

/** Tools that matter only passes through: what is put into them does not lie on what was there before. */
const passing: ReadonlySet<string> = new Set(['piping bag', 'siphon']);

/** Vessels that things are stirred together in. */
const working: ReadonlySet<string> = new Set(['bowl', 'pan', 'saucepan']);

/** Whether what lies in such a vessel stays as it is when something is poured over it; null is no vessel. */
export const standsIn = (noun: string | null): boolean => noun !== null && stacksIn(noun) && !working.has(noun);

export const stacksIn = (noun: string): boolean => !passing.has(noun);

/** Whether two nouns are one in singular or plural: `bonbon` and `bonbons`, `éclair` and `éclairs`, `cherry` and `cherries`. */
export const sameNoun = (a: string, b: string): boolean => singulars(a).some((one) => singulars(b).includes(one));

function singulars(noun: string): readonly string[] {
  const found = [noun, singularNoun(noun)];
  if (noun.endsWith('s')) found.push(noun.slice(0, -1));
  if (noun.endsWith('es')) found.push(noun.slice(0, -2));
  if (noun.endsWith('ies')) found.push(`${noun.slice(0, -3)}y`);
  return found;
}
