/**
 * Makes a label: ingredients in descending order through all bases, allergens set off, nutrition, storage, dates.
 *
 * Source: Regulation (EU) 1169/2011, Art. 18 (order by mass when put in), Art. 22 (quantity where the name of the food gives an
 * ingredient), Annex VII (water less what is lost), Annex II and XV; 21 CFR 101.4 (descending predominance), 101.9. What the rules ask
 * of a pack beyond that (name and address, net quantity's type size, lot) is the seller's.
 */
import { nameKey } from 'nappe-grammar';
import { languageOf } from '../card/languages/index.ts';
import { measuresFor } from '../card/measures.ts';
import type { Card } from '../card/model.ts';
import { nutritionTable } from '../card/nutrition-table.ts';
import { perishable } from '../card/reasons.ts';
import { plain } from '../card/text.ts';
import type { Allergen, Trait } from '../catalogue/kind.ts';
import { middle } from '../quantities/interval.ts';
import { holds } from '../resolve/choices.ts';
import type { SourceLine } from '../resolve/model.ts';
import type { Run } from '../run/trace.ts';
import { allergenName, allergenNames } from './allergens.ts';
import type { Label, LabelIngredient, Region } from './model.ts';

export function labelOf(run: Run, card: Card, region: Region, made: string): Label {
  const language = languageOf('en');
  const units = region === 'us' ? 'us' : 'metric';
  const allergens = new Set<Allergen>();
  for (const { line } of weighedLines(run))
    if (line.substance.is === 'kind') for (const allergen of line.substance.kind.allergens) allergens.add(allergen);
  const keeps = run.formula.keeps.find(({ condition }) => holds(condition, run.selection))?.value ?? null;
  return {
    file: card.file,
    formula: plain(run.formula.name),
    region,
    choices: run.selection,
    ingredients: ingredientsOf(run, region),
    contains: containsOf(allergens, region),
    unknown: card.allergens.unknown,
    netGrams: card.makes.grams,
    nutrition: nutritionTable({ ...card, units }, language, measuresFor(language, units)),
    storage: card.keeps,
    made,
    lastDay: keeps ? dayAfter(made, Math.floor(keeps.seconds.low / 86_400)) : null,
    perishable: run.result !== null && perishable(run.result),
    cautions: [
      'The seller answers for this label: check it against the packs you used and against the local food law before anything is sold.',
      'The dates follow the formula’s own “keeps”; only a shelf-life test shows that they hold.',
      ...card.cautions,
    ],
  };
}

/** Wheat is named as gluten's cereal where the region asks for gluten, as Annex II does. */
function containsOf(allergens: ReadonlySet<Allergen>, region: Region): Label['contains'] {
  const both = region === 'eu' && allergens.has('gluten') && allergens.has('wheat');
  return [...allergens].flatMap((key) => {
    const name = allergenName(key, region);
    if (name === null || (both && key === 'gluten')) return [];
    return [{ key, name: both && key === 'wheat' ? 'gluten (wheat)' : name }];
  });
}

/** What was weighed itself, bases taken apart; what only draws on another component is left out. */
const weighedLines = (run: Run) => run.blocks.flatMap(({ lines }) => lines).filter(({ line }) => line.substance.is === 'kind');

interface Sum {
  readonly name: string;
  grams: number;
  some: boolean;
  allergens: readonly Allergen[];
  traits: readonly Trait[];
  inFood: boolean;
  names: Set<string>;
}

function ingredientsOf(run: Run, region: Region): readonly LabelIngredient[] {
  const sums = new Map<string, Sum>();
  const inFood = new Set<SourceLine>((run.result?.parts ?? []).map(({ line }) => line));
  for (const { line, grams } of weighedLines(run)) {
    if (line.substance.is !== 'kind') continue;
    const { kind, known } = line.substance;
    const name = known ? kind.name : plain(line.label);
    const sum = sums.get(name) ?? {
      name,
      grams: 0,
      some: true,
      allergens: kind.allergens,
      traits: kind.traits,
      inFood: false,
      names: new Set<string>(),
    };
    sum.grams += middle(grams);
    sum.some &&= middle(grams) === 0;
    sum.inFood ||= inFood.has(line);
    for (const word of [line.label, line.name, kind.name]) sum.names.add(nameKey(word));
    sums.set(name, sum);
  }
  const water = sums.get('water');
  // Water counts as what is left of it (Annex VII, part A): what boils off is taken from added water first.
  if (water) water.grams = Math.max(0, water.grams - middle(run.result?.evaporated ?? { low: 0, high: 0 }));
  const list = [...sums.values()].filter(({ grams, some }) => grams > 0 || some);
  const total = list.filter((sum) => sum.inFood).reduce((grams, sum) => grams + sum.grams, 0);
  const words = namingWords(run);
  const order = (sum: Sum): number => (sum.inFood ? sum.grams : -1);
  return list
    .sort((a, b) => order(b) - order(a) || a.name.localeCompare(b.name))
    .map((sum) => ({
      name: sum.name,
      grams: sum.some ? null : sum.grams,
      percent: sum.inFood && !sum.some && total > 0 && namesIt(sum, words) ? (100 * sum.grams) / total : null,
      allergens: allergenNames(sum.allergens, region),
      compound: sum.traits.some((trait) => compounds.has(trait)),
      strained: !sum.inFood,
    }));
}

/** Kinds that come with a list of ingredients of their own. */
const compounds: ReadonlySet<Trait> = new Set([
  'dark chocolate',
  'milk chocolate',
  'white chocolate',
  'nut paste',
  'plant cream',
  'plant milk',
  'baked',
  'crumbs',
  'fresh cheese',
  'mascarpone',
  'leavening',
  'glitter',
  'gelatin mass',
]);

/** Words of the food's name and of the values chosen: what they name must say its share. */
function namingWords(run: Run): ReadonlySet<string> {
  const said = [run.formula.name, ...Object.values(run.selection)].map(nameKey).join(' ');
  return new Set(said.split(' ').flatMap((word) => (word.length >= 4 ? [singular(word)] : [])));
}

const namesIt = ({ names }: Sum, words: ReadonlySet<string>): boolean =>
  [...names].some((name) => name.split(' ').some((word) => word.length >= 4 && !general.has(word) && words.has(singular(word))));

/** Words that a name shares with many ingredients without naming one. */
const general: ReadonlySet<string> = new Set(['cream', 'whole', 'fresh', 'glaze', 'sugar', 'white', 'dark']);

const singular = (word: string): string => word.replace(/ies$/u, 'y').replace(/s$/u, '');

function dayAfter(day: string, days: number): string | null {
  const time = Date.parse(`${day}T00:00:00Z`);
  return Number.isFinite(time) ? new Date(time + days * 86_400_000).toISOString().slice(0, 10) : null;
}
