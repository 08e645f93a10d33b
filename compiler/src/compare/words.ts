/** Changes in words: one sentence each, grouped by component, for every form of output. */
import type { Change, Comparison } from './model.ts';

export interface ChangeGroup {
  readonly component: string;
  readonly sentences: readonly { readonly change: Change; readonly name: string; readonly text: string }[];
}

/** In the order of the comparison; the components in the order their first change comes. */
export function grouped({ changes }: Comparison): readonly ChangeGroup[] {
  const groups = new Map<string, Change[]>();
  for (const change of changes) groups.set(change.component, [...(groups.get(change.component) ?? []), change]);
  return [...groups].map(([component, list]) => ({
    component,
    sentences: list.map((change) => ({ change, name: change.name, text: sentence(change) })),
  }));
}

/** What happened, without the name. */
export function sentence({ kind, old, new: next }: Change): string {
  if (kind === 'diagnostic') return next === null ? `no longer raised: ${old}` : `now raised: ${next}`;
  if (kind === 'allergen' && (old === 'contains' || next === 'contains'))
    return next === null ? 'allergen no longer in it' : 'allergen now in it';
  if (kind === 'order') return `moved from ${old} to ${next}`;
  if (old === null) return `added: ${next}`;
  if (next === null) return `dropped: ${old}`;
  return `${old} → ${next}`;
}
