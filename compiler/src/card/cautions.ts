/** Cautions of a card: what can hurt the cook or the guest, from what is in the formula and what the checker found. */
import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import type { Matter, Run } from '../run/trace.ts';
import type { CautionKey } from './languages/language.ts';
import { perishable } from './reasons.ts';

/** `codes`: what the checker raised, errors, warnings, notices and what was allowed by hand alike. The last one always stands. */
export function cautionsOf(run: Run, codes: ReadonlySet<string>): readonly CautionKey[] {
  const keys: CautionKey[] = [];
  const matters = run.records.map((record) => ({ record, matter: record.result }));
  if (codes.has('egg-undercooked')) keys.push('egg undercooked');
  if (codes.has('raw-egg')) keys.push('raw egg');
  else if (run.result && !run.result.baked && holdsEgg(run.result)) keys.push('egg');
  if (
    codes.has('hot-sugar') ||
    matters.some(
      ({ record, matter }) =>
        hottest(record.written, matter) > 100 && !matter.baked && share(matter, sugarsOf(matter.composition)) > 0.3,
    )
  )
    keys.push('hot sugar');
  if (
    matters.some(
      ({ record, matter }) =>
        record.step.node.verb === 'fry' ||
        (hottest(record.written, matter) > 120 && !matter.baked && share(matter, fatOf(matter.composition)) > 0.5),
    )
  )
    keys.push('hot fat');
  const cold = run.result !== null && perishable(run.result);
  if (
    codes.has('cooling-too-slow') ||
    (cold && matters.some(({ record, matter }) => hottest(record.written, matter) >= 57 && perishable(matter)))
  )
    keys.push('cooling');
  if (cold) keys.push('cold storage');
  if (codes.has('heat-treat')) keys.push('raw flour');
  if (codes.has('alcohol-left') || (run.result !== null && share(run.result, run.result.composition.alcohol) > 0.005))
    keys.push('alcohol');
  return [...keys, 'no plan'];
}

const holdsEgg = (matter: Matter): boolean =>
  matter.parts.some(
    ({ line }) =>
      line.substance.is === 'kind' &&
      line.substance.kind.traits.some((trait) => trait === 'whole egg' || trait === 'egg yolk' || trait === 'egg white'),
  );

/** What is written, else what is certainly reached. */
const hottest = (written: { readonly high: number } | null, matter: Matter): number =>
  written && Number.isFinite(written.high) ? written.high : matter.heat.celsius.low;

const share = (matter: Matter, grams: number): number => grams / Math.max(1e-9, total(matter.composition));
