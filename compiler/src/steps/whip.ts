/** Whipping: which foam comes of it, at what stage, and how warm it is after; a whisk that is told to go on does the same. */
import { sugarsOf, total } from '../matter/composition.ts';
import { interval } from '../quantities/interval.ts';
import { clauseOf, mediumOf, signOf, targetOf } from '../run/clauses.ts';
import { atComputed, withFoam } from '../run/matter-of.ts';
import type { FoamKind, FoamStage, Matter } from '../run/trace.ts';
import type { Act, Effect } from './act.ts';
import { foamAt, foamKindOf, gramsWith } from './foams.ts';
import { toReading } from './reading.ts';

export function whip(act: Act): Effect {
  const medium = mediumOf(act.node);
  const matter = toReading(act, act.together) ?? afterWhipping(act, medium);
  const kind = act.together.foam?.kind === 'italian white' ? 'italian white' : foamKindOf(matter);
  const [low, high] = stageOf(act, kind);
  const foam = foamAt(kind, low, high, act.step);
  return {
    matter: withFoam(matter, foam),
    seconds: act.duration ?? interval(180, 600),
    peakOverrun: foam.overrun,
    ...(medium ? { medium } : {}),
  };
}

/** Signs that only a foam gives; a curd in its bath thickens and pales too. */
const sabayon = /\b(ribbon|fluffy|foamy|doubled|tripled)\b/;

/** Whether this `whisk` or `mix` whips: a peak is written, or a sign of air, and there is egg or cream to hold it. */
export function whisksAir(act: Act): boolean {
  if (act.node.verb !== 'whisk' && act.node.verb !== 'mix') return false;
  if (targetOf(act.node, act.chosen)?.is === 'peak') return true;
  if (!/\b(ribbon|pale|white|fluffy|frothy|foamy|peaks?|doubled|thick)\b/.test(signOf(act.node)?.toLowerCase() ?? ''))
    return false;
  const { together } = act;
  const mass = Math.max(1e-9, total(together.composition) + together.unknownGrams);
  if (together.composition.starch > 0.05 * mass) return false;
  // Against what is not sugar: yolks beaten with their mass of sugar are a foam like any other.
  const rest = Math.max(1e-9, mass - sugarsOf(together.composition));
  const eggs = gramsWith(together, 'whole egg', 'egg yolk', 'egg white');
  // A sabayon: wine or juice beaten with the yolks over hot water until it falls in a ribbon (common practice, no source, as is the share of egg).
  const bath = mediumOf(act.node);
  if ((bath === 'bain-marie' || bath === 'water bath') && sabayon.test(signOf(act.node)?.toLowerCase() ?? ''))
    return eggs >= 0.25 * rest;
  return Math.max(eggs, gramsWith(together, 'cream', 'plant cream')) >= 0.6 * rest;
}

const usualStage: Readonly<Partial<Record<FoamKind, readonly [FoamStage, FoamStage]>>> = {
  yolk: ['ribbon', 'ribbon'],
  'whole egg': ['ribbon', 'ribbon'],
};

function stageOf(act: Act, kind: FoamKind): readonly [FoamStage, FoamStage] {
  const target = targetOf(act.node, act.chosen);
  if (target?.is === 'peak') return [target.low, target.high];
  const sign = signOf(act.node)?.toLowerCase() ?? '';
  if (/\b(over|grainy?|grains|butter)\b/.test(sign) || isWhippedOn(act)) return ['over', 'over'];
  if (/ribbon|pale/.test(sign)) return ['ribbon', 'ribbon'];
  if (/froth|foamy/.test(sign)) return ['very soft', 'soft'];
  return usualStage[kind] ?? ['soft', 'stiff'];
}

/** Cream that is stiff already and is whipped for a minute more, or on high, turns to butter (common practice, no source). */
function isWhippedOn({ together, node, duration }: Act): boolean {
  const { foam } = together;
  if (foam?.kind !== 'cream' || foam.low !== 'stiff') return false;
  return (duration?.low ?? 0) >= 60 || clauseOf(node, 'on')?.level === 'high';
}

/** Work and air warm what is cold by up to this many K, K (common practice, no source). */
const workWarms = 4;

/** A mixer running: near where it was, warmer over a bath, cooler where it began hot; an estimate. */
function afterWhipping(act: Act, medium: string | null): Matter {
  const { together, settings, step } = act;
  const { low, high } = together.heat.celsius;
  if (medium === 'bain-marie' || medium === 'water bath')
    return atComputed(together, interval(low, Math.max(high, 75)), 'unknown', { heated: step });
  const { room } = settings;
  if (high > room.high + 10) {
    // Ten minutes of whipping bring a hot meringue or bombe to warm; a sign that says cool brings it near the room (common practice, no source).
    const untilCool = /cool|cold|lukewarm|tepid/.test(signOf(act.node) ?? '');
    return atComputed(together, interval(Math.min(low, room.low), Math.max(untilCool ? 40 : high, room.high)), 'computed', {
      cooled: true,
    });
  }
  const warmer = medium === 'ice bath' ? high : Math.min(high + workWarms, Math.max(high, room.high));
  return warmer === high ? together : atComputed(together, interval(low, warmer), 'computed');
}
