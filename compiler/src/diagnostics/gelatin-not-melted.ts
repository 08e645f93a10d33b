/** `gelatin-not-melted`: bloomed gelatin goes into something too cool to dissolve it. */
import { dissolvesFrom } from '../matter/gelatin.ts';
import { formatCelsius } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { lifeAfter, massOf, placeOfStep } from './look.ts';
import { bringsGelatin, meeting } from './look-gelatin.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import { meltedInto } from './repair-gelatin.ts';
import type { Fix, Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const parties = meeting(record);
    const gelatin = parties.find(({ matter }) => matter.gelatin === 'bloomed');
    const base = parties.filter((party) => party !== gelatin).sort((a, b) => massOf(b.matter) - massOf(a.matter))[0];
    // Gelatin mass and bloomed gelatin stirred to one another melt later, together.
    if (!gelatin || !base || base.matter.gelatin === 'bloomed') continue;
    const warmest = Math.max(record.computed?.high ?? Number.NEGATIVE_INFINITY, record.result.heat.celsius.high);
    if (warmest >= dissolvesFrom.sure || meltsLater(run, record, gelatin.matter)) continue;
    report({
      severity: warmest < dissolvesFrom.least ? 'error' : 'warning',
      place: placeOfStep(record.step),
      numbers: {
        base: spoken(base, 'mixture'),
        celsius: Math.round(warmest * 10) / 10,
        limit: warmest < dissolvesFrom.least ? dissolvesFrom.least : dissolvesFrom.sure,
      },
      related: gelatin.matter.made ? [{ place: gelatin.matter.made.step.place, message: 'bloomed here' }] : [],
      fixes: [...meltedInto(record, gelatin, base), ...warmed(record, base)],
    });
  }
}

/** Warms what it goes into, where that is not a foam. */
const warmed = (record: StepRecord, base: Input): readonly Fix[] =>
  base.role === 'base' && !base.matter.foam
    ? [lineBefore(record.step, `heat${operandText(base)} to ${readingText(record, 45, 50)}`)]
    : [];

/** Warmed afterwards, by a step or by what is poured in. */
function meltsLater(run: Run, record: StepRecord, gelatin: Matter): boolean {
  const lines = new Set(gelatin.parts.filter(bringsGelatin).map(({ line }) => line));
  return lifeAfter(run, record).some(({ result }) =>
    bodiesOf(result).some(
      ({ heat, parts }) => heat.celsius.high >= dissolvesFrom.sure && parts.some(({ line }) => lines.has(line)),
    ),
  );
}

const jelly = (before: string, mark: string): string => `formula Mango jelly
  400 g  mango purée, pasteurised, 20 °C
   60 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  ${before}
  add gelatin${mark}
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinNotMelted: Rule = {
  code: 'gelatin-not-melted',
  severities: ['error', 'warning'],
  title: 'The gelatin goes into something too cool to dissolve it',
  decides: 'Below 33 °C at best after it is in: an error. Between 33 and 35 °C: a warning.',
  why: 'Bloomed gelatin is a gel; it dissolves when it is warmed past its melting point with a little to spare. In a mixture that stays below about 35 °C it is only stirred into smaller and smaller threads, which stay in the mousse while the rest does not set. What counts is the mixture after the cold, wet gelatin is in.',
  remedy: 'Add it to something hot (50–60 °C), or melt it by itself first and warm a part of the base with it.',
  source:
    'Gels melt at 25–35 °C, makers dissolve at 50–60 °C (facts of gelatin makers). 33 and 35 °C: common practice, no source.',
  examples: {
    bad: jelly('mix mango purée, caster sugar until dissolved', '   // expect: gelatin-not-melted'),
    good: jelly('heat mango purée, caster sugar to 45 °C', ''),
  },
  message: (n) =>
    `After the gelatin goes in, the ${n.base} is at ${formatCelsius(Number(n.celsius))} at most; below ${formatCelsius(Number(n.limit))} bloomed gelatin does not ${Number(n.limit) > 33 ? 'surely ' : ''}dissolve.`,
  check,
};
