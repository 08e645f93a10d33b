/** `fold-too-warm`: whipped cream meets a base so warm that its fat melts. */
import { coolingTime } from '../matter/cooling.ts';
import { formatCelsius, formatDuration } from '../quantities/format.ts';
import { interval, middle } from '../quantities/interval.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Heat, Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { lastHeated, namedWarmth, placeOfStep, shareOfTraits, warmest } from './look.ts';
import { chocolateBaseOf, cocoaButterShare, type Fold, isCoconut, isCream, mostChocolate, pairsOf } from './look-fold.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

interface Limits {
  /** °C above which it is named a fault, and above which it is an error (null: never). */
  readonly warning: number;
  readonly error: number | null;
  /** What to cool to. */
  readonly advised: readonly [number, number];
}

/** Common practice, no source, within what milk fat and cocoa butter melt at. */
const limits = {
  plain: { warning: 35, error: 40, advised: [30, 34] },
  milky: { warning: 40, error: 45, advised: [32, 36] },
  dark: { warning: 48, error: 52, advised: [38, 42] },
  agar: { warning: 42, error: 42, advised: [38, 41] },
  coconut: { warning: 27, error: null, advised: [23, 25] },
} as const satisfies Record<string, Limits>;

function limitsOf({ base, foam }: Fold): Limits {
  if (isCoconut(foam.matter)) return limits.coconut;
  if (chocolateBaseOf(base.matter) === 'dark') return limits.dark;
  if (shareOfTraits(base.matter, 'agar', 'carrageenan') > 0) return limits.agar;
  // Dark chocolate too thin to set the base still carries the warmth that its cocoa butter bears.
  return mostChocolate(base.matter) !== null && cocoaButterShare(base.matter) >= 0.06 ? limits.milky : limits.plain;
}

/** Bringing together by hand; a part taken off first to loosen the base is meant to give up its air. */
const meetings: ReadonlySet<string> = new Set(['fold', 'whisk', 'stir', 'mix', 'combine', 'add']);

/** A spoonful of something hot warms a bowl of cream by too little to matter, share of the foam's mass. */
const spoonful = 0.15;

function meetsWarm(record: StepRecord): readonly Fold[] {
  const { verb } = record.step.node;
  if (!meetings.has(verb)) return [];
  return pairsOf(record).filter(
    ({ base, foam }) =>
      isCream(foam.matter.foam) &&
      middle(base.matter.grams) >= spoonful * middle(foam.matter.grams) &&
      (verb === 'fold' || !(foam.partial || base.partial)),
  );
}

const finite = (heat: Heat, celsius: number): number => (Number.isFinite(celsius) ? celsius : heat.celsius.low);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const worst = meetsWarm(record)
      .map((fold) => ({ fold, limits: limitsOf(fold), celsius: finite(fold.base.matter.heat, warmest(fold.base.matter.heat)) }))
      .filter(({ limits, celsius }) => celsius > limits.warning)
      .sort((a, b) => b.celsius - a.celsius)[0];
    if (!worst) continue;
    const { fold, celsius } = worst;
    const { base } = fold;
    const { heat } = base.matter;
    const [low, high] = worst.limits.advised;
    const named = namedWarmth(heat);
    const text = `cool${operandText(base)} to ${readingText(record, low, high)}`;
    report({
      severity: worst.limits.error !== null && celsius > worst.limits.error ? 'error' : 'warning',
      place: placeOfStep(record.step),
      numbers: {
        name: spoken(base, 'base'),
        celsius: round(finite(heat, named)),
        limit: worst.limits.warning,
        coconut: isCoconut(fold.foam.matter),
        low,
        high,
        ...timeToCool(run, base.matter, high),
      },
      related: [
        ...lastHeated(heat),
        ...(fold.foam.matter.foam ? [{ place: fold.foam.matter.foam.whipped.place, message: 'whipped here' }] : []),
      ],
      fixes: canCool(record, base) ? [lineBefore(record.step, text)] : [],
    });
  }
}

/** Cooling it makes it the current matter, which a fold without `into` must not lose. */
const canCool = (record: StepRecord, base: Input): boolean =>
  base.role === 'base' || record.step.node.clauses.some(({ word }) => word === 'into');

function timeToCool(run: Run, base: Matter, to: number) {
  const time = coolingTime({
    composition: thermalComposition(base),
    grams: middle(base.grams),
    millilitres: middle(millilitresOf(base)),
    medium: 'still air',
    surroundings: run.formula.settings.room,
    vessel: { diameterMm: 260 },
    stirred: true,
    from: base.heat.celsius,
    to,
  });
  return time && Number.isFinite(time.seconds.high)
    ? { quickestSeconds: Math.round(time.seconds.low), slowestSeconds: Math.round(time.seconds.high) }
    : {};
}

const round = (celsius: number): number => Math.round(celsius * 10) / 10;

const heading = `  240 g  whole milk, 4 °C
   80 g  egg yolk
   60 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  water, 10 °C
  200 g  cream, 35 % fat, 4 °C
  bloom gelatin in water for 10 min
  heat whole milk to 80-85 °C
  whisk egg yolk, caster sugar until dissolved as custard
  temper whole milk into custard
  cook to 82-84 °C until nappe
  add gelatin
`;

export const foldTooWarm: Rule = {
  code: 'fold-too-warm',
  severities: ['error', 'warning'],
  title: 'The base is too warm for whipped cream',
  decides: 'Far above the limit (by 4 or 5 °C) the foam is lost: an error. Less above it, it turns soft and heavy: a warning.',
  why: 'Whipped cream is air held by milk fat that is half solid. The last of that fat melts between 30 and 35 °C, and with it the foam. Cocoa butter in the base takes heat up as it mixes and sets the mousse by itself, so that chocolate bases may be warmer; coconut fat melts from about 24 °C, so that its foam needs a cooler one. Whipped whites are held by protein and are folded hot on purpose.',
  remedy:
    'Cool the base to 30–35 °C before the cream goes in: a dark ganache to 40–45 °C, milk or white chocolate to 32–38 °C, below 27 °C for coconut cream.',
  source:
    'Dropping point of milk fat 30.5–35.4 °C (Australian milk fat, 19 sites over two years, abstract). Limits for chocolate, agar and coconut: common practice, no source.',
  examples: {
    bad: `formula Bavarois, folded hot
${heading}  whip cream to soft-medium peak
  fold cream into custard in 3 additions: whisk, spatula   // expect: fold-too-warm
  pour into glass
  chill to 4 °C for 4 h
`,
    good: `formula Bavarois, folded at the warm end
${heading}  cool to 33-35 °C
  whip cream to soft-medium peak
  fold cream into custard in 3 additions: whisk, spatula
  pour into glass
  chill to 4 °C for 4 h
`,
  },
  message: (n) => {
    const foam = n.coconut ? 'whipped coconut cream' : 'whipped cream';
    const time =
      typeof n.quickestSeconds === 'number' && typeof n.slowestSeconds === 'number'
        ? ` (about ${formatDuration(interval(n.quickestSeconds, n.slowestSeconds))} in a 26 cm bowl at room temperature, stirred now and then)`
        : '';
    return `The ${n.name} may still be at ${formatCelsius(Number(n.celsius))} when the ${foam} meets it; above ${formatCelsius(Number(n.limit))} the foam’s fat melts and it collapses. Cool it to ${formatCelsius(interval(Number(n.low), Number(n.high)))} first${time}.`;
  },
  check,
};
