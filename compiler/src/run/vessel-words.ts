/** Which nouns are vessels, and in which of them one thing comes to lie on another. */
import { isVesselNoun, singularNoun } from 'nappe-grammar';

/** The noun in the singular where the name is a vessel's, else null. */
export const vesselNounOf = (key: string): string | null => (isVesselNoun(key) ? singularNoun(key) : null);

/** Tools that matter only passes through: what is put into them does not lie on what was there before. */
const passing: ReadonlySet<string> = new Set(['piping bag', 'siphon']);

export const stacksIn = (noun: string): boolean => !passing.has(noun);
