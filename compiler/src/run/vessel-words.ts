/** Which nouns are vessels, and in which of them one thing comes to lie on another. */
import { isVesselNoun, singularNoun } from 'nappe-grammar';

/** The noun in the singular where the name is a vessel's, else null. */
export const vesselNounOf = (key: string): string | null => (isVesselNoun(key) ? singularNoun(key) : null);

/** Vessels to work in: what is put into them does not lie on what was there before. */
const working: ReadonlySet<string> = new Set([
  'bowl',
  'pan',
  'saucepan',
  'piping bag',
  'siphon',
  'plate',
  'box',
  'sheet',
  'mat',
  'pot',
]);

export const stacksIn = (noun: string): boolean => !working.has(noun.slice(noun.lastIndexOf(' ') + 1)) && !working.has(noun);
