/** What a yield comes to: how many, how heavy, how large. */
import { shapeOf, type Yield } from 'nappe-grammar';
import { type Shape, shapeMillilitres } from '../matter/volume.ts';
import { gramsPerUnit, isMass, isVolume, millilitresPer } from '../quantities/units.ts';

export interface YieldAmount {
  readonly count: number | null;
  /** Key of the noun, singular where the vocabulary knows it. */
  readonly noun: string | null;
  /** Where the yield says a mass. */
  readonly grams: number | null;
  /** Where the yield says a volume or a mould, in millilitres. */
  readonly millilitres: number | null;
  readonly lined: boolean;
  /** What stands after `of`, as one comparable text; empty where nothing does. */
  readonly size: string;
}

/** A yield as written, its ranges taken at the middle. */
export function amountOf(made: Yield): YieldAmount {
  const quantity = made.quantity ?? made.size;
  const pieces = made.quantity !== null && made.quantity.unit === 'pc' ? middleOf(made.quantity) : null;
  const times = made.count ?? 1;
  const each = quantity === null ? 0 : middleOf(quantity);
  const mould = mouldMillilitres(made);
  return {
    count: made.count ?? pieces,
    noun: made.noun?.key ?? null,
    grams:
      quantity !== null && isMass(quantity.unit)
        ? each * (gramsPerUnit(quantity.unit, { density: null, piece: null }) ?? 0) * times
        : null,
    millilitres:
      quantity !== null && isVolume(quantity.unit)
        ? each * (millilitresPer[quantity.unit] ?? 0) * times
        : mould === null
          ? null
          : mould * times,
    lined: made.lined,
    size: made.lengths ? `x${made.lengths.join('x')}` : made.size ? `${made.size.low}-${made.size.high} ${made.size.unit}` : '',
  };
}

/** Millilitres of one mould; null where the noun is no shape or its lengths are not the shape's. */
function mouldMillilitres(made: Yield): number | null {
  if (!made.lengths || !made.noun) return null;
  const shape = shapeOf(made.noun.key);
  return shape ? shapeMillilitres(shape.word as Shape, made.lengths) : null;
}

const middleOf = (x: { readonly low: number; readonly high: number }): number => (x.low + x.high) / 2;
