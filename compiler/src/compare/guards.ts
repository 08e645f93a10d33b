/** Guards compared by when they hold, not by how they say it: of two values, `when mould` is `unless glass`. */
import { holds } from '../resolve/choices.ts';
import type { Choice, Condition, Selection } from '../resolve/model.ts';
import type { Renames } from './names.ts';

/** Which values of the choices it names let it hold; `always` where all do. */
export function guardKey(condition: Condition | null, choices: readonly Choice[], renames: Renames): string {
  if (condition === null) return 'always';
  const named = choices.filter(({ name }) => condition.all.some(({ choice }) => choice === name));
  let selections: Selection[] = [{}];
  for (const { name, values } of named)
    selections = selections.flatMap((one) => values.map((value) => ({ ...one, [name]: value })));
  const held = selections.filter((selection) => holds(condition, selection));
  if (held.length === selections.length) return 'always';
  const called = (value: string): string => renames.get(value) ?? value;
  return held
    .map((selection) => named.map(({ name }) => called(selection[name] ?? '')).join('+'))
    .sort()
    .join(' | ');
}

/** As written; `always` without one. */
export const guardWords = (condition: Condition | null): string =>
  condition ? `${condition.guard.word} ${condition.guard.values.map(({ text }) => text).join(', ')}` : 'always';
