/** `yield-mismatch`: what is made is clearly more or less than `makes` says. */

import { shapeOf, type Yield } from 'nappe-grammar';
import { type Shape, shapeMillilitres } from '../matter/volume.ts';
import { formatFigure } from '../quantities/format.ts';
import { type Interval, interval, middle } from '../quantities/interval.ts';
import { gramsPer, isMass, isVolume, millilitresPer } from '../quantities/units.ts';
import { clauseOf } from '../run/clauses.ts';
import { makesOf } from '../run/makes.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { lifeBefore } from './look.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Share by which it may differ; and by how much more may be left where nothing says what boiled or baked away (common practice). */
const tolerance = 0.1;
const steam = 0.2;

const steaming: ReadonlySet<string> = new Set(['boil', 'bake', 'reduce', 'dry', 'fry', 'toast', 'caramelise', 'cook']);

/** Air that is not reckoned: what rises or is churned has a volume of its own. */
const risen: ReadonlySet<string> = new Set(['bake', 'fry', 'proof', 'churn', 'dry']);

interface Promised {
  readonly amount: number;
  readonly unit: 'g' | 'ml';
}

function promised(makes: Yield, factor: number): Promised | null {
  const count = (makes.count ?? 1) * factor;
  const one = makes.size ?? makes.quantity;
  if (one) {
    const each = middle(interval(one.low, one.high)) * count;
    if (isMass(one.unit)) return { amount: each * gramsPer[one.unit], unit: 'g' };
    return isVolume(one.unit) ? { amount: each * millilitresPer[one.unit], unit: 'ml' } : null;
  }
  if (!makes.lengths || !makes.noun || makes.lined) return null;
  const shape = shapeOf(makes.noun.key)?.word as Shape | undefined;
  const each = shape ? shapeMillilitres(shape, makes.lengths) : null;
  return each === null ? null : { amount: each * count, unit: 'ml' };
}

function check(run: Run, report: Report): void {
  const makes = makesOf(run.formula, run.selection);
  const { result } = run;
  const promise = makes ? promised(makes.yield, run.factor) : null;
  if (!makes || !result || !promise || (makes.yield.lined && promise.unit === 'ml')) return;
  const life = [...lifeBefore(result), ...run.records];
  if (promise.unit === 'ml' && (unknownVolume(result) || life.some(({ step }) => risen.has(step.node.verb)))) return;
  const made = promise.unit === 'g' ? result.grams : millilitresOf(result);
  const unsaid = life.some(({ step }) => steaming.has(step.node.verb) && clauseOf(step.node, 'losing') === null);
  const tooLittle = made.high < (1 - tolerance) * promise.amount;
  const tooMuch = made.low > (1 + tolerance) * promise.amount && !(unsaid && promise.amount >= (1 - steam) * made.low);
  if (!tooLittle && !tooMuch) return;
  report({
    severity: 'warning',
    place: makes.place,
    numbers: {
      low: made.low,
      high: made.high,
      promised: promise.amount,
      unit: promise.unit,
      percent: (100 * (middle(made) - promise.amount)) / promise.amount,
      limit: 100 * tolerance,
    },
    fixes: fixesOf(run, makes.place, makes.yield, made),
  });
}

/** Pieces and powders lie with gaps between, which nothing here knows. */
const unknownVolume = (matter: Matter): boolean =>
  matter.unknownGrams > 0 || bodiesOf(matter).some((body) => body.baked || body.phase === 'powder' || body.phase === 'crystal');

/** A yield by mass can be written as what is made. */
function fixesOf(run: Run, place: Run['formula']['place'], { quantity }: Yield, made: Interval): readonly Fix[] {
  const header = run.formula.makes.find((one) => one.place === place);
  if (!quantity || !isMass(quantity.unit) || header?.condition) return [];
  const grams = Math.round(middle(made) / 10) * 10;
  const text = `makes ${grams} g`;
  return [{ title: `Write “${text}”`, edits: [{ ...place, text }] }];
}

const cream = (makes: string, mark: string): string => `formula Sweet cream
  makes ${makes}${mark}
  500 g  cream, 35 % fat, 4 °C
   50 g  icing sugar
  whip cream, icing sugar to soft-medium peak
`;

export const yieldMismatch: Rule = {
  code: 'yield-mismatch',
  severities: ['warning'],
  title: 'It makes more or less than it says',
  served: true,
  why: 'What is weighed, less what is written as lost, is compared with the yield: by mass, or by volume with the air whipped in. Cards are scaled by the yield, so that a wrong one scales everything wrong. Where something is boiled or baked and nothing says what goes off as steam, a fifth less is taken as that.',
  remedy: 'Correct “makes”, the quantities, or write what is lost (“losing 12 %”, “loss 5 %”).',
  source: 'Conservation of mass; the tolerance of 10 % and the fifth for steam: common practice, no source.',
  examples: { bad: cream('800 g', '   // expect: yield-mismatch'), good: cream('580 g', '') },
  message: (n) => {
    const amount = (value: number): string => inUnits(value, n.unit === 'g' ? ['g', 'kg'] : ['ml', 'l']);
    const low = amount(Number(n.low));
    const high = amount(Number(n.high));
    return `This makes ${low === high ? low : `${low} to ${high}`}, ${Math.abs(Math.round(Number(n.percent)))} % ${Number(n.percent) < 0 ? 'less' : 'more'} than the yield says: ${amount(Number(n.promised))}.`;
  },
  check,
};

const inUnits = (value: number, [small, large]: readonly [string, string]): string =>
  value >= 1000 ? `${formatFigure(value / 1000)} ${large}` : `${formatFigure(value)} ${small}`;
