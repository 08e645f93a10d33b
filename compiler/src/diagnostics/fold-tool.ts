/** `fold-tool`: the last of a foam is whisked in. */
import { additionsOf, chosenOf, clauseOf } from '../run/clauses.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { isFold, placeOfClause, placeOfStep, shareOfTraits } from './look.ts';
import { foldOf, isCream, isWhites } from './look-fold.ts';
import { spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Butter cream is beaten, whatever foam joins it. */
const butterCream = 0.25;

/** The tool of the last addition: the last written serves the rest. */
function lastTool(run: Run, record: StepRecord): string | null {
  const { node } = record.step;
  const written = additionsOf(node, chosenOf(run.blockOf.get(record)?.selection ?? run.selection));
  if (written && written.tools.length > 0)
    return written.tools[Math.min(written.tools.length, Math.max(1, Math.round(written.count.high))) - 1] ?? null;
  return clauseOf(node, 'with tool')?.tool.text ?? null;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isFold(record)) continue;
    const fold = foldOf(record);
    if (!fold || !(isCream(fold.foam.matter.foam) || isWhites(fold.foam.matter.foam))) continue;
    if (shareOfTraits(record.result, 'butter') >= butterCream) continue;
    const tool = lastTool(run, record);
    if (!tool || !/\bwhisk$/.test(tool.toLowerCase())) continue;
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: { foam: spoken(fold.foam, 'foam'), tool },
      fixes: fixesOf(record),
    });
  }
}

function fixesOf({ step }: StepRecord): readonly Fix[] {
  const title = 'Use the spatula for the last addition';
  const clause = clauseOf(step.node, 'in');
  if (clause && 'kind' in clause.target && clause.target.kind === 'additions' && clause.target.tools.length > 0) {
    const { tools, count } = clause.target;
    if (count.overrides.length > 0) return [];
    const text = step.node.text.slice(clause.start, tools[0]!.start).trimEnd();
    const written = count.base.high > 1 ? `${text} whisk, spatula` : `${text} spatula`;
    return [{ title, edits: [{ ...placeOfClause(step, 'in'), text: written }] }];
  }
  return [{ title, edits: [{ ...placeOfClause(step, 'with tool'), text: 'with spatula' }] }];
}

export const foldTool: Rule = {
  code: 'fold-tool',
  severities: ['warning'],
  title: 'The last of the foam is whisked in',
  why: 'A whisk cuts through the bubbles it passes. For the first addition that is what is wanted: it loosens the base. The last addition is the one whose air must stay, and a spatula turns the mass over without cutting it.',
  remedy: 'Write the whisk for the first additions and the spatula for the last: “in 3 additions: whisk, spatula”.',
  source: 'Common practice, no source.',
  examples: {
    bad: `formula Fool, whisked to the last
  300 g  mango purée, pasteurised, 4 °C
  260 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
  fold cream into mango purée in 3 additions: spatula, whisk   // expect: fold-tool
  pour into glass
`,
    good: `formula Fool
  300 g  mango purée, pasteurised, 4 °C
  260 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
  fold cream into mango purée in 3 additions: whisk, whisk, spatula
  pour into glass
`,
  },
  message: (n) =>
    `The last of the ${n.foam} goes in with the ${n.tool}, which cuts its bubbles: take the spatula for the last addition.`,
  check,
};
