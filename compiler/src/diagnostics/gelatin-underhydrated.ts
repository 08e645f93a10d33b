/** `gelatin-underhydrated`: powder is given too little water to swell in. */

import { hydration } from '../matter/gelatin.ts';
import { formatGrams, formatNumber } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Input, Matter, Run } from '../run/trace.ts';
import { lifeAfter, placeOfStep } from './look.ts';
import { gramsOfGelatin, isGelatin, isOwnLine, sugarSolidsShare, type Wetting, wettingsOf } from './look-gelatin.ts';
import { otherAmount } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** A liquid with this share of water counts whole; thicker ones by their water (common practice, no source). */
const wholeFrom = 0.85;

/** Where sugar is so much of the whole, its syrup goes on giving the gelatin water (common practice, no source). */
const sweet = { share: 0.55, least: 2 } as const;

function check(run: Run, report: Report): void {
  for (const wetting of wettingsOf(run)) {
    const { record, gelatin, liquid, hydrates } = wetting;
    const powder = gelatin.matter.parts.filter(isGelatin);
    if (!hydrates || powder.length === 0 || powder.some(({ line }) => line.phase === 'sheet')) continue;
    const grams = gramsOfGelatin(gelatin.matter);
    const water = waterIn(liquid.matter);
    const times = water / grams;
    const isSweet = wholes(run, wetting).some((whole) => sugarSolidsShare(whole) >= sweet.share);
    const least = isSweet ? sweet.least : hydration.least;
    const short = isSweet ? sweet.least : hydration.short;
    if (times >= short - 1e-6) continue;
    report({
      severity: times < least - 1e-6 ? 'warning' : 'notice',
      place: placeOfStep(record.step),
      numbers: { gelatin: grams, water, times, least: times < least - 1e-6 ? least : short, sweet: isSweet },
      related: [{ place: powder[0]!.line.place, message: 'weighed here' }],
      fixes: moreWater(run, liquid, grams),
    });
  }
}

const waterIn = ({ composition, grams }: Matter): number => Math.min((grams.low + grams.high) / 2, composition.water / wholeFrom);

/** What the gelatin ends in. */
function wholes(run: Run, { record, gelatin }: Wetting): readonly Matter[] {
  const lines = new Set(gelatin.matter.parts.filter(isGelatin).map(({ line }) => line));
  return lifeAfter(run, record).flatMap(({ result }) =>
    bodiesOf(result).filter(({ parts }) => parts.some(({ line }) => lines.has(line))),
  );
}

/** Five times the powder's mass, where the liquid is one line that is all used here. */
function moreWater(run: Run, liquid: Input, gelatin: number): readonly Fix[] {
  const [part, ...more] = liquid.matter.parts;
  if (!part || more.length > 0 || liquid.partial || liquid.matter.made || !isOwnLine(run, part.line)) return [];
  return otherAmount(part.line, (hydration.advised.low * gelatin * part.grams) / Math.max(1e-9, waterIn(liquid.matter)));
}

const jelly = (water: string, mark: string): string => `formula Apple jelly
  400 g  apple juice, pasteurised, 20 °C
   40 g  caster sugar
    5 g  gelatin, powder, 200 bloom
  ${water}  cold water, 10 °C
  bloom gelatin in cold water for 10 min${mark}
  heat apple juice, caster sugar to 60 °C
  add gelatin
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinUnderhydrated: Rule = {
  code: 'gelatin-underhydrated',
  severities: ['warning', 'notice'],
  title: 'The powdered gelatin has too little water',
  decides:
    'Less than three times its mass of water: a warning. Less than four times: a notice. Where sugar is 55 % or more of the whole, as in marshmallow: less than twice, a warning.',
  why: 'Powder takes up all the water it is given, five to ten times its mass. With less than three times, the outer grains take it all and the inner ones stay dry: they do not dissolve, and the gel is weaker than what was weighed.',
  remedy: 'Give powder five to six times its mass of cold water, and take that water from elsewhere in the formula if it must.',
  source:
    'Takes up 5–10 times its mass, 5–6 advised (makers’ pages). Three, four and two times as limits: common practice, no source.',
  examples: { bad: jelly(' 10 g', '   // expect: gelatin-underhydrated'), good: jelly(' 20 g', '') },
  message: (n) =>
    `${formatGrams(Number(n.gelatin))} of powdered gelatin ${Number(n.gelatin) === 1 ? 'has' : 'have'} ${formatGrams(Number(n.water))} of water to swell in, ${formatNumber(Number(n.times))} times its mass; it needs at least ${n.least} times${n.sweet ? ', even in so sweet a mass' : ''}.`,
  check,
};
