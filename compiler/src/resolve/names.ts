/** What a name means in a block beside its own lines: house ingredients, components of the formula, things taken. Look-ups are recorded. */
import type { Kind } from '../catalogue/kind.ts';
import type { Choice, Component, Taken } from './model.ts';

export type Meaning =
  | { readonly is: 'house'; readonly kind: Kind }
  /** `component` null: it draws on the block that asks, so it cannot be had. */
  | { readonly is: 'own component'; readonly key: string; readonly component: Component | null }
  | { readonly is: 'taken'; readonly taken: Taken }
  /** It exists, but what asks is on the way round to itself. */
  | { readonly is: 'circle'; readonly file: string }
  /** A `take` names it and could not be carried out, which is said there. */
  | { readonly is: 'missing' };

/** Where a block looks names up. Every method is a pure function of the workspace's present state. */
export interface Names {
  readonly choices: readonly Choice[];
  /** What an ingredient line of that name weighs out; null: ask the catalogue, and after it `late`. */
  meaning(key: string): Meaning | null;
  /** Components of other formulas in the file: for names the catalogue does not know. */
  late(key: string): Meaning | null;
  /** A component's or taken thing's entry for a name a step mentions, not counting the block itself. */
  entry(key: string): EntryMeaning | null;
  /** The formula's components and what was taken: every name a slip may have meant. */
  readonly all: ReadonlyMap<string, EntryMeaning>;
}

export type EntryMeaning =
  | { readonly is: 'own component'; readonly key: string }
  | { readonly is: 'taken'; readonly taken: Taken };

/** One look-up and what it gave, reduced to what must stay identical for the answer to hold. */
export interface Lookup {
  readonly ask: 'meaning' | 'late' | 'entry';
  readonly key: string;
  readonly gave: unknown;
  /** It gave something that stands in the file itself, which may change while every name stays. */
  readonly inner: boolean;
}

/** The same names, noting every look-up; `path` is the file they stand in. */
export function recorded(names: Names, log: Lookup[], path: string): Names {
  return {
    choices: names.choices,
    all: names.all,
    meaning: (key) => note(log, path, 'meaning', key, names.meaning(key)),
    late: (key) => note(log, path, 'late', key, names.late(key)),
    entry: (key) => note(log, path, 'entry', key, names.entry(key)),
  };
}

/** Whether every look-up would give the same again. */
export const stillHolds = (log: readonly Lookup[], names: Names): boolean =>
  log.every(({ ask, key, gave }) => identityOf(names[ask](key)) === gave);

function note<T extends Meaning | EntryMeaning | null>(
  log: Lookup[],
  path: string,
  ask: Lookup['ask'],
  key: string,
  found: T,
): T {
  log.push({ ask, key, gave: identityOf(found), inner: isInner(found, path) });
  return found;
}

function isInner(found: Meaning | EntryMeaning | null, path: string): boolean {
  switch (found?.is) {
    case 'own component':
      return 'component' in found;
    case 'taken':
      return found.taken.file === path;
    default:
      return found?.is === 'circle';
  }
}

function identityOf(found: Meaning | EntryMeaning | null): unknown {
  switch (found?.is) {
    case 'house':
      return found.kind;
    case 'taken':
      return found.taken;
    case 'own component':
      return 'component' in found ? (found.component ?? 'own, in a circle') : 'own';
    case 'circle':
    case 'missing':
      return found.is;
    case undefined:
      return null;
  }
}
