/** The card as schema.org `Recipe`, for programs that read recipes from pages. */
import { roundEu } from '../matter/nutrition.ts';
import { languageOf } from './languages/index.ts';
import type { Card, CardComponent } from './model.ts';

/** A JSON-LD object; properties without a value are left out. */
export function recipeOf(card: Card): object {
  const language = languageOf(card.language);
  return without({
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: card.formula,
    author: card.by ? { '@type': 'Organization', name: card.by } : undefined,
    version: card.edition ?? undefined,
    dateModified: card.date,
    inLanguage: card.language,
    recipeYield: card.makes.text || undefined,
    totalTime: card.seconds === null ? undefined : isoDuration(card.seconds),
    recipeIngredient: card.components.flatMap(({ ingredients }) => ingredients.map(({ written, name }) => `${written} ${name}`)),
    recipeInstructions: card.components
      .filter(({ steps }) => steps.length > 0)
      .map((component) => section(component, language.labels.assembly)),
    nutrition: nutrition(card),
  });
}

const section = ({ name, isAssembly, steps }: CardComponent, assembly: string): object => ({
  '@type': 'HowToSection',
  name: isAssembly ? assembly : name,
  itemListElement: steps.map(({ text }, index) => ({ '@type': 'HowToStep', position: index + 1, text })),
});

function nutrition(card: Card): object | undefined {
  const { per100g, perPortion, portionGrams } = card.nutrition;
  const facts = perPortion ?? per100g;
  if (!facts) return undefined;
  const grams = (value: string): string => `${value} g`;
  return {
    '@type': 'NutritionInformation',
    servingSize: grams(perPortion && portionGrams !== null ? String(Math.round(portionGrams)) : '100'),
    calories: `${roundEu('kcal', facts.kcal)} kcal`,
    fatContent: grams(roundEu('fat', facts.fat)),
    saturatedFatContent: grams(roundEu('saturates', facts.saturates)),
    carbohydrateContent: grams(roundEu('carbohydrate', facts.carbohydrate)),
    sugarContent: grams(roundEu('sugars', facts.sugars)),
    fiberContent: grams(roundEu('fibre', facts.fibre)),
    proteinContent: grams(roundEu('protein', facts.protein)),
    sodiumContent: `${Math.round(facts.salt * 400)} mg`,
  };
}

/** ISO 8601: `PT4H30M`. */
function isoDuration(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const [days, hours, rest] = [Math.floor(minutes / 1440), Math.floor((minutes % 1440) / 60), minutes % 60];
  const time = `${hours > 0 ? `${hours}H` : ''}${rest > 0 ? `${rest}M` : ''}`;
  return `P${days > 0 ? `${days}D` : ''}${time === '' ? '' : `T${time}`}`;
}

const without = (object: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined));
