/** What each verb does to matter: one row a verb; a test holds this table against the grammar's vocabulary. */
import type { VerbEffect } from './act.ts';
import { airVerbs } from './air.ts';
import { mixingVerbs } from './bring-together.ts';
import { coolVerbs } from './cool.ts';
import { heatVerbs } from './heat.ts';
import { hydrateVerbs } from './hydrate.ts';
import { placeVerbs } from './place.ts';

/** `reserve`, `discard`, `check` and `do` leave the current matter as it is: see `run/put-by.ts`. */
export const verbEffects: Readonly<Record<string, VerbEffect>> = {
  ...mixingVerbs,
  ...heatVerbs,
  ...coolVerbs,
  ...hydrateVerbs,
  ...airVerbs,
  ...placeVerbs,
};
