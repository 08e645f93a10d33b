/** Verbs that heat: what they do to temperature, water, egg, starch, fat. */

import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import { waterLeft } from '../matter/sugar.ts';
import { type Interval, intersect, interval, middle, times } from '../quantities/interval.ts';
import { gramsPer, isMass } from '../quantities/units.ts';
import { atOf, clauseOf, losingOf, mediumOf, signOf, targetOf, toCelsiusOf } from '../run/clauses.ts';
import { heatingSeconds } from '../run/durations.ts';
import { atComputed, atReading, closed, dextrinsOf, eachBody, evaporate, foamless, withMatter } from '../run/matter-of.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Matter } from '../run/trace.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { isBakedCustard, isBrownedMeringue } from './custard.ts';
import { boilingOf, heatedUnknown, toReading } from './reading.ts';
import { afterHeating, warmed } from './treatment.ts';

const mediumName = (act: Act): string => mediumOf(act.node) ?? 'stove';

/** Water that goes as steam on the stove where nothing is written, share of the mass (estimate; deep pan to wide pan). */
function steamEstimate(celsius: Interval): Interval {
  if (celsius.high >= 98) return interval(0, 0.06);
  return celsius.high >= 60 ? interval(0, 0.03) : interval(0);
}

function losesSteam(act: Act, matter: Matter): Matter {
  if (losingOf(act.node, act.chosen)) return matter;
  const share = steamEstimate(matter.heat.celsius);
  return eachBody(matter, (body) => evaporate(body, times(share, middle(body.grams))));
}

/** Sugar and water boiled to a reading leave by its boiling curve; only for matter that is nearly all sugar and water. */
function concentrated(act: Act, matter: Matter): Matter | null {
  const { composition } = matter;
  const sugars = sugarsOf(composition);
  const solution = sugars + composition.water;
  const mass = total(composition) + matter.unknownGrams;
  if (solution <= 0 || solution + dextrinsOf(matter) < 0.85 * mass || sugars < 0.25 * solution || losingOf(act.node, act.chosen))
    return null;
  const { celsius } = matter.heat;
  const boils = boilingOf(act, matter);
  if (celsius.high <= boils.high) return null;
  const gone = (at: number): number => Math.max(0, composition.water - waterLeft(composition, at, act.settings.altitudeMetres));
  if (celsius.low > boils.high) return evaporate(matter, interval(gone(celsius.low), gone(celsius.high)));
  // It may boil or only steam.
  return evaporate(matter, interval(0, Math.max(gone(celsius.high), steamEstimate(celsius).high * mass)));
}

function onStove(least: number): VerbEffect['effect'] {
  return (act) => {
    if (boilsBySign(act)) return boiled(act, 1);
    const heated = toReading(act, act.together) ?? scalded(act) ?? heatedUnknown(act, warmed(act.together), least);
    const matter = concentrated(act, heated) ?? losesSteam(act, reduceTo(act, heated));
    return finish(act, coagulated(matter));
  };
}

/** `to MASS` and `to N brix`: water off until then; a written loss says it already. */
function reduceTo(act: Act, matter: Matter): Matter {
  if (losingOf(act.node, act.chosen)) return matter;
  const target = targetOf(act.node, act.chosen);
  if (target?.is === 'mass' && isMass(target.quantity.unit)) {
    const factor = gramsPer[target.quantity.unit] * act.factor;
    const mass = middle(matter.grams);
    return evaporate(matter, interval(mass - target.quantity.high * factor, mass - target.quantity.low * factor));
  }
  if (target?.is === 'brix') {
    const solids = sugarsOf(matter.composition);
    const mass = total(matter.composition) + matter.unknownGrams;
    return evaporate(matter, interval(mass - (100 * solids) / target.brix.low, mass - (100 * solids) / target.brix.high));
  }
  return matter;
}

function coagulated(matter: Matter): Matter {
  return foamless(matter.phase === 'gel' ? withMatter(matter, { phase: 'liquid' }) : matter);
}

function finish(act: Act, matter: Matter): Effect {
  return {
    matter: keepsFoam(act) ? { ...matter, foam: act.together.foam, phase: act.together.phase } : matter,
    seconds: act.duration ?? (() => heatingSeconds(thermalComposition(matter), act.together.heat.celsius, matter.heat.celsius)),
    medium: mediumName(act),
  };
}

