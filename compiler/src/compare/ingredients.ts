/** Ingredient lines of two versions: matched by name, else as renamed; what differs in grams, share or temperature. */
import { formatCelsius, formatGrams, formatNumber, formatPercent } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import type { Amount, SourceLine, Varied } from '../resolve/model.ts';
import type { Change } from './model.ts';

export interface LinePair {
  readonly old: SourceLine | null;
  readonly new: SourceLine | null;
}

/** Pairs lines by the name steps use and the guard, then what is left by kind, then by amount at the same place in the list. */
export function pairLines(old: readonly SourceLine[], next: readonly SourceLine[]): readonly LinePair[] {
  const pairs: LinePair[] = [];
  let left = [...old];
  let come = [...next];
  const match = (same: (a: SourceLine, b: SourceLine) => boolean): void => {
    for (const a of [...left]) {
      const b = come.find((candidate) => same(a, candidate));
      if (!b) continue;
      pairs.push({ old: a, new: b });
      left = left.filter((line) => line !== a);
      come = come.filter((line) => line !== b);
    }
  };
  match((a, b) => a.key === b.key && guardOf(a) === guardOf(b));
  match((a, b) => a.key === b.key);
  match((a, b) => kindOf(a) === kindOf(b) && guardOf(a) === guardOf(b));
  match(
    (a, b) =>
      amountText(a.amount) === amountText(b.amount) &&
      guardOf(a) === guardOf(b) &&
      old.indexOf(a) === next.indexOf(b) &&
      a.phase === b.phase,
  );
  return [...pairs, ...left.map((line) => ({ old: line, new: null })), ...come.map((line) => ({ old: null, new: line }))];
}

type Said = Omit<Change, 'component' | 'oldLine' | 'newLine'>;

/** What a cook would notice between two lines. */
export function lineChanges({ old, new: next }: LinePair): readonly Said[] {
  if (!old || !next) {
    const line = old ?? next;
    if (!line) return [];
    const text = `${amountText(line.amount)} ${line.label}${guardText(line)}`;
    return [{ kind: kindOfAmount(line.amount.base), name: line.label, old: old ? text : null, new: next ? text : null }];
  }
  const changes: Said[] = [];
  const name = next.label;
  if (kindOf(old) !== kindOf(next)) {
    changes.push({
      kind: 'grams',
      name,
      old: `${amountText(old.amount)} ${old.label}`,
      new: `${amountText(next.amount)} ${next.label}`,
    });
  } else if (amountText(old.amount) !== amountText(next.amount)) {
    changes.push({ kind: kindOfAmount(next.amount.base), name, old: amountText(old.amount), new: amountText(next.amount) });
  }
  if (guardText(old) !== guardText(next))
    changes.push({ kind: 'grams', name, old: guardText(old).trim() || 'always', new: guardText(next).trim() || 'always' });
  if (celsiusText(old) !== celsiusText(next))
    changes.push({ kind: 'celsius', name, old: celsiusText(old), new: celsiusText(next) });
  for (const fact of facts) if (fact(old) !== fact(next)) changes.push({ kind: 'share', name, old: fact(old), new: fact(next) });
  return changes;
}

/** What the line says of its kind beside amount and temperature; null where nothing. */
const facts: readonly ((line: SourceLine) => string | null)[] = [
  (line) => (line.bloom ? `${formatNumber(middle(line.bloom))} bloom` : null),
  (line) => line.state,
  (line) => (line.pH === null ? null : `pH ${formatNumber(line.pH)}`),
  compositionText,
];

/** Composition as adjusted by the line; only said where name and kind are the same and the figures differ. */
function compositionText(line: SourceLine): string | null {
  if (line.substance.is !== 'kind' || !line.substance.kind.composition) return null;
  const { water, milkFat, cocoaButter, otherFat, sucrose, otherSugars, alcohol } = line.substance.kind.composition;
  const said: [string, number][] = [
    ['fat', milkFat + cocoaButter + otherFat],
    ['sugars', sucrose + otherSugars],
    ['water', water],
    ['alcohol', alcohol],
  ];
  return said
    .filter(([, share]) => share > 0)
    .map(([name, share]) => `${formatPercent(share)} ${name}`)
    .join(', ');
}

const kindOfAmount = (amount: Amount): 'grams' | 'share' => (amount.measure === 'percent' ? 'share' : 'grams');

function amountText(amount: Varied<Amount>): string {
  const overrides = amount.overrides.map(({ value, then }) => `${value} ${oneAmount(then)}`).sort();
  return overrides.length === 0 ? oneAmount(amount.base) : `${oneAmount(amount.base)} (${overrides.join(', ')})`;
}

function oneAmount(amount: Amount): string {
  const each = amount.each ? ' each' : '';
  if (amount.measure === 'grams') return `${amount.unit === 'pc' ? amount.written : formatGrams(amount.value)}${each}`;
  if (amount.measure === 'percent') return `${formatNumber(middle(amount.value), 2)} %${each}`;
  return amount.written;
}

function kindOf({ substance }: SourceLine): string {
  if (substance.is === 'kind') return substance.known ? substance.kind.name : `? ${substance.kind.name}`;
  return substance.is === 'batch' ? `batch ${substance.taken.component.key}` : `component ${substance.component.key}`;
}

const guardOf = (line: SourceLine): string => guardText(line);

const guardText = ({ condition }: SourceLine): string =>
  condition
    ? ` ${condition.guard.word} ${condition.guard.values
        .map(({ key }) => key)
        .sort()
        .join(', ')}`
    : '';

const celsiusText = ({ celsius }: SourceLine): string | null => (celsius ? formatCelsius(celsius) : null);
