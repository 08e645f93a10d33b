/** Turns of phrase that messages share. */
import { formatGrams } from '../quantities/format.ts';
import type { Figures } from './rule.ts';

export const text = (numbers: Figures, key: string): string => (typeof numbers[key] === 'string' ? numbers[key] : '');

export const number = (numbers: Figures, key: string): number => (typeof numbers[key] === 'number' ? numbers[key] : Number.NaN);

export const grams = (numbers: Figures, key: string): string => formatGrams(number(numbers, key));

/** ` Did you mean “custard”?`, or nothing. */
export const didYouMean = (numbers: Figures): string =>
  text(numbers, 'nearest') === '' ? '' : ` Did you mean “${text(numbers, 'nearest')}”?`;

export const quoted = (name: string): string => `“${name}”`;
