/** Choices: which value of each is in force, what holds then, and which combinations there are. */
import { type Guard, nameKey } from 'nappe-grammar';
import type { Choice, Condition, Formula, Guarded, Selection, Varied } from './model.ts';

export function holds(condition: Condition | null, selection: Selection): boolean {
  if (condition === null) return true;
  const all = condition.all.every(({ choice, values }) => values.includes(selection[choice] ?? ''));
  return all !== condition.negated;
}

/** The value in force: the first override whose choice has that value, else the base. */
export function pick<T>(varied: Varied<T>, selection: Selection): T {
  for (const override of varied.overrides) if (selection[override.choice] === override.value) return override.then;
  return varied.base;
}

/** The first of the guarded values that holds; null where none does. */
export function inForce<T>(guarded: readonly Guarded<T>[], selection: Selection): T | null {
  return guarded.find(({ condition }) => holds(condition, selection))?.value ?? null;
}

export const defaultSelection = (formula: Formula): Selection =>
  Object.fromEntries(formula.choices.map(({ name, values }) => [name, values[0] ?? '']));

/** A taken formula's choices: the taker's value where it has a choice of the same name with that value, else the default. */
export function selectionFor(taken: Formula | null, selection: Selection): Selection {
  if (taken === null || taken.choices.length === 0) return none;
  const given = new Map(Object.entries(selection).map(([name, value]) => [nameKey(name), nameKey(value)]));
  return Object.fromEntries(
    taken.choices.map(({ name, values }) => {
      const wanted = given.get(nameKey(name));
      return [name, values.find((value) => nameKey(value) === wanted) ?? values[0] ?? ''];
    }),
  );
}

const none: Selection = {};

/** Values given by name alone (`--with cut, tea`), the other choices at their default; `unknown` are values no choice declares. */
export function selectionWith(
  formula: Formula,
  given: readonly string[],
): { readonly selection: Selection; readonly unknown: readonly string[] } {
  const fixed = fixedBy(formula.choices, given);
  return { selection: { ...defaultSelection(formula), ...fixed.values }, unknown: fixed.unknown };
}

/** The choice each given value belongs to; the last one given wins. */
export function fixedBy(
  choices: readonly Choice[],
  given: readonly string[],
): { readonly values: Selection; readonly unknown: readonly string[] } {
  const values: Record<string, string> = {};
  const unknown: string[] = [];
  for (const word of given) {
    const found = valueNamed(choices, nameKey(word));
    if (found) values[found.choice] = found.value;
    else unknown.push(word);
  }
  return { values, unknown };
}

/** The choice and value, as declared, that a value's key names. */
export function valueNamed(choices: readonly Choice[], key: string): { readonly choice: string; readonly value: string } | null {
  for (const { name, values } of choices) for (const value of values) if (nameKey(value) === key) return { choice: name, value };
  return null;
}

/** A guard made ready. Values no choice declares are handed to `unknown` and left out; where none is left, there is no condition. */
export function conditionOf(
  guard: Guard | null,
  choices: readonly Choice[],
  unknown: (value: Guard['values'][number]) => void,
): Condition | null {
  if (guard === null) return null;
  const all: { choice: string; values: string[] }[] = [];
  for (const name of guard.values) {
    const found = valueNamed(choices, name.key);
    if (!found) {
      unknown(name);
      continue;
    }
    const known = all.find(({ choice }) => choice === found.choice);
    if (known) known.values.push(found.value);
    else all.push({ choice: found.choice, values: [found.value] });
  }
  return all.length === 0 ? null : { guard, all, negated: guard.word === 'unless' };
}

/** Whether some combination has both. */
export function bothPossible(a: Condition | null, b: Condition | null, choices: readonly Choice[]): boolean {
  const named = new Set([...(a?.all ?? []), ...(b?.all ?? [])].map(({ choice }) => choice));
  const involved = choices.filter(({ name }) => named.has(name));
  for (const selection of product(involved, mostEnumerated)) if (holds(a, selection) && holds(b, selection)) return true;
  return countCombinations(involved) > mostEnumerated;
}

const mostEnumerated = 4096;

/** Up to this many combinations are all checked. */
export const allChecked = 64;

/** No more rows than this are made to cover pairs; past it every value is still covered. */
const mostRows = 1024;

export const countCombinations = (choices: readonly Choice[]): number =>
  choices.reduce((count, { values }) => count * Math.max(1, values.length), 1);

