/** The label for other programs: JSON, version 1. `percent` is there where it stands on the label, `share` always; both are of what is made. */
import type { Label } from './model.ts';
import { allergenStatement, ingredientPieces } from './words.ts';

export const labelJson = (label: Label): object => ({
  version: 1,
  ...label,
  ingredients: label.ingredients.map((one) => ({
    ...one,
    grams: rounded(one.grams),
    share: rounded(one.share),
    percent: rounded(one.percent),
  })),
  ingredientsText: ingredientPieces(label)
    .map(({ text }) => text)
    .join(''),
  allergensText: allergenStatement(label).join(' '),
});

const rounded = (value: number | null): number | null => (value === null ? null : Math.round(value * 100) / 100);
