/** `fold-too-cold`: the base has begun to set before the foam goes in. */
import { formatCelsius, formatNumber } from '../quantities/format.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { coldest, gelatinPercent, isFold, placeOfStep } from './look.ts';
import { type ChocolateBase, chocolateBaseOf, foldOf, takesFoamCold } from './look-fold.ts';
import { lineBefore, operandText, readingText, spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** °C below which a base sets in lumps, by what sets it (common practice, no source). */
const chocolateLimits: Readonly<Record<ChocolateBase, number>> = { dark: 30, milk: 28, white: 26 };
const gelatinLimit = (percent: number): number => (percent < 0.8 ? 16 : percent < 2 ? 20 : 22);

/** What to warm it to, with room below where cream would melt. */
const advised: Readonly<Record<ChocolateBase | 'gelatin', readonly [number, number]>> = {
  dark: [38, 42],
  milk: [32, 36],
  white: [32, 36],
  gelatin: [30, 33],
};

interface Limit {
  readonly sets: ChocolateBase | 'gelatin';
  readonly celsius: number;
}

function limitOf(base: Matter): Limit | null {
  const chocolate = chocolateBaseOf(base);
  const found: Limit[] = [];
  if (chocolate) found.push({ sets: chocolate, celsius: chocolateLimits[chocolate] });
  if (base.gelatin200 > 0 && (base.gelatin === 'dissolved' || base.gelatin === 'set'))
    found.push({ sets: 'gelatin', celsius: gelatinLimit(gelatinPercent(base)) });
  return found.sort((a, b) => b.celsius - a.celsius)[0] ?? null;
}

/** A written range counts where all of it lies below, a computed one where all it can be does. */
const certainly = (base: Matter): number =>
  base.heat.basis === 'written' && base.heat.written ? base.heat.written.high : coldest(base.heat);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isFold(record)) continue;
    const fold = foldOf(record);
    if (!fold || takesFoamCold(fold.base.matter)) continue;
    const { base } = fold;
    const limit = limitOf(base.matter);
    const celsius = certainly(base.matter);
    if (!limit || celsius >= limit.celsius) continue;
    const [low, high] = advised[limit.sets];
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: {
        name: spoken(base, 'base'),
        celsius: Math.round(celsius * 10) / 10,
        limit: limit.celsius,
        sets: limit.sets,
        share: limit.sets === 'gelatin' ? gelatinPercent(base.matter) : null,
        low,
        high,
      },
      related: base.matter.made ? [{ place: base.matter.made.step.place, message: 'last cooled here' }] : [],
      fixes: canWarm(record, base.role)
        ? [lineBefore(record.step, `heat${operandText(base)} to ${readingText(record, low, high)}`)]
        : [],
    });
  }
}

/** Warming it makes it the current matter, which a fold without `into` must not lose. */
const canWarm = (record: StepRecord, role: string): boolean =>
  role === 'base' || record.step.node.clauses.some(({ word }) => word === 'into');

const ganache = `  200 g  dark chocolate, 64 % cocoa
  180 g  cream, 35 % fat, 4 °C
  240 g  cream, 35 % fat, 4 °C, as whipping cream
  heat cream to 80-82 °C
  pour cream over dark chocolate
  blend until glossy
`;

export const foldTooCold: Rule = {
  code: 'fold-too-cold',
  severities: ['warning'],
  title: 'The base has begun to set before the foam goes in',
  why: 'Gelatin begins to set between about 16 and 25 °C, the sooner the more of it there is; a ganache sets as its cocoa butter hardens, near 30 °C for dark chocolate and lower with milk fat. Cold cream takes it there at once, in threads and lumps that no folding gets out. A base that cooked starch holds, that was smoothed after it cooled, or that is itself a foam takes the cream cold.',
  remedy:
    'Warm the base until it flows again, a custard to 30–33 °C, a dark ganache to 38–42 °C, or smooth it after it has cooled.',
  source: 'Setting of gelatin at 16–29 °C (maker’s and teaching pages); the limits: common practice, no source.',
  examples: {
    bad: `formula Ganache mousse, left too long
${ganache}  cool to 22-24 °C
  whip whipping cream to soft-medium peak
  fold whipping cream into dark chocolate in 3 additions: whisk, spatula   // expect: fold-too-cold
  pour into glass
`,
    good: `formula Ganache mousse
${ganache}  cool to 36-40 °C
  whip whipping cream to soft-medium peak
  fold whipping cream into dark chocolate in 3 additions: whisk, spatula
  pour into glass
`,
  },
  message: (n) => {
    const what = n.sets === 'gelatin' ? `${formatNumber(Number(n.share))} % of gelatin` : `${n.sets} chocolate`;
    return `The ${n.name} is at ${formatCelsius(Number(n.celsius))} when the foam goes in; with ${what} it sets in lumps below ${formatCelsius(Number(n.limit))}. Warm it to ${formatCelsius({ low: Number(n.low), high: Number(n.high) })} first.`;
  },
  check,
};
