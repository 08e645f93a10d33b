/** What a formula makes: the yield in force, and what it weighs. */
import { shapeOf, type Yield } from 'nappe-grammar';
import { type Shape, shapeMillilitres } from '../matter/volume.ts';
import { gramsPerUnit } from '../quantities/units.ts';
import { holds } from '../resolve/choices.ts';
import type { Formula, Selection } from '../resolve/model.ts';

/** The yield in force under a selection. */
export function makesOf(formula: Formula, selection: Selection): { yield: Yield; place: Formula['place'] } | null {
  const made = formula.makes.find(({ condition }) => holds(condition, selection));
  return made ? { yield: made.value, place: made.place } : null;
}

/** What a yield weighs in grams, given the density of what fills it; null where it says only a number. */
export function yieldGrams(makes: Yield, gramsPerMillilitre: number): number | null {
  const one = makes.size ?? makes.quantity;
  const count = makes.count ?? 1;
  if (one) {
    const per = gramsPerUnit(one.unit, { density: gramsPerMillilitre, piece: null });
    return per === null ? null : ((one.low + one.high) / 2) * per * count;
  }
  if (!makes.lengths || !makes.noun || makes.lined) return null;
  const shape = shapeOf(makes.noun.key)?.word as Shape | undefined;
  const millilitres = shape ? shapeMillilitres(shape, makes.lengths) : null;
  return millilitres === null ? null : millilitres * gramsPerMillilitre * count;
}
