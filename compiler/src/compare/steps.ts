/** Steps of two versions: aligned in order, then moved, changed, added and dropped. */
import type { Step } from '../resolve/model.ts';
import type { Change } from './model.ts';
import { type Facet, type Renames, type StepShape, stepShape, written } from './shape.ts';

type Said = Omit<Change, 'component' | 'oldLine' | 'newLine'> & { readonly oldStep: Step | null; readonly newStep: Step | null };

interface Shaped {
  readonly step: Step;
  readonly shape: StepShape;
}

const none: Renames = new Map();

export function stepChanges(old: readonly Step[], next: readonly Step[], renames: Renames): readonly Said[] {
  const olds = old.map((step) => ({ step, shape: stepShape(step.node, renames) }));
  const news = next.map((step) => ({ step, shape: stepShape(step.node, none) }));
  const kept = commonInOrder(olds, news);
  let left = olds.filter((one) => ![...kept.keys()].includes(one));
  let come = news.filter((one) => ![...kept.values()].includes(one));
  const changes: Said[] = [];
  const pair = (same: (a: Shaped, b: Shaped) => boolean, say: (a: Shaped, b: Shaped) => readonly Said[]): void => {
    for (const a of [...left]) {
      const b = come.find((candidate) => same(a, candidate));
      if (!b) continue;
      changes.push(...say(a, b));
      left = left.filter((one) => one !== a);
      come = come.filter((one) => one !== b);
    }
  };
  pair((a, b) => a.shape.whole === b.shape.whole, moved);
  pair((a, b) => a.shape.parties === b.shape.parties, facetChanges);
  pair((a, b) => a.step.node.verb === b.step.node.verb && gapOf(a, olds, kept) === gapOf(b, news, flipped(kept)), changed);
  pair(
    (a, b) => gapOf(a, olds, kept) === gapOf(b, news, flipped(kept)) && a.shape.parties.includes('"name"') && sameParties(a, b),
    changed,
  );
  for (const one of left)
    changes.push({ kind: 'step', name: one.step.node.verb, old: textOf(one.step), new: null, oldStep: one.step, newStep: null });
  for (const one of come)
    changes.push({ kind: 'step', name: one.step.node.verb, old: null, new: textOf(one.step), oldStep: null, newStep: one.step });
  return changes;
}

/** Steps that are the same and in the same order: the longest common run. */
function commonInOrder(olds: readonly Shaped[], news: readonly Shaped[]): ReadonlyMap<Shaped, Shaped> {
  const length = Array.from({ length: olds.length + 1 }, () => new Uint16Array(news.length + 1));
  for (let i = olds.length - 1; i >= 0; i--)
    for (let j = news.length - 1; j >= 0; j--)
      length[i]![j] =
        olds[i]!.shape.whole === news[j]!.shape.whole
          ? length[i + 1]![j + 1]! + 1
          : Math.max(length[i + 1]![j]!, length[i]![j + 1]!);
  const common = new Map<Shaped, Shaped>();
  for (let i = 0, j = 0; i < olds.length && j < news.length; ) {
    if (olds[i]!.shape.whole === news[j]!.shape.whole) common.set(olds[i++]!, news[j++]!);
    else if (length[i + 1]![j]! >= length[i]![j + 1]!) i++;
    else j++;
  }
  return common;
}

const flipped = (map: ReadonlyMap<Shaped, Shaped>): ReadonlyMap<Shaped, Shaped> => new Map([...map].map(([a, b]) => [b, a]));

/** How many kept steps stand before it. */
const gapOf = (one: Shaped, all: readonly Shaped[], kept: ReadonlyMap<Shaped, Shaped>): number =>
  all.slice(0, all.indexOf(one)).filter((other) => kept.has(other)).length;

const sameParties = (a: Shaped, b: Shaped): boolean =>
  a.shape.parties.slice(a.step.node.verb.length) === b.shape.parties.slice(b.step.node.verb.length);

const moved = (a: Shaped, b: Shaped): readonly Said[] => [
  { kind: 'order', name: b.step.node.verb, old: textOf(a.step), new: textOf(b.step), oldStep: a.step, newStep: b.step },
];

const changed = (a: Shaped, b: Shaped): readonly Said[] => [
  { kind: 'step', name: b.step.node.verb, old: textOf(a.step), new: textOf(b.step), oldStep: a.step, newStep: b.step },
];

function facetChanges(a: Shaped, b: Shaped): readonly Said[] {
  const names = new Set([...a.shape.facets, ...b.shape.facets].map(({ name }) => name));
  const said: Said[] = [];
  for (const name of names) {
    const before = a.shape.facets.filter((facet) => facet.name === name);
    const after = b.shape.facets.filter((facet) => facet.name === name);
    if (shapes(before) === shapes(after)) continue;
    const kind = kindOf([...before, ...after]);
    said.push({ kind, name: b.step.node.verb, old: texts(before), new: texts(after), oldStep: a.step, newStep: b.step });
  }
  return said;
}

function kindOf(facets: readonly Facet[]): Change['kind'] {
  if (facets.some(({ celsius }) => celsius)) return 'celsius';
  if (facets.some(({ name }) => name === 'for')) return 'time';
  if (facets.some(({ name }) => name === 'losing')) return 'share';
  return facets.some(({ name }) => name === 'amount') ? 'grams' : 'step';
}

const shapes = (facets: readonly Facet[]): string => facets.map(({ shape }) => shape).join();

const texts = (facets: readonly Facet[]): string | null =>
  facets.length === 0 ? null : facets.map(({ text }) => text).join(' ');

const textOf = ({ node }: Step): string => written(node.text, node.span);
