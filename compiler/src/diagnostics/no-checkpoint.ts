/** `no-checkpoint`: raw egg is cooked, or a custard baked, and nothing says to what temperature. */
import { formatCelsius } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { isBakedCustard } from '../steps/custard.ts';
import { lifeAfter, placeOfStep } from './look.ts';
import { eggsOf, heatings, heats, holdsYolk, isPasteurised, thickening } from './look-egg.ts';
import { addedReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';
import { isOrAre } from './words.ts';

/** Egg that this step cooks while nothing in it says how hot. */
function unread(record: StepRecord): readonly Part[] {
  if (!heats(record) || record.written !== null || saysBoiling(record)) return [];
  const inputs = record.inputs.filter(({ role }) => role !== 'with').map(({ matter }) => matter);
  if (record.step.node.verb === 'bake')
    return inputs.flatMap((matter) =>
      bodiesOf(matter)
        .filter((body) => isBakedCustard(body, matter))
        .flatMap(uncooked),
    );
  if (record.step.node.verb === 'fry') return [];
  return inputs.flatMap((matter) => (isDough(matter) ? [] : uncooked(matter).filter((part) => !isPasteurised(part))));
}

/** Egg whose cooking nobody has read yet; hot liquid tempered into it is no reading. */
const uncooked = (matter: Matter): readonly Part[] =>
  eggsOf(matter).filter(
    (part) =>
      part.grams > 0 &&
      !part.baked &&
      !heatings(matter, part).some((record) => saysBoiling(record) || (record.written?.high ?? 0) >= leastCooking),
  );

/** The boil, written as a verb or as a sign, is a temperature. */
const saysBoiling = (record: StepRecord): boolean => record.step.node.verb === 'boil' || record.result.heat.basis === 'computed';

/** Dough and batter are read by their crumb. */
const isDough = (matter: Matter): boolean => matter.phase === 'dough' || matter.phase === 'batter' || thickening(matter) > 0.1;

const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'freeze', 'rest']);

/** Read before it cools, or boiled or baked through at any time later: then the temperature is said there. */
function settledLater(run: Run, record: StepRecord, egg: readonly Part[]): boolean {
  let cooled = false;
  for (const later of lifeAfter(run, record)) {
    const parts = later.result.parts.filter((part) => egg.some(({ line }) => line === part.line));
    if (parts.length === 0) continue;
    if (parts.some((part) => part.baked) || (heats(later) && saysBoiling(later))) return true;
    if (!cooled && (heats(later) || later.step.node.verb === 'check') && (later.written?.high ?? leastCooking) >= leastCooking)
      return true;
    cooled ||= cooling.has(later.step.node.verb);
  }
  return false;
}

/** °C: a cooler reading later is no reading of the cooking. */
const leastCooking = 55;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const egg = unread(record);
    if (egg.length === 0 || settledLater(run, record, egg)) continue;
    const [low, high] = advised(record, egg);
    report({
      place: placeOfStep(record.step),
      numbers: { egg: egg[0]!.line.label, verb: record.step.node.verb, low, high },
      related: [{ place: egg[0]!.line.place, message: 'the egg' }],
      fixes: [addedReading(record, low, high)],
    });
  }
}

/** What to take it to, by what it is. */
function advised(record: StepRecord, egg: readonly Part[]): readonly [number, number] {
  if (record.step.node.verb === 'bake') return [80, 82];
  if (thickening(record.result) >= 0.01) return [94, 96];
  if (!egg.some(holdsYolk)) return [72, 75];
  return record.result.foam ? [78, 80] : [82, 84];
}

const start = `  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
`;

export const noCheckpoint: Rule = {
  code: 'no-checkpoint',
  severities: ['warning'],
  title: 'Egg is cooked and no temperature is given',
  why: 'Between egg that is cooked and egg that has curdled lie a few degrees, and below them the egg is neither thick nor safe. A sign such as “nappe” is good; a thermometer beside it makes the formula the same for every cook, and is what says that the egg is safe.',
  remedy:
    'Write the reading that ends the step, `cook to 82-84 °C until nappe`, or a `check 82-84 °C` after it; for a baked custard the core, `bake at 120 °C to 80-82 °C`.',
  source: 'Custard coagulates at 79–83 °C (McGee 2004). That a formula states it: common practice, no source.',
  examples: {
    bad: `formula Custard by eye
${start}  cook until nappe   // expect: no-checkpoint
`,
    good: `formula Custard, checked after
${start}  cook until nappe
  check 82-84 °C
`,
  },
  message: (n) =>
    `The ${n.egg} ${isOrAre(String(n.egg))} ${n.verb === 'bake' ? 'baked' : 'cooked'} here and nothing says to what temperature. Write the reading that ends it, here about ${formatCelsius(interval(Number(n.low), Number(n.high)))}.`,
  check,
};
