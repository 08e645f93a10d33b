/**
 * Allergens in the words of a region: which must be declared, what they are called, and which word of a name to set off.
 *
 * Regulation (EU) 1169/2011, Article 21 and Annex II. United States: FALCPA 2004, the FASTER Act 2021, and FDA's guidance on food
 * allergens, edition 5 of January 2025, whose twelve tree nuts include the pine nut and leave out coconut and chestnut.
 */
import type { Allergen, Kind } from '../catalogue/kind.ts';
import type { Region } from './model.ts';

export interface Named {
  readonly key: Allergen | 'pine-nut';
  /** As the region calls it: `milk`, `wheat`, `soya`. */
  readonly name: string;
}

/** What to declare for a kind, in the order of the list of allergens. */
export function allergensOfKind(kind: Kind, region: Region): readonly Named[] {
  const named = kind.allergens.flatMap((key): Named[] => {
    const name = nameFor(key, kind, region);
    return name === null ? [] : [{ key, name }];
  });
  return region === 'us' && kind.name === 'pine nut' ? [...named, { key: 'pine-nut', name: 'pine nuts' }] : named;
}

/** What stands after “Contains”: in the Union wheat, rye and their like as cereals with gluten, in America nuts after their group. */
export function containsNames(all: readonly Named[], region: Region): readonly Named[] {
  const once = all.filter(({ name }, index) => all.findIndex((other) => other.name === name) === index);
  if (region === 'eu') return once.map((one) => (cereals.has(one.name) ? { ...one, name: `gluten (${one.name})` } : one));
  return once.map((one) => (treeNuts.has(one.name) ? { ...one, name: `tree nuts (${one.name})` } : one));
}

const cereals: ReadonlySet<string> = new Set(['wheat', 'rye', 'oats', 'barley']);

/** `[before, allergen, after]` where the name already holds the word, else null: then the word is put behind it. */
export function setOff(name: string, word: string): readonly [string, string, string] | null {
  if (name.toLowerCase().length !== name.length) return null;
  const stem = word.endsWith('s') ? word.slice(0, -1) : word;
  const at = name.toLowerCase().indexOf(stem.toLowerCase());
  if (at < 0) return null;
  let end = at + stem.length;
  while (end < name.length && /\p{L}/u.test(name[end] ?? '')) end++;
  return [name.slice(0, at), name.slice(at, end), name.slice(end)];
}

function nameFor(allergen: Allergen, kind: Kind, region: Region): string | null {
  if (allergen === 'gluten') return region === 'us' || kind.allergens.includes('wheat') ? null : cerealOf(kind);
  return (region === 'us' ? american[allergen] : european[allergen]) ?? null;
}

/** The cereal itself is to be named (Annex II, point 1). */
function cerealOf({ name }: Kind): string {
  if (/\brye\b/u.test(name)) return 'rye';
  if (/\boats?\b|granola/u.test(name)) return 'oats';
  if (/malt|beer|barley|corn flakes/u.test(name)) return 'barley';
  return 'gluten';
}

const european: Readonly<Partial<Record<Allergen, string>>> = {
  wheat: 'wheat',
  crustacean: 'crustaceans',
  egg: 'egg',
  fish: 'fish',
  peanut: 'peanuts',
  soy: 'soya',
  milk: 'milk',
  almond: 'almonds',
  hazelnut: 'hazelnuts',
  walnut: 'walnuts',
  cashew: 'cashews',
  pecan: 'pecans',
  'brazil-nut': 'Brazil nuts',
  pistachio: 'pistachios',
  macadamia: 'macadamias',
  celery: 'celery',
  mustard: 'mustard',
  sesame: 'sesame',
  sulphite: 'sulphites',
  lupin: 'lupin',
  mollusc: 'molluscs',
};

/** The nine major allergens; the others are no majors and are read in the list of ingredients alone. */
const american: Readonly<Partial<Record<Allergen, string>>> = {
  wheat: 'wheat',
  crustacean: 'crustacean shellfish',
  egg: 'eggs',
  fish: 'fish',
  peanut: 'peanuts',
  soy: 'soy',
  milk: 'milk',
  almond: 'almonds',
  hazelnut: 'hazelnuts',
  walnut: 'walnuts',
  cashew: 'cashews',
  pecan: 'pecans',
  'brazil-nut': 'Brazil nuts',
  pistachio: 'pistachios',
  macadamia: 'macadamias',
  sesame: 'sesame',
};

const treeNuts: ReadonlySet<string> = new Set([
  ...['almonds', 'hazelnuts', 'walnuts', 'cashews', 'pecans', 'Brazil nuts', 'pistachios', 'macadamias', 'pine nuts'],
]);
