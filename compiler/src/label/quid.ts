/**
 * Which ingredients need their percentage beside the name.
 *
 * Regulation (EU) 1169/2011, Article 22 and Annex VIII: those that appear in the name of the food or are emphasised. Taken here as those
 * one of whose words stands in the formula's title or in a choice in force. Small amounts for flavour (below 2 %: steeped things, waters,
 * extracts, alcohols) are exempt (Annex VIII, 1(a)(iii); the 2 % is common practice, no source). American rules ask for none.
 */
import { nameKey } from 'nappe-grammar';
import type { Kind, Trait } from '../catalogue/kind.ts';
import type { Formula, Selection } from '../resolve/model.ts';

/** Words that the title and the choices promise. */
export function promisedWords({ name, choices }: Formula, selection: Selection): ReadonlySet<string> {
  const title = wordsOf(name);
  const last = title.at(-1);
  const dish = title.length > 1 && last !== undefined && dishes.has(last) ? title.slice(0, -1) : title;
  const chosen = choices.flatMap((choice) => wordsOf(selection[choice.name] ?? ''));
  const said = [...dish, ...chosen].filter((word) => word.length > 2 && !empty.has(word));
  return new Set(said.flatMap((word) => [word, ...(understood[word] ?? [])]));
}

/** `names`: everything the ingredient is called, in the formula and in the catalogue. */
export function isPromised(names: readonly string[], kind: Kind | null, percent: number, promised: ReadonlySet<string>): boolean {
  if (!names.some((name) => wordsOf(name).some((word) => promised.has(word) && !empty.has(word)))) return false;
  const flavour = kind?.traits.some((trait) => flavours.has(trait)) || /\b(?:extract|flavour|oil)\b/u.test(kind?.name ?? '');
  return !(flavour && percent < 2);
}

/** What people take a word to promise (Article 22(1)(a); from common use, no source). */
const understood: Readonly<Record<string, readonly string[]>> = {
  ganache: ['chocolate'],
  choc: ['chocolate'],
  praline: ['hazelnut', 'almond'],
  mocha: ['coffee', 'chocolate'],
  frangipane: ['almond'],
};

/** Without a plural's s. */
const wordsOf = (text: string): readonly string[] =>
  nameKey(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => (word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word));

/** Last words of a title that name the dish rather than promise an ingredient: pastry cream, mirror glaze. */
const dishes: ReadonlySet<string> = new Set([
  'cream',
  'custard',
  'glaze',
  'sugar',
  'syrup',
  'paste',
  'cake',
  'water',
  'butter',
  'cheese',
]);

/** Words that tell nothing of what is in it. */
const empty: ReadonlySet<string> = new Set([
  ...[
    'and',
    'with',
    'the',
    'of',
    'for',
    'from',
    'water',
    'powder',
    'fresh',
    'fine',
    'whole',
    'dark',
    'white',
    'brown',
    'purée',
    'puree',
  ],
  ...[
    'juice',
    'zest',
    'flour',
    'syrup',
    'sugar',
    'paste',
    'raw',
    'cold',
    'leaf',
    'glass',
    'mould',
    'cut',
    'black',
    'green',
    'red',
  ],
]);

const flavours: ReadonlySet<Trait> = new Set(['infusable', 'alcohol', 'water']);
