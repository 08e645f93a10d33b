/** What is remembered of runs, so that an edit or another choice runs only what it changes. */
import type { Component, Settings, SourceLine } from '../resolve/model.ts';
import type { Done } from './bench.ts';
import type { Slot } from './slots.ts';
import type { BlockRun } from './trace.ts';

/** Of one component. */
export interface Memo {
  readonly blocks: Map<string, Remembered>;
  /** By settings and factor. */
  readonly done: Map<string, Done>;
}

const mostSteps = 4096;

export function doneIn({ done }: Memo, settings: Settings, factor: number): Done {
  const key = `${settingsId(settings)}|${factor}`;
  const known = done.get(key);
  // Of a component whose neighbours are edited for hours no more is kept than the last of it.
  if (known && known.records.size <= mostSteps) return known;
  if (done.size > 64) done.clear();
  const fresh: Done = { weighed: new Map(), records: new Map() };
  done.set(key, fresh);
  return fresh;
}

interface Remembered {
  readonly blocks: readonly BlockRun[];
  readonly after: readonly Partial<Slot>[];
}

/** What is remembered; a taker's line that was read anew since is the one its batch is of. */
export function relabelled(memo: Map<string, Remembered>, id: string, batchOf: SourceLine | null): Remembered | undefined {
  const known = memo.get(id);
  if (!known || known.blocks.at(-1)?.batchOf === batchOf) return known;
  const blocks = known.blocks.map((block) => (block.batchOf?.id === batchOf?.id ? { ...block, batchOf } : block));
  const now = { ...known, blocks };
  memo.set(id, now);
  return now;
}

/**
 * Of so many components the runs are remembered, those asked for last: what is being worked on stays at hand, and a file of a thousand
 * formulas does not keep all its matter.
 */
const mostRemembered = 128;

const memos = new Map<Component, Memo>();

export function memoOf(component: Component): Memo {
  const known = memos.get(component);
  if (known) memos.delete(component);
  const memo = known ?? { blocks: new Map(), done: new Map() };
  memos.set(component, memo);
  const [oldest] = memos.size > mostRemembered ? memos.keys() : [];
  if (oldest) memos.delete(oldest);
  return memo;
}

const settingsIds = new WeakMap<Settings, number>();
let lastSettings = 0;

export function settingsId(settings: Settings): number {
  let id = settingsIds.get(settings);
  if (id === undefined) {
    id = ++lastSettings;
    settingsIds.set(settings, id);
  }
  return id;
}
