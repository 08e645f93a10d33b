/** Steps of two versions: aligned in order, then moved, changed, added and dropped. */
import type { Step } from '../resolve/model.ts';
import { guardKey } from './guards.ts';
import type { Versions } from './ingredients.ts';
import type { Change } from './model.ts';
import type { Renames } from './names.ts';
import { paired } from './pairing.ts';
import { type Facet, type StepShape, stepShape, written } from './shape.ts';

type Said = Omit<Change, 'component' | 'oldLine' | 'newLine'> & { readonly oldStep: Step | null; readonly newStep: Step | null };

interface Shaped {
  readonly step: Step;
  readonly shape: StepShape;
}

export function stepChanges(old: readonly Step[], next: readonly Step[], { renames, choices }: Versions): readonly Said[] {
  const none: Renames = new Map();
  const olds = old.map((step) => ({
    step,
    shape: stepShape(step.node, guardKey(step.condition, choices[0], renames), renames),
  }));
  const news = next.map((step) => ({ step, shape: stepShape(step.node, guardKey(step.condition, choices[1], none), none) }));
  const kept = commonInOrder(olds, news);
  const back = new Map([...kept].map(([a, b]) => [b, a]));
  const sameGap = (a: Shaped, b: Shaped) => gapOf(a, olds, kept) === gapOf(b, news, back);
  const changes: Said[] = [];
  const { pairs, left, come } = paired(
    olds.filter((one) => !kept.has(one)),
    news.filter((one) => !back.has(one)),
    (a, b) => a.shape.whole === b.shape.whole,
    (a, b) => a.shape.parties === b.shape.parties,
    (a, b) => a.step.node.verb === b.step.node.verb && sameGap(a, b),
    // One in the place of one.
    (a, b, free) =>
      sameGap(a, b) &&
      free.left.filter((one) => sameGap(one, b)).length === 1 &&
      free.come.filter((one) => sameGap(a, one)).length === 1,
  );
  for (const [a, b] of pairs) {
    if (a.shape.whole === b.shape.whole) changes.push(moved(a, b, olds, news));
    else if (a.shape.parties === b.shape.parties) changes.push(...facetChanges(a, b));
    else changes.push(changed(a.step, b.step));
  }
  changes.push(...left.map((one) => changed(one.step, null)), ...come.map((one) => changed(null, one.step)));
  // In the order the steps stand in now.
  const place = ({ oldStep, newStep }: Said) => (newStep ? next.indexOf(newStep) : oldStep ? old.indexOf(oldStep) : 0);
  return changes.sort((x, y) => place(x) - place(y));
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

/** How many kept steps stand before it. */
const gapOf = (one: Shaped, all: readonly Shaped[], kept: ReadonlyMap<Shaped, Shaped>): number =>
  all.slice(0, all.indexOf(one)).filter((other) => kept.has(other)).length;

function moved(a: Shaped, b: Shaped, olds: readonly Shaped[], news: readonly Shaped[]): Said {
  const after = (one: Shaped, all: readonly Shaped[]): string => {
    const before = all[all.indexOf(one) - 1];
    return before ? `after “${textOf(before.step)}”` : 'first';
  };
  return { kind: 'order', name: textOf(b.step), old: after(a, olds), new: after(b, news), oldStep: a.step, newStep: b.step };
}

const changed = (oldStep: Step | null, newStep: Step | null): Said => ({
  kind: 'step',
  name: (newStep ?? oldStep)?.node.verb ?? '',
  old: oldStep && textOf(oldStep),
  new: newStep && textOf(newStep),
  oldStep,
  newStep,
});

function facetChanges(a: Shaped, b: Shaped): readonly Said[] {
  const names = new Set([...a.shape.facets, ...b.shape.facets].map(({ name }) => name));
  const said: Said[] = [];
  for (const name of names) {
    const before = a.shape.facets.filter((facet) => facet.name === name);
    const after = b.shape.facets.filter((facet) => facet.name === name);
    if (shapes(before) === shapes(after)) continue;
    const kind = kindOf([...before, ...after]);
    const nothing = name === 'guard' ? 'always' : null;
    said.push({
      kind,
      name: b.step.node.verb,
      old: texts(before) ?? nothing,
      new: texts(after) ?? nothing,
      oldStep: a.step,
      newStep: b.step,
    });
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
