/** A yield in words: `24 glasses of 100 ml`, `2.4 kg`, `2 rings of 18 × 4.5 cm`. */
import type { Quantity, Yield } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import { gramsPerUnit, isVolume, millilitresPer } from '../quantities/units.ts';
import type { Run } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { amountOf } from '../scale/amounts.ts';
import type { Context } from './context.ts';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import type { Makes } from './model.ts';
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

/** What a run makes, in words and figures: `written` is the yield in force, `target` the one asked for. */
export function makesWords(run: Run, written: Yield | null, target: Yield | null, { language, measures }: Context): Makes {
  const sized =
    target && written && target.count !== null && target.size === null && target.lengths === null
      ? { ...written, count: target.count, noun: target.noun ?? written.noun }
      : target;
  const made = sized ?? written;
  const factor = sized ? 1 : run.factor;
  const grams = run.result ? Math.round(middle(run.result.grams)) : null;
  if (!made)
    return {
      text: grams === null ? '' : measures.roughMass(grams),
      count: null,
      noun: null,
      grams,
      millilitres: run.result ? Math.round(middle(millilitresOf(run.result))) : null,
    };
  const amount = amountOf(made);
  return {
    text: yieldText(made, factor, language, measures),
    count: amount.count === null ? null : Math.round(amount.count * factor * 1000) / 1000,
    noun: amount.noun,
    grams,
    millilitres:
      amount.millilitres === null
        ? run.result
          ? Math.round(middle(millilitresOf(run.result)))
          : null
        : Math.round(amount.millilitres * factor),
  };
}

function quantityText(quantity: Quantity, factor: number, language: Language, measures: Measures): string {
  const value = ((quantity.low + quantity.high) / 2) * factor;
  if (isVolume(quantity.unit)) return measures.volume(value * (millilitresPer[quantity.unit] ?? 0));
  const grams = gramsPerUnit(quantity.unit, { density: null, piece: null });
  if (grams !== null) return measures.roughMass(value * grams);
  return `${measures.number(value)} ${quantity.unit === 'pc' ? language.units.pc : quantity.unit}`;
}
