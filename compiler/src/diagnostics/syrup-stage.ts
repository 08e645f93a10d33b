/** `syrup-stage`: the stage of boiled sugar that is named and the temperature that is written do not belong together. */

import { waterBoilsAt } from '../matter/boiling.ts';
import { sugarsOf } from '../matter/composition.ts';
import { type StageRange, stageNames, stageRanges } from '../matter/sugar.ts';
import { formatCelsius } from '../quantities/format.ts';
import { hull, type Interval, interval } from '../quantities/interval.ts';
import { signOf } from '../run/clauses.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { lifeAfter, massOf, placeOfStep, shareOfTraits } from './look.ts';
import { eggShare, sugarOfSyrup } from './look-chocolate.ts';
import { otherReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Kelvin that the sources' own disagreement leaves open. */
const tolerance = 2;

/** °C of the syrup for a meringue or bombe; up to the firm crack where it becomes a sweet (common practice around published 112-121). */
const foams = { low: 110, high: 125, sweets: 150 } as const;

/** Sugar, times the egg, from which the foam is a sweet like nougat and no meringue (common practice, no source). */
const sweetsFrom = 4;

function check(run: Run, report: Report): void {
  // Water boils lower up there, and every stage with it.
  const boils = waterBoilsAt(run.formula.settings.altitudeMetres);
  const lower = Math.max(0, Math.round((100 - boils) * 10) / 10);
  for (const record of run.records) {
    checkStage(run, record, lower, report);
    checkFoam(run, record, lower, report);
  }
}

function checkStage(run: Run, record: StepRecord, lower: number, report: Report): void {
  const { written } = record;
  const sign = signOf(record.step.node);
  if (!sign || !written || sugarsOf(record.result.composition) < 0.3 * massOf(record.result)) return;
  const stage = stageIn(sign);
  if (!stage) return;
  const ranges = byTradition(stage).map((range) => interval(range.low - lower, range.high - lower));
  const near = ({ low, high }: Interval): boolean => written.low <= high + tolerance && written.high >= low - tolerance;
  if (ranges.length === 0 || ranges.some(near)) return;
  const all = ranges.reduce(hull);
  report({
    place: placeOfStep(record.step),
    numbers: {
      stage,
      celsius: named(written),
      low: Math.round(all.low),
      high: Math.round(all.high),
      altitude: Math.round(lower),
    },
    fixes: otherReading(run, record, Math.round(ranges[0]!.low), Math.round(ranges[0]!.high)),
  });
}

/** The longest stage a sign names: `a drop in cold water makes a firm ball` names one. */
function stageIn(sign: string): string | null {
  const words = ` ${sign.toLowerCase().replaceAll(/[^\p{L}]+/gu, ' ')} `;
  const found = stageNames.filter((name) => words.includes(` ${name} `));
  return found.reduce<string | null>((a, b) => (a && a.length >= b.length ? a : b), null);
}

/** A word that means several stages in one tradition means all between them. */
function byTradition(stage: string): readonly Interval[] {
  const of = new Map<StageRange['tradition'], Interval>();
  for (const { tradition, celsius } of stageRanges(stage)) {
    const known = of.get(tradition);
    of.set(tradition, known ? hull(known, celsius) : celsius);
  }
  return [...of.values()];
}

/** A foam cooked on the heat may do with a thin syrup; one that is piped and baked has to stand first (common practice, no source). */
const ofTheOven: ReadonlySet<string> = new Set(['bake', 'dry', 'toast', 'caramelise']);

/** The syrup that is poured on whites or yolks at the whisk. */
function checkFoam(run: Run, record: StepRecord, lower: number, report: Report): void {
  const [syrup, egg] = syrupOntoEgg(record);
  const heated = syrup?.heat.heated;
  const written = heated?.written;
  if (!syrup || !egg || !heated || !written) return;
  const high = isSweets(run, record, syrup, egg) ? foams.sweets : foams.high;
  const cooked = lifeAfter(run, record).some(
    ({ result, step }) => !ofTheOven.has(step.node.verb) && result.heat.heated?.step === step && result.heat.celsius.high >= 70,
  );
  const thin = written.low < foams.low - lower && !cooked;
  if (!thin && written.high <= high) return;
  const boiled = run.records.find(({ step }) => step === heated.step);
  report({
    place: heated.step.place,
    numbers: {
      stage: null,
      celsius: thin ? Math.round(written.low * 10) / 10 : named(written),
      low: Math.round(foams.low - lower),
      high,
      thin,
    },
    related: [{ place: record.step.place, message: 'poured on the egg here' }],
    fixes: boiled ? otherReading(run, boiled, Math.round(118 - lower), Math.round(121 - lower)) : [],
  });
}

/** Nougat, where nuts follow; marshmallow, where gelatin is in it; or what is nearly all sugar. */
const isSweets = (run: Run, record: StepRecord, syrup: Matter, egg: Matter): boolean =>
  sugarsOf(syrup.composition) >= sweetsFrom * massOf(egg) ||
  [record, ...lifeAfter(run, record)].some(
    ({ result }) => result.gelatin200 > 0.01 * massOf(result) || shareOfTraits(result, 'nut') >= 0.1,
  );

function syrupOntoEgg(record: StepRecord): readonly [Matter | null, Matter | null] {
  const whipping = record.step.node.clauses.some(({ word }) => word === 'while whipping');
  if (record.inputs.length < 2) return [null, null];
  const parties = record.inputs.filter(({ role }) => role !== 'with').map(({ matter }) => matter);
  const egg = parties.find((matter) => eggShare(matter) >= 0.2);
  if (!egg || !(whipping || egg.foam)) return [null, null];
  const syrup = parties.find((matter) => matter !== egg && eggShare(matter) === 0 && isSyrup(matter));
  return [syrup ?? null, egg];
}

const isSyrup = (matter: Matter): boolean =>
  sugarOfSyrup(matter) >= 0.6 && sugarsOf(matter.composition) + matter.composition.water >= 0.75 * massOf(matter);

const named = ({ low, high }: Interval): number => Math.round((Number.isFinite(high) ? high : low) * 10) / 10;

const syrup = (sign: string, mark: string): string => `formula Boiled sugar
  300 g  caster sugar
  100 g  water
  boil water, caster sugar to 118 °C until ${sign}${mark}
`;

export const syrupStage: Rule = {
  code: 'syrup-stage',
  severities: ['warning'],
  title: 'The stage of the sugar and its temperature do not match',
  why: 'A syrup boils hotter the less water is left in it, so that the temperature says how it will set: 115 °C makes a soft ball, 150 °C glass. Traditions differ by up to ten degrees over the same word; here the two lie apart in all of them. The syrup of a meringue or bombe must hold little enough water to carry the foam (from 110 °C) and still be soft enough to spread in it (up to 125 °C); for nougat, marshmallow and other sweets it is boiled on, to 150 °C.',
  remedy:
    'Write the stage that belongs to the temperature, or the temperature that belongs to the stage; boil to 118–121 °C for a meringue or bombe.',
  source:
    'McGee 2004, On Food and Cooking; a United States confectionery table; the classical French names. Syrups for Italian meringue are published from 112 to 121 °C; 110 and 125 °C as limits: common practice, no source. Lower in the mountains, by the boiling point of water there.',
  examples: { bad: syrup('hard crack', '   // expect: syrup-stage'), good: syrup('firm ball', '') },
  message: (n) => {
    if (typeof n.stage === 'string')
      return `“${n.stage}” and ${formatCelsius(Number(n.celsius))} do not belong together: every published range for it lies within ${formatCelsius(interval(Number(n.low), Number(n.high)))}${Number(n.altitude) > 0 ? ' at this altitude' : ''}.`;
    return n.thin
      ? `The syrup is boiled to ${formatCelsius(Number(n.celsius))}; below ${formatCelsius(Number(n.low))} it is too thin to carry the foam it is poured on.`
      : `The syrup is boiled to ${formatCelsius(Number(n.celsius))}; above ${formatCelsius(Number(n.high))} it turns to hard threads in the foam it is poured on.`;
  },
  check,
};