/** Foam warmed gently over a bath stays one; 60 °C is where the rule calls it cooked. */
const keepsFoam = (act: Act): boolean =>
  act.together.foam !== null && (toCelsiusOf(act.node, act.chosen)?.written.high ?? 100) < 60;

const boil: VerbEffect['effect'] = (act) => boiled(act, act.duration?.low ?? 1);

/** `until boiling` reads the temperature as surely as a thermometer; `until almost boiling` does not. */
function boilsBySign(act: Act): boolean {
  const sign = signOf(act.node) ?? '';
  return /\bboil(?:s|ing)?\b/.test(sign) && !/\b(?:almost|nearly|before|below|under|not|short)\b/.test(sign) && !readsTo(act);
}

const readsTo = (act: Act): boolean => toCelsiusOf(act.node, act.chosen) !== null;

/** `until scalding`: 80-95 °C, small bubbles at the edge (common practice, no source). */
function scalded(act: Act): Matter | null {
  const scalds = /\bscald(?:s|ing|ed)?\b/.test(signOf(act.node) ?? '');
  return scalds ? heatedUnknown(act, warmed(act.together), 80, 95) : null;
}

/** Brought to the boil (or to what is written) and kept there for so many seconds. */
function boiled(act: Act, seconds: number): Effect {
  const to = toReading(act, act.together);
  const point = boilingOf(act, act.together);
  let matter = to ?? atComputed(act.together, point, 'computed', { heated: act.step });
  matter = afterHeating(matter, to ? (toCelsiusOf(act.node, act.chosen)?.written.low ?? point.low) : point.low, seconds);
  matter = concentrated(act, matter) ?? losesSteam(act, reduceTo(act, matter));
  return finish(act, coagulated(matter));
}

function hold(act: Act): Effect {
  const at = atOf(act.node, act.chosen);
  const matter = at ? atReading(act.together, at.written, at.ranged, act.settings, 'heated', act.step) : act.together;
  const held = at ? afterHeating(matter, at.written.low, act.duration?.low ?? 0) : matter;
  return { matter: held, seconds: act.duration ?? interval(60, 120), medium: mediumName(act) };
}

/** Shares of mass lost in the oven where nothing is written (estimate: 2 % for a deep custard, 20 % for thin biscuit). */
const ovenLoss = { low: 0.02, high: 0.2 } as const;

function bake(act: Act): Effect {
  const at = atOf(act.node, act.chosen);
  const core = toCelsiusOf(act.node, act.chosen);
  const loses = losingOf(act.node, act.chosen) === null;
  const surroundings = at ? closed(at.written) : interval(150, 190);
  const heated = core
    ? (toReading(act, act.together) ?? act.together)
    : atComputed(act.together, intersect(interval(70, 102), interval(0, surroundings.high)) ?? surroundings, 'unknown', {
        heated: act.step,
      });
  const matter = eachBody(heated, (body) => {
    const custard = isBakedCustard(body, heated);
    const through = !custard && !isBrownedMeringue(body, act.duration);
    const baked = withMatter(body, {
      baked: body.baked || through,
      parts: body.parts.map((part) => ({ ...part, baked: part.baked || through })),
      phase: custard ? 'gel' : 'solid',
      foam: null,
      frozen: false,
      gelatin: body.gelatin === 'none' ? 'none' : 'dissolved',
    });
    const mass = middle(body.grams);
    return loses ? evaporate(baked, interval(0, (custard ? 0.05 : ovenLoss.high) * mass)) : baked;
  });
  return {
    matter,
    seconds: act.duration ?? interval(600, 2400),
    medium: 'oven',
    surroundings,
    ...(core ? {} : { assumptions: ['the core of what is baked is not read; the oven’s temperature is the surroundings'] }),
  };
}