/**
 * Every combination of choices, the defaults first, where there are at most 64; above that a deterministic set in which every pair of
 * values of two choices occurs. Past 1,024 such rows only every value is sure to occur.
 */
export function combinations(choices: readonly Choice[]): readonly Selection[] {
  if (countCombinations(choices) <= allChecked) return [...product(choices, allChecked)];
  return pairCovering(choices);
}

function* product(choices: readonly Choice[], most: number): Generator<Selection> {
  const places = choices.map(() => 0);
  for (let made = 0; made < most; made++) {
    yield Object.fromEntries(choices.map(({ name, values }, i) => [name, values[places[i] ?? 0] ?? '']));
    let i = choices.length - 1;
    for (; i >= 0; i--) {
      places[i] = (places[i] ?? 0) + 1;
      if ((places[i] ?? 0) < (choices[i]?.values.length ?? 0)) break;
      places[i] = 0;
    }
    if (i < 0) return;
  }
}

/**
 * In-parameter-order: all pairs of the two largest choices, then one choice after the other is added, each row taking the value that
 * covers most pairs still open, and rows added for what is left (Lei & Tai 1998). A row's value may stay open until the end.
 */
function pairCovering(choices: readonly Choice[]): readonly Selection[] {
  const order = choices
    .map((choice, index) => ({ index, size: choice.values.length }))
    .sort((a, b) => b.size - a.size || a.index - b.index);
  const rows: (number | undefined)[][] = [];
  const [first, second] = order;
  if (!first || !second) return [...product(choices, mostRows)];
  for (let a = 0; a < first.size; a++) for (let b = 0; b < second.size && rows.length < mostRows; b++) rows.push([a, b]);
  for (let column = 2; column < order.length; column++) addColumn(rows, order, column);
  coverValues(rows, order);
  return rows.map((row) =>
    Object.fromEntries(
      choices.map(({ name, values }, index) => {
        const column = order.findIndex((entry) => entry.index === index);
        return [name, values[row[column] ?? 0] ?? values[0] ?? ''];
      }),
    ),
  );
}

function addColumn(rows: (number | undefined)[][], order: readonly { readonly size: number }[], column: number): void {
  const size = order[column]?.size ?? 0;
  const open = new Set<number>();
  const pairKey = (other: number, otherValue: number, value: number): number => (other * 4096 + otherValue) * 4096 + value;
  for (let other = 0; other < column; other++)
    for (let a = 0; a < (order[other]?.size ?? 0); a++) for (let b = 0; b < size; b++) open.add(pairKey(other, a, b));
  const covers = (row: (number | undefined)[], value: number): number[] => {
    const keys: number[] = [];
    for (let other = 0; other < column; other++) {
      const taken = row[other];
      if (taken !== undefined && open.has(pairKey(other, taken, value))) keys.push(pairKey(other, taken, value));
    }
    return keys;
  };
  for (const row of rows) {
    let best = 0;
    let bestKeys: number[] = [];
    for (let value = 0; value < size; value++) {
      const keys = covers(row, value);
      if (keys.length > bestKeys.length) [best, bestKeys] = [value, keys];
    }
    if (bestKeys.length > 0) {
      row[column] = best;
      for (const key of bestKeys) open.delete(key);
    }
  }
  for (const key of open) {
    const value = key % 4096;
    const otherValue = Math.floor(key / 4096) % 4096;
    const other = Math.floor(key / (4096 * 4096));
    const fits = rows.find(
      (row) => (row[column] === undefined || row[column] === value) && (row[other] === undefined || row[other] === otherValue),
    );
    if (fits) {
      fits[column] = value;
      fits[other] = otherValue;
    } else if (rows.length < mostRows) {
      const row: (number | undefined)[] = new Array(column + 1).fill(undefined);
      row[column] = value;
      row[other] = otherValue;
      rows.push(row);
    }
  }
}

/** Where the limit on rows cut pairs off, every value still gets a row. */
function coverValues(rows: (number | undefined)[][], order: readonly { readonly size: number }[]): void {
  order.forEach(({ size }, column) => {
    const seen = new Set(rows.map((row) => row[column] ?? 0));
    for (let value = 0; value < size; value++) {
      if (seen.has(value)) continue;
      const row: (number | undefined)[] = new Array(order.length).fill(undefined);
      row[column] = value;
      rows.push(row);
    }
  });
}
