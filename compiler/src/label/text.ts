/** The label for a terminal: allergens in capitals. */
import { plain } from '../card/text.ts';
import type { Label } from './model.ts';
import { allergenStatement, factLines, ingredientPieces, titleOf, unchecked } from './words.ts';

export function labelText(label: Label): string {
  const { nutrition } = label;
  const lines = [
    titleOf(label),
    ...(label.checked ? [] : [unchecked.toUpperCase()]),
    '',
    `Ingredients: ${ingredientPieces(label)
      .map(({ text, allergen }) => (allergen ? text.toLocaleUpperCase('en') : text))
      .join('')}`,
    ...allergenStatement(label),
    '',
    ...factLines(label).map(([term, value]) => `${term}: ${value}`),
    '',
  ];
  if (nutrition) {
    const width = Math.max(...nutrition.rows.map(({ name, inner }) => name.length + (inner ? 2 : 0)));
    lines.push(
      `Nutrition ${nutrition.columns.join(' | ')}`,
      ...nutrition.rows.map(({ name, inner, cells }) => `  ${`${inner ? '  ' : ''}${name}`.padEnd(width)}  ${cells.join(' | ')}`),
      ...(nutrition.remark ? [`  ${nutrition.remark}`] : []),
      '',
    );
  }
  lines.push('To fill in:', ...label.toFill.map((one) => `  ${one}`), '', ...label.cautions);
  return `${lines.map((line) => plain(line).trimEnd()).join('\n')}\n`;
}
