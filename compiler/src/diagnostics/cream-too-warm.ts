/** `cream-too-warm`: cream is whipped warmer than its fat can hold air. */
import { formatCelsius } from '../quantities/format.ts';
import { mediumOf } from '../run/clauses.ts';
import type { Heat, Run, StepRecord } from '../run/trace.ts';
import { lastHeated, placeOfStep, traitsOf } from './look.ts';
import { creamWhippings } from './look-cream.ts';
import { lineBefore, operandText } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C: written, and where it is computed (common practice, no source; see the rule's `source`). */
const limits = { written: 10, computed: 8 } as const;

/** The heat of the cream itself: sugar and flavour from the shelf warm it by a degree or two, which nobody minds. */
function creamHeat(record: StepRecord): Heat | null {
  const parties = record.inputs.filter(({ matter }) => matter.parts.some((part) => traitsOf(part).includes('cream')));
  const heats = parties.map(({ matter }) => matter.heat).sort((a, b) => b.celsius.low - a.celsius.low);
  return heats[0] ?? null;
}

/** Cream stirred with something from the shelf: no warmer for the rule than the cream was when it was weighed. */
function weighedCold(record: StepRecord, heat: Heat): boolean {
  if (heat.heated) return false;
  return record.inputs.every(({ matter }) =>
    matter.parts.every((part) => {
      if (!traitsOf(part).includes('cream')) return true;
      const { celsius, substance } = part.line;
      return celsius ? celsius.high <= limits.written : substance.is === 'kind' && substance.kind.storage !== 'ambient';
    }),
  );
}

function check(run: Run, report: Report): void {
  for (const { record } of creamWhippings(run)) {
    const heat = creamHeat(record);
    if (!heat || record.result.foam?.kind === 'ganache' || mediumOf(record.step.node) === 'ice bath') continue;
    const written = heat.basis === 'written' && heat.written !== null;
    const celsius = written ? heat.written!.high : heat.celsius.low;
    const limit = written ? limits.written : limits.computed;
    if (celsius <= limit || (!written && weighedCold(record, heat))) continue;
    const cream = record.inputs.find(({ matter }) => matter.heat === heat);
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: { celsius: Number.isFinite(celsius) ? Math.round(celsius * 10) / 10 : heat.celsius.low, limit, written },
      related: lastHeated(heat),
      fixes: cream ? [lineBefore(record.step, `chill${operandText(cream)} to 4 °C for 4 h`)] : [],
    });
  }
}

const whipped = (celsius: number, mark: string): string => `formula Sweet cream
  500 g  cream, 35 % fat, ${celsius} °C
  whip cream to soft-medium peak${mark}
  pipe into glass
`;

export const creamTooWarm: Rule = {
  code: 'cream-too-warm',
  severities: ['warning'],
  title: 'The cream is too warm to whip',
  why: 'Only fat that is solid in part can stick together round a bubble. In the refrigerator about half of milk fat is solid, at 15 °C less than a third: the cream stays flat or turns to butter before it is firm. Cream that was heated needs hours in the cold before enough of its fat has hardened again.',
  remedy: 'Chill the cream to 4–8 °C, heated cream for at least four hours, and whip it in a cold bowl.',
  source:
    'Solid fat of milk fat 50–66 % at 5 °C and 15–30 % at 20 °C (Australian milk fat, 19 sites, abstract); the limits of 10 °C written and 8 °C reckoned: common practice, no source.',
  examples: { bad: whipped(16, '   // expect: cream-too-warm'), good: whipped(10, '') },
  message: (n) =>
    `The cream is ${n.written ? '' : 'still '}at ${formatCelsius(Number(n.celsius))} when it is whipped; above ${formatCelsius(Number(n.limit))} too little of its fat is firm to hold air. Chill it to 4–8 °C.`,
  check,
};
