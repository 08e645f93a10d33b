/** Headers of two versions: yield, serving, keeping, claims, choices, and the rules a formula is checked by. */
import type { HeaderLine } from 'nappe-grammar';
import { formatCelsius, formatDuration } from '../quantities/format.ts';
import type { Interval } from '../quantities/interval.ts';
import type { Formula, Guarded, Place } from '../resolve/model.ts';
import type { CompareInput } from './compare.ts';
import { guardKey, guardWords } from './guards.ts';
import type { Change } from './model.ts';
import { type Renames, renamedValues } from './names.ts';
import { paired } from './pairing.ts';
import { shapeOf, written } from './shape.ts';

export function headerChanges(old: CompareInput, next: CompareInput, renames: Renames): Change[] {
  const changes: Change[] = [];
  const [a, b] = [old.formula, next.formula];
  const say = (
    kind: Change['kind'],
    name: string,
    before: string | null,
    after: string | null,
    from?: Place,
    to?: Place,
  ): void => {
    if (before !== after)
      changes.push({
        kind,
        component: b.name,
        name,
        old: before,
        new: after,
        oldLine: from ? old.lineOf(from) : null,
        newLine: to ? next.lineOf(to) : null,
      });
  };
  /** A header that may stand several times under guards: what holds when is compared, what is written is said. */
  const guarded = <T>(
    kind: Change['kind'],
    name: string,
    was: readonly Guarded<T>[],
    is: readonly Guarded<T>[],
    meaning: (value: T) => string,
    words: (one: Guarded<T>, side: CompareInput) => string,
  ): void => {
    const keyed = (all: readonly Guarded<T>[], formula: Formula, names: Renames) =>
      all.map((one) => ({ one, guard: guardKey(one.condition, formula.choices, names), meaning: meaning(one.value) }));
    const { pairs, left, come } = paired(
      keyed(was, a, renames),
      keyed(is, b, new Map()),
      (x, y) => x.guard === y.guard && x.meaning === y.meaning,
      (x, y) => x.guard === y.guard,
      (x, y) => x.meaning === y.meaning,
      () => true,
    );
    const text = ({ one }: (typeof left)[number], side: CompareInput) =>
      `${words(one, side)}${one.condition ? ` ${guardWords(one.condition)}` : ''}`;
    for (const [x, y] of pairs)
      if (x.guard !== y.guard || x.meaning !== y.meaning) say(kind, name, text(x, old), text(y, next), x.one.place, y.one.place);
    for (const x of left) say(kind, name, text(x, old), null, x.one.place);
    for (const y of come) say(kind, name, null, text(y, next), undefined, y.one.place);
  };
  say('step', 'renamed', a.name, b.name, a.place, b.place);
  guarded(
    'yield',
    'makes',
    a.makes,
    b.makes,
    (value) => shapeOf(value, new Map()),
    ({ place }, side) => yieldWords(side, place),
  );
  const celsius = (value: Interval): string => formatCelsius(value);
  guarded('celsius', 'served', a.served, b.served, celsius, ({ value }) => celsius(value));
  const keeps = (value: Formula['keeps'][number]['value']): string =>
    `${formatDuration(value.seconds)}${value.celsius ? ` at ${celsius(value.celsius)}` : ''}`;
  guarded('time', 'keeps', a.keeps, b.keeps, keeps, ({ value }) => keeps(value));
  const claims = (formula: Formula) => textOf(formula.freeFrom.map(({ allergen }) => allergen).sort());
  say('allergen', 'free from', claims(a), claims(b), a.freeFrom[0]?.place, b.freeFrom[0]?.place);
  const renamed = renamedValues(a.choices, b.choices);
  for (const { old: from, new: to } of renamed) say('step', 'renamed', from, to, a.choices[0]?.place, b.choices[0]?.place);
  const called = (value: string) => renamed.find((one) => one.old === value)?.new ?? value;
  const choices = (formula: Formula, names: (value: string) => string) =>
    textOf(formula.choices.map(({ name, values }) => `${name}: ${values.map(names).join(', ')}`).sort());
  say(
    'step',
    'choice',
    choices(a, called),
    choices(b, (value) => value),
    a.choices[0]?.place,
    b.choices[0]?.place,
  );
  say('share', 'gelatin', `by ${a.settings.gelatinLaw}`, `by ${b.settings.gelatinLaw}`);
  say('step', 'tagged', textOf([...a.settings.tags].sort()), textOf([...b.settings.tags].sort()));
  return changes;
}

const textOf = (said: readonly string[]): string | null => (said.length === 0 ? null : said.join(', '));

/** `12 glasses of 100 ml`, as written. */
function yieldWords({ lineAt }: CompareInput, place: Place): string {
  const line = lineAt(place) as HeaderLine | null;
  return line?.kind === 'header' && line.word === 'makes' ? written(line.text, line.yield) : '';
}