function dry(act: Act): Effect {
  const at = atOf(act.node, act.chosen);
  if (!at && mediumOf(act.node) !== 'oven' && (act.duration?.high ?? 0) < 1200) return dryInPan(act);
  const surroundings = at ? closed(at.written) : interval(60, 110);
  const long = (act.duration?.low ?? 0) >= 3600;
  const most = Math.min(100, surroundings.high);
  const heated = atComputed(act.together, interval(Math.min(act.together.heat.celsius.low, most), most), 'unknown', {
    heated: act.step,
  });
  const matter = eachBody(heated, (body) => {
    const dried = withMatter(body, {
      baked: body.baked || long,
      parts: body.parts.map((part) => ({ ...part, baked: part.baked || long })),
      phase: 'solid',
      foam: null,
    });
    return losingOf(act.node, act.chosen) ? dried : evaporate(dried, interval(0, body.composition.water * 0.9));
  });
  return { matter, seconds: act.duration ?? interval(3600, 7200), medium: 'oven', surroundings };
}

/** A panade dried in its pan: a few minutes' steam, no oven (common practice, no source). */
function dryInPan(act: Act): Effect {
  const read = toReading(act, act.together);
  const { celsius } = act.together.heat;
  const matter =
    read ??
    atComputed(act.together, interval(Math.min(celsius.low, 75), Math.max(celsius.high, 90)), 'unknown', { heated: act.step });
  const share = middle(matter.grams) * 0.08;
  return {
    matter: losingOf(act.node, act.chosen) ? matter : evaporate(matter, interval(0, share)),
    seconds: act.duration ?? interval(60, 300),
    medium: 'stove',
  };
}

/** `toast`: dry heat for nuts and flour. `fry`: in hot fat. Both heat through. */
function toasted(least: number, most: number, medium: string): VerbEffect['effect'] {
  return (act) => {
    const at = atOf(act.node, act.chosen);
    const read = toReading(act, act.together);
    const heated = read ?? atComputed(act.together, interval(least, most), 'unknown', { heated: act.step });
    const matter = eachBody(heated, (body) =>
      withMatter(body, { baked: true, parts: body.parts.map((part) => ({ ...part, baked: true })) }),
    );
    return {
      matter,
      seconds: act.duration ?? interval(300, 900),
      medium: at && medium === 'stove' ? 'oven' : medium,
      ...(at ? { surroundings: closed(at.written) } : {}),
    };
  };
}

function melt(act: Act): Effect {
  const fatty = fatOf(act.together.composition) > 0.2 * total(act.together.composition);
  const unread = (): Interval => {
    const { low, high } = act.together.heat.celsius;
    return interval(Math.max(low, 34), Math.max(high, fatty ? 50 : 60));
  };
  const matter = toReading(act, act.together) ?? atComputed(act.together, unread, 'unknown', { heated: act.step });
  const melted = eachBody(warmed(matter), (body) =>
    withMatter(body, {
      phase: 'liquid',
      chocolate: body.chocolate === 'none' || body.heat.celsius.high < 34 ? body.chocolate : 'melted',
    }),
  );
  return { matter: melted, seconds: act.duration ?? interval(120, 480), medium: mediumName(act) };
}

function caramelise(act: Act): Effect {
  const tool = clauseOf(act.node, 'with tool')?.tool.text;
  // A torch browns the surface only: what lies beneath stays as it was.
  if (tool === 'torch') return { matter: act.together, seconds: act.duration ?? interval(30, 120), medium: 'torch' };
  const read = toReading(act, act.together);
  const matter = read ?? atComputed(act.together, interval(160, 185), 'unknown', { heated: act.step });
  const dried = evaporate(matter, interval(matter.composition.water * 0.9, matter.composition.water));
  return { matter: withMatter(dried, { phase: 'liquid' }), seconds: act.duration ?? interval(300, 900), medium: mediumName(act) };
}

export const heatVerbs: Readonly<Record<string, VerbEffect>> = {
  heat: { meeting: 'mix', effect: onStove(30) },
  cook: { meeting: 'mix', effect: onStove(40) },
  boil: { meeting: 'mix', effect: boil },
  reduce: { meeting: 'mix', effect: boil },
  melt: { meeting: 'mix', effect: melt },
  hold: { meeting: 'mix', effect: hold },
  bake: { meeting: 'layer', effect: bake },
  toast: { meeting: 'mix', effect: toasted(100, 170, 'stove') },
  fry: { meeting: 'layer', effect: toasted(75, 190, 'fryer') },
  dry: { meeting: 'layer', effect: dry },
  caramelise: { meeting: 'mix', effect: caramelise },
};
