/** Turns of phrase that messages share. */
import { formatGrams } from '../quantities/format.ts';
import type { Figures } from './rule.ts';

export const text = (numbers: Figures, key: string): string => (typeof numbers[key] === 'string' ? numbers[key] : '');

export const number = (numbers: Figures, key: string): number => (typeof numbers[key] === 'number' ? numbers[key] : Number.NaN);

export const grams = (numbers: Figures, key: string): string => formatGrams(number(numbers, key));

/** ` Did you mean “custard”?`, or nothing. */
export const didYouMean = (numbers: Figures): string =>
  text(numbers, 'nearest') === '' ? '' : ` Did you mean “${text(numbers, 'nearest')}”?`;

/** `is` or `are`, by the name a line has: `the egg whites are`. */
export const isOrAre = (name: string): string => (/[^s]s$/.test(name) && !/(us|is)$/.test(name) ? 'are' : 'is');

export const quoted = (name: string): string => `“${name}”`;
