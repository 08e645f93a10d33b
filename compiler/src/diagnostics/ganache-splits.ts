/** `ganache-splits`: a ganache to be piped or moulded with too much or too little fat, or emulsified too hot or too cold. */
import { fatShareOfEmulsion, fatVolumeOfEmulsion, ganacheCelsius, ganacheFatShare } from '../matter/chocolate.ts';
import { fatOf } from '../matter/composition.ts';
import { formatCelsius, formatPercent } from '../quantities/format.ts';
import { interval } from '../quantities/interval.ts';
import type { Heat, Matter, Run, StepRecord } from '../run/trace.ts';
import { coldest, massOf, placeOfStep, warmest } from './look.ts';
import { emulsionsOf, liquidOf, shapedOf } from './look-ganache.ts';
import { isOwnLine } from './look-gelatin.ts';
import { lineBefore, operandText, otherAmount, readingText } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  for (const { met, stirred } of emulsionsOf(run)) {
    const shaped = shapedOf(run, stirred);
    if (!shaped) continue;
    const share = shareOutside(met.result);
    // Built in several additions it counts as it comes out.
    const fat = share !== null && shareOutside(shaped) !== null ? share : null;
    const celsius = celsiusOutside(stirred);
    if (fat === null && celsius === null) continue;
    report({
      place: placeOfStep(stirred.step),
      numbers: {
        share: fat,
        least: ganacheFatShare.low,
        most: ganacheFatShare.high,
        celsius: celsius === null ? null : Math.round(celsius * 10) / 10,
        low: ganacheCelsius.low,
        high: ganacheCelsius.high,
      },
      related: met === stirred ? [] : [{ place: met.step.place, message: 'chocolate and liquid meet here' }],
      fixes: [...(celsius === null ? [] : otherWarmth(stirred, celsius)), ...(fat === null ? [] : otherLiquid(run, met, fat))],
    });
  }
}

/** Labels give cocoa, not fat, and a firm ganache of two parts of chocolate to one of cream (0.65) holds: so much over the limit is no fault yet. */
const doubt = 0.06;

/** Fat, share of the volume, up to which there is syrup enough: the sugar of white and milk chocolate makes it of little water (estimate). */
const roomy = 0.52;

function shareOutside({ composition }: Matter): number | null {
  const share = fatShareOfEmulsion(composition);
  if (share === null) return null;
  const rich = share > ganacheFatShare.high + doubt && (fatVolumeOfEmulsion(composition) ?? 1) > roomy;
  return rich || share < ganacheFatShare.low ? share : null;
}

/** Kelvin that bowl, air and a minute's wait may take from a mixture whose warmth is only reckoned (estimate). */
const lost = 10;

function celsiusOutside(stirred: StepRecord): number | null {
  const [only, ...more] = stirred.inputs;
  const { heat } = stirred.result;
  const before: Heat | undefined =
    more.length === 0 ? only?.matter.heat : { ...heat, basis: 'computed', celsius: stirred.computed ?? heat.celsius };
  if (!before) return null;
  const hot = warmest(before);
  if (hot > ganacheCelsius.high + (before.basis === 'written' ? 0 : lost)) return hot;
  return coldest(before) < ganacheCelsius.low ? coldest(before) : null;
}

/** Cools or warms the liquid, or the whole where it only stands together. */
function otherWarmth(stirred: StepRecord, celsius: number): readonly Fix[] {
  const hot = celsius > ganacheCelsius.high;
  const liquid = liquidOf(stirred);
  const [only] = stirred.inputs;
  const of = liquid ? operandText(liquid) : only ? operandText(only) : '';
  if (liquid && (of === '' || !stirred.step.node.clauses.some(({ word }) => word === 'into' || word === 'over'))) return [];
  const [low, high] = liquid ? (hot ? [45, 50] : [55, 60]) : hot ? [45, 50] : [38, 42];
  return [lineBefore(stirred.step, `${hot ? 'cool' : 'heat'}${of} to ${readingText(stirred, low, high)}`)];
}

/** As much of the liquid as brings the fat to the middle of what holds together. */
function otherLiquid(run: Run, met: StepRecord, share: number): readonly Fix[] {
  const liquid = liquidOf(met);
  const [part, ...more] = liquid?.matter.parts ?? [];
  if (!liquid || !part || more.length > 0 || liquid.partial || !isOwnLine(run, part.line)) return [];
  const wanted = share > ganacheFatShare.high ? 0.55 : 0.3;
  const all = { fat: fatOf(met.result.composition), water: met.result.composition.water };
  const own = { fat: fatOf(liquid.matter.composition), water: liquid.matter.composition.water };
  const rest = { fat: all.fat - own.fat, water: all.water - own.water };
  const times = (rest.fat - wanted * (rest.fat + rest.water)) / (wanted * (own.fat + own.water) - own.fat);
  return times > 0.1 && times < 10 ? otherAmount(part.line, times * massOf(liquid.matter)) : [];
}

const ganache = (cream: string, mark: string): string => `formula Piped ganache
  300 g  dark chocolate, 66 % cocoa
  ${cream}  cream, 35 % fat, 4 °C
  melt dark chocolate to 45-50 °C
  heat cream to 50-55 °C
  stir cream into dark chocolate until smooth${mark}
  pipe into glass
`;

export const ganacheSplits: Rule = {
  code: 'ganache-splits',
  severities: ['warning'],
  title: 'The ganache is likely to split',
  why: 'A ganache is fat in fine drops in a syrup. With more than about 60 % of fat in its fat and water there is too little syrup between the drops and they run together: it turns oily and grainy. With less than about 25 % it stays a sauce and does not hold a form. Below 32 °C cocoa butter sets before it is spread, above 60 °C the drops are too thin to stay apart.',
  remedy: 'Change the liquid until fat is 25–60 % of fat and water together, and emulsify at 35–50 °C.',
  source:
    'Common practice, no source; up to 66 % is let pass, because labels give cocoa and not fat, and more where sugar makes the syrup so bulky that fat is 52 % of the volume at most (estimate). Cocoa butter’s stable form melts at 33.8 °C (Wille & Lutton 1966).',
  examples: { bad: ganache('100 g', '   // expect: ganache-splits'), good: ganache('260 g', '') },
  message: (n) => {
    const fat =
      typeof n.share === 'number'
        ? `Fat is ${formatPercent(n.share)} of the ganache’s fat and water; outside ${formatPercent(interval(Number(n.least), Number(n.most)))} it ${n.share > Number(n.most) ? 'turns oily and splits' : 'stays a sauce'}.`
        : '';
    const heat =
      typeof n.celsius === 'number'
        ? `It is emulsified at ${formatCelsius(n.celsius)}; outside ${formatCelsius(interval(Number(n.low), Number(n.high)))} its fat ${n.celsius > Number(n.high) ? 'parts' : 'sets before it is spread'}.`
        : '';
    return [fat, heat].filter(Boolean).join(' ');
  },
  check,
};
