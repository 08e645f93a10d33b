/** Turns measures as written into the values of the tree, and says what was expected where the kind does not fit. */

import type { Measure } from '../scanner/payloads.ts';
import { blame, insertFix, type Scan, shown } from '../scanner/scan.ts';
import type { LineFix, Numbers, Override, Quantity, Varying } from '../tree.ts';
import type { Measured } from './drafts.ts';

/** The value with its overrides, each as `accept` makes it; null where the base does not fit. */
export function varying<T extends object>(
  scan: Scan,
  measured: Measured,
  accept: (measure: Measure) => T | null,
): Varying<T> | null {
  const base = accept(measured.base);
  if (base === null) return null;
  const { start, end } = measured;
  if (measured.overrides.length === 0) return { base, overrides: none, start, end };
  const overrides: Override<T>[] = [];
  for (const override of measured.overrides) {
    const then = accept(inherit(measured.base, override.then));
    if (then !== null && sameKind(then, base))
      overrides.push({ value: override.value, then, start: override.start, end: override.end });
    else {
      const written = shown(scan.text.slice(override.then.start, override.then.end));
      blame(
        scan,
        override.then,
        `Here ${kindLabels[measured.base.kind]} was expected like the one before the parenthesis, not ${written}.`,
      );
    }
  }
  return { base, overrides, start, end };
}

const none: readonly never[] = [];

/** `9 g (mould 11)`: a plain number in parentheses has the unit before them, where one number makes one value. */
function inherit(base: Measure, then: Measure): Measure {
  if (then.kind !== 'number' || base.kind === 'number') return then;
  const { low, high, ranged, start, end } = then;
  if (base.kind === 'quantity' || base.kind === 'temperature' || base.kind === 'percent')
    return { ...base, low, high, ranged, start, end };
  return base.kind === 'brix' ? { ...base, low, high, start, end } : then;
}

function sameKind(one: object, other: object): boolean {
  return (one as { kind?: string }).kind === (other as { kind?: string }).kind;
}

/** Accepts one kind of measure as it is. */
export function only<Kind extends Measure['kind']>(
  ...kinds: Kind[]
): (measure: Measure) => Extract<Measure, { kind: Kind }> | null {
  return (measure) => (kinds.includes(measure.kind as Kind) ? (measure as Extract<Measure, { kind: Kind }>) : null);
}

/** A mass, a volume, pieces, or a share in per cent. */
export function quantityOf(measure: Measure): Quantity | null {
  if (measure.kind === 'quantity') return measure;
  if (measure.kind !== 'number' && measure.kind !== 'percent') return null;
  const { low, high, ranged, start, end } = measure;
  const unit = measure.kind === 'number' ? 'pc' : '%';
  const each = (measure as { each?: boolean }).each === true;
  return { kind: 'quantity', low, high, ranged, unit, unitWritten: unit === '%', each, start, end };
}

/** Only what is not negative can be weighed. */
export function blameNegative(scan: Scan, quantity: Varying<Quantity>): void {
  for (const each of [quantity.base, ...quantity.overrides.map((override) => override.then)]) {
    if (each.low < 0) blame(scan, each, `A quantity cannot be negative: ${shown(scan.text.slice(each.start, each.end))}.`);
  }
}

/** Parentheses where one value holds for every choice; such a line is written once for each value, with `when`. */
export function refuseOverrides(scan: Scan, measured: Measured | null): void {
  const [first] = measured?.overrides ?? [];
  if (measured === null || first === undefined) return;
  const span = { start: first.start, end: measured.end };
  blame(scan, span, 'One value stands here, without others in parentheses; write the line once for each choice, with `when`.');
}

/** A share of the whole lies between nothing and all of it. */
export function blameShare(scan: Scan, share: Numbers): void {
  if (share.low >= 0 && share.high <= 100) return;
  blame(scan, share, `A share lies between 0 and 100 %, not ${shown(scan.text.slice(share.start, share.end))}.`);
}

/** The numbers alone, as the tree holds shares and strengths. */
export function numbersOf(measure: Numbers): Numbers {
  const { low, high, ranged, start, end } = measure;
  return { low, high, ranged, start, end };
}

/** What was expected instead of a measure of another kind; a plain number gets the missing unit as its fix. */
export function blameKind(scan: Scan, measured: Measured, expected: string, units: readonly string[]): void {
  const { base } = measured;
  const written = shown(scan.text.slice(base.start, base.end));
  const fixes: LineFix[] = base.kind === 'number' ? units.map((unit) => insertFix(`Write ${unit}`, base.end, ` ${unit}`)) : [];
  const problem =
    base.kind === 'number' && units.length > 0 ? `The unit is missing after ${written}: ${expected} was expected.` : null;
  blame(scan, base, problem ?? `Here ${expected} was expected, not ${written}.`, fixes);
}

export const kindLabels: Readonly<Record<Measure['kind'], string>> = {
  number: 'a number',
  percent: 'a percentage such as 5 %',
  bloom: 'a strength such as 200 bloom',
  density: 'a density such as 1.42 g/ml',
  clock: 'a time of day such as 18:30',
  quantity: 'a quantity such as 240 g',
  temperature: 'a temperature such as 80 °C',
  duration: 'a time such as 10 min',
  length: 'a length such as 3 mm',
  brix: 'a sugar reading such as 65 brix',
  dimensions: 'lengths such as 16 x 3 cm',
};
