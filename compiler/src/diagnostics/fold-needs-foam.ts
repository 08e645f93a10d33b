/** `fold-needs-foam`: two things without air are folded. */
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { placeOfStep, shareOfTraits } from './look.ts';
import { pairsOf } from './look-fold.ts';
import { spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Nuts, fruit, chips, crumbs: to fold them in is to handle them gently, foam or none. */
const pieces: ReadonlySet<Matter['phase']> = new Set(['solid', 'frozen', 'crystal', 'sheet']);

/** Flour and the like. */
const dry: ReadonlySet<Matter['phase']> = new Set(['powder', 'crystal']);

function parties(record: StepRecord): readonly Input[] {
  return record.inputs.filter(({ role, matter }) => role !== 'with' && matter.grams.high > 0);
}

/** Dry matter folded into a batter that does not rise by egg foam (by leavening, or not at all) is a gentle mixing. */
function isBatter(all: readonly Input[]): boolean {
  if (!all.some(({ matter }) => dry.has(matter.phase))) return false;
  const wet = all.filter(({ matter }) => !dry.has(matter.phase));
  const leavened = all.some(({ matter }) => shareOfTraits(matter, 'leavening', 'yeast') > 0);
  const eggs = wet.some(({ matter }) => shareOfTraits(matter, 'whole egg', 'egg yolk', 'egg white') >= 0.4);
  return leavened || !eggs;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (record.step.node.verb !== 'fold') continue;
    const all = parties(record);
    if (all.length < 2 || pairsOf(record).length > 0 || all.some(({ matter }) => matter.phase === 'foam')) continue;
    if (all.some(({ matter }) => pieces.has(matter.phase)) || isBatter(all)) continue;
    const whippable = all.find(({ matter }) => shareOfTraits(matter, 'cream', 'egg white', 'plant cream') > 0.5);
    report({
      severity: 'error',
      place: placeOfStep(record.step),
      numbers: {
        first: spoken(all[0]!, 'base'),
        second: spoken(all[1]!, 'rest'),
        whip: whippable ? spoken(whippable, 'cream') : null,
      },
      related: all.flatMap(({ matter }) =>
        matter.made ? [{ place: matter.made.step.place, message: 'no foam was made here' }] : [],
      ),
      fixes: fixesOf(record),
    });
  }
}

/** Without a foam to spare, stirring is what is meant. */
function fixesOf({ step }: StepRecord): readonly Fix[] {
  const additions = step.node.clauses.find(({ word }) => word === 'in');
  const verb = { ...step.place, start: step.node.verbSpan.start, end: step.node.verbSpan.end, text: 'stir' };
  if (!additions) return [{ title: 'Stir instead', edits: [verb] }];
  const { start, end } = withSpace(step.node.text, additions);
  return [{ title: 'Stir instead', edits: [verb, { ...step.place, start, end, text: '' }] }];
}

/** A clause with the space before it. */
function withSpace(text: string, clause: { readonly start: number; readonly end: number }) {
  let { start } = clause;
  while (start > 0 && text[start - 1] === ' ') start -= 1;
  return { start, end: clause.end };
}

export const foldNeedsFoam: Rule = {
  code: 'fold-needs-foam',
  severities: ['error'],
  title: 'Nothing here is a foam',
  why: 'Folding keeps air in: it turns one mass over another instead of beating through it. Where neither holds air there is nothing to keep, and a mousse that should have been light stays a sauce. Most often the cream or the whites were forgotten at the whisk. Flour, butter, chocolate and nuts folded into an egg foam are folds, and so is anything in pieces.',
  remedy: 'Whip the cream or the eggs first, or stir instead of folding.',
  source: 'Common practice, no source.',
  examples: {
    bad: `formula Cream from the jug
  300 g  mango purée, pasteurised, 4 °C
  200 g  cream, 35 % fat, 4 °C
  fold cream into mango purée in 3 additions: whisk, spatula   // expect: fold-needs-foam
  pour into glass
`,
    good: `formula Mango fool
  300 g  mango purée, pasteurised, 4 °C
  200 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
  fold cream into mango purée in 3 additions: whisk, spatula
  pour into glass
`,
  },
  message: (n) =>
    `Neither the ${n.first} nor the ${n.second} holds air, so there is nothing to fold. ${n.whip === null ? 'Stir them together, or whip what should be a foam first.' : `Whip the ${n.whip} first, or stir instead.`}`,
  check,
};
