/** What the tokens of measures carry: the tree's own nodes. */

import type { Brix, Duration, Length, LengthUnit, Numbers, Quantity, QuantityUnit, Reading, Span, Text } from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';
import { pushToken, type Scan } from './scan.ts';
import * as token from './tokens.ts';

/** `16 x 3 cm`: lengths in millimetres, as many as were written. */
export interface Dimensions extends Span {
  readonly kind: 'dimensions';
  readonly lengths: readonly number[];
}

/** A number with its unit, as the payload of its token. */
export type Measure =
  | (Numbers & { readonly kind: 'number' | 'percent' | 'bloom' | 'density' })
  | (Text & { readonly kind: 'clock' })
  | Quantity
  | Reading
  | Duration
  | Length
  | Brix
  | Dimensions;

/** Pushes the token of a number in a unit. */
export function pushByKind(scan: Scan, unit: UnitRow | null, numbers: Numbers): void {
  const { start, end } = numbers;
  const payload = measureOf(unit, numbers);
  pushToken(scan, tokens[payload.kind], start, end, payload);
}

const tokens: Readonly<Record<Measure['kind'], typeof token.NumberToken>> = {
  number: token.NumberToken,
  percent: token.PercentToken,
  bloom: token.BloomToken,
  density: token.DensityToken,
  clock: token.ClockToken,
  quantity: token.QuantityToken,
  temperature: token.TemperatureToken,
  duration: token.DurationToken,
  length: token.LengthToken,
  brix: token.BrixToken,
  dimensions: token.DimensionsToken,
};

function measureOf(unit: UnitRow | null, numbers: Numbers): Measure {
  const { low, high, ranged, start, end } = numbers;
  switch (unit?.kind) {
    case undefined:
      return { kind: 'number', low, high, ranged, start, end };
    case 'percent':
    case 'bloom':
      return { kind: unit!.kind, low, high, ranged, start, end };
    case 'brix':
      return { kind: 'brix', low, high, start, end };
    case 'temperature':
      return { kind: 'temperature', low, high, ranged, unit: unit!.word === '°C' ? 'C' : 'F', start, end };
    case 'duration':
      return { kind: 'duration', low, high, ranged, overnight: false, start, end };
    case 'length':
      return { kind: 'length', low: low * unit!.factor, high: high * unit!.factor, unit: unit!.word as LengthUnit, start, end };
    default:
      return {
        kind: 'quantity',
        low,
        high,
        ranged,
        unit: unit!.word as QuantityUnit,
        unitWritten: true,
        each: false,
        start,
        end,
      };
  }
}
