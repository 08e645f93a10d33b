/** What other values of a choice would change on the card. */

import type { Labels } from './languages/language.ts';
import type { CardComponent, CardIngredient, CardStep, Difference } from './model.ts';
import { textOf } from './sentence.ts';

/** What of a card may change with a choice. */
export interface Variant {
  readonly makes: string;
  readonly served: string | null;
  readonly keeps: string | null;
  readonly components: readonly CardComponent[];
}

/** Changes from the card to the same card with one choice set otherwise, in the order of the page; an empty list where none. */
export function changesBetween(now: Variant, then: Variant, labels: Labels): Difference['changes'] {
  const changes: { what: string; now: string; other: string }[] = [];
  const compare = (what: string, a: string | null, b: string | null): void => {
    if (a !== b) changes.push({ what, now: a ?? '', other: b ?? labels.notThere });
  };
  compare(labels.makes, now.makes, then.makes);
  compare(labels.served, now.served, then.served);
  compare(labels.keeps, now.keeps, then.keeps);
  const before = new Map(now.components.map((component) => [keyOf(component), component]));
  for (const component of then.components) {
    const old = before.get(keyOf(component));
    before.delete(keyOf(component));
    pairUp(old?.ingredients ?? [], component.ingredients, (a, b) => {
      if (a?.written !== b?.written || a?.name !== b?.name) compare((b ?? a)?.name ?? '', a?.written ?? null, b?.written ?? null);
    });
    pairUp(old?.steps ?? [], component.steps, (a, b) => {
      if (a === undefined || b === undefined || bare(a) !== bare(b))
        compare(a ? `${labels.step} ${a.number}` : `${labels.step} +`, a?.text ?? null, b?.text ?? null);
    });
  }
  for (const component of before.values()) compare(component.name, `${component.grams ?? ''} g`, null);
  return changes;
}

const keyOf = (component: CardComponent): string => `${component.from ?? ''}#${component.name}`;

/** The sentence without its amounts: those are in the table of ingredients. */
const bare = (step: CardStep): string => textOf(step.phrase.filter((segment) => segment.kind !== 'amount'));

/** Pairs by source line, in the order of the lines. */
function pairUp<T extends CardIngredient | CardStep>(
  now: readonly T[],
  then: readonly T[],
  visit: (a: T | undefined, b: T | undefined) => void,
): void {
  const lines = [...new Set([...now, ...then].map(({ line }) => line))].sort((a, b) => a - b);
  for (const line of lines) {
    const [a, b] = [now.find((item) => item.line === line), then.find((item) => item.line === line)];
    visit(a, b);
  }
}
