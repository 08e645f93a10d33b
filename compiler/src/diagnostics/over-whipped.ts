/** `over-whipped`: a foam too stiff for what it is folded into, or cream on its way to butter. */
import { formatPercent } from '../quantities/format.ts';
import { clauseOf } from '../run/clauses.ts';
import type { Foam, Matter, Run, StepRecord } from '../run/trace.ts';
import { gramsOfTraits, isFold, lifeAfter, placeOfStep } from './look.ts';
import { chocolateBaseOf, foldOf, isCream, isWhites, takesFoamCold } from './look-fold.ts';
import { spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Sugar over egg white, by mass, that keeps stiff whites elastic (common practice, no source). */
const enoughSugar = 0.5;

/** What is done to butter that was made on purpose. */
const butterMaking: ReadonlySet<string> = new Set(['strain', 'press', 'knead', 'rub', 'laminate', 'churn']);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (isFold(record)) checkFold(record, report);
    else checkWhip(run, record, report);
  }
}

/** Past stiff: grains of butter, at the step that whipped so far. */
function checkWhip(run: Run, record: StepRecord, report: Report): void {
  const { foam } = record.result;
  if (foam?.kind !== 'cream' || foam.low !== 'over' || foam.whipped !== record.step) return;
  const meant = /butter/.test(clauseOf(record.step.node, 'until')?.sign.text.toLowerCase() ?? '');
  if (meant || lifeAfter(run, record).some(({ step }) => butterMaking.has(step.node.verb))) return;
  const before = record.inputs.find(({ matter }) => matter.foam !== null)?.matter.foam;
  report({
    severity: 'error',
    place: placeOfStep(record.step),
    numbers: { foam: 'cream', fault: 'butter' },
    related: before ? [{ place: before.whipped.place, message: 'whipped to stiff here already' }] : [],
    fixes: before ? [{ title: 'Take this step out', edits: [{ ...record.step.place, text: '' }] }] : [],
  });
}

function checkFold(record: StepRecord, report: Report): void {
  const fold = foldOf(record);
  const foam = fold?.foam.matter.foam;
  if (!fold || !foam) return;
  const cream = isCream(foam) && isStiff(foam) && isPourable(fold.base.matter);
  const sugar = isWhites(foam) ? sugarOverWhite(fold.foam.matter) : null;
  // In dry nuts and sugar they find the sugar they lack, and macarons are worked until the foam gives way (common practice, no source).
  const dry = fold.base.matter.phase === 'powder';
  const whites = sugar !== null && foam.low === 'stiff' && sugar < enoughSugar && !dry;
  if (!cream && !whites) return;
  report({
    severity: 'warning',
    place: placeOfStep(record.step),
    numbers: {
      foam: spoken(fold.foam, 'foam'),
      base: spoken(fold.base, 'base'),
      fault: cream ? 'stiff cream' : 'dry whites',
      sugar,
      limit: cream ? null : enoughSugar,
    },
    related: [{ place: foam.whipped.place, message: 'whipped here' }],
    fixes: softer(foam, cream ? 'soft-medium peak' : 'medium peak'),
  });
}

/** A written range at its stiff end; without a peak written, only what certainly is stiff. */
const isStiff = (foam: Foam): boolean => (clauseOf(foam.whipped.node, 'to') ? foam.high === 'stiff' : foam.low === 'stiff');

const isPourable = (base: Matter): boolean =>
  base.phase === 'liquid' && !takesFoamCold(base) && (base.gelatin === 'dissolved' || chocolateBaseOf(base) !== null);

const sugarOverWhite = (matter: Matter): number | null => {
  const white = gramsOfTraits(matter, 'egg white');
  return white > 0 ? gramsOfTraits(matter, 'sugar', 'icing sugar', 'syrup', 'invert') / white : null;
};

function softer({ whipped }: Foam, peak: string): readonly Fix[] {
  const to = clauseOf(whipped.node, 'to');
  if (!to || to.target.overrides.length > 0 || to.target.base.kind !== 'peak') return [];
  const { start, end } = to;
  return [{ title: `Whip to ${peak}`, edits: [{ ...whipped.place, start, end, text: `to ${peak}` }] }];
}

const recipe = (peak: string, mark: string): string => `formula Mango mousse
  300 g  mango purée, pasteurised, 20 °C
   50 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  water, 10 °C
  240 g  cream, 35 % fat, 4 °C
  bloom gelatin in water for 10 min
  heat mango purée, caster sugar to 60 °C as base
  add gelatin
  cool to 28-30 °C
  whip cream to ${peak} peak
  fold cream into base in 3 additions: whisk, spatula${mark}
  pour into glass
  chill to 4 °C for 4 h
`;

export const overWhipped: Rule = {
  code: 'over-whipped',
  severities: ['error', 'warning'],
  title: 'Whipped too far',
  decides:
    'Cream that has turned to butter: an error. Stiff cream in a pourable base, and stiff whites with little sugar, that are folded: a warning.',
  why: 'Stiff cream has little liquid left between its fat: in a flowing base it does not spread but stays in specks, and folding turns it to grains. Stiff whites with little sugar have no slack either and break into flakes. Whipped on, cream becomes butter. Stiff is right for piping, for meringue rich in sugar, and for set creams that are smoothed first.',
  remedy: 'Stop at soft to medium peak for a mousse or bavarois; give whites half their mass of sugar or stop at medium.',
  source: 'Common practice, no source.',
  examples: {
    bad: recipe('stiff', '   // expect: over-whipped'),
    good: recipe('medium', ''),
  },
  message: (n) => {
    if (n.fault === 'butter') return 'The cream is whipped on past stiff peak and turns to butter: stop at stiff.';
    if (n.fault === 'stiff cream')
      return `The ${n.foam} is whipped to stiff peak and then folded into the pourable ${n.base}: it stays in specks. Stop at soft to medium peak.`;
    return `Whites whipped to stiff peak with only ${formatPercent(Number(n.sugar))} of their mass in sugar break into flakes when they are folded. Give them ${formatPercent(Number(n.limit))}, or stop at medium peak.`;
  },
  check,
};
