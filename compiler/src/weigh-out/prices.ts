/** Prices: which line of `prices` is meant for a line of a formula, and what so many grams cost. */
import { nameKey } from 'nappe-grammar';
import { findKind } from '../catalogue/index.ts';
import { gramsPerUnit } from '../quantities/units.ts';
import type { Price } from '../resolve/model.ts';
import type { Goods } from './goods.ts';

export interface Priced {
  readonly currency: string;
  readonly perGram: number;
  /** The unit it is bought in, and grams of one. */
  readonly unit: string;
  readonly gramsPerUnit: number;
}

/**
 * The price of the line's own words before that of its kind. Null where there is none, or where its unit cannot be compared: a price
 * per litre of something of unknown density.
 */
export function priceOf(goods: Goods, prices: readonly Price[]): Priced | null {
  const kind = goods.kind;
  const own = [nameKey(goods.line.label), goods.line.key];
  const price =
    prices.find(({ key }) => own.includes(key)) ??
    (kind ? prices.find(({ key }) => key === nameKey(kind.name) || findKind(key)?.name === kind.name) : undefined);
  if (!price) return null;
  const grams = gramsPerUnit(price.per as Parameters<typeof gramsPerUnit>[0], {
    density: kind?.density ?? null,
    piece: goods.pieces?.grams ?? kind?.piece ?? null,
  });
  if (grams === null || grams <= 0) return null;
  return { currency: price.currency, perGram: price.amount / grams, unit: price.per, gramsPerUnit: grams };
}

/** To the cent, half up; the hair makes up for halves that binary fractions fall short of. */
export const cents = (amount: number): number => Math.round(amount * 100 + 1e-7) / 100;
