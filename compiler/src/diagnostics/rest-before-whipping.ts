/** `rest-before-whipping`: a ganache is whipped before its fat has set, or too warm. */
import { formatCelsius, formatDuration } from '../quantities/format.ts';
import { clauseOf } from '../run/clauses.ts';
import type { Heat, Matter, Run, StepRecord } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { lineBefore, operandText } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Common practice, no source. */
const limits = { seconds: 6 * 3600, restCelsius: 6, whipCelsius: 8 } as const;

/** Seconds in the cold since it last took anything in, at their shorter end; null where a stay says no time. */
function rested(matter: Matter): number | null {
  let seconds = 0;
  for (const stay of matter.stays) {
    if (stay.celsius.high > limits.restCelsius) continue;
    if (!clauseOf(stay.step.node, 'for')) return null;
    seconds += stay.seconds.low;
  }
  return seconds;
}

const warmth = (heat: Heat): number => (heat.basis === 'written' && heat.written ? heat.written.high : heat.celsius.low);

/** The ganache that this step begins to whip; null where it whips something else, or goes on whipping. */
function ganacheOf(record: StepRecord) {
  const { foam } = record.result;
  if (foam?.kind !== 'ganache' || foam.whipped !== record.step) return null;
  return (
    record.inputs.find(({ matter }) => matter.foam === null && matter.composition.cocoaButter > 0 && matter.made !== null) ?? null
  );
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const ganache = ganacheOf(record);
    if (!ganache) continue;
    const { matter } = ganache;
    const seconds = rested(matter);
    const celsius = warmth(matter.heat);
    const tooShort = seconds !== null && seconds < limits.seconds;
    if (!tooShort && celsius <= limits.whipCelsius) continue;
    const last = matter.stays.at(-1);
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        seconds: tooShort ? seconds : null,
        limit: limits.seconds,
        celsius: celsius > limits.whipCelsius ? Math.round(celsius * 10) / 10 : null,
        warmest: limits.whipCelsius,
      },
      related: last ? [{ place: last.step.place, message: 'rests here' }] : [],
      fixes: [lineBefore(record.step, `chill${operandText(ganache)} to 4 °C for 12 h`)],
    });
  }
}

const ganache = (hours: string, mark: string): string => `formula Whipped ganache
  240 g  cream, 35 % fat, 4 °C
  200 g  white chocolate, 32 % cocoa
  heat cream to 78-80 °C
  pour cream over white chocolate
  blend until smooth
  chill to 4 °C for ${hours}
  whip to soft-medium peak${mark}
  pipe into glass
`;

export const restBeforeWhipping: Rule = {
  code: 'rest-before-whipping',
  severities: ['warning'],
  title: 'The ganache is whipped before it has rested',
  why: 'A whipped ganache holds its air as whipped cream does, by fat that is solid. Both milk fat and cocoa butter were melted, and they take hours in the cold to crystallise; before that, and warmer than about 8 °C, the ganache stays liquid or curdles under the whisk.',
  remedy: 'Chill it for at least six hours, better overnight, at 2–6 °C, and whip it cold.',
  source: 'Common practice, no source.',
  examples: { bad: ganache('2 h', '   // expect: rest-before-whipping'), good: ganache('6 h', '') },
  message: (n) => {
    const least = formatDuration(Number(n.limit));
    const rest =
      typeof n.seconds !== 'number'
        ? ''
        : n.seconds === 0
          ? `has had no rest in the cold (${least} at least)`
          : `has rested only ${formatDuration(n.seconds)} in the cold (${least} at least)`;
    const warm =
      typeof n.celsius === 'number' ? `is at ${formatCelsius(n.celsius)} (${formatCelsius(Number(n.warmest))} at most)` : '';
    return `The ganache ${[rest, warm].filter(Boolean).join(' and ')} when it is whipped: its fat is not firm enough to hold air.`;
  },
  check,
};
