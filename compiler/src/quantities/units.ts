/** Units: what one of each is in grams, millilitres, millimetres, seconds or °C, and how a quantity becomes grams. */
import {
  type LengthUnit,
  type MassUnit,
  type Quantity,
  type Reading,
  type UnitKind,
  units,
  type VolumeUnit,
} from 'nappe-grammar';
import { type Interval, interval, times } from './interval.ts';

/** Factors of one kind of unit, from the vocabulary's table, where each row names its source. */
const factors = <Unit extends string>(kind: UnitKind): Readonly<Record<Unit, number>> =>
  Object.fromEntries(units.filter((row) => row.kind === kind).map((row) => [row.word, row.factor])) as Record<Unit, number>;

/** Grams in one; pound and ounce are avoirdupois. */
export const gramsPer = factors<MassUnit>('mass');

/** Millilitres in one; spoons, cup and fluid ounce are US customary. */
export const millilitresPer = factors<VolumeUnit>('volume');

/** Millimetres in one. */
export const millimetresPer = factors<LengthUnit>('length');

/** Seconds in one. */
export const secondsPer = factors<'s' | 'min' | 'h' | 'd'>('duration');

export const isMass = (unit: string): unit is MassUnit => unit in gramsPer;

export const isVolume = (unit: string): unit is VolumeUnit => unit in millilitresPer;

export const celsius = (value: number, unit: 'C' | 'F'): number => (unit === 'F' ? ((value - 32) * 5) / 9 : value);

/** A reading in °C as written; `below` and `above` keep their open end infinite. */
export const celsiusOf = (reading: Reading): Interval =>
  interval(celsius(reading.low, reading.unit), celsius(reading.high, reading.unit));

/** What is known of the thing weighed: g/ml and grams of one piece, null where not known. */
export interface Measures {
  readonly density: number | null;
  readonly piece: number | null;
}

/** Grams in one of a unit; null where the density or piece mass it needs is not known, and for `%` and `some`. */
export function gramsPerUnit(unit: Quantity['unit'], { density, piece }: Measures): number | null {
  if (isMass(unit)) return gramsPer[unit];
  if (isVolume(unit)) return density === null ? null : millilitresPer[unit] * density;
  return unit === 'pc' ? piece : null;
}

/** A quantity in grams, or what is missing for it. `%` and `some` have no grams of their own. */
export function gramsOf(quantity: Quantity, measures: Measures): Interval | 'needs density' | 'needs piece mass' | null {
  const written = interval(quantity.low, quantity.high);
  const per = gramsPerUnit(quantity.unit, measures);
  if (per !== null) return times(written, per);
  if (isVolume(quantity.unit)) return 'needs density';
  return quantity.unit === 'pc' ? 'needs piece mass' : null;
}
