/** The card as schema.org `Recipe`, for programs that read recipes from pages. */
import { roundEu } from '../matter/nutrition.ts';
import { languageOf } from './languages/index.ts';
import type { Card, CardComponent } from './model.ts';

/** JSON-LD; what the card does not know is left out. */
export interface RecipeData {
  readonly '@context': 'https://schema.org';
  readonly '@type': 'Recipe';
  readonly name: string;
  readonly author?: { readonly '@type': 'Organization'; readonly name: string };
  readonly version?: string;
  readonly dateModified: string;
  readonly inLanguage: string;
  readonly recipeYield?: string;
  /** ISO 8601. */
  readonly totalTime?: string;
  readonly recipeIngredient: readonly string[];
  readonly recipeInstructions: readonly RecipeSection[];
  readonly nutrition?: RecipeNutrition;
}

export interface RecipeSection {
  readonly '@type': 'HowToSection';
  readonly name: string;
  readonly itemListElement: readonly { readonly '@type': 'HowToStep'; readonly position: number; readonly text: string }[];
}

export interface RecipeNutrition {
  readonly '@type': 'NutritionInformation';
  readonly servingSize: string;
  readonly calories: string;
  readonly fatContent: string;
  readonly saturatedFatContent: string;
  readonly carbohydrateContent: string;
  readonly sugarContent: string;
  readonly fiberContent: string;
  readonly proteinContent: string;
  readonly sodiumContent: string;
}

export function recipeOf(card: Card): RecipeData {
  const language = languageOf(card.language);
  const nutrition = nutritionOf(card);
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: card.formula,
    ...(card.by && { author: { '@type': 'Organization', name: card.by } }),
    ...(card.edition && { version: card.edition }),
    dateModified: card.date,
    inLanguage: card.language,
    ...(card.makes.text && { recipeYield: card.makes.text }),
    ...(card.seconds !== null && { totalTime: isoDuration(card.seconds) }),
    recipeIngredient: card.components.flatMap(({ ingredients }) => ingredients.map(({ written, name }) => `${written} ${name}`)),
    recipeInstructions: card.components
      .filter(({ steps }) => steps.length > 0)
      .map((component) => section(component, language.labels.assembly)),
    ...(nutrition && { nutrition }),
  };
}

const section = ({ name, isAssembly, steps }: CardComponent, assembly: string): RecipeSection => ({
  '@type': 'HowToSection',
  name: isAssembly ? assembly : name,
  itemListElement: steps.map(({ text }, index) => ({ '@type': 'HowToStep', position: index + 1, text })),
});

function nutritionOf(card: Card): RecipeNutrition | null {
  const { per100g, perPortion, portionGrams } = card.nutrition;
  const facts = perPortion ?? per100g;
  if (!facts) return null;
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

function isoDuration(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const [days, hours, rest] = [Math.floor(minutes / 1440), Math.floor((minutes % 1440) / 60), minutes % 60];
  const time = `${hours > 0 ? `${hours}H` : ''}${rest > 0 ? `${rest}M` : ''}`;
  return `P${days > 0 ? `${days}D` : ''}${time === '' ? '' : `T${time}`}`;
}
