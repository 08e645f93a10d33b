/** The card as data for other programs: the published shape of `card --to json`, version 1. */
import type { NutritionFacts } from '../matter/nutrition.ts';
import type { Card, CardIngredient, CardStep } from './model.ts';

export function cardJson(card: Card): object {
  return {
    version: 1,
    file: card.file,
    formula: card.formula,
    by: card.by,
    edition: card.edition,
    choices: card.choices,
    language: card.language,
    units: card.units,
    checked: card.checked,
    diagnostics: card.diagnostics,
    allowed: card.allowed.map(({ file, line, code, reason }) => ({ file, line, code, reason })),
    factor: card.factor,
    makes: card.makes,
    components: card.components.map(({ name, from, grams, ingredients, steps }) => ({
      name,
      from,
      grams,
      ingredients: ingredients.map(ingredientJson),
      steps: steps.map(stepJson),
    })),
    compositionPercent: card.compositionPercent,
    allergens: { contains: card.allergens.contains, unknown: card.allergens.unknown },
    nutrition: {
      per100g: figures(card.nutrition.per100g),
      perPortion: card.nutrition.perPortion ? figures(card.nutrition.perPortion) : {},
    },
    keeps: card.keeps,
    cautions: card.cautions,
  };
}

const ingredientJson = ({ line, name, kind, exactGrams, grams, written, percent, notes }: CardIngredient): object => ({
  line,
  name,
  kind,
  exactGrams,
  grams,
  written,
  percent,
  notes,
});

const stepJson = ({ line, verb, text, celsius, seconds, critical, waiting, notes }: CardStep): object => ({
  line,
  verb,
  text,
  celsius,
  seconds,
  critical,
  waiting,
  notes,
});

/** Unrounded beyond a hundredth; null where the composition of something is not known. */
function figures(facts: NutritionFacts | null): object {
  const figure = (value: number | undefined): number | null => (value === undefined ? null : Math.round(value * 100) / 100);
  return {
    kJ: figure(facts?.kJ),
    kcal: figure(facts?.kcal),
    fat: figure(facts?.fat),
    saturates: figure(facts?.saturates),
    carbohydrate: figure(facts?.carbohydrate),
    sugars: figure(facts?.sugars),
    protein: figure(facts?.protein),
    salt: figure(facts?.salt),
  };
}
