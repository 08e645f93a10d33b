/** A yield in words: `24 glasses of 100 ml`, `2.4 kg`, `2 rings of 18 × 4.5 cm`. */
import type { Quantity, Yield } from 'nappe-grammar';
import { gramsPerUnit, isVolume, millilitresPer } from '../quantities/units.ts';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import { plain } from './text.ts';

/** The yield times a factor: counts and totals grow, the size of one piece does not. */
export function yieldText(made: Yield, factor: number, language: Language, measures: Measures): string {
  if (made.quantity) return quantityText(made.quantity, factor, language, measures);
  const count = (made.count ?? 1) * factor;
  const written = made.noun?.text ?? '';
  const noun = made.noun ? (language.noun(made.noun.key, count) ?? plain(written)) : '';
  const size = made.size
    ? quantityText(made.size, 1, language, measures)
    : made.lengths
      ? measures.dimensions(made.lengths)
      : null;
  return language.yield(measures.number(count, 1), noun, size);
}

function quantityText(quantity: Quantity, factor: number, language: Language, measures: Measures): string {
  const value = ((quantity.low + quantity.high) / 2) * factor;
  if (isVolume(quantity.unit)) return measures.volume(value * (millilitresPer[quantity.unit] ?? 0));
  const grams = gramsPerUnit(quantity.unit, { density: null, piece: null });
  if (grams !== null) return measures.roughMass(value * grams);
  return `${measures.number(value)} ${quantity.unit === 'pc' ? language.units.pc : quantity.unit}`;
}
