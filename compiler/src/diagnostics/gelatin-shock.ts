/** `gelatin-shock`: melted gelatin goes into something so cold that it sets in threads before it is stirred in. */
import { formatCelsius, formatGrams, formatNumber } from '../quantities/format.ts';
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { coldest, massOf, placeOfStep, traitsOf } from './look.ts';
import { bringsGelatin, meeting } from './look-gelatin.ts';
import { spoken } from './repair.ts';
import { loosened, shocksAt } from './repair-gelatin.ts';
import type { Report, Rule } from './rule.ts';

/** Gelatin as 200 bloom, as a share of the mass, from which it counts as gelatin and not as a base that holds some. */
const strong = 0.06;

/** Cold matter, times the melted gelatin, that cools it too fast (common practice, no source). */
const times = 1.5;

const isMeltedGelatin = (matter: Matter): boolean =>
  matter.gelatin === 'dissolved' &&
  matter.gelatin200 / massOf(matter) >= strong &&
  !matter.parts.some((part) => traitsOf(part).includes('instant gelatin'));

/** What the melted gelatin is put into. */
function coldOf(record: StepRecord): { readonly gelatin: Input; readonly cold: Input } | null {
  if (record.step.node.clauses.some(({ word }) => word === 'while whipping')) return null;
  const parties = meeting(record);
  const gelatin = parties.find(({ role, matter }) => role === 'operand' && isMeltedGelatin(matter));
  if (!gelatin) return null;
  const cold = parties.filter((party) => party !== gelatin).sort((a, b) => massOf(b.matter) - massOf(a.matter))[0];
  return cold ? { gelatin, cold } : null;
}

/** A part of the same matter has been stirred into the gelatin before. */
function wasLoosened(gelatin: Matter, cold: Matter): boolean {
  const lines = new Set(cold.parts.map(({ line }) => line));
  return gelatin.parts.some((part) => lines.has(part.line) && !bringsGelatin(part) && !traitsOf(part).includes('water'));
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const pair = coldOf(record);
    if (!pair) continue;
    const { gelatin, cold } = pair;
    const celsius = coldest(cold.matter.heat);
    const ratio = massOf(cold.matter) / massOf(gelatin.matter);
    if (celsius > shocksAt || ratio <= times || wasLoosened(gelatin.matter, cold.matter)) continue;
    report({
      place: placeOfStep(record.step),
      numbers: {
        cold: spoken(cold, 'mixture'),
        celsius: Math.round((Number.isFinite(celsius) ? celsius : cold.matter.heat.celsius.low) * 10) / 10,
        limit: shocksAt,
        grams: massOf(cold.matter),
        times: ratio,
      },
      related: gelatin.matter.made ? [{ place: gelatin.matter.made.step.place, message: 'melted here' }] : [],
      fixes: loosened(record, gelatin, cold),
    });
  }
}

const cream = (before: string, mark: string): string => `formula Yoghurt cream
  400 g  yoghurt, 4 °C
   50 g  icing sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  mix yoghurt, icing sugar until dissolved as base
  melt gelatin to 50-55 °C
${before}  whisk gelatin into base${mark}
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinShock: Rule = {
  code: 'gelatin-shock',
  severities: ['warning'],
  title: 'Melted gelatin goes into something cold',
  why: 'Melted gelatin that runs into a larger cold mass falls below its setting point where it touches it, before the whisk has spread it: it sets in threads and lumps. A part of the mass stirred into the warm gelatin first makes it more, thinner and lukewarm, and it then spreads before it sets.',
  remedy: 'Stir a part of the cold matter into the melted gelatin first, then that into the rest; or let it warm to the room.',
  source: 'Sets at 16–29 °C (facts of gelatin makers). 18 °C and one and a half times: common practice, no source.',
  examples: {
    bad: cream('', '   // expect: gelatin-shock'),
    good: cream('  whisk 60 g of base into gelatin\n', ''),
  },
  message: (n) =>
    `Melted gelatin goes into ${formatGrams(Number(n.grams))} of ${n.cold} at ${formatCelsius(Number(n.celsius))}, ${formatNumber(Number(n.times))} times its own mass: at up to ${formatCelsius(Number(n.limit))} it sets in threads before it is stirred in.`,
  check,
};
