/** `fold-at-once`: much foam goes into a liquid base in one go. */

import { formatPercent } from '../quantities/format.ts';
import { additionsOf, chosenOf, clauseOf } from '../run/clauses.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { isFold, massOf, placeOfClause, placeOfStep } from './look.ts';
import { foldOf, isCream, isWhites } from './look-fold.ts';
import { spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Foam over base, by mass, that one go cannot spread (common practice, no source). */
const most = 0.4;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isFold(record)) continue;
    const fold = foldOf(record);
    if (fold?.base.matter.phase !== 'liquid' || fold.base.matter.foam !== null) continue;
    const { foam } = fold.foam.matter;
    const share = massOf(fold.foam.matter) / massOf(fold.base.matter);
    if (!(isCream(foam) || isWhites(foam)) || share <= most) continue;
    const written = additionsOf(record.step.node, chosenOf(run.blockOf.get(record)?.selection ?? run.selection));
    if (written && written.count.low > 1) continue;
    report({
      severity: written ? 'warning' : 'notice',
      place: placeOfStep(record.step),
      numbers: {
        foam: spoken(fold.foam, 'foam'),
        base: spoken(fold.base, 'base'),
        share,
        limit: most,
        written: written !== null,
      },
      fixes: fixesOf(record),
    });
  }
}

function fixesOf({ step }: StepRecord): readonly Fix[] {
  const title = 'Fold in 3 additions';
  const clause = clauseOf(step.node, 'in');
  if (!clause) {
    const end = Math.max(step.node.verbSpan.end, ...step.node.operands.map((o) => o.end), ...step.node.clauses.map((c) => c.end));
    return [{ title, edits: [{ ...step.place, start: end, end, text: ' in 3 additions: whisk, spatula' }] }];
  }
  if (!('kind' in clause.target) || clause.target.kind !== 'additions' || clause.target.count.overrides.length > 0) return [];
  const [first] = clause.target.tools;
  const tools = first ? `: ${step.node.text.slice(first.start, clause.end)}` : '';
  return [{ title, edits: [{ ...placeOfClause(step, 'in'), text: `in 3 additions${tools}` }] }];
}

export const foldAtOnce: Rule = {
  code: 'fold-at-once',
  severities: ['warning', 'notice'],
  title: 'All the foam goes in at once',
  decides: '“in 1 addition” written: a warning. Nothing written about additions: a notice.',
  why: 'A light foam floats on a liquid base. The first part is given up: beaten in, it loosens the base and brings the two nearer in weight, so that the rest can be turned through it in a few strokes. All at once, it takes so many strokes to spread the foam that its air is gone, or white lumps stay.',
  remedy: 'Fold in three or four additions, whisk for the first, spatula for the rest.',
  source: 'Common practice, no source.',
  examples: {
    bad: `formula Fruit fool, all at once
  300 g  mango purée, pasteurised, 4 °C
  260 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
  fold cream into mango purée in 1 addition: spatula   // expect: fold-at-once
  pour into glass
`,
    good: `formula Fruit fool with a little cream
  300 g  mango purée, pasteurised, 4 °C
  110 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
  fold cream into mango purée in 1 addition: spatula
  pour into glass
`,
  },
  message: (n) =>
    `The ${n.foam} weighs ${formatPercent(Number(n.share))} of the liquid ${n.base} it goes into${n.written ? ' in one go' : ', and nothing says in how many additions'}; above ${formatPercent(Number(n.limit))} fold it in three or four.`,
  check,
};
