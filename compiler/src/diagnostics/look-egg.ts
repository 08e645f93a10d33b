/** How rules look at egg: which parts are egg, where they were heated and how, and what of it is still raw. */
import type { Heat, Matter, Part, StepRecord } from '../run/trace.ts';
import { eggMediumOf } from '../steps/treatment.ts';
import { lifeOf, massOf, traitsOf, warmest } from './look.ts';

export const isEgg = (part: Part): boolean => eggMediumOf(part) !== null;

/** Yolk, or whole egg with its yolk. */
export const holdsYolk = (part: Part): boolean => isEgg(part) && eggMediumOf(part) !== 'white';

export const eggsOf = (matter: Matter): readonly Part[] => matter.parts.filter(isEgg);

/** As the line says; where it says nothing, as the kind is sold. */
export function isPasteurised({ line }: Part): boolean {
  if (line.state !== null) return line.state === 'pasteurised';
  return line.substance.is === 'kind' && line.substance.kind.pasteurised;
}

const onHeat: ReadonlySet<string> = new Set(['heat', 'cook', 'boil', 'reduce', 'hold', 'bake', 'fry']);

/** Heated in this step: over a flame, in hot water, in the oven, in fat. */
export const heats = (record: StepRecord): boolean => onHeat.has(record.step.node.verb) || inHotBath(record);

const inHotBath = ({ medium }: StepRecord): boolean => medium === 'water bath' || medium === 'bain-marie';

export const isIn = (matter: Matter, part: Part): boolean => matter.parts.some(({ line }) => line === part.line);

/** Where a part was heated, the last first. */
export const heatings = (matter: Matter, part: Part): readonly StepRecord[] => lifeOf(matter, part).filter(heats);

/** °C from which yolk thickens (McGee 2004: 65 °C): at that it is raw no more. */
export const yolkThickensFrom = 65;

/** Never as hot as that, as far as can be told. */
export const isRaw = (matter: Matter, part: Part): boolean =>
  isEgg(part) &&
  !part.baked &&
  part.reached < yolkThickensFrom &&
  !heatings(matter, part).some(({ written, result }) => (written ?? result.heat.celsius).high >= yolkThickensFrom);

/** Share (0–1) of parts that hold yolk. */
export const yolkShare = (matter: Matter): number =>
  matter.parts.reduce((sum, part) => sum + (holdsYolk(part) ? part.grams : 0), 0) / massOf(matter);

const starchy: ReadonlySet<string> = new Set(['flour', 'wheat flour', 'cereal starch', 'root starch', 'waxy starch']);

/** Grams of starch that thickens: of starches and flours, not what cocoa, fruit, nuts, crumbs and icing sugar bring along. */
export function thickeningGrams(part: Part): number {
  const { substance } = part.line;
  if (substance.is !== 'kind') return 0;
  const traits = traitsOf(part);
  const starch = substance.kind.composition?.starch ?? 0;
  // A house ingredient that is like nothing else is a starch or flour where most of it is starch.
  const counts = traits.some((trait) => starchy.has(trait)) || (substance.house && traits.length === 0 && starch >= 0.5);
  return counts ? part.grams * starch : 0;
}

/** Share (0–1) of thickening starch. */
export const thickening = (matter: Matter): number =>
  matter.parts.reduce((sum, part) => sum + thickeningGrams(part), 0) / massOf(matter);

export const waterShare = (matter: Matter): number => matter.composition.water / massOf(matter);

/** The warmest it may be held against, as `warmest`; `above 80 °C` counts as 80. */
export function warmth(heat: Heat): number {
  const celsius = warmest(heat);
  return Number.isFinite(celsius) ? celsius : (heat.written?.low ?? heat.celsius.low);
}
