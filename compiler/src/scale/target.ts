/** Reads what is asked of a card from a few words: a yield (`24 glasses`, `2.4 kg`), or what there is of one ingredient (`8 pc egg yolk`). */
import { type IngredientLine, parseLine, type Yield } from 'nappe-grammar';
import type { Unscalable } from './factor.ts';

/** As after `makes`; a bare number is a number of pieces. */
export function parseTarget(text: string): Yield | Unscalable {
  const words = text.trim();
  const line = parseLine(`makes ${words}`, 'formula');
  if (
    line.kind === 'header' &&
    line.word === 'makes' &&
    line.problems.length === 0 &&
    line.guard === null &&
    line.comment === null
  )
    return line.yield;
  const why = line.problems[0]?.message ?? '';
  return {
    problem: `“${shortened(words)}” is no yield: write it as in “24 glasses”, “2.4 kg” or “2 rings of 18 x 4.5 cm”.${why === '' ? '' : ` ${why}`}`,
  };
}

/** As an ingredient line. */
export function parseLimit(text: string): IngredientLine | Unscalable {
  const words = text.trim();
  const line = parseLine(words, 'formula');
  if (line.kind === 'ingredient' && line.problems.length === 0 && line.guard === null && line.quantity.overrides.length === 0)
    return line;
  return {
    problem: `“${shortened(words)}” is no limit: write an amount and an ingredient, as in “8 pc egg yolk” or “1.2 kg cream”.`,
  };
}

const shortened = (words: string): string => (words.length > 80 ? `${words.slice(0, 79)}…` : words);
