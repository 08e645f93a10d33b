/** The catalogue's door: kinds by name, their adjustment by what a line says, and house ingredients. */

export {
  type Refusal,
  withAlcohol,
  withBrix,
  withCocoa,
  withFat,
  withSolids,
  withSugar,
} from './adjust.ts';
export { allKinds, type Family, families, findKind, nearestKinds } from './catalogue.ts';
export {
  type HouseFacts,
  houseKind,
} from './house.ts';
export type { Allergen, Kind, Phase, Source, Storage, Trait } from './kind.ts';
export { catalogueTable } from './table.ts';
