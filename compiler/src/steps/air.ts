/** Verbs of air: whipping it in, folding it through, and the blender that takes it out. */
import { interval, middle } from '../quantities/interval.ts';
import { additionsOf, mediumOf, signOf, targetOf, toCelsiusOf } from '../run/clauses.ts';
import { atComputed, mixed, withFoam, withMatter } from '../run/matter-of.ts';
import type { FoamStage, Matter } from '../run/trace.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { additionsInto } from './bring-together.ts';
import { foamAt, foamKindOf, foldedFoam } from './foams.ts';
import { toReading } from './reading.ts';
import { warmed } from './treatment.ts';

const usualStage: Readonly<Record<string, readonly [FoamStage, FoamStage]>> = {
  cream: ['soft', 'stiff'],
  'plant cream': ['soft', 'stiff'],
  ganache: ['soft', 'stiff'],
  yolk: ['ribbon', 'ribbon'],
  'whole egg': ['ribbon', 'ribbon'],
};

function stageOf(act: Act, kind: string): readonly [FoamStage, FoamStage] {
  const target = targetOf(act.node, act.chosen);
  if (target?.is === 'peak') return [target.low, target.high];
  const sign = signOf(act.node) ?? '';
  if (/ribbon|pale/.test(sign)) return ['ribbon', 'ribbon'];
  if (/over|grain|butter/.test(sign)) return ['over', 'over'];
  return usualStage[kind] ?? ['soft', 'stiff'];
}

function whip(act: Act): Effect {
  const cold = toReading(act, act.together);
  const medium = mediumOf(act.node);
  const bath = medium === 'bain-marie' || medium === 'water bath';
  const { celsius } = act.together.heat;
  const matter =
    cold ??
    (bath
      ? atComputed(act.together, interval(celsius.low, Math.max(celsius.high, 75)), 'unknown', { heated: act.step })
      : whippedCool(act));
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

/** A mixer running until something is cool: between room and where it was; an estimate. */
function whippedCool(act: Act): Matter {
  const { celsius } = act.together.heat;
  const { room } = act.settings;
  const untilCool = /cool|cold|lukewarm|tepid/.test(signOf(act.node) ?? '');
  if (celsius.high <= room.high + 10) return act.together;
  // Ten minutes of whipping bring a hot meringue or bombe to warm; a sign that says cool brings it near the room (common practice, no source).
  const high = untilCool ? 40 : celsius.high;
  return atComputed(act.together, interval(room.low, Math.max(high, room.high)), 'computed', { cooled: true });
}

function fold(act: Act): Effect {
  const written = additionsOf(act.node, act.chosen);
  const count = written ? Math.max(1, Math.round(middle(written.count))) : 1;
  const parties = act.base ? [act.base, ...act.operands] : act.operands;
  const additions = act.base && act.operands.length > 0 ? additionsInto(act.base, mixed(act.operands), count) : [];
  const folded = warmed(act.together);
  const foam = foldedFoam(parties, folded);
  const matter = foam ? withFoam(folded, foam) : folded;
  const read = toCelsiusOf(act.node, act.chosen) ? toReading(act, matter) : null;
  return { matter: read ?? matter, additions, seconds: act.duration ?? interval(60, 240) };
}

/** An immersion blender's shear: emulsifies, smooths, and ends a foam. */
function blend(act: Act): Effect {
  const matter = toReading(act, warmed(act.together)) ?? warmed(act.together);
  const smooth = /\bsmooth\b/.test(signOf(act.node) ?? '') || matter.phase === 'gel';
  return {
    matter: withMatter(matter, {
      foam: null,
      smoothed: matter.smoothed || smooth,
      phase: matter.phase === 'foam' || matter.phase === 'gel' ? 'liquid' : matter.phase,
    }),
    seconds: act.duration ?? interval(30, 120),
  };
}

export const airVerbs: Readonly<Record<string, VerbEffect>> = {
  whip: { meeting: 'mix', effect: whip },
  fold: { meeting: 'mix', effect: fold },
  blend: { meeting: 'mix', effect: blend },
};
