/** `impossible-temperature`: a reading that this matter cannot reach. */
import { hottestPossible, waterBoilsAt } from '../matter/boiling.ts';
import { type Composition, nothing, plus, sugarsOf, total } from '../matter/composition.ts';
import { formatCelsius, formatNumber } from '../quantities/format.ts';
import type { Interval } from '../quantities/interval.ts';
import type { Place, Step } from '../resolve/model.ts';
import { atOf, chosenOf, clauseOf } from '../run/clauses.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { placeOfClause, placeOfStep } from './look.ts';
import type { Fix, Report, Rule } from './rule.ts';

const absoluteZero = -273.15;

/** °C above which any sugar is burnt (common practice, no source; black caramel 190-210 °C). */
const sugarBurns = 200;

/** Sugar from which the matter counts as sugar, share of the mass. */
const sugary = 0.2;

/** K above the hottest possible that a pan's bottom or a coarse thermometer explains. */
const allowance = 2;

function check(run: Run, report: Report): void {
  const { altitudeMetres } = run.formula.settings;
  for (const block of run.blocks)
    for (const { line } of block.lines)
      if (line.celsius && Number.isFinite(line.celsius.low) && line.celsius.low < absoluteZero)
        report({ severity: 'error', place: line.place, numbers: coldNumbers(line.celsius.low) });
  for (const record of run.records) checkStep(run, record, altitudeMetres, report);
}

function checkStep(run: Run, record: StepRecord, altitudeMetres: number, report: Report): void {
  const { step } = record;
  const at = clauseOf(step.node, 'at');
  const surroundings = at ? atOf(step.node, chosenOf(run.blockOf.get(record)?.selection ?? run.selection))?.written : null;
  const coldest = Math.min(finiteLow(record.written), finiteLow(surroundings ?? null));
  if (coldest < absoluteZero) {
    report({ severity: 'error', place: readingPlace(step), numbers: coldNumbers(coldest) });
    return;
  }
  const reading = record.written;
  if (!reading) return;
  const celsius = Number.isFinite(reading.low) ? reading.low : reading.high;
  // Nothing that is dissolved in it makes water boil sooner.
  if (celsius <= waterBoilsAt(altitudeMetres) + allowance) return;
  const before = compositionBefore(record);
  const limit = limitOf(before, altitudeMetres);
  if (!limit || celsius <= limit.celsius + limit.allowance) return;
  report({
    severity: 'error',
    place: readingPlace(step),
    numbers: { celsius: Math.round(celsius * 10) / 10, limit: Math.round(limit.celsius * 10) / 10, why: limit.why },
    fixes: inFahrenheit(step, celsius, limit.celsius),
  });
}

const finiteLow = (range: Interval | null): number =>
  range && Number.isFinite(range.low) ? range.low : Number.POSITIVE_INFINITY;

function limitOf(c: Composition, altitudeMetres: number) {
  const mass = total(c);
  if (mass <= 0) return null;
  const boils = hottestPossible(c, altitudeMetres);
  if (boils !== null) return { celsius: boils, allowance, why: 'boils' };
  return sugarsOf(c) / mass >= sugary ? { celsius: sugarBurns, allowance: 0, why: 'burns' } : null;
}

const compositionBefore = (record: StepRecord): Composition =>
  record.inputs.filter(({ role }) => role !== 'with').reduce((sum, { matter }) => plus(sum, matter.composition), nothing);

const coldNumbers = (celsius: number) => ({ celsius: Math.round(celsius * 10) / 10, limit: absoluteZero, why: 'zero' });

function readingPlace(step: Step): Place {
  for (const word of ['to', 'at']) if (step.node.clauses.some((clause) => clause.word === word)) return placeOfClause(step, word);
  return placeOfStep(step);
}

/** A Fahrenheit figure with °C beside it. */
function inFahrenheit(step: Step, celsius: number, limit: number): readonly Fix[] {
  const to = clauseOf(step.node, 'to');
  if (to?.target.base.kind !== 'temperature' || to.target.base.unit !== 'C' || to.target.overrides.length > 0) return [];
  const meant = ((celsius - 32) * 5) / 9;
  if (meant > limit || meant < 20) return [];
  const { low, high, ranged, start, end } = to.target.base;
  const text = ranged ? `${formatNumber(low)}-${formatNumber(high)} °F` : `${formatNumber(low)} °F`;
  return [{ title: `Write ${text}`, edits: [{ ...step.place, start, end, text }] }];
}

export const impossibleTemperature: Rule = {
  code: 'impossible-temperature',
  severities: ['error'],
  title: 'This cannot get so hot, or so cold',
  why: 'As long as there is water, heat makes steam and not warmth: milk, custard or fruit stay near 100 °C, a few degrees more as they thicken. The limit here is the boiling point the mixture would have after nine tenths of its water were gone. Syrup, caramel, jam, fudge and browning butter get hotter because little water is left; but above 200 °C any sugar is burnt.',
  remedy: 'Correct the reading; look whether °F was meant.',
  source: 'Boiling point from water activity (see the boiling model); sugar burnt from about 200 °C: common practice, no source.',
  examples: {
    bad: `formula Hot milk
  500 g  whole milk, 4 °C
  heat to 150 °C   // expect: impossible-temperature
`,
    good: `formula Hot milk
  500 g  whole milk, 4 °C
  heat to 101 °C
`,
  },
  message: (n) => {
    const reading = formatCelsius(Number(n.celsius));
    if (n.why === 'zero') return `${reading} is below absolute zero (${formatCelsius(absoluteZero)}).`;
    if (n.why === 'burns')
      return `Nothing with so much sugar is to be taken to ${reading}: it is burnt above ${formatCelsius(Number(n.limit))}.`;
    return `This cannot reach ${reading}: it holds water, and even boiled down to a tenth of it it would boil at ${formatCelsius(Number(n.limit))}.`;
  },
  check,
};
