/** `needs-tempering`: something hot meets raw yolk all at once. */
import { sugarsOf } from '../matter/composition.ts';
import { mixtureTemperature } from '../matter/heat-balance.ts';
import { formatCelsius } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { lastHeated, massOf, placeOfStep } from './look.ts';
import { holdsYolk, isRaw, thickening, warmth, yolkThickensFrom } from './look-egg.ts';
import { nameText, spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Share of the whole from which starch keeps yolk from setting, and of the syrup from which it is poured on yolk at work. */
const protecting = { starch: 0.03, syrup: 0.7 } as const;

interface Meeting {
  readonly hot: Input;
  readonly yolk: Input;
  /** °C of the two together, the hot one at its written worst. */
  readonly together: number;
}

/** Something liquid above 65 °C, and raw yolk that would set as they meet. */
function meetingOf(record: StepRecord): Meeting | null {
  const { result, step } = record;
  if (step.node.verb === 'temper' || result.layers || result.phase === 'dough') return null;
  if (record.inputs.length < 2 || thickening(result) >= protecting.starch) return null;
  const parties = record.inputs.filter((input) => input.role !== 'with' && input.matter.grams.high > 0);
  const hots = parties.filter(({ matter }) => warmth(matter.heat) > yolkThickensFrom && flows(matter));
  if (hots.length === 0) return null;
  for (const yolk of parties.filter(({ matter }) => matter.parts.some((part) => holdsYolk(part) && isRaw(matter, part))))
    for (const hot of hots) {
      if (hot === yolk || loosened(yolk.matter, hot.matter) || syrupAtWork(record, hot.matter)) continue;
      const together = atWorst(parties);
      if (together > yolkThickensFrom) return { hot, yolk, together };
    }
  return null;
}

const flows = ({ phase }: Matter): boolean => phase === 'liquid' || phase === 'paste' || phase === 'foam';

/** Some of the same hot liquid was stirred into the yolk before: that is tempering by hand. */
const loosened = (yolk: Matter, hot: Matter): boolean =>
  yolk.made !== null && yolk.parts.some((part) => hot.parts.some(({ line }) => line === part.line));

const syrupAtWork = ({ step }: StepRecord, hot: Matter): boolean =>
  step.node.clauses.some(({ word }) => word === 'while whipping') && sugarsOf(hot.composition) / massOf(hot) >= protecting.syrup;

const atWorst = (parties: readonly Input[]): number =>
  mixtureTemperature(
    parties.map(({ matter }) => ({
      composition: thermalComposition(matter),
      celsius: interval(warmth(matter.heat), Math.max(warmth(matter.heat), matter.heat.celsius.high)),
      coldFat: matter.heat.celsius.high <= 10,
    })),
  ).low;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const found = meetingOf(record);
    if (!found) continue;
    const { hot, yolk, together } = found;
    report({
      place: placeOfStep(record.step),
      numbers: {
        hot: spoken(hot, 'liquid'),
        yolk: spoken(yolk, 'egg'),
        celsius: Math.round(warmth(hot.matter.heat)),
        mixture: Math.round(together),
        limit: yolkThickensFrom,
      },
      related: lastHeated(hot.matter.heat),
      fixes: tempered(record, found),
    });
  }
}

/** The step rewritten as `temper HOT into YOLK`, where nothing else is said in it. */
function tempered({ step }: StepRecord, { hot, yolk }: Meeting): readonly Fix[] {
  const { node } = step;
  const others = node.clauses.filter(({ word }) => word !== 'into' && word !== 'over' && word !== 'for');
  if (others.length > 0 || node.operands.length > 1 || hot.partial || yolk.partial) return [];
  const text = `temper ${nameText(hot.name)} into ${nameText(yolk.name)}`;
  const end = Math.max(node.verbSpan.end, ...node.operands.map((operand) => operand.end), ...node.clauses.map((c) => c.end));
  return [{ title: `Write “${text}”`, edits: [{ ...step.place, start: node.verbSpan.start, end, text }] }];
}

const start = `  500 g  whole milk, 4 °C
  100 g  egg yolk
   80 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
`;

export const needsTempering: Rule = {
  code: 'needs-tempering',
  severities: ['warning'],
  title: 'Hot liquid meets raw yolk at once',
  why: 'Yolk begins to thicken at 65 °C. Where something much hotter goes in at once, the yolk it touches first sets into grains before the rest has warmed. Poured in a thin stream and stirred, the whole warms evenly. Starch from 3 % and a thick syrup poured while the yolk is whipped keep it from setting.',
  remedy:
    'Temper: pour the hot liquid in a thin stream onto the yolk while stirring (`temper milk into yolk`), or let it cool to 65 °C first.',
  source:
    'Yolk begins to thicken at 65 °C: McGee 2004, On Food and Cooking. 3 % of starch and 70 % of solids: common practice, no source.',
  examples: {
    bad: `formula Custard, the milk stirred straight in
${start}  heat whole milk to 90-92 °C
  stir whole milk into liaison   // expect: needs-tempering
  cook to 82-84 °C until nappe
`,
    good: `formula Custard, tempered
${start}  heat whole milk to 90-92 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
`,
  },
  message: (n) =>
    `The ${n.hot} may be at ${formatCelsius(Number(n.celsius))} as it meets the ${n.yolk} all at once; together they come to about ${formatCelsius(Number(n.mixture))}, and raw yolk sets into grains above ${formatCelsius(Number(n.limit))}. Temper it: in a thin stream, stirring.`,
  check,
};
