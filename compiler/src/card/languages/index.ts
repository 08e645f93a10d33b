/** The languages a card can be printed in, one row a language. */
import { german } from './de.ts';
import { english } from './en.ts';
import { french } from './fr.ts';
import type { Language } from './language.ts';

export const languages: readonly Language[] = [english, french, german];

/** By BCP 47 code, its region ignored (`fr-CA` is `fr`); null where there is none. */
export function languageFor(code: string): Language | null {
  const [primary = ''] = code.toLowerCase().split(/[-_]/u);
  return languages.find((language) => language.code === primary) ?? null;
}

/** By the exact code of a card. */
export const languageOf = (code: string): Language => languageFor(code) ?? english;

export type { Language } from './language.ts';
