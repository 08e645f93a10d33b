/** `chocolate-seizes`: a little water comes to melted chocolate and stays there. */
import { seizes, seizing } from '../matter/chocolate.ts';
import { formatGrams, formatNumber } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { lifeAfter, placeOfStep } from './look.ts';
import { besideChocolate, gramsOfChocolate, isChocolate } from './look-chocolate.ts';
import { meeting } from './look-gelatin.ts';
import { spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Fat to a gram of water, that came along with it, from which the cocoa stays coated: cream of 35 % has 0.6 (common practice, no source). */
const coats = 0.5;

/** Chocolate must be most of what the water meets: a batter with some chocolate is none that seizes. */
const mostly = 0.5;

function isSeized(matter: Matter): boolean {
  if (matter.chocolate === 'none' || matter.chocolate === 'solid') return false;
  const chocolate = gramsOfChocolate(matter);
  const { water, fat } = besideChocolate(matter);
  const mass = (matter.grams.low + matter.grams.high) / 2;
  return chocolate >= mostly * mass && seizes(chocolate, water) && fat < coats * water;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const parties = meeting(record);
    if (parties.length === 0 || !isSeized(record.result) || parties.some(({ matter }) => isSeized(matter))) continue;
    if (isSaved(run, record)) continue;
    const chocolate = gramsOfChocolate(record.result);
    const { water } = besideChocolate(record.result);
    const wet = parties.filter(({ matter }) => !matter.parts.some(isChocolate))[0] ?? parties[0]!;
    report({
      place: placeOfStep(record.step),
      numbers: {
        wet: spoken(wet, 'liquid'),
        water,
        chocolate,
        percent: (100 * water) / (chocolate + water),
        low: seizing.low,
        high: seizing.high,
        enough: (chocolate * (seizing.high + 2)) / (100 - seizing.high - 2),
      },
      related: lastMelted(parties.map(({ matter }) => matter)),
    });
  }
}

/** More liquid, butter or oil that follows makes a sauce or ganache of it; the oven a cake. */
function isSaved(run: Run, record: StepRecord): boolean {
  const lines = new Set(record.result.parts.filter(isChocolate).map(({ line }) => line));
  return lifeAfter(run, record).some(({ result }) =>
    bodiesOf(result).some((body) => body.parts.some(({ line }) => lines.has(line)) && (body.baked || !isSeized(body))),
  );
}

const lastMelted = (parties: readonly Matter[]) =>
  parties.flatMap(({ heat, chocolate }) =>
    chocolate !== 'none' && heat.heated ? [{ place: heat.heated.step.place, message: 'melted here' }] : [],
  );

const coffee = (grams: string, mark: string): string => `formula Chocolate and coffee
  200 g  dark chocolate, 64 % cocoa
  ${grams}  brewed coffee, 45 °C
  melt dark chocolate to 45-50 °C
  stir brewed coffee into dark chocolate${mark}
`;

export const chocolateSeizes: Rule = {
  code: 'chocolate-seizes',
  severities: ['warning'],
  title: 'A little water makes the chocolate seize',
  why: 'In melted chocolate, grains of sugar and cocoa float in fat. A few drops of water wet their surfaces and glue them into a stiff paste. Much more water dissolves the sugar and makes a sauce; butter, oil or rich cream coats the grains and keeps them apart.',
  remedy: 'Keep every drop away, or take liquid enough for a sauce, or stir the flavour in with butter or oil.',
  source: 'From about 1 % of water on it seizes, from about 15 % it is a sauce: common practice, no source.',
  examples: { bad: coffee(' 12 g', '   // expect: chocolate-seizes'), good: coffee(' 60 g', '') },
  message: (n) =>
    `${formatGrams(Number(n.water))} of water from the ${n.wet} in ${formatGrams(Number(n.chocolate))} of melted chocolate is ${formatNumber(Number(n.percent))} %: between ${n.low} and ${n.high} % chocolate seizes. Keep it dry, or use at least ${formatGrams(Number(n.enough))} of water for a sauce.`,
  check,
};
