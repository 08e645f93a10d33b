/** Volume of matter as it stands: from its composition's density, its temperature and the air in it. */

import { mixtureMillilitres } from '../matter/volume.ts';
import { add, type Interval, interval, middle } from '../quantities/interval.ts';
import { bodiesOf } from './matter-of.ts';
import { thermalComposition } from './thermal-composition.ts';
import type { Matter } from './trace.ts';

/** Millilitres, air included; of an open powder or of pieces this is the volume without the gaps (an estimate, low). */
export function millilitresOf(matter: Matter, overrun: Interval | null = matter.foam?.overrun ?? null): Interval {
  return bodiesOf(matter)
    .map((body) => bodyMillilitres(body, matter.layers ? (body.foam?.overrun ?? null) : overrun))
    .reduce(add);
}

function bodyMillilitres(body: Matter, overrun: Interval | null): Interval {
  const mass = middle(body.grams);
  if (mass <= 0) return interval(0);
  const filled = mixtureMillilitres(thermalComposition(body), body.heat.celsius, overrun ?? interval(0));
  return interval((filled.low * body.grams.low) / mass, (filled.high * body.grams.high) / mass);
}

/** Millilitres without air. */
export const liquidMillilitres = (matter: Matter): Interval => millilitresOf(matter, interval(0));
