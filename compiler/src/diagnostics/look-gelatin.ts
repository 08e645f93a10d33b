/** How rules look at gelatin: where dry gelatin first meets water, what it is bloomed in, and how strong a mass it makes. */
import { sugarsOf } from '../matter/composition.ts';
import { middle } from '../quantities/interval.ts';
import type { SourceLine } from '../resolve/model.ts';
import { dextrinsOf, isWatery } from '../run/matter-of.ts';
import type { Input, Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { verbEffects } from '../steps/index.ts';
import { coldest, lifeAfter, massOf, traitsOf } from './look.ts';

/** Sheets and powder that must take up water first. */
export const isGelatin = (part: Part): boolean => traitsOf(part).includes('gelatin');

/** Whatever brings gelatin, instant gelatin and ready gelatin mass included. */
export const bringsGelatin = (part: Part): boolean =>
  traitsOf(part).some((trait) => trait === 'gelatin' || trait === 'gelatin mass' || trait === 'instant gelatin');

/** Grams of dry gelatin, sheets and powder. */
export const gramsOfGelatin = (matter: Matter): number =>
  matter.parts.reduce((sum, part) => sum + (isGelatin(part) ? part.grams : 0), 0);

/** Parties of a step that come together into one mass; empty where they only lie on each other. */
export function meeting(record: StepRecord): readonly Input[] {
  const row = verbEffects[record.step.node.verb];
  if (!row || row.meeting === 'layer' || record.result.layers) return [];
  const parties = record.inputs.filter(({ role, matter }) => role !== 'with' && middle(matter.grams) > 0);
  return parties.length > 1 ? parties : [];
}

/** A step in which dry gelatin first meets water. */
export interface Wetting {
  readonly record: StepRecord;
  readonly gelatin: Input;
  readonly liquid: Input;
  /** Whether it can swell there before it is hot: bloomed, in a cold bath, or kept apart by sugar. */
  readonly hydrates: boolean;
}

export function wettingsOf(run: Run): readonly Wetting[] {
  return run.records.flatMap((record) => {
    if (!record.inputs.some(({ matter }) => matter.gelatin === 'dry')) return [];
    const parties = meeting(record);
    const gelatin = parties.find(({ matter }) => matter.gelatin === 'dry' && !isWatery(matter) && !isHotSyrup(matter));
    const liquid = parties
      .filter(({ matter }) => matter !== gelatin?.matter && (isWatery(matter) || isHotSyrup(matter)))
      .sort(byMass)[0];
    return gelatin && liquid ? [{ record, gelatin, liquid, hydrates: hydrates(run, record, gelatin, liquid) }] : [];
  });
}

/** Boiled sugar has too little water to swell in, and what is put into it dry is lost in it (common practice, no source, as are the shares). */
const isHotSyrup = (matter: Matter): boolean =>
  matter.phase === 'liquid' &&
  matter.composition.water >= 0.1 * massOf(matter) &&
  sugarSolidsShare(matter) >= 0.5 &&
  coldest(matter.heat) > cold.celsius;

const byMass = (a: Input, b: Input): number => massOf(b.matter) - massOf(a.matter);

/** Common practice, no source: what is still cold, and how much, times the gelatin, is no more than a bath to bloom in. */
const cold = { celsius: 30, bathOfMass: 15 } as const;

/** Sugar, times the gelatin, that keeps grains of powder apart in hot liquid. */
const apart = 5;

function hydrates(run: Run, record: StepRecord, gelatin: Input, liquid: Input): boolean {
  const { verb } = record.step.node;
  if (verb === 'bloom' || verb === 'soak') return true;
  const grams = gramsOfGelatin(gelatin.matter);
  const sheets = gelatin.matter.parts.some((part) => isGelatin(part) && part.line.phase === 'sheet');
  if (!sheets && sugarsOf(gelatin.matter.composition) >= apart * grams) return true;
  if (coldest(liquid.matter.heat) > cold.celsius) return false;
  return massOf(liquid.matter) <= cold.bathOfMass * grams || lifeAfter(run, record).some(warms);
}

/** Swollen in all its liquid, it dissolves as that is warmed. */
const warms = ({ step, result }: StepRecord): boolean =>
  result.heat.celsius.low >= 35 || (result.heat.heated?.step === step && result.heat.celsius.high >= 35);

/** Sugars and the dextrins of syrups, as a share (0-1) of the mass: how sweet a gelled mass is. */
export const sugarSolidsShare = (matter: Matter): number => (sugarsOf(matter.composition) + dextrinsOf(matter)) / massOf(matter);

/** The line by its own name where it is this formula's own; null where a taken component brought it. */
export function isOwnLine(run: Run, line: SourceLine): boolean {
  return run.blocks.some(
    ({ batchOf, factor, lines }) => batchOf === null && factor === 1 && lines.some((weighed) => weighed.line === line),
  );
}

/** The line of this formula's own blocks that brought a part in: its own, or the one that takes the component it is from. */
export function ownLineOf(run: Run, line: SourceLine): SourceLine {
  let own = line;
  for (let depth = 0; depth < 20; depth++) {
    const block = run.blocks.find(({ lines }) => lines.some((weighed) => weighed.line === own));
    if (!block?.batchOf) return own;
    own = block.batchOf;
  }
  return own;
}

/** How the law that compares grades is named in a sentence. */
export const lawOf = (run: Run): string => (run.formula.settings.gelatinLaw === 'strength' ? 'by strength' : 'by concentration');
