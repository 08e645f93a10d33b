/** Quantities and readings written anew: the number rounded as a scale or a probe shows it, the unit canonical. */
import { scaleGrams } from 'nappe/scale';
import type { Quantity, Reading } from 'nappe-grammar';

/** At most `digits` decimals, no trailing zeros. */
export const numberText = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

/** The number in its unit, as exactly as it can be weighed or counted. */
export function amountText(value: number, unit: Quantity['unit']): string {
  if (unit === 'g') return numberText(scaleGrams(value), 2);
  if (unit === 'mg' || unit === 'ml') return numberText(value, value < 10 ? 1 : 0);
  return numberText(value, 3);
}

/** `low` and `high` in `unit`, as a quantity is written. */
export function quantityText(
  low: number,
  high: number,
  { unit, unitWritten, each }: Pick<Quantity, 'unit' | 'unitWritten' | 'each'>,
): string {
  const numbers = [...new Set([amountText(low, unit), amountText(high, unit)])].join('-');
  return `${numbers}${unitWritten || unit !== 'pc' ? ` ${unit}` : ''}${each ? ' each' : ''}`;
}

export function readingText({ low, high }: Pick<Reading, 'low' | 'high'>, unit: Reading['unit']): string {
  const number = (value: number) => numberText(value, 0);
  if (low === Number.NEGATIVE_INFINITY) return `below ${number(high)} °${unit}`;
  if (high === Number.POSITIVE_INFINITY) return `above ${number(low)} °${unit}`;
  const [first, last] = [number(low), number(high)];
  return `${first === last ? first : `${first}${low < 0 ? '..' : '-'}${last}`} °${unit}`;
}
