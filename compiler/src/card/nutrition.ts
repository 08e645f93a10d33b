/** Nutrition figures and allergens of what a formula makes. */
import type { Allergen } from '../catalogue/kind.ts';
import { fatOf } from '../matter/composition.ts';
import { nutritionOfPortion, nutritionPer100g } from '../matter/nutrition.ts';
import { middle } from '../quantities/interval.ts';
import type { Run } from '../run/trace.ts';
import type { Language } from './languages/language.ts';
import type { Allergens, Makes, Nutrition } from './model.ts';
import { plain } from './text.ts';

/** Null where more than one per cent of what is served has no known composition: a table that leaves it out would be wrong. */
export function nutritionOf(run: Run, makes: Makes): Nutrition {
  const { result } = run;
  const unknown = unknownNames(run);
  const portionGrams = makes.grams !== null && makes.count !== null && makes.count > 0 ? makes.grams / makes.count : null;
  if (!result || middle(result.grams) <= 0 || result.unknownGrams > 0.01 * middle(result.grams))
    return { per100g: null, perPortion: null, portionGrams, unknown };
  let saturated = 0;
  let salt = 0;
  for (const { line, grams } of result.parts) {
    if (line.substance.is !== 'kind') continue;
    const { kind } = line.substance;
    saturated += grams * (kind.composition ? fatOf(kind.composition) : 0) * kind.saturated;
    salt += grams * kind.salt;
  }
  const per100g = nutritionPer100g(result.composition, saturated, salt);
  return { per100g, perPortion: portionGrams === null ? null : nutritionOfPortion(per100g, portionGrams), portionGrams, unknown };
}

/** Mass % of what is served, for the data; empty where there is nothing. */
export function compositionPercent(run: Run): Readonly<Record<string, number>> {
  const { result } = run;
  const grams = result ? middle(result.grams) : 0;
  if (!result || grams <= 0) return {};
  const c = result.composition;
  const figures = {
    water: c.water,
    fat: fatOf(c),
    milkFat: c.milkFat,
    cocoaButter: c.cocoaButter,
    sugars: c.sucrose + c.otherSugars,
    sucrose: c.sucrose,
    starch: c.starch,
    protein: c.protein,
    fibre: c.fibre,
    ash: c.ash,
    alcohol: c.alcohol,
  };
  return Object.fromEntries(Object.entries(figures).map(([name, amount]) => [name, Math.round((1000 * amount) / grams) / 10]));
}

/** From every line weighed, also what is only strained out or dusted with. */
export function allergensOf(run: Run): Allergens {
  const found = new Set<Allergen>();
  for (const { line } of run.blocks.flatMap((block) => block.lines))
    if (line.substance.is === 'kind') for (const allergen of line.substance.kind.allergens) found.add(allergen);
  return {
    contains: order.filter((allergen) => found.has(allergen)),
    unknown: unknownNames(run),
    claims: run.formula.freeFrom.map(({ allergen }) => allergen),
  };
}

/** As a list of words; gluten and wheat together are one entry. */
export function allergenWords(allergens: readonly (Allergen | 'nuts')[], language: Language): string {
  const both = allergens.includes('gluten') && allergens.includes('wheat');
  return allergens
    .flatMap((allergen) =>
      both && allergen === 'gluten' ? [] : [both && allergen === 'wheat' ? language.glutenOfWheat : language.allergen(allergen)],
    )
    .join(', ');
}

function unknownNames(run: Run): readonly string[] {
  const lines = run.blocks.flatMap((block) => block.lines).map(({ line }) => line);
  return [
    ...new Set(lines.filter(({ substance }) => substance.is === 'kind' && !substance.known).map(({ label }) => plain(label))),
  ];
}

/** Regulation (EU) 1169/2011, Annex II. */
const order: readonly Allergen[] = [
  'gluten',
  'wheat',
  'crustacean',
  'egg',
  'fish',
  'peanut',
  'soy',
  'milk',
  'almond',
  'hazelnut',
  'walnut',
  'cashew',
  'pecan',
  'brazil-nut',
  'pistachio',
  'macadamia',
  'celery',
  'mustard',
  'sesame',
  'sulphite',
  'lupin',
  'mollusc',
];
