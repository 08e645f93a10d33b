/** `sets-while-folding`: the cold foam brings the mixture to its setting point before the last of it is in. */

import { formatCelsius, formatNumber } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { isFold, massOf, placeOfStep } from './look.ts';
import { foldOf, takesFoamCold } from './look-fold.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C below which a mixture sets while it is folded, by its gelatin in percent (common practice, no source). */
const limitOf = (percent: number): number => (percent < 0.8 ? 15 : percent < 1.5 ? 18 : 20);

/** K by which the heat balance may err beside its interval (heat-balance.ts). */
const modelError = 1;

interface Midway {
  /** Gelatin as 200 bloom, percent of the mixture so far. */
  readonly percent: number;
  readonly celsius: { readonly low: number; readonly high: number };
}

/** The mixture before its last addition; null for a fold in one. */
function beforeLast(record: StepRecord): Midway | null {
  const count = record.additions.length;
  const before = record.additions[count - 2];
  if (!before) return null;
  const share = (count - 1) / count;
  let grams = 0;
  let gelatin = 0;
  for (const { role, matter } of record.inputs) {
    const part = role === 'base' ? 1 : role === 'operand' ? share : 0;
    grams += part * massOf(matter);
    gelatin += part * matter.gelatin200;
  }
  return { percent: (100 * gelatin) / grams, celsius: before.celsius };
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isFold(record)) continue;
    const fold = foldOf(record);
    if (!fold || fold.base.matter.gelatin200 <= 0 || takesFoamCold(fold.base.matter)) continue;
    const midway = beforeLast(record);
    if (!midway || midway.celsius.high + modelError >= limitOf(midway.percent)) continue;
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        name: spoken(fold.base, 'base'),
        celsius: Math.round(middle(midway.celsius) * 10) / 10,
        limit: limitOf(midway.percent),
        share: midway.percent,
        additions: record.additions.length,
      },
      related: fold.base.matter.made ? [{ place: fold.base.matter.made.step.place, message: 'the base was left so here' }] : [],
      fixes:
        fold.base.role === 'base'
          ? [lineBefore(record.step, `heat${operandText(fold.base)} to ${readingText(record, 32, 34)}`)]
          : [],
    });
  }
}

const steps = `  bloom gelatin in water for 10 min
  heat raspberry purée, caster sugar to 60 °C as base
  add gelatin
`;

export const setsWhileFolding: Rule = {
  code: 'sets-while-folding',
  severities: ['warning'],
  title: 'The mixture sets while it is being folded',
  why: 'Every addition of cold foam cools the mixture. Its temperature after each is reckoned from the heat of the parts, melting fat included; where it passes the setting point of its gelatin before the last addition, the rest of the foam is folded into a gel and stays in streaks.',
  remedy: 'Begin with a warmer base (32–34 °C), fold less cold foam, or fold it in fewer additions.',
  source: 'Heat balance after Choi & Okos 1986 with the heat of melting milk fat; the limits: common practice, no source.',
  examples: {
    bad: `formula Raspberry mousse, much cold cream
  320 g  raspberry purée, pasteurised, 20 °C
   50 g  caster sugar
    8 g  gelatin, sheet, 200 bloom
   48 g  water, 10 °C
  520 g  cream, 35 % fat, 2 °C
${steps}  cool to 20-21 °C
  whip cream to soft-medium peak
  fold cream into base in 4 additions: whisk, spatula   // expect: sets-while-folding
  pour into glass
  chill to 4 °C for 4 h
`,
    good: `formula Raspberry mousse
  320 g  raspberry purée, pasteurised, 20 °C
   50 g  caster sugar
    8 g  gelatin, sheet, 200 bloom
   48 g  water, 10 °C
  320 g  cream, 35 % fat, 4 °C
${steps}  cool to 28-30 °C
  whip cream to soft-medium peak
  fold cream into base in 3 additions: whisk, spatula
  pour into glass
  chill to 4 °C for 4 h
`,
  },
  message: (n) =>
    `Before the last of ${n.additions} additions the mixture is at about ${formatCelsius(Number(n.celsius))}; with ${formatNumber(Number(n.share))} % of gelatin it sets below ${formatCelsius(Number(n.limit))}. Begin with the ${n.name} at 32–34 °C.`,
  check,
};
