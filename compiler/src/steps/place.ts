/** Verbs that place and finish: into vessels, in layers, with a coat; they keep each mass as it is. */
import { interval } from '../quantities/interval.ts';
import { clauseOf } from '../run/clauses.ts';
import { atComputed, withFoam } from '../run/matter-of.ts';
import type { Matter } from '../run/trace.ts';
import type { Act, Effect, VerbEffect } from './act.ts';
import { foamAt } from './foams.ts';
import { toReading } from './reading.ts';
import { eggMediumOf, warmed } from './treatment.ts';

function placing(shortest: number, longest: number): VerbEffect['effect'] {
  return (act) => ({
    matter: toReading(act, warmed(act.together)) ?? warmed(act.together),
    seconds: act.duration ?? interval(shortest, longest),
  });
}

/** `pour … over` or `into`, and `while whipping`: the syrup of a meringue or bombe goes into a foam at work. */
function pour(act: Act): Effect {
  if (!clauseOf(act.node, 'while whipping') || !act.base) return placing(30, 180)(act);
  const matter = warmed(act.together);
  const kind = foamKindOfPoured(act);
  const foam = foamAt(
    kind,
    kind === 'italian white' ? 'medium' : 'ribbon',
    kind === 'italian white' ? 'stiff' : 'ribbon',
    act.step,
  );
  return { matter: withFoam(poured(act, matter), foam), seconds: act.duration ?? interval(120, 300), peakOverrun: foam.overrun };
}

/**
 * The syrup of a meringue or bombe leaves egg at 55-58 °C where the balance would say 70 and more: bowl and air take the rest
 * (McGee 2004). No pasteurisation. Several times the egg in syrup, as in nougat, leave it hotter: they lose the same share.
 */
function poured(act: Act, matter: Matter): Matter {
  const egg = matter.parts.some((part) => eggMediumOf(part) !== null);
  const { low, high } = matter.heat.celsius;
  if (!egg || high <= 55) return matter;
  const room = act.settings.room.low;
  const after =
    high <= mostOfMeringue
      ? interval(Math.min(low, 55), Math.min(high, 58))
      : interval(Math.max(Math.min(low, 55), room + keptOfMeringue * (low - room)), high);
  return atComputed(matter, after, 'computed', { heated: act.step });
}

/** °C: what the balance says of two parts of syrup at 121 °C on one of egg, or a little more (an estimate, ±5 °C). */
const mostOfMeringue = 85;
/** Of the warmth above the room that the balance gives such a meringue, what is left in it: 55 for 72 °C (an estimate, ±0.1; more is lost from a small bowl). */
const keptOfMeringue = 0.67;

function foamKindOfPoured(act: Act) {
  const kind = act.base?.foam?.kind;
  if (kind === 'yolk' || kind === 'whole egg' || kind === 'cream' || kind === 'gelatin') return kind;
  const parts = act.base?.parts ?? [];
  const has = (trait: 'egg white' | 'egg yolk' | 'whole egg'): boolean =>
    parts.some((part) => part.line.substance.is === 'kind' && part.line.substance.kind.traits.includes(trait));
  if (has('egg white')) return 'italian white';
  if (has('egg yolk')) return 'yolk';
  return has('whole egg') ? 'whole egg' : act.together.gelatin === 'none' ? 'italian white' : 'gelatin';
}

export const placeVerbs: Readonly<Record<string, VerbEffect>> = {
  pour: { meeting: 'mix or layer', effect: pour },
  portion: { meeting: 'layer', effect: placing(120, 600) },
  pipe: { meeting: 'layer', effect: placing(120, 600) },
  spread: { meeting: 'layer', effect: placing(60, 300) },
  layer: { meeting: 'layer', effect: placing(120, 600) },
  fill: { meeting: 'layer', effect: placing(120, 600) },
  line: { meeting: 'layer', effect: placing(120, 600) },
  roll: { meeting: 'layer', effect: placing(180, 600) },
  shape: { meeting: 'layer', effect: placing(180, 900) },
  cut: { meeting: 'layer', effect: placing(120, 600) },
  unmould: { meeting: 'layer', effect: placing(60, 300) },
  glaze: { meeting: 'layer', effect: placing(60, 300) },
  dust: { meeting: 'layer', effect: placing(30, 120) },
  brush: { meeting: 'layer', effect: placing(30, 180) },
  dip: { meeting: 'layer', effect: placing(120, 900) },
  coat: { meeting: 'layer', effect: placing(120, 600) },
  grease: { meeting: 'layer', effect: placing(30, 120) },
  garnish: { meeting: 'layer', effect: placing(60, 300) },
  serve: { meeting: 'layer', effect: placing(60, 300) },
  pack: { meeting: 'layer', effect: placing(60, 300) },
};
