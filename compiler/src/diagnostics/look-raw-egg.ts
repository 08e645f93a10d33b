/** How rules look at egg that reaches the table not safely heated: whether a reading was meant to cook it, and what would. */
import { type Hold, logReduction, sufficient } from '../matter/lethality.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { isBakedCustard } from '../steps/custard.ts';
import { eggMediumOf, sugarPercent } from '../steps/treatment.ts';
import { lifeOf, shareOfTraits } from './look.ts';
import { eggsOf, heats, isIn, isPasteurised, thickening } from './look-egg.ts';

export interface UnsafeEgg {
  readonly part: Part;
  /** The step whose reading was written as its cooking; null where nothing was. */
  readonly cooked: StepRecord | null;
  /** Powers of ten of Salmonella killed so far. */
  readonly log: number;
  /** % of sugar in the mass it was, or is, heated in. */
  readonly sugar: number;
}

/** Egg of what is served that is neither pasteurised, nor baked through, nor heated enough. */
export function unsafeEggs(run: Run): readonly UnsafeEgg[] {
  if (!run.result || run.records.length === 0) return [];
  const { result } = run;
  const order = new Map(run.records.map((record, index) => [record, index] as const));
  const inOrder = (a: StepRecord, b: StepRecord): number => (order.get(a) ?? 0) - (order.get(b) ?? 0);
  return eggsOf(result).flatMap((part) => {
    if (part.baked || isPasteurised(part) || sufficient(...part.holds) || inRawDough(result, part)) return [];
    const own = [...lifeOf(result, part)].sort(inOrder);
    // Heated by eye: `no-checkpoint` asks for the reading, and how far it came cannot be told.
    if (endsUnread(own, part) || own.some(scalds)) return [];
    const cooked = own.filter(cooks).reduce<StepRecord | null>((a, b) => (a && lowOf(a) > lowOf(b) ? a : b), null);
    const sugar = part.holds.at(-1)?.sugarPercent ?? sugarPercent(cooked?.result ?? result);
    return [{ part, cooked, log: logReduction(...part.holds), sugar }];
  });
}

/** °C that no egg comes out of raw, sugared as it may be: above the 71 °C of FDA's advice for an egg base with sugar (lethality.ts). */
export const scalded = 75;

/** Several times its mass of hot syrup poured on, as in nougat: no reading, but hot enough for sure. */
const scalds = ({ step, result }: StepRecord): boolean =>
  step.node.clauses.some(({ word }) => word === 'while whipping') && result.heat.celsius.low >= scalded;

const isCheck = ({ step }: StepRecord): boolean => step.node.verb === 'check';

const forEgg: ReadonlySet<string> = new Set(['cook', 'hold', 'bake']);

/** A reading that was written to cook the egg: by the verb, or from 50 °C; below that egg is only warmed for whipping. */
function cooks(record: StepRecord): boolean {
  if (record.written === null || !(heats(record) || isCheck(record))) return false;
  return (forEgg.has(record.step.node.verb) && !isCheck(record)) || record.written.high >= 50;
}

const lowOf = ({ written }: StepRecord): number => (written && Number.isFinite(written.low) ? written.low : (written?.high ?? 0));

const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'freeze', 'rest']);

/** Heated without a reading, and not read before it cooled. */
function endsUnread(life: readonly StepRecord[], part: Part): boolean {
  let unread = false;
  let cooled = false;
  for (const record of life) {
    if (byEye(record, part)) {
      unread = true;
      cooled = false;
    } else if (cooks(record) && !cooled) unread = false;
    else if (cooling.has(record.step.node.verb)) cooled = true;
  }
  return unread;
}

/** What the oven neither sets nor bakes through is only browned. */
function byEye(record: StepRecord, part: Part): boolean {
  if (!heats(record) || record.written !== null) return false;
  if (record.step.node.verb !== 'bake') return true;
  return record.inputs.some(({ matter }) => bodiesOf(matter).some((body) => isIn(body, part) && isBakedCustard(body, matter)));
}

/** Dough and batter that are sold unbaked are for baking; that flour is raw is said elsewhere. */
const inRawDough = (result: Matter, part: Part): boolean =>
  bodiesOf(result).some((body) => isIn(body, part) && !body.baked && isDough(body));

const isDough = (body: Matter): boolean =>
  body.phase === 'dough' || thickening(body) >= 0.1 || shareOfTraits(body, 'flour', 'wheat flour', 'nut flour') >= 0.15;

export interface Sufficient {
  /** °C that is enough as soon as it is reached. */
  readonly atOnce: number;
  /** A gentler way: °C, and seconds to hold it. */
  readonly celsius: number;
  readonly seconds: number;
}

/** What would do, for a medium in a mixture of so much sugar. */
export function whatWouldDo({ part, sugar }: UnsafeEgg): Sufficient {
  const medium = eggMediumOf(part) ?? 'whole egg';
  const hold = (celsius: number, seconds: number): Hold => ({ medium, sugarPercent: sugar, celsius, seconds });
  let atOnce = 60;
  while (atOnce < 90 && !sufficient(hold(atOnce, 1))) atOnce++;
  const seconds = 600;
  let celsius = 56;
  while (celsius < atOnce && !sufficient(hold(celsius, seconds))) celsius++;
  return { atOnce, celsius, seconds };
}
