/** All that the `take` lines of a formula, or of what stands above any formula, bring in. */
import { type Group, sameItems } from './blocks.ts';
import { duplicates } from './component.ts';
import type { Item } from './equipment.ts';
import { factsOf } from './line-facts.ts';
import type { Price, RawFinding } from './model.ts';
import { type Library, type TakenThing, takingsOf } from './takes.ts';

export interface Takings {
  readonly things: ReadonlyMap<string, TakenThing>;
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
  readonly findings: readonly RawFinding[];
  readonly missing: ReadonlySet<string>;
  readonly paths: readonly string[];
}

const nothingTaken: Takings = { things: new Map(), items: [], prices: [], findings: [], missing: new Set(), paths: [] };

/** The earlier object where the group takes nothing, or nothing that changed. */
export function gatherTakings({ head, blocks }: Group, path: string, library: Library, earlier: Takings | undefined): Takings {
  const all = (head ? [head, ...blocks] : blocks).flatMap(({ id, lines }) =>
    factsOf(lines).takes.map(({ line, index }) => takingsOf(line, id, index, path, library)),
  );
  if (all.length === 0) return nothingTaken;
  const taken = all.flatMap(({ things }) => things);
  const things = new Map<string, TakenThing>();
  for (const thing of taken) if (!things.has(thing.key)) things.set(thing.key, thing);
  const repeated = duplicates(
    taken.map(({ key, name, place }) => ({ key, text: name, condition: null, place })),
    [],
  );
  const takings = {
    things,
    items: all.flatMap(({ items }) => items),
    prices: all.flatMap(({ prices }) => prices),
    findings: [...all.flatMap(({ findings }) => findings), ...repeated],
    missing: new Set(all.flatMap(({ missing }) => missing)),
    paths: all.flatMap((one) => one.path ?? []),
  };
  return earlier && brings(earlier, takings) ? earlier : takings;
}

/** Whether both bring in the identical things under the same names, and say the same of what is wrong. */
const brings = (a: Takings, b: Takings): boolean =>
  sameItems([...a.things.keys()], [...b.things.keys()]) &&
  sameItems([...a.things.values()].map(identity), [...b.things.values()].map(identity)) &&
  sameItems(a.items, b.items) &&
  sameItems(a.prices, b.prices) &&
  sameItems(a.paths, b.paths) &&
  sameItems([...a.missing], [...b.missing]) &&
  JSON.stringify([[...a.things.values()].map(({ place }) => place), a.findings]) ===
    JSON.stringify([[...b.things.values()].map(({ place }) => place), b.findings]);

const identity = (thing: TakenThing): unknown => (thing.is === 'kind' ? thing.kind : thing.taken);
