/** `out-of-temper`: chocolate to dip, coat or mould with is used warmer or cooler than its working window. */
import { chocolateWindows } from '../matter/chocolate.ts';
import { formatCelsius } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Heat, Input, Run, StepRecord } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { unmixedKind } from './look-chocolate.ts';
import { lineBefore, operandText, readingText } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** The windows' own error, K. */
const error = 1;

const coating: ReadonlySet<string> = new Set(['dip', 'coat']);
const moulding: ReadonlySet<string> = new Set(['pour', 'portion', 'pipe', 'fill', 'line', 'brush', 'spread']);
const moulds: ReadonlySet<string> = new Set(['mould', 'sphere', 'half-sphere', 'bar', 'cone']);

/** The melted chocolate a step dips, coats or moulds with; null where it does none of that, or on something frozen. */
function chocolateOf(record: StepRecord): Input | null {
  const { verb } = record.step.node;
  const isChocolate = ({ matter }: Input): boolean =>
    matter.chocolate !== 'none' && matter.chocolate !== 'solid' && unmixedKind(matter) !== null;
  if (coating.has(verb)) {
    const coat = record.inputs.find((input) => input.role === 'with' && isChocolate(input)) ?? null;
    // On ice cream or a frozen mousse it sets by the cold, tempered or not.
    return record.inputs.some(({ role, matter }) => role !== 'with' && bodiesOf(matter).some((body) => body.frozen))
      ? null
      : coat;
  }
  if (!moulding.has(verb) || !moulds.has(record.mould ?? '')) return null;
  return record.inputs.find((input) => (input.role === 'operand' || input.role === 'with') && isChocolate(input)) ?? null;
}

function outside(heat: Heat, low: number, high: number): { readonly celsius: number; readonly warm: boolean } | null {
  const written = heat.basis === 'written' && heat.written;
  const hottest = written ? written.high : heat.celsius.low;
  const coolest = written ? written.low : heat.celsius.high;
  if (hottest > high + error) return { celsius: Number.isFinite(hottest) ? hottest : heat.celsius.low, warm: true };
  return coolest < low - error ? { celsius: Number.isFinite(coolest) ? coolest : heat.celsius.high, warm: false } : null;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const chocolate = chocolateOf(record);
    const kind = chocolate ? unmixedKind(chocolate.matter) : null;
    if (!chocolate || !kind) continue;
    const { work, cool } = chocolateWindows[kind];
    const off = outside(chocolate.matter.heat, work.low, work.high);
    if (!off) continue;
    report({
      place: placeOfStep(record.step),
      numbers: { kind, celsius: Math.round(off.celsius * 10) / 10, low: work.low, high: work.high, warm: off.warm },
      related: chocolate.matter.made ? [{ place: chocolate.matter.made.step.place, message: 'left so here' }] : [],
      fixes: tempered(record, chocolate, off.warm, [cool.low, cool.high], [work.low, work.high]),
    });
  }
}

type Reading = readonly [number, number];

/** Warm chocolate has lost its crystals: cool it until they form, then warm it to work; cold chocolate is only warmed. */
function tempered(record: StepRecord, chocolate: Input, warm: boolean, cool: Reading, work: Reading): readonly Fix[] {
  const of = operandText(chocolate);
  const heat = lineBefore(record.step, `heat${of} to ${readingText(record, ...work)}`);
  if (!warm) return [heat];
  const first = lineBefore(record.step, `cool${of} to ${readingText(record, ...cool)}`);
  const text = [...first.edits, ...heat.edits].map((edit) => edit.text).join('');
  return [{ title: 'Temper it before this step', edits: [{ ...heat.edits[0]!, text }] }];
}

const dipped = (reading: string, mark: string): string => `formula Dipped orange peel
  120 g  candied orange peel
  250 g  dark chocolate, 64 % cocoa
  melt dark chocolate to 45-50 °C
  cool to 28-29 °C
  heat to ${reading}
  dip candied orange peel in dark chocolate${mark}
`;

export const outOfTemper: Rule = {
  code: 'out-of-temper',
  severities: ['warning'],
  title: 'The chocolate is outside its working temperature',
  why: 'Tempered chocolate holds seeds of the one crystal of cocoa butter that sets hard and shines and lets go of its mould. They melt just above the working window: warmer chocolate sets dull, soft and streaked. Below it the chocolate thickens, and coats and moulds too thickly. Frozen things set any chocolate by their cold and are left out.',
  remedy: 'Work dark chocolate at 31–32 °C, milk at 29–31 °C, white at 27–30 °C, after cooling it to form crystals.',
  source:
    'Hull of the windows of McGee 2004, a couverture maker’s book and an appliance manual; a degree either way is their own disagreement. Crystal forms: Wille & Lutton 1966.',
  examples: { bad: dipped('36-37 °C', '   // expect: out-of-temper'), good: dipped('32-33 °C', '') },
  message: (n) =>
    `The ${n.kind} chocolate is at ${formatCelsius(Number(n.celsius))} when it is worked with, ${n.warm ? 'above' : 'below'} its window of ${formatCelsius(interval(Number(n.low), Number(n.high)))}: it ${n.warm ? 'sets dull and soft' : 'is too thick'}.`,
  check,
};
