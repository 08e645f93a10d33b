/** Ingredient lines of two versions: matched by name, else as renamed; what differs in grams, share or temperature. */
import type { Line } from 'nappe-grammar';
import { formatCelsius, formatGrams, formatNumber, formatPercent } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import type { Amount, Choice, Place, SourceLine, Varied } from '../resolve/model.ts';
import { guardKey, guardWords } from './guards.ts';
import type { Change } from './model.ts';
import type { Renames } from './names.ts';
import { paired } from './pairing.ts';
import { written } from './shape.ts';

export interface LinePair {
  readonly old: SourceLine | null;
  readonly new: SourceLine | null;
}

/** What lines and steps are read with: old first. */
export interface Versions {
  readonly renames: Renames;
  readonly choices: readonly [readonly Choice[], readonly Choice[]];
  readonly lineAt: readonly [(place: Place) => Line | null, (place: Place) => Line | null];
}

const none: Renames = new Map();

/** Pairs lines by the name steps use and the guard, then what is left by kind, then by amount at the same place in the list. */
export function pairLines(old: readonly SourceLine[], next: readonly SourceLine[], versions: Versions): readonly LinePair[] {
  const { renames, choices } = versions;
  const key = ({ key: name }: SourceLine) => renames.get(name) ?? name;
  const sameGuard = (a: SourceLine, b: SourceLine) =>
    guardKey(a.condition, choices[0], renames) === guardKey(b.condition, choices[1], none);
  const sameAmount = (a: SourceLine, b: SourceLine) => amountText(a.amount, renames) === amountText(b.amount, none);
  const { pairs, left, come } = paired(
    old,
    next,
    (a, b) => key(a) === b.key && sameGuard(a, b) && sameAmount(a, b),
    (a, b) => key(a) === b.key && sameGuard(a, b),
    (a, b) => key(a) === b.key,
    (a, b) => kindOf(a, renames) === kindOf(b, none) && sameGuard(a, b),
    (a, b) => sameAmount(a, b) && sameGuard(a, b) && old.indexOf(a) === next.indexOf(b) && a.phase === b.phase,
  );
  return [
    ...pairs.map(([a, b]) => ({ old: a, new: b })),
    ...left.map((line) => ({ old: line, new: null })),
    ...come.map((line) => ({ old: null, new: line })),
  ];
}

type Said = Omit<Change, 'component' | 'oldLine' | 'newLine'>;

/** What a cook would notice between two lines. */
export function lineChanges({ old, new: next }: LinePair, versions: Versions): readonly Said[] {
  if (!old || !next) {
    const line = old ?? next;
    if (!line) return [];
    const text = `${amountText(line.amount, none)} ${line.label}${line.condition ? ` ${guardWords(line.condition)}` : ''}`;
    return [{ kind: kindOfAmount(line.amount.base), name: line.label, old: old ? text : null, new: next ? text : null }];
  }
  const { renames, choices, lineAt } = versions;
  const changes: Said[] = [];
  const name = next.label;
  const amounts = [amountText(old.amount, none), amountText(next.amount, none)] as const;
  const another = kindOf(old, renames) !== kindOf(next, none);
  if (another) {
    changes.push({ kind: 'grams', name, old: `${amounts[0]} ${old.label}`, new: `${amounts[1]} ${next.label}` });
  } else {
    if (old.key !== next.key && renames.get(old.key) !== next.key)
      changes.push({ kind: 'step', name: 'renamed', old: old.name, new: next.name });
    if (amountText(old.amount, renames) !== amounts[1])
      changes.push({ kind: kindOfAmount(next.amount.base), name, old: amounts[0], new: amounts[1] });
  }
  if (guardKey(old.condition, choices[0], renames) !== guardKey(next.condition, choices[1], none))
    changes.push({ kind: 'grams', name, old: guardWords(old.condition), new: guardWords(next.condition) });
  const said = (kind: Said['kind'], fact: (line: SourceLine, side: 0 | 1) => string | null): boolean => {
    const [before, after] = [fact(old, 0), fact(next, 1)];
    if (before !== after) changes.push({ kind, name, old: before, new: after });
    return before !== after;
  };
  said('celsius', ({ celsius }) => (celsius ? formatCelsius(celsius) : null));
  said('share', ({ bloom }) => (bloom ? `${formatNumber(middle(bloom))} bloom` : null));
  said('share', ({ pH }) => (pH === null ? null : `pH ${formatNumber(pH, 2)}`));
  said('step', ({ state }) => state);
  said('step', ({ preparation }) => preparation);
  if (!another) {
    said('step', ({ phase }) => phase);
    const attributes = said('share', ({ place }, side) => writtenShares(lineAt[side](place)));
    // Of a house ingredient, or of one that now falls under another row: only what differs.
    if (!attributes) changes.push(...compositionChanges(old, next));
  }
  return changes;
}

/** `35 % fat, 60 brix`, as written; null where the line says nothing of the kind. */
function writtenShares(line: Line | null): string | null {
  if (line?.kind !== 'ingredient') return null;
  const said = line.attributes.filter(({ kind }) => kind === 'share' || kind === 'brix');
  return said.length === 0 ? null : said.map((attribute) => written(line.text, attribute)).join(', ');
}

function compositionChanges(old: SourceLine, next: SourceLine): readonly Said[] {
  const [before, after] = [composition(old), composition(next)];
  const differ = Object.keys(after).filter((part) => before[part] !== undefined && before[part] !== after[part]);
  const text = (shares: Readonly<Record<string, string>>) => differ.map((part) => `${shares[part]} ${part}`).join(', ');
  return differ.length === 0 ? [] : [{ kind: 'share', name: next.label, old: text(before), new: text(after) }];
}

function composition({ substance }: SourceLine): Readonly<Record<string, string>> {
  if (substance.is !== 'kind' || !substance.kind.composition) return {};
  const { water, milkFat, cocoaButter, otherFat, sucrose, otherSugars, alcohol } = substance.kind.composition;
  return {
    fat: formatPercent(milkFat + cocoaButter + otherFat),
    sugars: formatPercent(sucrose + otherSugars),
    water: formatPercent(water),
    alcohol: formatPercent(alcohol),
  };
}

const kindOfAmount = (amount: Amount): 'grams' | 'share' => (amount.measure === 'percent' ? 'share' : 'grams');

/** Overrides in a fixed order, without those that say what the base says. */
function amountText(amount: Varied<Amount>, renames: Renames): string {
  const base = oneAmount(amount.base);
  const overrides = amount.overrides
    .filter(({ then }) => oneAmount(then) !== base)
    .map(({ value, then }) => `${renames.get(value) ?? value} ${oneAmount(then)}`)
    .sort();
  return overrides.length === 0 ? base : `${base} (${overrides.join(', ')})`;
}

function oneAmount(amount: Amount): string {
  const each = amount.each ? ' each' : '';
  if (amount.measure === 'grams') return `${amount.unit === 'pc' ? amount.written : formatGrams(amount.value)}${each}`;
  if (amount.measure === 'percent') return `${formatNumber(middle(amount.value), 2)} %${each}`;
  return amount.written;
}

function kindOf({ substance }: SourceLine, renames: Renames): string {
  if (substance.is === 'kind') return substance.known ? substance.kind.name : `? ${substance.kind.name}`;
  const { key } = substance.is === 'batch' ? substance.taken.component : substance.component;
  return `${substance.is} ${renames.get(key) ?? key}`;
}
