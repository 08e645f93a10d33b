/** Verbs that bring matter together without heat of their own: mixing, adding, kneading, smoothing. */
import { interval, middle } from '../quantities/interval.ts';
import { additionsOf, mediumOf, signOf } from '../run/clauses.ts';
import { heatTogether } from '../run/heat.ts';
import { atComputed, eachBody, mixed, portionOf, withFoam, withMatter } from '../run/matter-of.ts';
import type { Addition, Matter } from '../run/trace.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { foamAt, foamKindOf } from './foams.ts';
import { toReading } from './reading.ts';
import { warmed } from './treatment.ts';
import { whip, whisksAir } from './whip.ts';

const smoothing = (act: Act): boolean => /\bsmooth\b/.test(signOf(act.node) ?? '');

function mix(shortest: number, longest: number): VerbEffect['effect'] {
  return (act) => {
    if (whisksAir(act)) return whip(act);
    const balanced = act.base && act.operands.length > 0 ? keepsAir(act, act.together) : act.together;
    const matter = inBath(act, warmed(balanced));
    const smooth = smoothing(act) && act.node.verb !== 'mix' ? withMatter(matter, { smoothed: true }) : matter;
    const medium = mediumOf(act.node);
    return {
      matter: smooth,
      seconds: act.duration ?? interval(shortest, longest),
      additions: inAdditions(act),
      ...(medium ? { medium } : {}),
    };
  };
}

/** `to TEMP`, and heat from a bath where one is named. */
function inBath(act: Act, matter: Matter): Matter {
  const read = toReading(act, matter);
  if (read) return read;
  const medium = mediumOf(act.node);
  if (medium === null) return matter;
  const { celsius } = matter.heat;
  if (medium === 'bain-marie' || medium === 'water bath')
    return atComputed(matter, interval(celsius.low, Math.max(celsius.high, 75)), 'unknown', { heated: act.step });
  if (medium === 'ice bath')
    return atComputed(matter, interval(Math.min(celsius.low, 4), celsius.high), 'computed', { cooled: true });
  return matter;
}

/** Stirring something into a foam, or a little foam into something, keeps a foam; more work ends it. */
function keepsAir(act: Act, together: Matter): Matter {
  const foam = act.base?.foam;
  if (!foam) return together;
  const kept = middle(act.base?.grams ?? interval(0)) / Math.max(1, middle(together.grams));
  return withFoam(together, { ...foam, overrun: interval(foam.overrun.low * kept * 0.5, foam.overrun.high * kept) });
}

/** Temperatures after each equal addition. */
export function inAdditions(act: Act): readonly Addition[] {
  const written = additionsOf(act.node, act.chosen);
  if (!act.base || act.operands.length === 0 || !written) return [];
  return additionsInto(act.base, mixed(act.operands), Math.max(1, Math.round(middle(written.count))));
}

export function additionsInto(base: Matter, added: Matter, count: number): readonly Addition[] {
  const additions: Addition[] = [];
  for (let n = 1; n <= count; n++) {
    const heat = heatTogether([base, portionOf(added, n / count)]);
    additions.push({
      grams: interval(added.grams.low / count, added.grams.high / count),
      get celsius() {
        return heat.celsius;
      },
    });
  }
  return additions;
}

/** Butter or fat beaten with sugar takes air: a fat foam. */
function cream(act: Act): Effect {
  const matter = toReading(act, act.together) ?? act.together;
  const foam = foamAt(foamKindOf(matter) === 'fat' ? 'fat' : foamKindOf(matter), 'soft', 'medium', act.step);
  return {
    matter: foam.kind === 'fat' ? withMatter(withFoam(matter, foam), { phase: 'paste' }) : matter,
    seconds: act.duration ?? interval(180, 480),
  };
}

function knead(act: Act): Effect {
  return {
    matter: withMatter(toReading(act, act.together) ?? act.together, { phase: 'dough', foam: null }),
    seconds: act.duration ?? interval(300, 900),
  };
}

function smooth(act: Act): Effect {
  const matter = toReading(act, act.together) ?? act.together;
  return {
    matter: eachBody(matter, (body) => withMatter(body, { smoothed: true, phase: body.phase === 'gel' ? 'paste' : body.phase })),
    seconds: act.duration ?? interval(60, 180),
  };
}

export const mixingVerbs: Readonly<Record<string, VerbEffect>> = {
  mix: { meeting: 'mix', effect: mix(60, 180) },
  whisk: { meeting: 'mix', effect: mix(60, 180) },
  stir: { meeting: 'mix', effect: mix(30, 120) },
  add: { meeting: 'mix', effect: mix(30, 120) },
  combine: { meeting: 'mix', effect: mix(60, 180) },
  rub: { meeting: 'mix', effect: mix(180, 480) },
  sift: { meeting: 'mix', effect: mix(60, 180) },
  knead: { meeting: 'mix', effect: knead },
  cream: { meeting: 'mix', effect: cream },
  smooth: { meeting: 'mix', effect: smooth },
  laminate: {
    meeting: 'layer',
    effect: (act) => ({ matter: withMatter(act.together, { phase: 'dough' }), seconds: act.duration ?? interval(1200, 3600) }),
  },
};
