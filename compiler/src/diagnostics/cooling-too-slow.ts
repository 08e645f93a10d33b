/** `cooling-too-slow`: perishable matter stays too long in the warmth where bacteria grow. */
import { type CoolingMedium, coolingMedia, quickestSeconds, twoStageLimits } from '../matter/cooling.ts';
import { formatDuration } from '../quantities/format.ts';
import { interval, middle } from '../quantities/interval.ts';
import { clauseOf } from '../run/clauses.ts';
import { thermalComposition } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { lastHeated, placeOfStep } from './look.ts';
import { isPerishable } from './look-perishable.ts';
import type { Report, Rule } from './rule.ts';

/** °C: where the clock starts, and its two marks (FDA Food Code 2022, 3-501.14). */
const marks = { start: 57, first: 21, last: 5 } as const;

/** How far a mass has come: everything at its quickest. */
interface Clock {
  readonly celsius: number;
  readonly seconds: number;
}

type Mark = 'first' | 'last';

interface Late {
  readonly record: StepRecord;
  readonly mark: Mark;
  readonly seconds: number;
  /** False: it is not there yet when the step ends. */
  readonly reached: boolean;
}

const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'rest', 'freeze', 'proof', 'thaw']);

function check(run: Run, report: Report): void {
  const told = new Set<StepRecord>();
  for (const hot of run.records) {
    if (hot.result.heat.celsius.low < marks.start || !isPerishable(hot.result)) continue;
    for (const next of run.later.get(hot) ?? []) {
      if (next.result.heat.celsius.low >= marks.start) continue;
      const clock = { celsius: marks.start, seconds: 0 };
      // Most matter is cold in time by the plainest reckoning, stirred; only where it is not is every case tried.
      const late = follow(run, hot.result, next, clock, true) && follow(run, hot.result, next, clock, false);
      if (!late || told.has(late.record)) continue;
      told.add(late.record);
      const limit = late.mark === 'first' ? twoStageLimits.to21 : twoStageLimits.to5;
      report({
        severity: 'warning',
        place: placeOfStep(late.record.step),
        numbers: {
          seconds: Math.round(late.seconds),
          limit,
          celsius: marks[late.mark],
          start: marks.start,
          reached: late.reached,
        },
        related: lastHeated(hot.result.heat),
      });
    }
  }
}

/** Goes on from a step until it is cold, hot again or late; where there are several ways, only if all are. */
function follow(run: Run, before: Matter, record: StepRecord, clock: Clock, stirred: boolean): Late | null {
  const after = record.result.heat;
  if (after.heated?.step === record.step && after.celsius.low > clock.celsius) return null;
  if (!isPerishable(record.result)) return null;
  const end = Math.min(clock.celsius, coldEnd(record));
  const pace = paceOf(before, record, clock.celsius, end, stirred);
  for (const mark of ['first', 'last'] as const) {
    if (clock.celsius <= marks[mark]) continue;
    const reached = end <= marks[mark];
    const seconds = clock.seconds + (reached ? pace.to(marks[mark]) : pace.whole);
    if (seconds > (mark === 'first' ? twoStageLimits.to21 : twoStageLimits.to5)) return { record, mark, seconds, reached };
  }
  if (end <= marks.last) return null;
  const next = { celsius: end, seconds: clock.seconds + pace.whole };
  const ways = (run.later.get(record) ?? []).map((later) => follow(run, record.result, later, next, stirred));
  return ways.every((way) => way !== null) ? (ways[0] ?? null) : null;
}

/** The coldest it may be after a step, by what is written or reckoned. */
const coldEnd = ({ result: { heat } }: StepRecord): number =>
  heat.basis === 'written' && heat.written && Number.isFinite(heat.written.low) ? heat.written.low : heat.celsius.low;

/** Seconds below 57 °C that a step takes at its quickest, and those until a reading on the way. */
interface Pace {
  readonly whole: number;
  readonly to: (celsius: number) => number;
}

