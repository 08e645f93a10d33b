/** Why a step's temperature is what it is: what the matter at that step, and its later life, ask of it. A step with a reason is critical. */
import type { Trait } from '../catalogue/kind.ts';
import { foldParties, gramsOfTraits, lifeAfter, shareOfTraits, traitsOf } from '../diagnostics/look.ts';
import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import type { ReasonKey } from './languages/language.ts';

/** Most telling first; empty where no temperature is written or nothing hangs on it. */
export function reasonsOf(record: StepRecord, run: Run): readonly ReasonKey[] {
  const { written } = record;
  if (written === null || !Number.isFinite(written.low + written.high)) return coldStay(record) ?? [];
  const scene: Scene = {
    record,
    run,
    verb: record.step.node.verb,
    matter: record.result,
    low: written.low,
    high: written.high,
    later: lifeAfter(run, record),
  };
  return tests
    .filter(([, test]) => test(scene))
    .map(([key]) => key)
    .slice(0, 2);
}

interface Scene {
  readonly record: StepRecord;
  readonly run: Run;
  readonly verb: string;
  readonly matter: Matter;
  /** The written reading. */
  readonly low: number;
  readonly high: number;
  readonly later: readonly StepRecord[];
}

const heating: ReadonlySet<string> = new Set([
  'heat',
  'cook',
  'boil',
  'reduce',
  'melt',
  'hold',
  'caramelise',
  'bake',
  'whisk',
  'whip',
  'stir',
  'check',
]);
const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'freeze', 'rest', 'thaw', 'churn']);
const egg: readonly Trait[] = ['whole egg', 'egg yolk', 'egg white'];
const chocolate: readonly Trait[] = ['dark chocolate', 'milk chocolate', 'white chocolate', 'cocoa mass', 'cocoa butter'];

const tests: readonly (readonly [ReasonKey, (scene: Scene) => boolean])[] = [
  ['caramel', ({ matter, low, verb }) => low >= 150 && heating.has(verb) && sugarShare(matter) > 0.6],
  [
    'syrup',
    ({ matter, low, verb }) => low > 100 && low < 150 && heating.has(verb) && sugarShare(matter) > 0.4 && eggGrams(matter) === 0,
  ],
  [
    'starch cooks',
    ({ matter, low, verb }) =>
      low >= 80 && heating.has(verb) && !matter.baked && starchShare(matter) > 0.01 && waterShare(matter) > 0.4,
  ],
  [
    'egg thickens',
    ({ matter, low, high, verb }) =>
      heating.has(verb) &&
      !matter.baked &&
      eggGrams(matter) > 0 &&
      low >= 70 &&
      high <= 95 &&
      waterShare(matter) > 0.3 &&
      starchShare(matter) < 0.01,
  ],
  [
    'egg safe',
    ({ matter, low, verb, record }) =>
      heating.has(verb) && !matter.baked && low >= 55 && low < 100 && sugarShare(matter) < 0.6 && rawest(record) < low - 1,
  ],
  ['fold chocolate', (scene) => share(scene.matter, scene.matter.composition.cocoaButter) >= 0.06 && meetsFoam(scene, ofCream)],
  // Warmer bases than the sentence allows (agar) have reasons of their own.
  [
    'fold cream',
    (scene) => scene.high <= 38 && share(scene.matter, scene.matter.composition.cocoaButter) < 0.06 && meetsFoam(scene, ofCream),
  ],
  ['fold white', (scene) => meetsFoam(scene, (kind) => kind.endsWith('white'))],
  [
    'gelatin melts',
    ({ later, verb, matter, low }) =>
      matter.gelatin !== 'set' &&
      low >= 35 &&
      low <= 95 &&
      (takesGelatinNext(later) || (heating.has(verb) && matter.gelatin === 'bloomed')),
  ],
  ['glaze', ({ later, matter }) => matter.gelatin200 > 0 && later[0]?.step.node.verb === 'glaze'],
  ['chocolate works', ({ matter, high }) => shareOfTraits(matter, ...chocolate) > 0.9 && high <= 34],
  [
    'chocolate melts',
    ({ matter, verb, low }) => (verb === 'melt' || verb === 'heat') && shareOfTraits(matter, ...chocolate) > 0.9 && low > 34,
  ],
  [
    'ganache',
    ({ later, record, matter, low }) =>
      low >= 32 &&
      low <= 90 &&
      (meetsChocolateNext(later, record) || (gramsOfTraits(matter, ...chocolate) > 0 && record.step.node.verb === 'blend')),
  ],
  [
    'butter',
    ({ matter, low, high, verb }) =>
      low >= 14 &&
      high <= 26 &&
      shareOfTraits(matter, 'butter') > 0.3 &&
      !matter.baked &&
      (verb === 'cream' || verb === 'whip' || cooling.has(verb) || verb === 'mix'),
  ],
  ['gelatin sets', ({ matter, high, verb }) => cooling.has(verb) && high <= 10 && high > -5 && matter.gelatin200 > 0],
  ['frozen', ({ high, verb }) => verb === 'freeze' || verb === 'churn' || high <= -10],
  ['cold', ({ matter, high, verb }) => cooling.has(verb) && high <= 8 && perishable(matter)],
];

