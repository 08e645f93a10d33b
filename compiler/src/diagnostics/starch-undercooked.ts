/** `starch-undercooked`: a thickening starch is cooked on the stove and never gets hot enough. */
import { cookedFrom, type StarchClass } from '../matter/starch.ts';
import { formatCelsius } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { lifeOf, placeOfStep, traitsOf } from './look.ts';
import { heats, holdsYolk, thickening, thickeningGrams, waterShare } from './look-egg.ts';
import { otherReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Shares (0–1) of starch that thicken; less is a trace, more is dough. */
const thickens = { least: 0.01, most: 0.12, water: 0.4 } as const;

/** °C: a cooler reading is warming, not cooking. */
const leastCooking = 55;

/** Cereal where nothing else is known, as most starch in a kitchen is. */
function classOf(part: Part): StarchClass {
  const traits = traitsOf(part);
  if (traits.includes('root starch')) return 'root';
  return traits.includes('waxy starch') ? 'waxy' : 'cereal';
}

const isThickened = (matter: Matter): boolean =>
  thickening(matter) >= thickens.least && thickening(matter) <= thickens.most && waterShare(matter) >= thickens.water;

const onStove = (record: StepRecord): boolean =>
  heats(record) && record.step.node.verb !== 'bake' && record.step.node.verb !== 'fry';

interface Undercooked {
  readonly part: Part;
  readonly record: StepRecord;
  readonly limit: number;
  readonly yolk: boolean;
}

function undercooked(run: Run, result: Matter, part: Part): Undercooked | null {
  if (part.baked || thickeningGrams(part) <= 0) return null;
  const cooking = lifeOf(result, part).filter((record) => onStove(record) && bodiesOf(record.result).some(isThickened));
  // Boiled, or cooked by eye: it may well have been hot enough.
  if (cooking.length === 0 || cooking.some((record) => record.written === null)) return null;
  const hottest = cooking.reduce((a, b) => ((b.written?.high ?? 0) > (a.written?.high ?? 0) ? b : a));
  if ((hottest.written?.high ?? 0) < leastCooking) return null;
  const yolk = hottest.result.parts.some(holdsYolk);
  const limit = cookedFrom(classOf(part), yolk);
  return part.reached < limit && run.records.includes(hottest) ? { part, record: hottest, limit, yolk } : null;
}

function check(run: Run, report: Report): void {
  const { result } = run;
  if (!result) return;
  const told = new Set<StepRecord>();
  for (const part of result.parts) {
    const found = undercooked(run, result, part);
    if (!found || told.has(found.record)) continue;
    told.add(found.record);
    const { record, limit, yolk } = found;
    const [low, high] = limit > 90 ? [94, 96] : yolk ? [89, 91] : [84, 86];
    report({
      place: placeOfStep(record.step),
      numbers: { starch: part.line.label, celsius: Math.round(part.reached * 10) / 10, limit, yolk, low, high },
      related: [{ place: part.line.place, message: 'the starch' }],
      fixes: otherReading(run, record, low, high),
    });
  }
}

const start = `  500 g  whole milk, 4 °C
   80 g  egg yolk
  100 g  caster sugar
   45 g  corn starch
  whisk egg yolk, caster sugar, corn starch until smooth as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
`;

export const starchUndercooked: Rule = {
  code: 'starch-undercooked',
  severities: ['warning'],
  title: 'The starch is not cooked through',
  served: true,
  why: 'Starch thickens well before it is cooked: below about 93 °C corn, wheat and rice starch taste of flour and thin out as they stand; root and waxy starches are done from 82 °C. Yolk brings an enzyme that eats starch until heat ends it, so that with yolk every starch must come to 88 °C.',
  remedy: 'Bring it to the boil and keep it there for a minute or two (`boil for 2 min`), or write a reading that is hot enough.',
  source:
    'Starch-bound custard must boil (Figoni; French Culinary Institute). 93 and 82 °C: common practice, no source. 88 °C with yolk: kitchen writing; 64.4 °C for 2.5 min in egg without starch (Shrimpton 1962).',
  examples: {
    bad: `formula Pastry cream that never boiled
${start}  cook to 80-82 °C until thick   // expect: starch-undercooked
`,
    good: `formula Pastry cream, just short of the boil
${start}  cook to 94-96 °C until thick
`,
  },
  message: (n) =>
    `The ${n.starch} is written to reach ${formatCelsius(Number(n.celsius))}; it is cooked from ${formatCelsius(Number(n.limit))}${n.yolk ? ', which also ends the yolk’s enzyme that thins it' : ''}. Take it to ${formatCelsius(interval(Number(n.low), Number(n.high)))}, or boil it.`,
  check,
};
