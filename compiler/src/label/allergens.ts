/**
 * Allergens that a region's rules ask for, and how they are named there.
 *
 * EU: Regulation 1169/2011, Annex II. US: FALCPA 2004 and the FASTER Act 2021; FDA guidance of January 2025 names the tree nuts.
 */
import type { Allergen } from '../catalogue/kind.ts';
import type { Region } from './model.ts';

const eu: Readonly<Record<Allergen, string>> = {
  gluten: 'gluten',
  wheat: 'wheat',
  crustacean: 'crustaceans',
  egg: 'egg',
  fish: 'fish',
  peanut: 'peanut',
  soy: 'soya',
  milk: 'milk',
  almond: 'almond',
  hazelnut: 'hazelnut',
  walnut: 'walnut',
  cashew: 'cashew',
  pecan: 'pecan',
  'brazil-nut': 'Brazil nut',
  pistachio: 'pistachio',
  macadamia: 'macadamia',
  celery: 'celery',
  mustard: 'mustard',
  sesame: 'sesame',
  sulphite: 'sulphites',
  lupin: 'lupin',
  mollusc: 'molluscs',
};

/** Gluten of other cereals, celery, mustard, lupin, molluscs and sulphites are no major allergens there. */
const notInUs: ReadonlySet<Allergen> = new Set(['gluten', 'celery', 'mustard', 'lupin', 'mollusc', 'sulphite']);

/** The name on the label; null where the region does not ask for it. */
export function allergenName(allergen: Allergen, region: Region): string | null {
  if (region === 'eu') return eu[allergen];
  if (notInUs.has(allergen)) return null;
  return allergen === 'soy' ? 'soy' : allergen === 'crustacean' ? 'crustacean shellfish' : eu[allergen];
}

/** Names of one ingredient's allergens; wheat says that it is gluten's cereal, so gluten is not named beside it. */
export function allergenNames(allergens: readonly Allergen[], region: Region): readonly string[] {
  const asked = allergens.includes('wheat') ? allergens.filter((allergen) => allergen !== 'gluten') : allergens;
  return asked.flatMap((allergen) => allergenName(allergen, region) ?? []);
}
