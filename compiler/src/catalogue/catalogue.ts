/** The catalogue: every kind by name and synonym, and the nearest names to one that is not there. */
import { distance, nameKey } from 'nappe-grammar';
import { alcohol } from './alcohol.ts';
import { aromatics } from './aromatics.ts';
import { chocolate } from './chocolate.ts';
import { dairy } from './dairy.ts';
import { eggs } from './eggs.ts';
import { fats } from './fats.ts';
import { flours } from './flours.ts';
import { fruit } from './fruit.ts';
import { gelling } from './gelling.ts';
import type { Kind } from './kind.ts';
import { leavening } from './leavening.ts';
import { nuts } from './nuts.ts';
import { sugars } from './sugars.ts';
import { sundries } from './sundries.ts';

export interface Family {
  readonly name: string;
  readonly kinds: readonly Kind[];
}

/** The catalogue in the order a reference page prints it. */
export const families: readonly Family[] = [
  { name: 'dairy', kinds: dairy },
  { name: 'eggs', kinds: eggs },
  { name: 'sugars', kinds: sugars },
  { name: 'flours and starches', kinds: flours },
  { name: 'fats', kinds: fats },
  { name: 'chocolate and cocoa', kinds: chocolate },
  { name: 'nuts and seeds', kinds: nuts },
  { name: 'fruit', kinds: fruit },
  { name: 'gelling and thickening', kinds: gelling },
  { name: 'alcohol', kinds: alcohol },
  { name: 'aromatics', kinds: aromatics },
  { name: 'leavening, acids and salt', kinds: leavening },
  { name: 'sundries', kinds: sundries },
];

/** Every kind, in the order of the families. */
export const allKinds = (): readonly Kind[] => families.flatMap((family) => family.kinds);

/** The kind of that name or synonym, compared whole by name key; null where there is none. No plural is guessed. */
export const findKind = (name: string): Kind | null => byKey().get(nameKey(name))?.kind ?? null;

/**
 * Up to `most` names of the catalogue that `name` may have meant, one a kind, the nearest first: misspellings, then names
 * that share all their words with it. The spelling that came nearest is what is given, be it a synonym.
 */
export function nearestKinds(name: string, most = 3): readonly string[] {
  const wanted = nameKey(name);
  if (wanted === '' || wanted.length > longestName || byKey().has(wanted)) return [];
  const best = new Map<Kind, { text: string; farness: number }>();
  const words = wanted.split(' ');
  const letters = lettersOf(wanted);
  for (const [key, entry] of byKey()) {
    const farness = farnessOf(wanted, words, letters, key, entry);
    const { kind, text } = entry;
    if (farness !== null && farness < (best.get(kind)?.farness ?? Number.POSITIVE_INFINITY)) best.set(kind, { text, farness });
  }
  return [...best.values()]
    .sort((a, b) => a.farness - b.farness || (a.text < b.text ? -1 : 1))
    .slice(0, most)
    .map(({ text }) => text);
}

/** A longer name is not a misspelling of any kind's. */
const longestName = 60;

interface Entry {
  readonly kind: Kind;
  readonly text: string;
  readonly words: readonly string[];
  readonly letters: number;
}

let index: ReadonlyMap<string, Entry> | undefined;

/** Made at the first look-up: a program that reads no ingredient pays nothing. */
function byKey(): ReadonlyMap<string, Entry> {
  index ??= new Map(
    allKinds().flatMap((kind) =>
      [kind.name, ...kind.synonyms].map((text) => {
        const key = nameKey(text);
        return [key, { kind, text, words: key.split(' '), letters: lettersOf(key) }] as const;
      }),
    ),
  );
  return index;
}

/** Letters that differ, or, where one name's words are all in the other, more than any misspelling; null when far. */
function farnessOf(wanted: string, words: readonly string[], letters: number, key: string, entry: Entry): number | null {
  const allowed = Math.max(1, Math.floor(Math.min(wanted.length, key.length) / 3));
  // A slip changes at most two of the letters a name is made of: most names are told apart by that alone.
  if (Math.abs(wanted.length - key.length) <= allowed && bits(letters ^ entry.letters) <= 2 * allowed) {
    const slips = distance(wanted, key, allowed);
    if (slips <= allowed) return slips;
  }
  const [few, many] = wanted.length < key.length ? [words, entry.words] : [entry.words, words];
  const shared = few.length <= many.length && Math.min(wanted.length, key.length) > 2 && few.every((word) => many.includes(word));
  return shared ? longestName + many.length - few.length : null;
}

/** One bit a letter, a to z; what is no such letter has none. */
function lettersOf(key: string): number {
  let letters = 0;
  for (let at = 0; at < key.length; at++) {
    const code = key.charCodeAt(at) - 97;
    if (code >= 0 && code < 26) letters |= 1 << code;
  }
  return letters;
}

function bits(of: number): number {
  let count = 0;
  for (let left = of; left !== 0; left &= left - 1) count++;
  return count;
}
