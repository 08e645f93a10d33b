/** Names that mean the same in both versions: renamed lines, components, results and values of choices. */
import { nameKey } from 'nappe-grammar';
import type { Choice, Component, Step } from '../resolve/model.ts';

/** Old names (by key, and values of choices as written too) that are now called something else. */
export type Renames = ReadonlyMap<string, string>;

export interface Renamed {
  readonly old: string;
  readonly new: string;
}

/** Values of a choice of the same name and as many values, by their place, where neither side has the other's name. */
export function renamedValues(old: readonly Choice[], next: readonly Choice[]): readonly Renamed[] {
  return old.flatMap(({ name, values }) => {
    const other = next.find((choice) => nameKey(choice.name) === nameKey(name));
    return other ? inPlace(values, other.values) : [];
  });
}

/** What steps call their result, by its place among such names. */
export function renamedResults(
  before: Component | null,
  after: Component | null,
): readonly (Renamed & { readonly oldStep: Step; readonly newStep: Step })[] {
  const [was, is] = [given(before), given(after)];
  return inPlace([...was.keys()], [...is.keys()]).map((one) => ({
    ...one,
    oldStep: was.get(one.old) as Step,
    newStep: is.get(one.new) as Step,
  }));
}

/** Each renaming both as written and by key. */
export function withRenames(renames: Renames, ...renamed: readonly Renamed[]): Renames {
  const all = new Map(renames);
  for (const { old, new: next } of renamed) all.set(old, next).set(nameKey(old), nameKey(next));
  return all;
}

/** The names after `as`, each with the first step that gives it. */
function given(component: Component | null): ReadonlyMap<string, Step> {
  const names = new Map<string, Step>();
  for (const step of component?.steps ?? [])
    for (const clause of step.node.clauses)
      if (clause.word === 'as' && !names.has(clause.name.text)) names.set(clause.name.text, step);
  return names;
}

function inPlace(old: readonly string[], next: readonly string[]): readonly Renamed[] {
  const has = (names: readonly string[], name: string) => names.some((one) => nameKey(one) === nameKey(name));
  if (old.length !== next.length) return [];
  return old.flatMap((name, index) => {
    const other = next[index] as string;
    return has(next, name) || has(old, other) ? [] : [{ old: name, new: other }];
  });
}
