/** What the names of a file mean as a whole: while it stays the same, blocks ask again only for what stands in the file itself. */
import type { Kind } from '../catalogue/kind.ts';
import { sameItems } from './blocks.ts';
import { type Scope, titleKey } from './scopes.ts';

export interface Environment {
  readonly scopes: readonly Scope[];
  /** House ingredients by name. */
  readonly kinds: ReadonlyMap<string, Kind>;
}

/** Whether every name of the file means the same, but for components and formulas of the file, which are compared where they are asked for. */
export const sameEnvironment = (a: Environment, b: Environment): boolean =>
  a.scopes.length === b.scopes.length &&
  a.scopes.every((scope, i) => sameNames(scope, b.scopes[i])) &&
  sameItems([...a.kinds.keys()], [...b.kinds.keys()]) &&
  sameItems([...a.kinds.values()], [...b.kinds.values()]);

const sameNames = (a: Scope, b: Scope | undefined): boolean =>
  a === b ||
  (b !== undefined &&
    a.takings === b.takings &&
    titleKey(a) === titleKey(b) &&
    a.sources.length === b.sources.length &&
    a.signature === b.signature &&
    sameItems([...a.byKey.keys()], [...b.byKey.keys()]));
