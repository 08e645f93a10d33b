/** How rules look at alcohol: how much of a part's is left after what was done to it. */
import { alcoholLeft, drivesOffFrom } from '../matter/alcohol.ts';
import { type Interval, interval, times } from '../quantities/interval.ts';
import type { Matter, Part } from '../run/trace.ts';
import { lifeOf } from './look.ts';

/** Grams of alcohol weighed in a part. */
export function alcoholWeighed({ line, grams }: Part): number {
  return line.substance.is === 'kind' ? grams * (line.substance.kind.composition?.alcohol ?? 0) : 0;
}

/** Grams of it left in the matter: all of it where nothing hot ever came to it. */
export function alcoholIn(matter: Matter, part: Part): Interval {
  const weighed = alcoholWeighed(part);
  let seconds: number | null = null;
  for (const record of lifeOf(matter, part)) {
    if (record.result.heat.celsius.low < drivesOffFrom && record.medium !== 'oven') continue;
    const longer = record.medium === 'stove' || record.medium === 'oven' ? (record.seconds?.range.low ?? 0) : 0;
    seconds = (seconds ?? 0) + longer;
  }
  return seconds === null ? interval(weighed) : times(alcoholLeft(seconds), weighed);
}
