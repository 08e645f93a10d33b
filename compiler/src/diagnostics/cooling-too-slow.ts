/** `cooling-too-slow`: perishable matter stays too long in the warmth where bacteria grow. */
import { twoStageLimits } from '../matter/cooling.ts';
import { formatDuration } from '../quantities/format.ts';
import type { Step } from '../resolve/model.ts';
import { clauseOf } from '../run/clauses.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { lateAfter, marks } from './cooling-clock.ts';
import { lastHeated, placeOfStep } from './look.ts';
import type { Fix, Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  const told = new Set<StepRecord>();
  for (const hot of run.records)
    for (const next of run.later.get(hot) ?? []) {
      const late = lateAfter(run, hot, next);
      if (!late || told.has(late.record)) continue;
      told.add(late.record);
      report({
        severity: 'warning',
        place: placeOfStep(late.record.step),
        numbers: {
          seconds: Math.round(late.seconds),
          limit: late.mark === 'first' ? twoStageLimits.to21 : twoStageLimits.to5,
          celsius: marks[late.mark],
          start: marks.start,
          reached: late.reached,
        },
        related: lastHeated(hot.result.heat),
        fixes: fixesOf(late.record.step),
      });
    }
}

/** An ice bath and an hour, where a written time is what makes it late. */
function fixesOf({ node, place }: Step): readonly Fix[] {
  const time = clauseOf(node, 'for');
  if (node.verb !== 'cool' || !time || time.target.overrides.length > 0) return [];
  const where = clauseOf(node, 'at room') ?? clauseOf(node, 'in');
  const after = node.operands.at(-1)?.end ?? node.verbSpan.end;
  const bath = where
    ? { start: where.start, end: where.end, text: 'in ice bath' }
    : { start: after, end: after, text: ' in ice bath' };
  const edits = [bath, { start: time.start, end: time.end, text: 'for 1 h' }];
  return [{ title: 'Cool in an ice bath for 1 h', edits: edits.map((edit) => ({ ...place, ...edit })) }];
}

const custard = (how: string, mark: string): string => `formula Custard sauce
  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  ${how}${mark}
  chill to 4 °C for 4 h
`;

export const coolingTooSlow: Rule = {
  code: 'cooling-too-slow',
  severities: ['warning'],
  title: 'It cools too slowly to be safe',
  safety: true,
  why: 'Cooking does not kill spores. Between 57 and 5 °C they wake and grow, fastest around 40 °C, and so do bacteria that fall in. The FDA Food Code wants cooked food with egg or dairy brought from 57 to 21 °C within two hours and to 5 °C within six in all. A deep pan cools by conduction, and its time goes with the depth squared. A written time decides; where there is none, only the quickest the mass could cool is held against the rule. This is no food-safety plan: the local food code and a licensed professional decide.',
  remedy: 'Cool in an ice bath while stirring, or no more than 3 cm deep in a tray, and write for how long.',
  source:
    'FDA Food Code 2022, 3-501.14(A) (by state codes that adopt it); cooling by Newton or conduction (see the cooling model).',
  examples: {
    bad: custard('cool at room to 20-22 °C for 6 h', '   // expect: cooling-too-slow'),
    good: custard('cool in ice bath to 18-20 °C for 1 h', ''),
  },
  message: (n) => {
    const time = formatDuration(Number(n.seconds));
    const most = formatDuration(Number(n.limit));
    const slow = n.reached
      ? `From ${n.start} to ${n.celsius} °C it takes ${time}`
      : `${time} after it passed ${n.start} °C it is still above ${n.celsius} °C`;
    return `${slow}; at most ${most} are safe. Cool it in an ice bath while stirring, or in a shallow tray.`;
  },
  check,
};
