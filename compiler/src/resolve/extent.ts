/** How far a formula reaches through what it draws on: past a limit it is not run, since a run makes every batch anew. */
import type { Component, Formula, RawFinding, Taken } from './model.ts';
import { needsOf } from './needs.ts';

/** Components in a row, each drawing on the next, over files too. */
export const mostNested = 100;

/** Batches of what is taken, and of what that takes in turn. */
export const mostBatches = 500;

/** What is too much of it, in one finding; none where it can be run. */
export function extentFindings(components: readonly Component[]): readonly RawFinding[] {
  const extents = new Extents(components);
  const say = (place: RawFinding['place'], message: string): readonly RawFinding[] => [
    { code: 'syntax', place, numbers: { message } },
  ];
  for (const component of components)
    if (extents.depthOf(component) > mostNested)
      return say(
        component.place,
        `“${component.name}” draws on components that draw on others, more than ${mostNested} in a row; ${mostNested} are the most.`,
      );
  const [first] = components;
  return first && extents.batchesOf(components) > mostBatches
    ? say(
        first.place,
        `What is taken here, and what that takes in turn, comes to more than ${mostBatches} batches; ${mostBatches} are the most.`,
      )
    : [];
}

/** The components of one formula. */
class Extents {
  private readonly depths = new Map<Component, number>();
  private readonly byKey = new Map<string, Component[]>();

  constructor(components: readonly Component[]) {
    for (const component of components) {
      const same = this.byKey.get(component.key);
      if (same) same.push(component);
      else this.byKey.set(component.key, [component]);
    }
  }

  /** Infinite past the most: nothing follows a row further than that. */
  depthOf(component: Component, room = mostNested): number {
    const known = this.depths.get(component);
    if (known !== undefined) return known;
    if (room === 0) return Number.POSITIVE_INFINITY;
    // On the way round to itself: a ring is a finding of its own.
    this.depths.set(component, 0);
    let below = 0;
    for (const taken of needsOf(component).taken) below = Math.max(below, extentOf(taken).depth);
    for (const needed of this.neededBy(component)) {
      if (below >= mostNested) break;
      below = Math.max(below, this.depthOf(needed, room - 1));
    }
    const depth = below < mostNested ? below + 1 : Number.POSITIVE_INFINITY;
    this.depths.set(component, depth);
    return depth;
  }

  /** Of these and all they draw on, each of which is made once. */
  batchesOf(components: readonly Component[]): number {
    const made = new Set(components);
    let batches = 0;
    for (const component of made) {
      for (const taken of needsOf(component).taken) batches += 1 + extentOf(taken).batches;
      for (const needed of this.neededBy(component)) made.add(needed);
    }
    return batches;
  }

  private neededBy(component: Component): readonly Component[] {
    return needsOf(component).own.flatMap((key) => this.byKey.get(key) ?? []);
  }
}

interface Extent {
  readonly depth: number;
  readonly batches: number;
}

/** By formula, since a component may stay the same object while another of its formula changes; file-level ones stand alone. */
const known = new WeakMap<Formula | Component, Map<Component, Extent>>();

function extentOf({ component, formula }: Taken): Extent {
  const within = known.get(formula ?? component) ?? new Map<Component, Extent>();
  known.set(formula ?? component, within);
  let extent = within.get(component);
  if (!extent) {
    const extents = new Extents(formula ? formula.components : [component]);
    extent = { depth: extents.depthOf(component), batches: extents.batchesOf([component]) };
    within.set(component, extent);
  }
  return extent;
}
