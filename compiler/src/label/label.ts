/** Makes a label: the declaration of what a formula makes, for the European Union or the United States. */

import { cautionsOf as cardCautions } from '../card/cautions.ts';
import { measuresFor } from '../card/measures.ts';
import { allergensOf, nutritionOf } from '../card/nutrition.ts';
import { nutritionTable } from '../card/nutrition-table.ts';
import type { Order } from '../card/order.ts';
import { perishable } from '../card/reasons.ts';
import { plain } from '../card/text.ts';
import { inForce } from '../resolve/choices.ts';
import { containsOf, ingredientsOf } from './ingredients.ts';
import type { Declared, Label, Region } from './model.ts';

export interface LabelOptions {
  readonly region: Region;
  /** ISO 8601: the day it is made. */
  readonly made: string;
  readonly checked?: boolean;
}

export function labelOf(order: Order, { region, made, checked = true }: LabelOptions): Label {
  const { context, formula, selection, makes } = order;
  const { run, language } = context;
  const measures = measuresFor(language, region === 'us' ? 'both' : 'metric');
  const nutrition = nutritionOf(run, makes);
  const ingredients = ingredientsOf(order, region);
  const keeps = inForce(formula.keeps, selection);
  return {
    file: order.positions.fileOf(formula.place),
    formula: plain(formula.name),
    region,
    choices: selection,
    checked,
    ingredients,
    unknown: allergensOf(run).unknown,
    contains: containsOf(order, region),
    nutrition: nutritionTable({ nutrition, makes, units: region === 'us' ? 'us' : 'metric' }, language, measures),
    netGrams: makes.grams,
    netQuantity: quantityOf(order, region),
    storage: keeps
      ? language.keeping(measures.duration(keeps.seconds), keeps.celsius ? measures.temperature(keeps.celsius) : null)
      : null,
    made,
    lastDay: keeps ? dayAfter(made, Math.floor(keeps.seconds.low / 86_400)) : null,
    perishable: run.result !== null && perishable(run.result) && !((keeps?.celsius?.high ?? 0) <= -15),
    toFill: toFill(region, keeps !== null, nutrition.per100g === null),
    cautions: [
      ...cautionsOf(ingredients, region),
      ...cardCautions(run, new Set()).map((key) => language.cautions[key](measures.degrees)),
    ],
  };
}

/** Of one piece where pieces are counted. */
function quantityOf({ makes, context: { run, language } }: Order, region: Region): string | null {
  const grams = makes.grams ?? 0;
  if (grams <= 0 || !run.result) return null;
  const measures = measuresFor(language, region === 'us' ? 'both' : 'metric');
  const { count } = makes;
  return count !== null && count > 1 ? `${measures.roughMass(grams / count)} each` : measures.roughMass(grams);
}

/** So many days later, ISO 8601; null for what is no date. */
function dayAfter(day: string, days: number): string | null {
  const time = Date.parse(`${day}T00:00:00Z`);
  return Number.isFinite(time) ? new Date(time + days * 86_400_000).toISOString().slice(0, 10) : null;
}

function toFill(region: Region, keeps: boolean, unknown: boolean): readonly string[] {
  return [
    'name and address of the business',
    ...(region === 'eu' ? ['lot number'] : []),
    ...(keeps ? [] : ['how it is kept, and its date: “keeps” is not written in the formula']),
    ...(unknown ? ['nutrition: the composition of an ingredient is not known'] : []),
    ...(region === 'us'
      ? ['what of the Nutrition Facts is not computed: trans fat, cholesterol, added sugars, vitamins and minerals']
      : []),
  ];
}

function cautionsOf(ingredients: readonly Declared[], region: Region): readonly string[] {
  const compounds = ingredients.filter(({ compound }) => compound).map(({ name }) => name);
  return [
    'The seller answers for this label: it is a draft, computed from a catalogue and from what the formula says. Check it against the packs you used and against the local food law before anything is sold.',
    'The dates follow the formula’s own “keeps”; only a shelf-life test shows that they hold.',
    'Allergens are those of the ingredients as named. What your supplier’s packets say, and what a kitchen carries over (“may contain”), is yours to add.',
    ...(compounds.length > 0
      ? [
          `Made of several ingredients, each with a list of its own that belongs in brackets behind its name, from its packet: ${compounds.join(', ')}.`,
        ]
      : []),
    ...(region === 'eu'
      ? ['Percentages stand at ingredients that the name or a choice promises; a picture or a word on the pack may ask for more.']
      : ['Sulfites from 10 mg/kg are to be declared as an ingredient.']),
  ];
}
