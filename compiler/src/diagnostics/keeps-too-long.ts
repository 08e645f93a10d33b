/** `keeps-too-long`: a formula promises to keep longer, or warmer, than perishable food may. */
import { formatCelsius, formatDuration } from '../quantities/format.ts';
import { holds } from '../resolve/choices.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Run } from '../run/trace.ts';
import { isPasteurised, isRaw } from './look-egg.ts';
import { isPerishable } from './look-perishable.ts';
import type { Fix, Report, Rule } from './rule.ts';

const day = 86_400;

/** Seconds after the day it is made; °C. Frozen at `frozen` and colder it keeps by quality, not by safety. */
const limits = { cooked: 6 * day, rawEgg: 2 * day, warmest: 5, frozen: -15 } as const;

function check(run: Run, report: Report): void {
  const keeps = run.formula.keeps.find(({ condition }) => holds(condition, run.selection));
  if (!keeps || !run.result || !isPerishable(run.result)) return;
  const { seconds, celsius } = keeps.value;
  if (celsius && celsius.high <= limits.frozen) return;
  const raw = bodiesOf(run.result)
    .flatMap((body) => body.parts.filter((part) => isRaw(body, part) && !isPasteurised(part)))
    .at(0);
  const longest = raw ? limits.rawEgg : limits.cooked;
  const tooWarm = celsius !== null && celsius.high > limits.warmest;
  if (!tooWarm && seconds.high <= longest) return;
  report({
    severity: 'warning',
    place: keeps.place,
    numbers: {
      seconds: seconds.high,
      limit: longest,
      celsius: tooWarm ? celsius.high : null,
      warmest: limits.warmest,
      rawEgg: raw !== undefined,
    },
    related: raw ? [{ place: raw.line.place, message: 'this egg is not heated' }] : [],
    fixes: fixesOf(keeps, Math.min(seconds.high, longest)),
  });
}

function fixesOf({ place, condition }: Run['formula']['keeps'][number], seconds: number): readonly Fix[] {
  const days = Math.max(1, Math.floor(seconds / day));
  const guard = condition ? `   ${condition.guard.word} ${condition.guard.values.map(({ text }) => text).join(', ')}` : '';
  const text = `keeps ${days} d at 0-4 °C${guard}`;
  return [{ title: `Write “${text.trimEnd()}”`, edits: [{ ...place, text }] }];
}

const custard = (keeps: string, mark: string): string => `formula Custard sauce
  keeps ${keeps}${mark}
  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  cool in ice bath to 4 °C
`;

export const keepsTooLong: Rule = {
  code: 'keeps-too-long',
  severities: ['warning'],
  title: 'Promised to keep too long, or too warm',
  safety: true,
  served: true,
  why: 'What holds egg or dairy, has water to spare and is neither sour nor baked dry lets Listeria grow even in the refrigerator. The FDA Food Code allows such ready food seven days at up to 5 °C, the day it is made counting as the first; with raw egg a kitchen does well to stop at two. Above 5 °C it is not kept at all. Frozen at −15 °C nothing grows. This is no food-safety plan: the local food code and a licensed professional decide.',
  remedy: 'Promise at most 6 days at up to 5 °C, 2 days with raw egg, or freeze it.',
  source:
    'FDA Food Code 2022, 3-501.17 and 1-201.10 (by state codes that adopt them); two days for raw egg: common practice, no source.',
  examples: { bad: custard('8 d at 0-4 °C', '   // expect: keeps-too-long'), good: custard('6 d at 0-5 °C', '') },
  message: (n) => {
    const what = n.rawEgg ? 'what holds raw egg' : 'what holds egg or dairy and is neither sour nor dry';
    return typeof n.celsius === 'number'
      ? `It is promised to keep at up to ${formatCelsius(n.celsius)}; ${what} is kept at up to ${formatCelsius(Number(n.warmest))} only.`
      : `It is promised to keep ${formatDuration(Number(n.seconds))}; ${what} keeps at most ${formatDuration(Number(n.limit))} after the day it is made.`;
  },
  check,
};