const ofCream = (kind: string): boolean => kind === 'cream' || kind === 'plant cream';

/** `chill for 4 h` without a reading still sets gelatin; `freeze` still freezes. */
function coldStay(record: StepRecord): readonly ReasonKey[] | null {
  const { verb } = record.step.node;
  if (verb === 'freeze') return ['frozen'];
  if (verb === 'chill' && record.result.gelatin200 > 0) return ['gelatin sets'];
  return null;
}

/** It is the next thing a foam is folded with, and the reading is the base's. */
function meetsFoam({ record, later, matter }: Scene, wanted: (kind: string) => boolean): boolean {
  const fold = later.find((other) => other.step.node.verb === 'fold');
  if (!fold || later.indexOf(fold) > 2) return false;
  const parties = foldParties(fold);
  if (!parties?.foam.foam || !wanted(parties.foam.foam.kind)) return false;
  return parties.base.made === record || (matter.foam === null && fold.inputs.some((input) => input.matter.made === record));
}

const takesGelatinNext = (later: readonly StepRecord[]): boolean =>
  later[0]?.step.node.verb === 'add' &&
  later[0].inputs.some((input) => input.matter.gelatin === 'bloomed' && input.matter.gelatin200 > 0);

const meetsChocolateNext = (later: readonly StepRecord[], record: StepRecord): boolean =>
  later[0]?.inputs.some((input) => input.matter.made !== record && shareOfTraits(input.matter, ...chocolate) > 0.5) ?? false;

/** The lowest of what the egg that comes to a step has certainly reached, °C; infinite where there is none. */
const rawest = ({ inputs }: StepRecord): number =>
  Math.min(
    ...inputs.flatMap(({ matter }) =>
      matter.parts.filter((part) => traitsOf(part).some((trait) => egg.includes(trait))).map(({ reached }) => reached),
    ),
    Number.POSITIVE_INFINITY,
  );

const eggGrams = (matter: Matter): number => gramsOfTraits(matter, ...egg);
const starchShare = (matter: Matter): number => share(matter, matter.composition.starch);
const sugarShare = (matter: Matter): number => share(matter, sugarsOf(matter.composition));
const waterShare = (matter: Matter): number => share(matter, matter.composition.water);
const share = (matter: Matter, grams: number): number => grams / Math.max(1e-9, total(matter.composition));

/** Holds egg or dairy and water enough for germs, and was not baked dry. */
export function perishable(matter: Matter): boolean {
  const animal = gramsOfTraits(matter, ...egg, 'milk', 'cream', 'fresh cheese', 'cultured dairy', 'mascarpone');
  return animal > 0 && !matter.baked && waterShare(matter) > 0.2 && share(matter, fatOf(matter.composition)) < 0.8;
}
