/** `foam-broken`: what was folded is blended, boiled, cooked or whipped hard afterwards. */
import { formatCelsius } from '../quantities/format.ts';
import { clauseOf, mediumOf } from '../run/clauses.ts';
import type { Foam, Matter, Run, StepRecord } from '../run/trace.ts';
import { isFold, lifeBefore, placeOfStep, shareOfTraits } from './look.ts';
import { foldOf, isCream, isWhites } from './look-fold.ts';
import type { Report, Rule } from './rule.ts';

/** °C from which a stirred mixture counts as cooked; its foam is gone before (common practice, no source). */
const cooked = 60;
const stirredHeat: ReadonlySet<string> = new Set(['heat', 'cook', 'hold', 'reduce', 'melt', 'whisk', 'stir']);
/** Steamed or poached whites set instead of breaking. */
const gentle: ReadonlySet<string> = new Set(['water bath', 'bain-marie', 'oven']);

type Fault = 'blended' | 'boiled' | 'cooked' | 'whipped on high';

function faultOf(record: StepRecord): Fault | null {
  const { node } = record.step;
  if (node.verb === 'blend') return 'blended';
  if (node.verb === 'boil') return 'boiled';
  if (node.verb === 'whip') return clauseOf(node, 'on')?.level === 'high' ? 'whipped on high' : null;
  if (!stirredHeat.has(node.verb)) return null;
  return (record.written?.high ?? 0) >= cooked ? 'cooked' : null;
}

/** The fold, where this matter still holds the cream or whites that were folded in it. */
function foldBefore(matter: Matter): StepRecord | null {
  const { foam } = matter;
  if (!isCream(foam) && !isWhites(foam)) return null;
  return (
    lifeBefore(matter).find((record) => isFold(record) && foldOf(record) !== null && sameFoam(record.result.foam, foam)) ?? null
  );
}

const sameFoam = (one: Foam | null, other: Foam | null): boolean => one?.whipped === other?.whipped;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const fault = faultOf(record);
    if (fault === null) continue;
    for (const { matter, role } of record.inputs) {
      const fold = role === 'with' || shareOfTraits(matter, 'butter') >= 0.15 ? null : foldBefore(matter);
      if (!fold) continue;
      if (fault === 'cooked' && isWhites(matter.foam) && gentle.has(mediumOf(record.step.node) ?? '')) continue;
      report({
        severity: 'error',
        place: placeOfStep(record.step),
        numbers: {
          foam: isCream(matter.foam) ? 'whipped cream' : 'whipped whites',
          fault,
          celsius: fault === 'cooked' ? (record.written?.high ?? null) : null,
          limit: fault === 'cooked' ? cooked : null,
        },
        related: [{ place: fold.step.place, message: 'folded here' }],
        fixes: record.inputs.length === 1 ? [{ title: 'Take this step out', edits: [{ ...record.step.place, text: '' }] }] : [],
      });
      break;
    }
  }
}

const fool = `  300 g  mango purée, pasteurised, 4 °C
  200 g  cream, 35 % fat, 4 °C
  whip cream to soft-medium peak
`;

export const foamBroken: Rule = {
  code: 'foam-broken',
  severities: ['error'],
  title: 'The folded foam is destroyed again',
  why: 'Folding is done to keep air. A blender’s shear, boiling, stirring over heat to 60 °C and more, and whipping on high let it all out again: the fat of cream melts, the bubbles of whites burst. Baking is another matter, for there the foam sets before it can fall; and butter that joins a meringue or a bombe takes over from its foam.',
  remedy: 'Blend, cook and strain the base before the foam goes in, and fold last.',
  source: 'Common practice, no source.',
  examples: {
    bad: `formula Mango fool, blended
${fool}  fold cream into mango purée in 3 additions: whisk, spatula
  blend until smooth   // expect: foam-broken
  pour into glass
`,
    good: `formula Mango fool
${fool}  blend mango purée until smooth
  fold cream into mango purée in 3 additions: whisk, spatula
  pour into glass
`,
  },
  message: (n) => {
    const how = n.fault === 'cooked' ? `cooked to ${formatCelsius(Number(n.celsius))}` : n.fault;
    return `This holds folded ${n.foam} and is then ${how}: that lets its air out again. Do it before the fold.`;
  },
  check,
};
