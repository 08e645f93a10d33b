/** Quantities of ingredient lines as amounts: grams through density or piece mass, percentages, `some`. */
import { nearestWithin, type Quantity, type Text, unitOf, units } from 'nappe-grammar';
import { interval } from '../quantities/interval.ts';
import { gramsOf, gramsPerUnit, isVolume, type Measures } from '../quantities/units.ts';
import { placeIn } from './blocks.ts';
import type { Amount, BlockId, Fix, Place, RawFinding } from './model.ts';

/** What an amount is of, for messages. */
export interface Weighed {
  readonly name: string;
  /** The thing is a component: its density and piece mass are never known beforehand. */
  readonly component: boolean;
}

/** `lacking` is called where grams cannot be had; the amount is then `unknown`. */
export function amountOf(
  quantity: Quantity,
  text: string,
  measures: Measures,
  lacking: (what: 'needs-density' | 'needs-piece-mass', quantity: Quantity) => void,
): Amount {
  const common = { each: quantity.each, written: writtenOf(quantity, text), unit: quantity.unit };
  const value = interval(quantity.low, quantity.high);
  if (quantity.unit === 'some') return { ...common, measure: 'some', value: interval(0), gramsPerUnit: null };
  if (quantity.unit === '%') return { ...common, measure: 'percent', value, gramsPerUnit: null };
  const grams = gramsOf(quantity, measures);
  if (grams !== null && typeof grams === 'object')
    return { ...common, measure: 'grams', value: grams, gramsPerUnit: gramsPerUnit(quantity.unit, measures) };
  // Nothing of something weighs nothing, whatever it is.
  if (quantity.high === 0) return { ...common, measure: 'grams', value: interval(0), gramsPerUnit: null };
  lacking(isVolume(quantity.unit) ? 'needs-density' : 'needs-piece-mass', quantity);
  return { ...common, measure: 'unknown', value: interval(0), gramsPerUnit: null };
}

/** As written, without `each`; a number alone is pieces. */
function writtenOf(quantity: Quantity, text: string): string {
  const whole = text.slice(quantity.start, quantity.end).trim();
  const slice = whole.toLowerCase().endsWith(' each') ? whole.slice(0, -' each'.length).trimEnd() : whole;
  return quantity.unit === 'pc' && !quantity.unitWritten ? `${slice} pc` : slice;
}

/** The finding for a quantity that cannot become grams, with what would give them as numbers. */
export function lackingFinding(
  place: Place,
  code: 'needs-density' | 'needs-piece-mass',
  quantity: Quantity,
  weighed: Weighed,
): RawFinding {
  return {
    code,
    place,
    numbers: { name: weighed.name, unit: quantity.unit, amount: quantity.low, component: weighed.component },
  };
}

/** A word after a number that is no unit, before a name that is known without it. In a step (`2 knobs of butter`) it cannot move behind the name. */
export function unknownUnit(
  block: BlockId,
  line: number,
  word: Text,
  rest: { readonly text: string; readonly start: number; readonly end: number },
  inStep = false,
): RawFinding {
  const spellings = units.flatMap((row) =>
    row.kind === 'mass' || row.kind === 'volume' || row.kind === 'piece' ? [row.word, ...row.spellings] : [],
  );
  const near = nearestWithin(word.text, spellings, Math.max(1, Math.floor(word.text.length / 3)));
  const unit = near === null ? null : (unitOf(near.word)?.word ?? null);
  const fixes: Fix[] = [];
  if (unit !== null) fixes.push({ title: `Change to ${unit}`, edits: [{ ...placeIn(block, line, word), text: unit }] });
  if (!inStep)
    fixes.push({
      title: `Write “${word.text}” behind the name`,
      edits: [{ ...placeIn(block, line, { start: word.start, end: rest.end }), text: `${rest.text}, "${word.text}"` }],
    });
  return {
    code: 'unknown-unit',
    place: placeIn(block, line, word),
    numbers: { word: word.text, name: rest.text, nearest: unit },
    fixes,
  };
}
