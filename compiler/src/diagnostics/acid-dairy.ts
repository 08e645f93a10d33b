/** `acid-dairy`: sour fruit meets warm milk or lean cream and curdles it. */
import { sugarsOf } from '../matter/composition.ts';
import { formatCelsius, formatPercent } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { gelatinPercent, massOf, placeOfStep, shareOfTraits, traitsOf } from './look.ts';
import { eggsOf, thickening, warmth } from './look-egg.ts';
import { lineBefore, readingText } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Common practice, no source; shares 0–1. */
const limits = {
  celsius: 40,
  fruit: 0.08,
  pH: 3.8,
  dairy: 0.2,
  leanFat: 0.2,
  starch: 0.01,
  egg: 0.03,
  chocolate: 0.15,
  sugar: 0.4,
} as const;

const pHOf = ({ line }: Part): number | null => line.pH ?? (line.substance.is === 'kind' ? line.substance.kind.pH : null);

function sourFruit(matter: Matter): number {
  let grams = 0;
  for (const part of matter.parts) {
    const pH = pHOf(part);
    if (traitsOf(part).includes('fruit') && pH !== null && pH <= limits.pH) grams += part.grams;
  }
  return grams / massOf(matter);
}

/** Milk and cream whose fat together is too little to shield their protein. */
function isLean(matter: Matter): boolean {
  const dairy = shareOfTraits(matter, 'milk', 'cream');
  if (dairy < limits.dairy) return false;
  return matter.composition.milkFat / massOf(matter) < limits.leanFat * dairy;
}

/** What keeps milk protein apart: starch, egg, gums, chocolate, much sugar. */
function isShielded(matter: Matter): boolean {
  const egg = eggsOf(matter).reduce((sum, part) => sum + part.grams, 0) / massOf(matter);
  return (
    thickening(matter) >= limits.starch ||
    egg >= limits.egg ||
    shareOfTraits(matter, 'gum', 'carrageenan', 'low-methoxyl pectin', 'high-methoxyl pectin') > 0 ||
    shareOfTraits(matter, 'dark chocolate', 'milk chocolate', 'white chocolate', 'cocoa mass') >= limits.chocolate ||
    sugarsOf(matter.composition) / massOf(matter) >= limits.sugar
  );
}

const curdles = (matter: Matter): boolean =>
  isLean(matter) && sourFruit(matter) >= limits.fruit && !isShielded(matter) && warmth(matter.heat) > limits.celsius;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const body = bodiesOf(record.result).find(curdles);
    if (!body || record.inputs.some(({ matter }) => bodiesOf(matter).some(curdles))) continue;
    report({
      place: placeOfStep(record.step),
      numbers: {
        celsius: Math.round(warmth(body.heat) * 10) / 10,
        limit: limits.celsius,
        fruit: Math.round(sourFruit(body) * 1e3) / 10,
      },
      fixes: cooledFirst(record, body),
    });
  }
}

/** Lets it cool before the fruit goes in; not where gelatin must still melt in it. */
function cooledFirst(record: StepRecord, body: Matter): readonly Fix[] {
  const hot = record.inputs.find(({ role }) => role === 'base');
  if (record.step.node.verb !== 'add' || !hot || warmth(hot.matter.heat) <= limits.celsius) return [];
  if (gelatinPercent(body) > 0 || usesGelatin(record)) return [];
  return [lineBefore(record.step, `cool to ${readingText(record, 30, 35)}`)];
}

const usesGelatin = ({ component }: StepRecord): boolean =>
  component.lines.some(({ substance }) => substance.is === 'kind' && substance.kind.traits.includes('gelatin'));

const start = `  500 g  whole milk, 4 °C
   80 g  caster sugar
  100 g  lemon juice
  heat whole milk, caster sugar to 75 °C
`;

export const acidDairy: Rule = {
  code: 'acid-dairy',
  severities: ['warning'],
  title: 'Sour fruit curdles warm milk',
  why: 'Acid makes the protein of milk draw together, and the warmer the milk the faster. Cold, or in a cream rich in fat, it only thickens; starch and egg hold it smooth.',
  remedy:
    'Let the milk cool below 40 °C before the fruit goes in, use a rich cream in its place, or bind it with starch or egg first.',
  source: 'Common practice, no source. Milk protein comes out at about pH 4.6 (textbooks of dairy chemistry).',
  examples: {
    bad: `formula Lemon milk, heated together
${start}  add lemon juice   // expect: acid-dairy
  cool in ice bath to 4 °C
`,
    good: `formula Lemon milk, joined cool
${start}  cool to 35 °C in ice bath
  add lemon juice
  cool in ice bath to 4 °C
`,
  },
  message: (n) =>
    `With ${formatPercent(Number(n.fruit) / 100)} of sour fruit at ${formatCelsius(Number(n.celsius))} the milk curdles; above ${formatCelsius(Number(n.limit))} nothing here keeps its protein smooth. Let it cool first, or bind it with starch or egg.`,
  check,
};