function paceOf(before: Matter, record: StepRecord, from: number, end: number, stirred: boolean): Pace {
  const { verb } = record.step.node;
  const isHot = before.heat.celsius.low > marks.start;
  const model = (to: number): number => quickest(before, record, from, to, stirred);
  const written = clauseOf(record.step.node, 'for') ? (record.seconds?.range.low ?? null) : null;
  if (!cooling.has(verb)) {
    // Steeped, strained or poured: what it cools on the way from the boil takes no time that counts.
    const whole = isHot ? 0 : (record.seconds?.range.low ?? 0);
    return { whole, to: () => whole };
  }
  if (written === null) return { whole: model(end), to: model };
  // A stay as a whole: by its end it is as cold as is written, but it may be so long before.
  if (verb !== 'cool') return { whole: written, to: (celsius) => Math.min(model(celsius), written) };
  const all = quickest(before, record, Math.max(before.heat.celsius.low, from), end, stirred);
  const scale = all > 0 ? written / all : 0;
  return scale > 0
    ? { whole: scale * model(end), to: (celsius) => scale * model(celsius) }
    : { whole: written, to: () => written };
}

function quickest(matter: Matter, record: StepRecord, from: number, to: number, stirred: boolean): number {
  const medium = mediumOf(record);
  // What is written was reached, whatever the surroundings are thought to be.
  const around = record.surroundings ?? coolingMedia[medium].celsius;
  const seconds = quickestSeconds({
    composition: thermalComposition(matter),
    grams: middle(matter.grams),
    millilitres: middle(millilitresOf(matter)),
    medium,
    surroundings: interval(Math.min(around.low, to - 1), Math.max(around.high, around.low)),
    ...(record.vessel ? { vessel: vesselOf(record) } : {}),
    ...(stirred ? { stirred } : {}),
    from,
    to,
  });
  return seconds ?? 0;
}

function vesselOf({ vessel }: StepRecord) {
  return {
    ...(vessel?.deepMm == null ? {} : { depthMm: vessel.deepMm }),
    ...(vessel?.wideMm == null ? {} : { diameterMm: vessel.wideMm }),
  };
}

const mediumOf = ({ medium }: StepRecord): CoolingMedium =>
  medium !== null && medium in coolingMedia ? (medium as CoolingMedium) : 'still air';

const custard = (how: string, mark: string): string => `formula Custard sauce
  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  ${how}${mark}
  chill to 4 °C for 4 h
`;

export const coolingTooSlow: Rule = {
  code: 'cooling-too-slow',
  severities: ['warning'],
  title: 'It cools too slowly to be safe',
  safety: true,
  why: 'Cooking does not kill spores. Between 57 and 5 °C they wake and grow, fastest around 40 °C, and so do bacteria that fall in. The FDA Food Code wants cooked food with egg or dairy brought from 57 to 21 °C within two hours and to 5 °C within six in all. A deep pan cools by conduction, and its time goes with the depth squared. A written time decides; where there is none, only the quickest the mass could cool is held against the rule. This is no food-safety plan: the local food code and a licensed professional decide.',
  remedy: 'Cool in an ice bath while stirring, or no more than 3 cm deep in a tray, and write for how long.',
  source:
    'FDA Food Code 2022, 3-501.14(A) (by state codes that adopt it); cooling by Newton or conduction (see the cooling model).',
  examples: {
    bad: custard('cool at room to 20-22 °C for 6 h', '   // expect: cooling-too-slow'),
    good: custard('cool in ice bath to 18-20 °C for 1 h', ''),
  },
  message: (n) => {
    const time = formatDuration(Number(n.seconds));
    const most = formatDuration(Number(n.limit));
    const slow = n.reached
      ? `From ${n.start} to ${n.celsius} °C it takes ${time}`
      : `${time} after it passed ${n.start} °C it is still above ${n.celsius} °C`;
    return `${slow}; at most ${most} are safe. Cool it in an ice bath while stirring, or in a shallow tray.`;
  },
  check,
};
