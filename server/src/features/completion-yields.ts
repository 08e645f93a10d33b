/** Yields to ask a card for: what the formulas of a file make, once, twice and by the half. */
import type { File } from 'nappe-grammar';
import { groupsOf } from '../names/groups.ts';
import { CompletionItemKind, type Proposal, proposal } from './completion-item.ts';

export function yieldProposals(file: File, from: number): Proposal[] {
  const yields = groupsOf(file).flatMap(({ head }) =>
    (head?.lines ?? []).flatMap((line) => {
      if (line.kind !== 'header' || line.word !== 'makes') return [];
      const { count, noun, quantity } = line.yield;
      if (count !== null && noun) return [1, 2, 4].map((times) => `${count * times} ${line.text.slice(noun.start, noun.end)}`);
      return quantity ? [1, 2].map((times) => `${quantity.low * times} ${quantity.unit}`) : [];
    }),
  );
  return [...new Set([...yields, '1 kg'])].map((text, i) => proposal(text, from, i, CompletionItemKind.Value));
}
