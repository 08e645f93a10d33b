/** What heat does to what is in matter: reached temperatures, lethality in egg, gelatin that melts, chocolate that melts. */

import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import type { EggMedium } from '../matter/lethality.ts';
import { eachBody, withMatter } from '../run/matter-of.ts';
import type { Matter, Part } from '../run/trace.ts';

export function eggMediumOf(part: Part): EggMedium | null {
  if (part.line.substance.is !== 'kind') return null;
  const { traits } = part.line.substance.kind;
  if (traits.includes('egg yolk')) return 'yolk';
  if (traits.includes('whole egg')) return 'whole egg';
  return traits.includes('egg white') ? 'white' : null;
}

/** Sugar protects by its share of the mixture, percent. */
export function sugarPercent(matter: Matter): number {
  const mass = total(matter.composition) + matter.unknownGrams;
  return mass > 0 ? (100 * sugarsOf(matter.composition)) / mass : 0;
}

/** Every part has certainly been at `celsius` for `seconds`; gelatin and chocolate melt where it is warm enough. */
export function afterHeating(matter: Matter, celsius: number, seconds: number): Matter {
  return eachBody(matter, (body) => {
    const sugar = sugarPercent(body);
    const parts = body.parts.map((part) => {
      const medium = eggMediumOf(part);
      // Below 50 °C nothing is counted: no D value was measured there.
      const holds = medium && celsius >= 50 ? [...part.holds, { medium, sugarPercent: sugar, celsius, seconds }] : part.holds;
      return { ...part, reached: Math.max(part.reached, celsius), holds };
    });
    return warmed(withMatter(body, { parts }));
  });
}

/** State changes that follow from where the temperature now is, which is not reckoned where nothing in it can change. */
export function warmed(matter: Matter): Matter {
  const { gelatin, chocolate, frozen, phase } = matter;
  const setsAgain = gelatin === 'bloomed' || gelatin === 'set';
  const tempered = chocolate === 'solid' || chocolate === 'in temper';
  const fatty = phase === 'solid' && fatOf(matter.composition) > 0.25 * total(matter.composition);
  if (!setsAgain && !tempered && !frozen && phase !== 'frozen' && !fatty) return matter;
  const { celsius } = matter.heat;
  const changes: { gelatin?: Matter['gelatin']; chocolate?: Matter['chocolate']; frozen?: boolean; phase?: Matter['phase'] } = {};
  if (setsAgain && celsius.high >= 33) {
    changes.gelatin = 'dissolved';
    if (phase === 'gel') changes.phase = 'liquid';
  }
  // Cocoa butter's stable form melts at 33.8 °C (facts sec. 9).
  if (tempered && celsius.low >= 34) changes.chocolate = 'melted';
  if (frozen && celsius.low > 0) changes.frozen = false;
  if (phase === 'frozen' && celsius.low > 0) changes.phase = 'solid';
  if (fatty && celsius.low >= 34) changes.phase = 'liquid';
  return Object.keys(changes).length === 0 ? matter : withMatter(matter, changes);
}

/** State changes that follow from the cold: gelatin sets where it stays long enough below its setting point. */
export function chilled(matter: Matter, setsAt: number): Matter {
  const { celsius } = matter.heat;
  if (matter.gelatin === 'dissolved' && celsius.high < setsAt) {
    return withMatter(matter, { gelatin: 'set', phase: matter.foam ? matter.phase : 'gel' });
  }
  return matter;
}
