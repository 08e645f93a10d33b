/** Named things and where a file declares them: by block, by group, and as other files get them. */
import { type Block, type File, type Name, nameKey, type TakeLine } from 'nappe-grammar';
import { choicesOf, type Group, groupOf, groupsOf, linesOf } from './groups.ts';
import { usesIn } from './uses.ts';

export type SymbolKind = 'ingredient' | 'result' | 'component' | 'formula' | 'house' | 'alias' | 'choice' | 'value' | 'equipment';

/** A named thing. `line` and `name` are where it is declared first. */
export interface NamedThing {
  /** Equal for the same thing, whatever file asks, as long as no file changes. */
  readonly id: string;
  readonly kind: SymbolKind;
  readonly path: string;
  readonly key: string;
  readonly line: number;
  readonly name: Name;
  /** Lines of its own file between which it can be named. */
  readonly from: number;
  readonly to: number;
  /** Whether other files can name it. */
  readonly shared: boolean;
  /** For a value: its choice's key. */
  readonly choice?: string;
}

/** What other files get for a name: as the compiler picks it. */
export function exported(path: string, file: File, key: string, formula: string | null): NamedThing | null {
  const wanted = formula === null ? null : nameKey(formula);
  const groups = groupsOf(file).filter(({ head }) => head && (wanted === null || head.heading?.name?.key === wanted));
  const component = (group: Group) =>
    group.blocks.find(({ heading }) => heading?.word === 'component' && heading.name?.key === key);
  const alone = wanted === null ? component(above(file)) : undefined;
  if (alone) return headed(path, file, alone);
  const whole = groups.find((group) => group.head?.heading?.name?.key === key && isOneComponent(group));
  if (whole?.head) return headed(path, file, whole.head);
  const block = groups.map(component).find((one) => one !== undefined);
  if (block) return headed(path, file, block);
  return wanted === null ? houseIn(path, file, key) : null;
}

/** The thing a block's heading declares. */
export function headed(path: string, file: File, block: Block): NamedThing | null {
  const { heading } = block;
  if (!heading?.name) return null;
  const { key } = heading.name;
  const group = groupOf(file, block);
  const isFileLevel = group.head === null;
  const base = { path, key, line: block.first, name: heading.name };
  const wholeFile = { from: 0, to: file.lines.length };
  switch (heading.word) {
    case 'formula':
      return { id: `formula ${path} ${key}`, kind: 'formula', ...base, ...wholeFile, shared: true };
    case 'component': {
      const id = `component ${path} ${isFileLevel ? 0 : (group.head?.first ?? 0)} ${key}`;
      return { id, kind: 'component', ...base, ...wholeFile, shared: true };
    }
    case 'ingredient':
      return { id: `house ${path} ${key}`, kind: 'house', ...base, ...wholeFile, shared: true };
    default:
      return null;
  }
}

interface Declared {
  readonly index: number;
  readonly name: Name;
  readonly isStep: boolean;
  /** The line's own name, not an `as`. */
  readonly isOwnName: boolean;
}

const declared = new WeakMap<Block['lines'], ReadonlyMap<string, Declared>>();

/** First declaration by key of a block's ingredient lines and `as`. */
export function declaredIn(block: Block): ReadonlyMap<string, Declared> {
  const known = declared.get(block.lines);
  if (known) return known;
  const found = new Map<string, Declared>();
  for (const [index, line] of block.lines.entries()) {
    if (line.kind !== 'ingredient' && line.kind !== 'step') continue;
    for (const { use, name } of usesIn(line))
      if ((use === 'line' || use === 'as') && !found.has(name.key))
        found.set(name.key, { index, name, isStep: line.kind === 'step', isOwnName: use === 'line' });
  }
  declared.set(block.lines, found);
  return found;
}

export const above = (file: File): Group => groupsOf(file)[0] as Group;

export const extentOf = (group: Group): { readonly from: number; readonly to: number } => ({
  from: group.blocks[0]?.first ?? 0,
  to: group.blocks.at(-1)?.end ?? 0,
});

export function* takesOf(group: Group): Generator<{ readonly line: TakeLine; readonly number: number }> {
  for (const { line, number } of linesOf(group)) if (line.kind === 'take') yield { line, number };
}

export function houseIn(path: string, file: File, key: string): NamedThing | null {
  const block = file.blocks.find(({ heading }) => heading?.word === 'ingredient' && heading.name?.key === key);
  return block ? headed(path, file, block) : null;
}

export function equipmentIn(path: string, group: Group, key: string): NamedThing | null {
  for (const { line, number } of linesOf(group))
    if (line.kind === 'equipment' && line.name.key === key) {
      const { from, to } = extentOf(group);
      const all = group.head === null ? { from: 0, to: Number.MAX_SAFE_INTEGER } : { from, to };
      return {
        id: `equipment ${path} ${from} ${key}`,
        kind: 'equipment',
        path,
        key,
        line: number,
        name: line.name,
        ...all,
        shared: true,
      };
    }
  return null;
}

/** The value of a choice of a formula. */
export function valueIn(path: string, group: Group, key: string): NamedThing | null {
  for (const { line, number } of choicesOf(group)) {
    const name = line.values.find((value) => value.key === key);
    if (!name) continue;
    const { from, to } = extentOf(group);
    const choice = line.name.key;
    return {
      id: `value ${path} ${from} ${choice} ${key}`,
      kind: 'value',
      path,
      key,
      line: number,
      name,
      from,
      to,
      shared: true,
      choice,
    };
  }
  return null;
}

export function choiceIn(path: string, group: Group, key: string): NamedThing | null {
  const found = choicesOf(group).find(({ line }) => line.name.key === key);
  if (!found) return null;
  const { from, to } = extentOf(group);
  return {
    id: `choice ${path} ${from} ${key}`,
    kind: 'choice',
    path,
    key,
    line: found.number,
    name: found.line.name,
    from,
    to,
    shared: true,
  };
}

/** One component, with no assembly: others may take it by the formula's title. */
export function isOneComponent(group: Group): boolean {
  const parts = group.blocks.filter(({ heading }) => heading?.word === 'component' || heading?.word === 'assembly');
  const holdsLines = group.head?.lines.some(({ kind }) => kind === 'ingredient' || kind === 'step') ?? false;
  return parts.length + (holdsLines ? 1 : 0) === 1 && !parts.some(({ heading }) => heading?.word === 'assembly');
}
