/** `buttercream-temperature`: butter and what it is whipped with are too cold, too warm, or too far apart. */

import { formatCelsius } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import type { Heat, Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { massOf, placeOfStep, shareOfTraits } from './look.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C, and how far apart the two may be (common practice, no source). */
const limits = { low: 16, high: 25, apart: 5 } as const;

const joining: ReadonlySet<string> = new Set(['add', 'whip', 'whisk', 'cream', 'mix', 'stir', 'combine', 'fold']);
const beaten: ReadonlySet<string> = new Set(['whip', 'cream']);
/** Cooled, heated or set between: what is whipped later is another matter. */
const between: ReadonlySet<string> = new Set([
  ...['cool', 'chill', 'rest', 'freeze', 'heat', 'cook', 'boil', 'melt', 'blend', 'bake'],
]);

interface Join {
  readonly butter: Input;
  readonly other: Input;
}

/** Butter, creamed with sugar or flavour or not, and egg or custard. */
function joinOf(record: StepRecord): Join | null {
  if (record.inputs.length < 2 || !joining.has(record.step.node.verb)) return null;
  const parties = record.inputs.filter(({ role }) => role !== 'with');
  const butter = parties.find(({ matter }) => shareOfTraits(matter, 'butter') >= 0.4 && eggShare(matter) < 0.02);
  const other = parties.find((party) => party !== butter && eggShare(party.matter) >= 0.04 && !party.matter.baked);
  if (!butter || !other) return null;
  return massOf(butter.matter) >= 0.2 * (massOf(butter.matter) + massOf(other.matter)) ? { butter, other } : null;
}

const eggShare = (matter: Matter): number => shareOfTraits(matter, 'whole egg', 'egg yolk', 'egg white');

/** Whipped or creamed into a cream, here or next, and not into a batter that is baked. */
function becomesCream(run: Run, record: StepRecord): boolean {
  let whipped = beaten.has(record.step.node.verb);
  for (let at: StepRecord | undefined = record; at; at = run.later.get(at)?.[0]) {
    if (at !== record && between.has(at.step.node.verb) && !whipped) return false;
    if (at.result.baked || shareOfTraits(at.result, 'flour') > 0.1) return false;
    whipped ||= beaten.has(at.step.node.verb);
  }
  return whipped;
}

/** What of a temperature counts: written at its worse end, reckoned at its better one; how butter was stored says nothing of its softness. */
function countsAs(heat: Heat): { readonly low: number; readonly high: number; readonly middle: number } | null {
  if (heat.basis === 'written' && heat.written) {
    const { low, high } = heat.written;
    return Number.isFinite(low) && Number.isFinite(high) ? { low, high, middle: middle(heat.written) } : null;
  }
  if (heat.basis === 'stored' || heat.basis === 'unknown') return null;
  return { low: heat.celsius.high, high: heat.celsius.low, middle: middle(heat.celsius) };
}

interface Fault {
  readonly party: Input;
  readonly celsius: number;
  /** What it should be. */
  readonly low: number;
  readonly high: number;
  readonly apart: number | null;
}

function faultOf({ butter, other }: Join): Fault | null {
  for (const party of [butter, other]) {
    const heat = countsAs(party.matter.heat);
    if (heat && (heat.low < limits.low || heat.high > limits.high)) {
      const celsius = heat.low < limits.low ? heat.low : heat.high;
      return { party, celsius, low: limits.low, high: limits.high, apart: null };
    }
  }
  const [one, two] = [countsAs(butter.matter.heat), countsAs(other.matter.heat)];
  if (!one || !two || butter.matter.heat.basis !== 'written' || other.matter.heat.basis !== 'written') return null;
  const apart = Math.abs(one.middle - two.middle);
  return apart > limits.apart ? { party: other, celsius: two.middle, low: one.low, high: one.high, apart } : null;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const join = joinOf(record);
    const fault = join ? faultOf(join) : null;
    if (!join || !fault || !becomesCream(run, record)) continue;
    const { party } = fault;
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        name: spoken(party, 'base'),
        other: spoken(party === join.butter ? join.other : join.butter, 'butter'),
        celsius: Math.round(fault.celsius * 10) / 10,
        low: fault.low,
        high: fault.high,
        apart: fault.apart,
        limit: limits.apart,
      },
      related: party.matter.made
        ? [{ place: party.matter.made.step.place, message: `${spoken(party, 'it')} was left so here` }]
        : [],
      fixes: fixesOf(record, join, fault),
    });
  }
}

function fixesOf(record: StepRecord, { butter, other }: Join, { party, celsius, apart }: Fault) {
  const against = countsAs((party === butter ? other : butter).matter.heat)?.middle ?? 20;
  const aim = apart === null ? 20 : Math.round(against);
  if (party.role !== 'base' && !record.step.node.clauses.some(({ word }) => word === 'into')) return [];
  const verb = celsius > aim ? 'cool' : party === butter ? 'rest' : 'heat';
  return [lineBefore(record.step, `${verb}${operandText(party)} to ${readingText(record, aim - 1, aim + 1)}`)];
}

const recipe = (butter: number, mark: string): string => `formula Yolk buttercream
  100 g  egg yolk, pasteurised
  150 g  caster sugar
   50 g  water
  280 g  butter, ${butter} °C
  boil caster sugar, water to 117-119 °C as syrup
  whip egg yolk until frothy
  pour syrup into egg yolk while whipping
  whip to 20-22 °C until ribbon as bombe
  cream butter into bombe until smooth${mark}
`;

export const buttercreamTemperature: Rule = {
  code: 'buttercream-temperature',
  severities: ['warning'],
  title: 'Butter and base are not at one temperature',
  why: 'A buttercream is held by butter that is plastic: soft enough to spread between the bubbles, firm enough to stand. That is so from about 16 to 25 °C. Colder butter goes to grains, warmer butter to soup, and where the two are far apart the one chills or melts the other as they meet.',
  remedy: 'Bring butter and the egg foam or custard to the same 18–22 °C before they meet.',
  source: 'Common practice, no source.',
  examples: { bad: recipe(6, '   // expect: buttercream-temperature'), good: recipe(17, '') },
  message: (n) =>
    typeof n.apart === 'number'
      ? `The ${n.name} (${formatCelsius(Number(n.celsius))}) and the ${n.other} are ${Math.round(n.apart)} °C apart; more than ${n.limit} °C, and the one chills or melts the other.`
      : `The ${n.name} is at ${formatCelsius(Number(n.celsius))} when it is whipped with the ${n.other}; for a buttercream both should be at ${formatCelsius({ low: Number(n.low), high: Number(n.high) })}.`,
  check,
};
