/** `alcohol-left`: how much alcohol a portion holds. */
import { formatGrams, formatPercent } from '../quantities/format.ts';
import { interval, middle } from '../quantities/interval.ts';
import { makesOf } from '../run/makes.ts';
import type { Run } from '../run/trace.ts';
import { massOf } from './look.ts';
import { alcoholIn, alcoholWeighed } from './look-alcohol.ts';
import type { Report, Rule } from './rule.ts';

/** Worth saying from here on; vanilla extract alone is not. Who must not have any is told of less. */
const worthSaying = { share: 0.003, portion: 0.4, vulnerable: 0.05 } as const;

const vulnerable: ReadonlySet<string> = new Set(['children', 'pregnant', 'hospital']);

function check(run: Run, report: Report): void {
  const { result } = run;
  if (!result) return;
  const portions = makesOf(run.formula, run.selection)?.yield.count ?? null;
  const count = portions === null ? 1 : portions * run.factor;
  const told = run.formula.settings.tags.some((tag) => vulnerable.has(tag.toLowerCase()));
  for (const part of result.parts) {
    if (alcoholWeighed(part) <= 0) continue;
    const left = alcoholIn(result, part);
    const share = middle(left) / massOf(result);
    const each = middle(left) / count;
    if (told ? each < worthSaying.vulnerable : share < worthSaying.share && (portions === null || each < worthSaying.portion))
      continue;
    const round = (grams: number): number => Math.round(grams * 100) / 100;
    report({
      place: part.line.place,
      numbers: {
        name: part.line.label,
        weighed: round(alcoholWeighed(part)),
        low: round(left.low / count),
        high: round(left.high / count),
        share: Math.round(share * 1e4) / 100,
        portions: portions !== null,
      },
    });
  }
}

const start = `  makes 10 glasses of 50 g
  500 g  cream, 36 % fat, 4 °C
`;
const end = `  whip cream to soft-medium peak
  stir dark rum into cream
  pipe into glass
`;

export const alcoholLeft: Rule = {
  code: 'alcohol-left',
  severities: ['notice'],
  title: 'Alcohol is left in it',
  served: true,
  why: 'Alcohol that is stirred in cold stays. Heat drives it off slowly: of what is stirred into something hot 85 % is left, after a quarter of an hour of simmering 40 %, after two hours 10 %. Children, pregnant guests and those who avoid it must be told.',
  remedy:
    'Tell who eats it, or replace it: most taste of a spirit comes from a spoonful of its extract or of the fruit it is made from.',
  source:
    'USDA Table of Nutrient Retention Factors, release 6 (2007), alcohol. What is left lies within a factor of 1.5 either way.',
  examples: {
    bad: `formula Rum cream
${start}   40 g  dark rum   // expect: alcohol-left
${end}`,
    good: `formula Rum cream, a few drops
${start}    2 g  dark rum
${end}`,
  },
  message: (n) => {
    const left = formatGrams(interval(Number(n.low), Number(n.high)));
    return n.portions
      ? `Of the ${n.name}, about ${left} of alcohol are left in each portion (${formatPercent(Number(n.share) / 100)} of the whole).`
      : `Of the ${n.name}, about ${left} of alcohol are left (${formatPercent(Number(n.share) / 100)} of the whole).`;
  },
  check,
};
