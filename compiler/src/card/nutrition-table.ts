/** The nutrition table of a card: EU order and rounding, or the US panel's on US units; a plain table of our own. */
import type { EuNutrient, NutritionFacts, UsNutrient } from '../matter/nutrition.ts';
import { roundEu, roundUs, sodiumOf } from '../matter/nutrition.ts';
import type { Language, NutritionRow } from './languages/language.ts';
import type { Measures } from './measures.ts';
import type { Card } from './model.ts';

export interface NutritionTable {
  readonly columns: readonly string[];
  readonly rows: readonly { readonly name: string; readonly inner: boolean; readonly cells: readonly string[] }[];
  readonly remark: string | null;
}

/** Null where the figures are not known. */
export function nutritionTable(
  card: Pick<Card, 'nutrition' | 'makes' | 'units'>,
  language: Language,
  measures: Measures,
): NutritionTable | null {
  const { per100g, perPortion, portionGrams } = card.nutrition;
  if (!per100g) return null;
  const noun = card.makes.noun ? language.noun(card.makes.noun, 1) : null;
  const portion =
    perPortion && portionGrams !== null
      ? { title: language.perPiece(noun, measures.roughMass(portionGrams)), facts: perPortion }
      : null;
  if (card.units === 'us') return usTable(portion ?? { title: language.labels.per100, facts: per100g }, language);
  return euTable([{ title: language.labels.per100, facts: per100g }, ...(portion ? [portion] : [])], language);
}

interface Column {
  readonly title: string;
  readonly facts: NutritionFacts;
}

/** Regulation (EU) 1169/2011, Annex XV; fibre is an optional row. */
function euTable(columns: readonly Column[], language: Language): NutritionTable {
  const rows: readonly (readonly [NutritionRow, EuNutrient, boolean])[] = [
    ['fat', 'fat', false],
    ['saturates', 'saturates', true],
    ['carbohydrate', 'carbohydrate', false],
    ['sugars', 'sugars', true],
    ['fibre', 'fibre', false],
    ['protein', 'protein', false],
    ['salt', 'salt', false],
  ];
  const energy = columns.map(({ facts }) => `${roundEu('kJ', facts.kJ)} kJ / ${roundEu('kcal', facts.kcal)} kcal`);
  return {
    columns: columns.map(({ title }) => title),
    rows: [
      { name: language.labels.rows.energy, inner: false, cells: energy },
      ...rows.map(([row, nutrient, inner]) => ({
        name: language.labels.rows[row],
        inner,
        cells: columns.map(({ facts }) => `${decimal(roundEu(nutrient, facts[nutrient]), language)} g`),
      })),
    ],
    remark: null,
  };
}

/** 21 CFR 101.9(c), what can be computed of it; total carbohydrate has the fibre in, and calories count it. */
function usTable({ title, facts }: Column, language: Language): NutritionTable {
  const { us } = language.labels;
  const rows: readonly (readonly [string, UsNutrient, number, string, boolean])[] = [
    [us.fat, 'fat', facts.fat, 'g', false],
    [us.saturates, 'saturated', facts.saturates, 'g', true],
    [us.sodium, 'sodium', sodiumOf(facts.salt), 'mg', false],
    [us.carbohydrate, 'carbohydrate', facts.carbohydrate + facts.fibre, 'g', false],
    [us.fibre, 'fibre', facts.fibre, 'g', true],
    [us.sugars, 'sugars', facts.sugars, 'g', true],
    [us.protein, 'protein', facts.protein, 'g', false],
  ];
  const calories = facts.kcal + 2 * facts.fibre;
  return {
    columns: [title],
    rows: [
      { name: us.calories, inner: false, cells: [roundUs('calories', calories)] },
      ...rows.map(([name, nutrient, amount, unit, inner]) => ({
        name,
        inner,
        cells: [`${decimal(roundUs(nutrient, amount), language).replace('less than', us.lessThan)} ${unit}`],
      })),
    ],
    remark: us.notStated,
  };
}

const decimal = (figure: string, language: Language): string => figure.replace('.', language.decimal).replace('<', '< ');
