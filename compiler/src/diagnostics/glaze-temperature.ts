/** `glaze-temperature`: a mirror glaze is poured too warm, too cold, or on what is not frozen. */
import { sugarsOf } from '../matter/composition.ts';
import { formatCelsius } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Heat, Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { gelatinPercent, massOf, placeOfStep } from './look.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C at which it flows and stays on (common practice, no source). */
const window = { low: 28, high: 36 } as const;

/** What a mirror glaze is, by its sugar and its gelatin as 200 bloom (common practice, no source). */
const isMirrorGlaze = (matter: Matter): boolean =>
  gelatinPercent(matter) >= 0.8 && sugarsOf(matter.composition) / massOf(matter) >= 0.3;

interface Glazing {
  readonly glaze: Input;
  readonly cake: Input;
}

/** `glaze cake with glaze`, and the other ways a glaze comes over a mousse. */
function glazingOf(record: StepRecord): Glazing | null {
  const { verb, clauses } = record.step.node;
  // A syrup with gelatin in it, poured into whites at the whisk, makes marshmallow.
  if (clauses.some(({ word }) => word === 'while whipping')) return null;
  const other = verb === 'dip' || verb === 'coat' || (verb === 'pour' && clauses.some(({ word }) => word === 'over'));
  if (verb !== 'glaze' && !other) return null;
  const glaze = record.inputs.find(({ matter }) => isMirrorGlaze(matter) && !matter.frozen);
  const cake = record.inputs.find((input) => input !== glaze);
  return glaze && cake && (!other || bodiesOf(cake.matter).some(isMousse)) ? { glaze, cake } : null;
}

/** Foam or gel that a warm glaze would melt or slide off. */
const isMousse = (body: Matter): boolean => !body.baked && (body.foam !== null || body.gelatin === 'set' || body.frozen);

const melts = ({ matter }: Input): boolean =>
  !matter.frozen &&
  bodiesOf(matter).some((body) => isMousse(body) && !body.frozen) &&
  !bodiesOf(matter).some((body) => body.frozen);

/** In a glass the mousse cannot run: a thin glaze on it is a layer. */
const inGlass = (record: StepRecord): boolean => /glass|jar|cup|bowl|dish|ramekin/.test(record.mould ?? '');

function outside(heat: Heat): { readonly celsius: number; readonly side: 'warm' | 'cold' } | null {
  const { low, high } =
    heat.basis === 'written' && heat.written ? heat.written : { low: heat.celsius.high, high: heat.celsius.low };
  if (high > window.high) return { celsius: Number.isFinite(high) ? high : low, side: 'warm' };
  if (low < window.low) return { celsius: Number.isFinite(low) ? low : high, side: 'cold' };
  return null;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const glazing = glazingOf(record);
    if (!glazing) continue;
    const { glaze, cake } = glazing;
    const off = outside(glaze.matter.heat);
    const soft = !inGlass(record) && melts(cake);
    if (!off && !soft) continue;
    const reading = readingText(record, 30, 32);
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        celsius: off ? Math.round(off.celsius * 10) / 10 : null,
        side: off?.side ?? null,
        low: window.low,
        high: window.high,
        cake: soft ? spoken(cake, 'mousse') : null,
      },
      related: glaze.matter.made ? [{ place: glaze.matter.made.step.place, message: 'the glaze was left so here' }] : [],
      fixes: [
        ...(off ? [lineBefore(record.step, `${off.side === 'warm' ? 'cool' : 'heat'}${operandText(glaze)} to ${reading}`)] : []),
        ...(soft ? [lineBefore(record.step, `freeze${operandText(cake)} to -18 °C for 12 h`)] : []),
      ],
    });
  }
}

const cake = (at: string, mark: string): string => `formula Glazed mango dome

component mousse
  300 g  mango purée, pasteurised, 20 °C
   50 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  water, 10 °C
  250 g  cream, 35 % fat, 4 °C
  bloom gelatin in water for 10 min
  heat mango purée, caster sugar to 60 °C as base
  add gelatin
  cool to 28-30 °C
  whip cream to soft-medium peak
  fold cream into base in 3 additions: whisk, spatula
  pour into mould
  freeze to -18 °C for 12 h
  unmould

component glaze
  100 g  water
  200 g  caster sugar
  200 g  glucose syrup
  130 g  condensed milk
   14 g  gelatin, sheet, 200 bloom
   84 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  boil water, caster sugar, glucose syrup to 103-104 °C as syrup
  cool to 85-90 °C
  add gelatin
  add condensed milk
  cool to ${at}

assembly
  glaze mousse with glaze${mark}
  thaw in fridge to 4 °C for 6 h
`;

export const glazeTemperature: Rule = {
  code: 'glaze-temperature',
  severities: ['warning'],
  title: 'The glaze is poured too warm, too cold, or on soft mousse',
  why: 'A mirror glaze sets by gelatin on the frozen cake it meets. Above 36 °C it runs off thin and melts the mousse; below 28 °C it sets before it has levelled. On a mousse that is not frozen it finds nothing to set on: it slides, and takes the surface along.',
  remedy: 'Pour at 30–32 °C over a mousse straight from the freezer.',
  source: 'Common practice, no source.',
  examples: { bad: cake('43-45 °C', '   // expect: glaze-temperature'), good: cake('34-36 °C', '') },
  message: (n) => {
    const off =
      typeof n.celsius === 'number'
        ? `The glaze is at ${formatCelsius(n.celsius)}, ${n.side === 'warm' ? `above ${formatCelsius(Number(n.high))}: it runs off` : `below ${formatCelsius(Number(n.low))}: it sets before it levels`}.`
        : '';
    const soft = n.cake === null ? '' : `The ${n.cake} is not frozen: the glaze slides off.`;
    return [off, soft].filter(Boolean).join(' ');
  },
  check,
};
