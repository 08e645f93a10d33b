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
  for (const [key, { kind, text }] of byKey()) {
    const farness = farnessOf(wanted, key);
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
}

let index: ReadonlyMap<string, Entry> | undefined;

/** Made at the first look-up: a program that reads no ingredient pays nothing. */
function byKey(): ReadonlyMap<string, Entry> {
  index ??= new Map(
    allKinds().flatMap((kind) => [kind.name, ...kind.synonyms].map((text) => [nameKey(text), { kind, text }] as const)),
  );
  return index;
}

/** Letters that differ, or, where one name's words are all in the other, a little more than a misspelling; null when far. */
function farnessOf(wanted: string, key: string): number | null {
  const allowed = Math.max(1, Math.floor(Math.min(wanted.length, key.length) / 3));
  const slips = distance(wanted, key, allowed);
  if (slips <= allowed) return slips;
  const [few, many] = wanted.length < key.length ? [wanted, key] : [key, wanted];
  const words = many.split(' ');
  const shared = few.split(' ');
  return few.length > 2 && shared.every((word) => words.includes(word)) ? longestName + words.length - shared.length : null;
}
