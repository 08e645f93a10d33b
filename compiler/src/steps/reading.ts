/** The written reading that ends a step, and what an unwritten heating may come to. */

import { boilingPointOf } from '../matter/boiling.ts';
import { type Interval, interval, middle } from '../quantities/interval.ts';
import { mediumOf, toCelsiusOf } from '../run/clauses.ts';
import { atComputed, atReading } from '../run/matter-of.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Matter } from '../run/trace.ts';
import type { Act } from './act.ts';
import { afterHeating } from './treatment.ts';

/** Applies `to TEMP`, where written: heated by a heating verb or bath, else heated or cooled by comparison with where it was. Null where no temperature is written. */
export function toReading(act: Act, matter: Matter): Matter | null {
  const to = toCelsiusOf(act.node, act.chosen);
  if (!to) return null;
  const before = (): number => middle(matter.heat.celsius);
  const target =
    Number.isFinite(to.written.low) && Number.isFinite(to.written.high)
      ? middle(to.written)
      : Number.isFinite(to.written.low)
        ? to.written.low
        : to.written.high;
  const direction = isHeating(act) || target >= before() ? 'heated' : 'cooled';
  const read = atReading(matter, to.written, to.ranged, act.settings, direction, act.step);
  return direction === 'heated' ? afterHeating(read, Number.isFinite(to.written.low) ? to.written.low : before(), 1) : read;
}

const heating: ReadonlySet<string> = new Set(['heat', 'cook', 'boil', 'reduce', 'melt', 'bake', 'toast', 'fry', 'caramelise']);

/** Over heat, whatever the balance said before: hot milk and yolk may meet at 84 °C and still be cooked to 82. */
function isHeating(act: Act): boolean {
  const medium = mediumOf(act.node);
  return heating.has(act.node.verb) || medium === 'bain-marie' || medium === 'water bath';
}

/** Boiling point of this matter here, °C. */
export function boilingOf(act: Act, matter: Matter): Interval {
  const point = boilingPointOf(thermalComposition(matter), act.settings.altitudeMetres);
  // Nothing to boil (pure fat): as hot as a pan makes it.
  return point === null ? interval(100, 180) : interval(point - 1, point + 1);
}

/** Heated by an unknown amount: from where it is up to the boil, at least to `least` where the sign or verb says so. */
export function heatedUnknown(act: Act, matter: Matter, least: number, most?: number): Matter {
  const { celsius } = matter.heat;
  const top = Math.max(most ?? boilingOf(act, matter).high, celsius.high);
  const low = Math.min(top, Math.max(celsius.low, least));
  return atComputed(matter, interval(low, top), 'unknown', { heated: act.step });
}
