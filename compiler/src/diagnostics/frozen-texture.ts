/** `frozen-texture`: a frozen dessert with too little or too much of what keeps it from freezing hard. */
import { sugarsOf } from '../matter/composition.ts';
import { formatPercent } from '../quantities/format.ts';
import { holds } from '../resolve/choices.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { factorOf, lifeBefore, massOf, placeOfStep, traitsOf } from './look.ts';
import { alcoholIn, alcoholWeighed } from './look-alcohol.ts';
import { waterShare } from './look-egg.ts';
import { otherAmount } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Shares (0–1); common practice, no source. A parfait is frozen still, on its foam. */
const limits = { sugarLeast: 0.14, sugarMost: 0.3, alcohol: 0.04, parfaitAlcohol: 0.06, served: -5 } as const;

/** Sugar to aim at where it is out of range. */
const aim = { low: 0.2, high: 0.26 } as const;

/** What is eaten frozen: not the biscuit under it, nor a thin layer of sauce. */
function frozenBodies(run: Run): readonly Matter[] {
  const served = run.formula.served.find(({ condition }) => holds(condition, run.selection));
  if (!served || served.value.high > limits.served || !run.result) return [];
  const whole = massOf(run.result);
  return bodiesOf(run.result).filter(
    (body) => !body.baked && massOf(body) >= 0.3 * whole && waterShare(body) >= 0.3 && body.unknownGrams < 0.1 * massOf(body),
  );
}

/** Where it froze: in the churn, else where it was last put to freeze. */
function freezingOf(body: Matter, run: Run): StepRecord | null {
  const life = [...lifeBefore(body), ...(run.result ? lifeBefore(run.result) : [])];
  const by = (verb: string): StepRecord | undefined => life.find(({ step }) => step.node.verb === verb);
  return by('churn') ?? by('freeze') ?? null;
}

function check(run: Run, report: Report): void {
  for (const body of frozenBodies(run)) {
    const record = freezingOf(body, run);
    if (!record) continue;
    const sugar = sugarsOf(body.composition) / massOf(body);
    const left = body.parts.reduce((sum, part) => sum + (alcoholWeighed(part) > 0 ? alcoholIn(body, part).low : 0), 0);
    const alcohol = left / massOf(body);
    const mostAlcohol = body.foam ? limits.parfaitAlcohol : limits.alcohol;
    const numbers = { sugar: percent(sugar), alcohol: percent(alcohol) };
    const place = placeOfStep(record.step);
    if (alcohol > mostAlcohol) report({ place, numbers: { ...numbers, problem: 'alcohol', limit: percent(mostAlcohol) } });
    else if (sugar < limits.sugarLeast)
      report({
        place,
        numbers: { ...numbers, problem: 'hard', limit: percent(limits.sugarLeast) },
        fixes: sweetened(run, body, aim.low),
      });
    else if (sugar > limits.sugarMost)
      report({
        place,
        numbers: { ...numbers, problem: 'soft', limit: percent(limits.sugarMost) },
        fixes: sweetened(run, body, aim.high),
      });
  }
}

const percent = (share: number): number => Math.round(share * 1e4) / 100;

/** Weighs as much of its sugar as brings the whole to a share. */
function sweetened(run: Run, body: Matter, share: number): readonly Fix[] {
  const part = body.parts
    .filter((other) => traitsOf(other).includes('sugar') && other.line.substance.is === 'kind')
    .sort((a, b) => b.grams - a.grams)[0];
  if (!part) return [];
  const grams = part.grams + (share * massOf(body) - sugarsOf(body.composition)) / (1 - share);
  return grams > 1 ? otherAmount(part.line, grams / factorOf(run, part.line)) : [];
}

const start = `  served at -12 °C
  500 g  raspberry purée, pasteurised, 4 °C
`;
const end = `  mix raspberry purée, caster sugar until dissolved
`;

export const frozenTexture: Rule = {
  code: 'frozen-texture',
  severities: ['warning'],
  title: 'It freezes too hard or stays too soft',
  served: true,
  why: 'Sugar, milk sugar included, and alcohol keep part of the water liquid in the freezer. With too little of them the ice turns hard as stone and coarse; with too much it never sets and melts on the plate.',
  remedy:
    'Bring sugar to 16–28 % of the whole (weigh glucose syrup for part of it where that is too sweet) and alcohol below 4 %, in a parfait below 6 %.',
  source: 'Common practice, no source; ice against temperature by Norrish’s water activity.',
  examples: {
    bad: `formula Raspberry sorbet, hardly sweetened
${start}   20 g  caster sugar
${end}  churn to -8 °C   // expect: frozen-texture
`,
    good: `formula Raspberry sorbet
${start}   95 g  caster sugar
${end}  churn to -8 °C
`,
  },
  message: (n) => {
    const limit = formatPercent(Number(n.limit) / 100);
    if (n.problem === 'alcohol')
      return `It holds ${formatPercent(Number(n.alcohol) / 100)} of alcohol; above ${limit} it does not freeze firm. Weigh less, or boil part of it off first.`;
    return n.problem === 'hard'
      ? `It holds ${formatPercent(Number(n.sugar) / 100)} of sugar; below ${limit} it freezes hard and coarse. Weigh more sugar.`
      : `It holds ${formatPercent(Number(n.sugar) / 100)} of sugar; above ${limit} it stays soft and melts at once. Weigh less sugar.`;
  },
  check,
};
