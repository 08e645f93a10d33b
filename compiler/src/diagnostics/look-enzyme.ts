/** How rules look at fruit whose enzymes eat gelatin: what of it is still active, as far as can be told from what was done to it. */
import { endsEnzymes } from '../matter/gelatin.ts';
import type { Matter, Part, StepRecord } from '../run/trace.ts';
import { lifeOf, massOf, shareOfTraits, traitsOf } from './look.ts';
import { heats } from './look-egg.ts';

/** Heated by the maker, or so by the line's own words. */
function isTame(part: Part): boolean {
  const { line } = part;
  if (line.state === 'canned' || line.state === 'pasteurised') return true;
  return line.state === null && line.substance.is === 'kind' && line.substance.kind.pasteurised;
}

/** Share (0–1) below which it is a spice: a shred of ginger does no harm (common practice, no source). */
const least = 0.015;

/** What still has its enzyme, as far as can be told from what was certainly done to it. */
export const activeIn = (matter: Matter): readonly Part[] =>
  matter.parts.filter(
    (part) =>
      traitsOf(part).includes('protease fruit') &&
      part.grams >= least * massOf(matter) &&
      !isTame(part) &&
      !wasHeated(matter, part),
  );

function wasHeated(matter: Matter, part: Part): boolean {
  if (part.baked || endsEnzymes(part.reached, 0)) return true;
  return lifeOf(matter, part).some(endedBy);
}

/** A hold that is long enough; steeping or heating by eye that may have been hot enough. */
function endedBy(record: StepRecord): boolean {
  const { celsius } = record.result.heat;
  if (record.step.node.verb === 'infuse') return endsEnzymes(celsius.high, record.seconds?.range.high ?? 0);
  if (!heats(record)) return false;
  if (record.written === null) return endsEnzymes(celsius.high, 0);
  return record.step.node.verb === 'hold' && endsEnzymes(record.written.low, record.seconds?.range.low ?? 0);
}

/** Other gelling agents carry the gel whatever happens to the gelatin. */
export const heldByOthers = (matter: Matter): boolean =>
  shareOfTraits(matter, 'agar', 'high-methoxyl pectin', 'low-methoxyl pectin') >= 0.002;
