/** What other values of a choice would change on the card. */
import type { Language } from './languages/language.ts';
import type { CardComponent, CardStep, Difference } from './model.ts';
import { textOf } from './sentence.ts';

/** What of a card may change with a choice. */
export interface Variant {
  readonly makes: string;
  readonly served: string | null;
  readonly keeps: string | null;
  readonly components: readonly CardComponent[];
}

type Change = Difference['changes'][number];

/** Changes from the card to the same card with one choice set otherwise, in the order of the page; an empty list where none. */
export function changesBetween(now: Variant, other: Variant, language: Language): readonly Change[] {
  const { labels } = language;
  const before = new Map(now.components.map((component) => [keyOf(component), component]));
  const later = new Set(other.components.map(keyOf));
  return [
    ...differ(labels.makes, now.makes, other.makes, labels.notThere),
    ...differ(labels.served, now.served, other.served, labels.notThere),
    ...differ(labels.keeps, now.keeps, other.keeps, labels.notThere),
    ...other.components.flatMap((component) => [
      ...ingredientChanges(before.get(keyOf(component)), component, language),
      ...stepChanges(before.get(keyOf(component)), component, language),
    ]),
    ...now.components
      .filter((component) => !later.has(keyOf(component)))
      .map(({ name }) => ({ what: name, now: '', other: labels.notThere })),
  ];
}

const keyOf = (component: CardComponent): string => `${component.from ?? ''}#${component.name}`;

const differ = (what: string, now: string | null, other: string | null, gone: string): readonly Change[] =>
  now === other ? [] : [{ what, now: now ?? '', other: other ?? gone }];

function ingredientChanges(now: CardComponent | undefined, other: CardComponent, { labels }: Language): readonly Change[] {
  const [before, after] = [now?.ingredients ?? [], other.ingredients];
  return linesOf(before, after).flatMap((line) => {
    const [a, b] = [before.find((item) => item.line === line), after.find((item) => item.line === line)];
    return differ((b ?? a)?.name ?? '', a?.written ?? null, b?.written ?? null, labels.notThere);
  });
}

/** A step that goes and a step that comes right after it are one change. */
function stepChanges(now: CardComponent | undefined, other: CardComponent, language: Language): readonly Change[] {
  const { labels } = language;
  const [before, after] = [now?.steps ?? [], other.steps];
  const changes: { what: string; now: string; other: string; gone: boolean }[] = [];
  let last = (before[0]?.number ?? 1) - 1;
  for (const line of linesOf(before, after)) {
    const [a, b] = [before.find((item) => item.line === line), after.find((item) => item.line === line)];
    const previous = changes[changes.length - 1];
    if (a && b) {
      if (bare(a) !== bare(b)) changes.push({ what: `${labels.step} ${a.number}`, now: a.text, other: b.text, gone: false });
    } else if (a) changes.push({ what: `${labels.step} ${a.number}`, now: a.text, other: labels.notThere, gone: true });
    else if (b && previous?.gone && previous.what === `${labels.step} ${last}`)
      Object.assign(previous, { other: b.text, gone: false });
    else if (b) changes.push({ what: language.after(last), now: '', other: b.text, gone: false });
    if (a) last = a.number;
  }
  return changes.map(({ what, now: old, other: text }) => ({ what, now: old, other: text }));
}

/** The sentence without its amounts: those are in the table of ingredients. */
const bare = (step: CardStep): string => textOf(step.phrase.filter((segment) => segment.kind !== 'amount'));

const linesOf = (now: readonly { readonly line: number }[], other: readonly { readonly line: number }[]): readonly number[] =>
  [...new Set([...now, ...other].map(({ line }) => line))].sort((a, b) => a - b);
