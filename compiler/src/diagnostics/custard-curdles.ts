/** `custard-curdles`: an egg custard is taken past the temperature at which its egg curdles. */
import { sugarsOf } from '../matter/composition.ts';
import { formatCelsius, formatPercent } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { massOf, placeOfStep, traitsOf } from './look.ts';
import { heats, thickening, warmth, waterShare, yolkShare } from './look-egg.ts';
import { otherReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C; plain custard by the published ranges, curds by common practice. */
const limits = { plain: { warning: 86, error: 88 }, curd: { warning: 90, error: null } } as const;

/** Shares (0–1) that make a custard, protect it, or make it a curd. */
const shares = { yolk: 0.04, water: 0.35, starch: 0.01, sugar: 0.35, curdJuice: 0.15, curdSugar: 0.2 } as const;

/** Passion fruit is as sour as lemon and makes curds as it does. */
const sourJuice = 3.3;

const sugarShare = (matter: Matter): number => sugarsOf(matter.composition) / massOf(matter);

const isCustard = (matter: Matter): boolean =>
  yolkShare(matter) >= shares.yolk &&
  waterShare(matter) >= shares.water &&
  thickening(matter) < shares.starch &&
  sugarShare(matter) < shares.sugar &&
  matter.phase !== 'dough' &&
  !matter.baked;

function isCurd(matter: Matter): boolean {
  let juice = 0;
  for (const part of matter.parts) {
    const traits = traitsOf(part);
    const pH = part.line.pH ?? (part.line.substance.is === 'kind' ? part.line.substance.kind.pH : null);
    const sour = traits.includes('citrus') || (pH !== null && pH <= sourJuice);
    if (sour && traits.includes('juice')) juice += part.grams;
  }
  return juice >= shares.curdJuice * massOf(matter) && sugarShare(matter) >= shares.curdSugar;
}

/** Whether this step itself says how hot: by a reading, or by boiling. What is only computed curdles where it certainly is too hot. */
const isRead = (record: StepRecord): boolean => record.written !== null || heats(record);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isRead(record)) continue;
    const worst = bodiesOf(record.result)
      .filter(isCustard)
      .map((body) => ({ body, limit: isCurd(body) ? limits.curd : limits.plain, celsius: warmth(body.heat) }))
      .find(({ limit, celsius }) => celsius > limit.warning);
    if (!worst || hotBefore(record, worst.limit.warning)) continue;
    const { body, limit, celsius } = worst;
    const curd = limit === limits.curd;
    const [low, high] = record.step.node.verb === 'bake' ? [80, 82] : [82, 84];
    report({
      severity: limit.error !== null && celsius > limit.error ? 'error' : 'warning',
      place: placeOfStep(record.step),
      numbers: {
        celsius: Math.round(celsius * 10) / 10,
        limit: limit.warning,
        starch: Math.round(thickening(body) * 1e4) / 100,
        sugar: Math.round(sugarShare(body) * 1e3) / 10,
        curd,
        low,
        high,
      },
      fixes: otherReading(run, record, low, high),
    });
  }
}

/** Said once, where it first gets that hot. */
const hotBefore = (record: StepRecord, limit: number): boolean =>
  record.inputs.some(({ matter }) => bodiesOf(matter).some((body) => isCustard(body) && warmth(body.heat) > limit));

const start = `  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
`;

export const custardCurdles: Rule = {
  code: 'custard-curdles',
  severities: ['error', 'warning'],
  title: 'The custard gets hot enough to curdle',
  decides:
    'A custard written above 88 °C has curdled by every published range: an error. Above 86 °C, or a curd of citrus juice and sugar above 90 °C, it may: a warning.',
  why: 'Egg thickens a custard at 79 to 85 °C. Some degrees above that its proteins draw together into grains and let go of the water. Starch from 1 %, and sugar from 35 %, keep them apart; acid and sugar together let a curd go higher than a custard.',
  remedy:
    'Take it to 82–84 °C, off the heat at once and through a sieve; a baked custard to 80–82 °C in the middle. To boil it, bind it with starch first.',
  source:
    'Custard coagulates at 79–83 °C and begins to collapse 3–6 °C above that (McGee 2004); 79–85 °C (Gisslen). Figoni has custard sauce curdle before 85 °C; the higher figures are taken. The limit for curds: common practice, no source.',
  examples: {
    bad: `formula Custard taken too far
${start}  cook to 89-90 °C until thick   // expect: custard-curdles
`,
    good: `formula Custard taken as far as it goes
${start}  cook to 84-85 °C until nappe
`,
  },
  message: (n) =>
    `The ${n.curd ? 'curd' : 'custard'} may reach ${formatCelsius(Number(n.celsius))}; with ${Number(n.starch) > 0 ? `only ${formatPercent(Number(n.starch) / 100)} of` : 'no'} starch to bind it, its egg curdles above ${formatCelsius(Number(n.limit))}. Take it to ${formatCelsius(interval(Number(n.low), Number(n.high)))}.`,
  check,
};
