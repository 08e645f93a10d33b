/** Verbs of air: whipping it in, folding it through, and the blender that takes it out. */
import { interval, middle } from '../quantities/interval.ts';
import { additionsOf, signOf, toCelsiusOf } from '../run/clauses.ts';
import { mixed, withFoam, withMatter } from '../run/matter-of.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { additionsInto } from './bring-together.ts';
import { foldedFoam } from './foams.ts';
import { toReading } from './reading.ts';
import { warmed } from './treatment.ts';
import { whip } from './whip.ts';

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
