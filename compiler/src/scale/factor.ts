/** The factor from a target yield: by count, by mass, by volume, or from one to the other through the finished mixture's density. */
import type { Yield } from 'nappe-grammar';
import { amountOf, type YieldAmount } from './amounts.ts';

/** What a formula makes at its written grams. */
export interface Made {
  /** `makes` in force; null where none is. */
  readonly written: Yield | null;
  /** Of what is served, computed, in grams and in millilitres with the air in it; null where nothing is served. */
  readonly grams: number | null;
  readonly millilitres: number | null;
}

export interface Scaling {
  /** Times the written grams. */
  readonly factor: number;
  readonly by: 'count' | 'mass' | 'volume' | 'density';
  /** What was written and what is asked, in the measure `by` names (g, ml or pieces). */
  readonly from: number;
  readonly to: number;
  /** For `density`: the target in both measures, and g/ml. */
  readonly density: { readonly gramsPerMillilitre: number; readonly grams: number; readonly millilitres: number } | null;
  /** Moulds with a shell or lining are scaled by the mould's size: an estimate. */
  readonly lined: boolean;
}

export interface Unscalable {
  /** One sentence for a cook: why there is no factor, and what to ask instead. */
  readonly problem: string;
}

/**
 * How much more (or less) than written makes the target. A count of the same thing is a ratio of counts; volumes and moulds are a ratio
 * of volumes; masses of masses; between mass and volume the density of the finished mixture, its air included, decides.
 */
export function factorFor(target: Yield, made: Made): Scaling | Unscalable {
  const asked = amountOf(target);
  const written = made.written ? amountOf(made.written) : nothingWritten;
  const found = byCount(asked, written, target, made.written) ?? byMass(asked, written, made) ?? byVolume(asked, written, made);
  if (!found)
    return {
      problem: 'The formula says nothing that can be compared with that: ask for a number of what it makes, a mass or a volume.',
    };
  if ('problem' in found) return found;
  if (!Number.isFinite(found.factor) || found.factor <= 0) return { problem: 'That yield is nothing: ask for more than zero.' };
  if (found.factor > largestFactor)
    return {
      problem: `That is more than ${largestFactor.toLocaleString('en')} times the formula: check the number and its unit.`,
    };
  return found;
}

/** Beyond this a target is taken for a slip. */
export const largestFactor = 100_000;

const nothingWritten: YieldAmount = { count: null, noun: null, grams: null, millilitres: null, lined: false, size: '' };

function byCount(asked: YieldAmount, written: YieldAmount, target: Yield, makes: Yield | null): Scaling | Unscalable | null {
  if (asked.count === null) return null;
  const sameNoun = asked.noun === null || (written.noun !== null && stem(asked.noun) === stem(written.noun));
  const sameSize = asked.size === '' || asked.size === written.size;
  if (sameNoun && sameSize && written.count !== null && written.count > 0)
    return ratio('count', written.count, asked.count, false);
  if (asked.size !== '') return null;
  if (written.count === null)
    return { problem: `The formula does not count what it makes: give the size of one, as in ${example}, or a mass.` };
  return {
    problem: `The formula counts in “${makes?.noun?.text ?? 'pieces'}”, not in “${target.noun?.text ?? 'pieces'}”: give the size of one, as in ${example}, or a mass.`,
  };
}

function byMass(asked: YieldAmount, written: YieldAmount, made: Made): Scaling | null {
  if (asked.grams === null) return null;
  const grams = written.grams ?? made.grams;
  return grams === null || grams <= 0 ? null : ratio('mass', grams, asked.grams, asked.lined || written.lined);
}

function byVolume(asked: YieldAmount, written: YieldAmount, made: Made): Scaling | null {
  if (asked.millilitres === null) return null;
  const lined = asked.lined || written.lined;
  if (written.millilitres !== null && written.millilitres > 0)
    return ratio('volume', written.millilitres, asked.millilitres, lined);
  if (made.grams === null || made.millilitres === null || made.grams <= 0 || made.millilitres <= 0) return null;
  const gramsPerMillilitre = made.grams / made.millilitres;
  const from = written.grams ?? made.grams;
  const to = asked.millilitres * gramsPerMillilitre;
  return { ...ratio('density', from, to, lined), density: { gramsPerMillilitre, grams: to, millilitres: asked.millilitres } };
}

const ratio = (by: Scaling['by'], from: number, to: number, lined: boolean): Scaling => ({
  factor: to / from,
  by,
  from,
  to,
  density: null,
  lined,
});

/** Nouns outside the vocabulary are compared without a plural's s: `1 macaron` of `40 macarons`. */
const stem = (noun: string): string => (noun.length > 3 && noun.endsWith('s') && !noun.endsWith('ss') ? noun.slice(0, -1) : noun);

const example = '“24 glasses of 100 ml”';
