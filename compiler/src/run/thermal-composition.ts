/** What matter counts as for heat and volume, where some of what is in it is not known. */
import { type Composition, nothing, scaled, total } from '../matter/composition.ts';
import type { Matter } from './trace.ts';

/** What is unknown behaves like the rest, or like water where nothing is known (an estimate). */
export function thermalComposition(matter: Matter): Composition {
  if (matter.unknownGrams === 0) return matter.composition;
  const known = total(matter.composition);
  if (known <= 0) return { ...nothing, water: matter.unknownGrams };
  return scaled(matter.composition, (known + matter.unknownGrams) / known);
}
