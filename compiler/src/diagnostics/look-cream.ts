/** How rules look at cream that is whipped: what counts as dairy cream by itself, and its fat. */
import { fatOf } from '../matter/composition.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { gramsOfTraits, massOf, shareOfTraits } from './look.ts';

/** Dairy cream, share of what is whipped, from which its own fat must carry the foam. */
const mostlyCream = 0.6;

/** The steps that whip dairy cream without gelatin, gum, mascarpone, plant cream or egg to help it; each with what was whipped. */
export function creamWhippings(run: Run): readonly { readonly record: StepRecord; readonly cream: Matter }[] {
  return run.records.flatMap((record) =>
    record.result.foam?.whipped === record.step && isPlainCream(record.result) ? [{ record, cream: record.result }] : [],
  );
}

function isPlainCream(matter: Matter): boolean {
  if (matter.gelatin200 > 0 || shareOfTraits(matter, 'cream') < mostlyCream) return false;
  return shareOfTraits(matter, ...helpers) === 0;
}

const helpers = ['gum', 'mascarpone', 'plant cream', 'carrageenan', 'agar', 'gelatin mass', 'instant gelatin'] as const;

/** Fat, percent, cocoa butter included; sugar, which cream bears, is not counted against it. */
export function fatPercentToWhip(cream: Matter): number {
  const sugar = gramsOfTraits(cream, 'sugar', 'icing sugar', 'syrup', 'invert');
  return (100 * fatOf(cream.composition)) / Math.max(1e-9, massOf(cream) - sugar);
}
