/** `chocolate-too-hot`: chocolate with nothing in it is heated until it scorches. */
import { chocolateWindows } from '../matter/chocolate.ts';
import { formatCelsius } from '../quantities/format.ts';
import { signOf } from '../run/clauses.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { unmixedKind } from './look-chocolate.ts';
import { otherReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Browning white chocolate is done on purpose. */
const browns: ReadonlySet<string> = new Set(['bake', 'toast', 'dry', 'caramelise', 'fry']);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const { verb } = record.step.node;
    const hot = hottestOf(record);
    if (!hot || browns.has(verb) || /gold|amber|brown|caramel|blond/.test(signOf(record.step.node) ?? '')) continue;
    const kind = bodiesOf(record.result)
      .map(unmixedKind)
      .find((one) => one !== null);
    if (!kind) continue;
    const { hottest, melt } = chocolateWindows[kind];
    if (hot <= hottest) continue;
    report({
      place: placeOfStep(record.step),
      numbers: { kind, celsius: Math.round(hot * 10) / 10, limit: hottest },
      fixes: otherReading(run, record, kind === 'dark' ? 45 : melt.low, kind === 'dark' ? 50 : 45),
    });
  }
}

/** The reading this step was written with, at its upper end; what it boils or steams to where it is certain. */
function hottestOf(record: StepRecord): number | null {
  const { written, result } = record;
  if (written) return Number.isFinite(written.high) ? written.high : written.low;
  return isHeatedHere(record, result) ? result.heat.celsius.low : null;
}

const isHeatedHere = ({ step }: StepRecord, { heat }: Matter): boolean => heat.heated?.step === step && heat.basis !== 'written';

const sauce = (reading: string, mark: string): string => `formula Chocolate sauce
  200 g  dark chocolate, 64 % cocoa
  240 g  cream, 35 % fat, 4 °C
  melt dark chocolate to ${reading}${mark}
  heat cream to 45-50 °C
  stir cream into dark chocolate until smooth
`;

export const chocolateTooHot: Rule = {
  code: 'chocolate-too-hot',
  severities: ['warning'],
  title: 'The chocolate is heated too far',
  why: 'Melted chocolate is dry cocoa and sugar in fat. Hotter than about 55 °C, or 50 °C where milk is in it, the sugar and the milk’s protein clump and scorch: it turns thick, grainy and bitter, and no stirring brings it back. With cream or butter in it, water and fat spread the heat and it bears more.',
  remedy: 'Melt dark chocolate to 45–50 °C, milk and white chocolate to 40–45 °C, over a bath or in short bursts.',
  source:
    'Melting ranges of McGee 2004 and a couverture maker’s book (dark 45–55 °C, milk and white 40–50 °C, never above 50 °C).',
  examples: { bad: sauce('60-62 °C', '   // expect: chocolate-too-hot'), good: sauce('50-55 °C', '') },
  message: (n) =>
    `The ${n.kind} chocolate is heated to ${formatCelsius(Number(n.celsius))} with nothing in it; above ${formatCelsius(Number(n.limit))} it turns grainy and scorches.`,
  check,
};
