/** Verbs that hydrate and extract, and tempering: gelatin blooms, cakes soak, leaves infuse, sieves hold back. */
import { interval, middle, times } from '../quantities/interval.ts';
import { toCelsiusOf } from '../run/clauses.ts';
import { atComputed, compositionOf, eachBody, keeping, mixed, portionOf, withMatter } from '../run/matter-of.ts';
import type { Matter, Part } from '../run/trace.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { toReading } from './reading.ts';
import { afterHeating, warmed } from './treatment.ts';

const traitsOf = (part: Part) => (part.line.substance.is === 'kind' ? part.line.substance.kind.traits : []);

/** Sheets are lifted out with at most six times their mass of water (the notation says so; makers advise 5-6). */
const sheetTakes = 6;

/** Gelatin takes water up: powder all it is given, sheets at most six times their mass; the rest is drained. */
function bloom(act: Act): Effect {
  const { base } = act;
  const dry = act.operands.length > 0 ? mixed(act.operands) : null;
  if (!base || !dry) return { matter: act.together, seconds: act.duration ?? interval(300, 600) };
  const sheets = dry.parts.some((part) => part.line.phase === 'sheet' && traitsOf(part).includes('gelatin'));
  const most = sheets ? sheetTakes * middle(dry.grams) : Number.POSITIVE_INFINITY;
  const water = portionOf(base, Math.min(1, most / Math.max(1e-9, middle(base.grams))));
  const together = mixed([dry, water]);
  const hydrated = together.gelatin === 'bloomed' ? withMatter(together, { phase: 'gel' }) : together;
  return { matter: warmed(hydrated), seconds: act.duration ?? interval(300, 600) };
}

/** Up to what the kind absorbs, all where that is not known; the rest is drained. */
function soak(act: Act): Effect {
  const { base } = act;
  const dry = act.operands.length > 0 ? mixed(act.operands) : null;
  if (!base || !dry) return { matter: act.together, seconds: act.duration ?? interval(60, 600) };
  let takes = 0;
  let known = true;
  for (const part of dry.parts) {
    const absorbs = part.line.substance.is === 'kind' ? part.line.substance.kind.absorbs : null;
    if (absorbs === null) known = false;
    else takes += part.grams * absorbs;
  }
  const liquid = known ? portionOf(base, Math.min(1, takes / Math.max(1e-9, middle(base.grams)))) : base;
  const matter = withMatter(mixed([dry, liquid]), { phase: dry.phase, baked: dry.baked });
  return {
    matter: warmed(matter.gelatin === 'bloomed' ? withMatter(matter, { phase: 'gel' }) : matter),
    seconds: act.duration ?? interval(60, 600),
  };
}

function dissolve(act: Act): Effect {
  const matter = toReading(act, warmed(act.together)) ?? warmed(act.together);
  return { matter: withMatter(matter, { phase: 'liquid' }), seconds: act.duration ?? interval(60, 300) };
}

/** Steeping off the heat: a covered pan loses a few degrees in ten minutes (estimate: 0–1.5 K a minute, no less than the room). */
function infuse(act: Act): Effect {
  const seconds = act.duration ?? interval(300, 900);
  const read = toCelsiusOf(act.node, act.chosen) ? toReading(act, act.together) : null;
  const { celsius } = act.together.heat;
  const floor = Math.min(celsius.low, act.settings.room.low);
  const cooler = interval(Math.max(floor, celsius.low - (1.5 * seconds.high) / 60), celsius.high);
  const matter = read ?? (celsius.low > act.settings.room.high ? atComputed(act.together, cooler, 'computed') : act.together);
  return {
    matter: warmed(matter),
    seconds,
    assumptions: read ? [] : ['a covered pan off the heat loses up to 1.5 °C a minute (estimate)'],
  };
}

/** What steeped stays behind, and holds back up to three times its mass of liquid (estimate). */
function strain(act: Act): Effect {
  const matter = eachBody(act.together, (body) => {
    const solids = body.parts.filter((part) => traitsOf(part).includes('infusable'));
    const kept = body.parts.filter((part) => !traitsOf(part).includes('infusable'));
    if (solids.length === 0 || kept.length === 0) return body;
    const out = solids.reduce((sum, part) => sum + part.grams, 0);
    const passed = withMatter(body, { parts: kept, ...withoutSolids(body, kept) });
    const held = Math.min(3 * out, 0.15 * middle(body.grams)) / Math.max(1e-9, middle(passed.grams));
    return keeping(passed, interval(Math.max(0, 1 - held), 1));
  });
  return { matter, seconds: act.duration ?? interval(60, 240) };
}

/** What is left of a mass when only these parts of it are; no more water can have gone as steam than they had. */
function withoutSolids(body: Matter, kept: readonly Part[]) {
  const { water } = compositionOf(kept, 0).composition;
  const steam = middle(body.evaporated);
  const evaporated = steam > 0 ? times(body.evaporated, Math.min(1, (0.98 * water) / steam)) : body.evaporated;
  const mass = kept.reduce((sum, part) => sum + part.grams, 0) - middle(evaporated);
  const either = Math.min(mass, (body.grams.high - body.grams.low) / 2);
  return { ...compositionOf(kept, middle(evaporated)), evaporated, grams: interval(mass - either, mass + either) };
}

/** With a party: hot liquid onto eggs in a thin stream. Without: chocolate brought to working crystals. */
function temper(act: Act): Effect {
  if (act.base && act.operands.length > 0) {
    const matter = warmed(act.together);
    const { low } = matter.heat.celsius;
    return {
      matter: toReading(act, matter) ?? (low > 50 ? afterHeating(matter, low, 1) : matter),
      seconds: act.duration ?? interval(60, 180),
    };
  }
  const matter = toReading(act, act.together) ?? atComputed(act.together, interval(28, 32), 'unknown');
  return {
    matter: withMatter(matter, { chocolate: 'in temper', phase: 'liquid' }),
    seconds: act.duration ?? interval(600, 1200),
  };
}

export const hydrateVerbs: Readonly<Record<string, VerbEffect>> = {
  bloom: { meeting: 'mix', takesUp: true, effect: bloom },
  soak: { meeting: 'mix', takesUp: true, effect: soak },
  dissolve: { meeting: 'mix', effect: dissolve },
  infuse: { meeting: 'mix', effect: infuse },
  strain: { meeting: 'mix or layer', effect: strain },
  press: { meeting: 'mix or layer', effect: strain },
  temper: { meeting: 'mix', effect: temper },
};
