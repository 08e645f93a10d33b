/** Verbs that cool, wait or thaw: temperature by written reading or by the cooling model, stays, freezing, gelatin that sets. */

import { type CoolingMedium, coolingTime, temperatureAfter } from '../matter/cooling.ts';
import { settingRange } from '../matter/gelatin.ts';
import { hull, type Interval, interval, middle } from '../quantities/interval.ts';
import { atOf, clauseOf, mediumOf, toCelsiusOf } from '../run/clauses.ts';
import { atComputed, bodiesOf, closed, eachBody, withMatter } from '../run/matter-of.ts';
import { once } from '../run/once.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Matter } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { toReading } from './reading.ts';
import { chilled, warmed } from './treatment.ts';

/** No place of the notation: what is not known to be cold may rest in either. */
const either = 'fridge or room';

interface Place {
  readonly medium: string;
  readonly surroundings: Interval;
}

/** Where it cools: as written, else the verb's usual place. */
function placeOf(act: Act, usual: string): Place {
  const written = clauseOf(act.node, 'at room') ? 'room' : (mediumOf(act.node) ?? usual);
  const at = usual === 'room' && act.node.verb === 'cool' ? null : atOf(act.node, act.chosen);
  return { medium: written === either ? 'room' : written, surroundings: at ? closed(at.written) : surroundingsOf(written, act) };
}

function surroundingsOf(medium: string, act: Act): Interval {
  const { settings } = act;
  switch (medium) {
    case 'fridge':
      return settings.fridge;
    case 'freezer':
      return settings.freezer;
    case 'blast chiller':
      return interval(-40, -20);
    case 'ice bath':
      return interval(0, 2);
    case either:
      return hull(settings.fridge, settings.room);
    default:
      return settings.room;
  }
}

/** What the cooling model calls the places of the notation; anything else is the room's air. */
const mediaOf: Readonly<Record<string, CoolingMedium>> = {
  fridge: 'fridge',
  freezer: 'freezer',
  'blast chiller': 'blast chiller',
  'ice bath': 'ice bath',
};

/** Overall heat transfer and shape for one body of matter in its vessel. */
function coolingInput(act: Act, matter: Matter, place: Place) {
  return {
    composition: thermalComposition(matter),
    grams: middle(matter.grams),
    millilitres: middle(millilitresOf(matter)),
    medium: mediaOf[place.medium] ?? ('still air' as const),
    surroundings: place.surroundings,
    vessel: act.vessel
      ? {
          ...(act.vessel.deepMm === null ? {} : { depthMm: act.vessel.deepMm }),
          ...(act.vessel.wideMm === null ? {} : { diameterMm: act.vessel.wideMm }),
        }
      : {},
  };
}

function cool(act: Act): Effect {
  const place = placeOf(act, 'room');
  const to = toCelsiusOf(act.node, act.chosen);
  const read = toReading(act, act.together);
  if (read && to) {
    const estimate = once(() => {
      if (act.duration) return null;
      const from = act.together.heat.celsius;
      const end = Number.isFinite(to.written.high) ? to.written.high : from.low;
      return coolingTime({ ...coolingInput(act, act.together, place), from, to: end });
    });
    return {
      matter: settled(withMatter(read, { smoothed: false })),
      seconds: act.duration ?? (() => estimate()?.seconds ?? interval(600, 5400)),
      ...place,
      assumptions: () => estimate()?.assumptions ?? [],
    };
  }
  const seconds = act.duration ?? interval(600, 5400);
  const matter = atComputed(act.together, () => approached(act, place, seconds), 'computed', { cooled: true });
  return { matter: settled(withMatter(matter, { smoothed: false })), seconds, ...place };
}

/** Where the temperature comes to after a stay: between the surroundings and where it was. */
function approached(act: Act, place: Place, seconds: Interval): Interval {
  const from = act.together.heat.celsius;
  return (
    temperatureAfter({ ...coolingInput(act, act.together, place), from, seconds }) ??
    interval(Math.min(place.surroundings.low, from.low), Math.max(from.high, place.surroundings.high))
  );
}

const settled = (matter: Matter): Matter =>
  eachBody(warmed(matter), (body) => {
    const mass = middle(body.grams);
    return body.gelatin200 > 0 && mass > 0 ? chilled(body, settingRange((100 * body.gelatin200) / mass).low) : body;
  });

/** A stay in the cold (or at room): `chill`, `freeze`, `rest`, `thaw`, `proof`. */
function stay(usual: (act: Act) => string, shortest: number, longest: number): VerbEffect['effect'] {
  return (act) => {
    const place = placeOf(act, usual(act));
    const seconds = act.duration ?? interval(shortest, longest);
    const read = toReading(act, act.together);
    const matter = read ?? atComputed(act.together, () => approached(act, place, seconds), 'computed', { cooled: true });
    const reached = matter.heat.written ?? null;
    const stayCelsius =
      reached && Number.isFinite(reached.high)
        ? interval(Math.min(place.surroundings.low, reached.high), Math.max(place.surroundings.high, reached.high))
        : place.surroundings;
    const stayed = (body: Matter): Matter =>
      withMatter(body, { stays: [...body.stays, { step: act.step, celsius: stayCelsius, seconds }], smoothed: false });
    return { matter: eachBody(settled(matter), stayed), seconds, ...place };
  };
}

function freeze(act: Act): Effect {
  const effect = stay(() => 'freezer', 4 * 3600, 12 * 3600)(act);
  const frozen = (matter: Matter): Matter =>
    withMatter(matter, { frozen: true, phase: 'frozen', gelatin: matter.gelatin === 'dissolved' ? 'set' : matter.gelatin });
  return { ...effect, matter: eachBody(effect.matter, frozen) };
}

function thaw(act: Act): Effect {
  const effect = stay(() => 'fridge', 4 * 3600, 12 * 3600)(act);
  const thawed = (matter: Matter): Matter =>
    withMatter(matter, {
      frozen: false,
      phase: matter.gelatin === 'set' ? 'gel' : matter.phase === 'frozen' ? 'solid' : matter.phase,
    });
  return { ...effect, matter: eachBody(effect.matter, thawed) };
}

/** Frozen while stirred: half water turned to ice as it is drawn, some air in (common practice, no source). */
function churn(act: Act): Effect {
  const read = toReading(act, act.together);
  const matter = read ?? atComputed(act.together, interval(-8, -4), 'computed', { cooled: true });
  return {
    matter: withMatter(matter, { frozen: true, phase: 'frozen' }),
    seconds: act.duration ?? interval(900, 2400),
    medium: 'churn',
  };
}

/** Cold enough already, and so stays cold; warm, and so in the room; where it may be either, either. */
function whereItIs(act: Act): string {
  const bodies = bodiesOf(act.together).map(({ heat }) => heat.celsius);
  if (bodies.every(({ high }) => high <= coldAlready)) return 'fridge';
  return bodies.some(({ low }) => low > coldAlready) ? 'room' : either;
}

const coldAlready = 10;

export const coolVerbs: Readonly<Record<string, VerbEffect>> = {
  cool: { meeting: 'mix', effect: cool },
  chill: { meeting: 'layer', effect: stay(() => 'fridge', 3600, 4 * 3600) },
  freeze: { meeting: 'layer', effect: freeze },
  rest: { meeting: 'layer', effect: stay(whereItIs, 600, 1800) },
  thaw: { meeting: 'layer', effect: thaw },
  churn: { meeting: 'mix', effect: churn },
  proof: { meeting: 'layer', effect: stay(() => 'room', 3600, 7200) },
};
