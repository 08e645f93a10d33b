/** The catalogue: every kind by name and synonym, and the nearest names to one that is not there. */
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

/** The kind of that name or synonym, compared whole after folding; no plural is guessed. */
export const findKind = (name: string): Kind | undefined => byKey().get(foldName(name));

/** Up to `count` kinds whose names come nearest to `name`, the nearest first: misspellings, then names that share its words. */
export function nearestKinds(name: string, count: number): readonly Kind[] {
  const wanted = foldName(name);
  if (wanted === '' || wanted.length > longestName) return [];
  const best = new Map<Kind, number>();
  for (const [key, kind] of byKey()) {
    const distance = farness(wanted, key);
    if (distance !== null && distance < (best.get(kind) ?? Number.POSITIVE_INFINITY)) best.set(kind, distance);
  }
  return [...best]
    .sort(([a, near], [b, far]) => near - far || (a.name < b.name ? -1 : 1))
    .slice(0, count)
    .map(([kind]) => kind);
}

/** How names are compared: case, spaces, Unicode form and the typographic apostrophe fold. */
export const foldName = (name: string): string =>
  name.normalize('NFC').replaceAll('’', "'").trim().replace(/\s+/gu, ' ').toLowerCase();

/** A longer name is not a misspelling of any kind's. */
const longestName = 60;

let index: ReadonlyMap<string, Kind> | undefined;

function byKey(): ReadonlyMap<string, Kind> {
  index ??= new Map(allKinds().flatMap((kind) => [kind.name, ...kind.synonyms].map((name) => [foldName(name), kind] as const)));
  return index;
}

/** Letters that differ, or, where one name's words are all in the other, a little more than a misspelling; null when far. */
function farness(wanted: string, key: string): number | null {
  const allowed = Math.max(1, Math.floor(Math.min(wanted.length, key.length) / 3));
  const letters = Math.abs(wanted.length - key.length) > allowed ? null : letterDistance(wanted, key, allowed);
  if (letters !== null) return letters;
  const [few, many] = wanted.length < key.length ? [wanted, key] : [key, wanted];
  const words = many.split(' ');
  return few.length > 2 && few.split(' ').every((word) => words.includes(word)) ? 4 + words.length : null;
}

/** Letters to change, add, drop or swap with their neighbour; null where more than `allowed`. */
function letterDistance(from: string, to: string, allowed: number): number | null {
  let before: number[] = [];
  let previous = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let least = Math.min(previous[column]! + 1, current[column - 1]! + 1, previous[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]) {
        least = Math.min(least, before[column - 2]! + 1);
      }
      current.push(least);
    }
    if (Math.min(...current) > allowed) return null;
    before = previous;
    previous = current;
  }
  const distance = previous[to.length]!;
  return distance <= allowed ? distance : null;
}
