/** `over-capacity`: a step fills its vessel beyond the brim. */
import { formatMillilitres } from '../quantities/format.ts';
import type { Run } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import type { Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const { vessel } = record;
    if (!vessel || vessel.millilitres === null) continue;
    const { largestMillilitres } = record;
    if (!largestMillilitres) continue;
    if (largestMillilitres.low <= vessel.millilitres) continue;
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        vessel: vessel.name,
        low: Math.round(largestMillilitres.low),
        high: Math.round(largestMillilitres.high),
        limit: vessel.millilitres,
      },
      related: [{ place: vessel.place, message: 'the vessel' }],
      fixes: [],
    });
  }
}

const cream = (grams: number, mark: string): string => `equipment
  mixer bowl 2 l

formula Whipped cream
  ${grams} g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak using mixer bowl${mark}
  pipe into glass
`;

export const overCapacity: Rule = {
  code: 'over-capacity',
  severities: ['warning'],
  title: 'More than the vessel holds',
  why: 'The volume at the step is reckoned from composition, temperature and the air whipped in, at its smallest. Whipping needs room besides: cream comes to twice its volume, whites to several times theirs.',
  remedy: 'Work in two batches, or take a larger vessel.',
  source:
    'Densities after Choi & Okos 1986; overrun of cream up to 100 % (Gisslen, Professional Cooking), of whites from memory.',
  examples: { bad: cream(2500, '   // expect: over-capacity'), good: cream(900, '') },
  message: (n) =>
    `At least ${formatMillilitres(Number(n.low))} come together here, and the ${n.vessel} holds ${formatMillilitres(Number(n.limit))}. Work in batches or take a larger vessel.`,
  check,
};
