/** Groups of blocks: what stands above any formula, and each formula with the blocks under it, over the bare tree. */
import type { Block, File, HeaderLine, Line } from 'nappe-grammar';

export interface Group {
  /** Index of its first block in `File.blocks`. */
  readonly index: number;
  /** The formula's own block; null above any formula. */
  readonly head: Block | null;
  /** All its blocks, the head included. */
  readonly blocks: readonly Block[];
}

const known = new WeakMap<File, readonly Group[]>();

/** The first group is what stands above any formula, even where that is nothing. */
export function groupsOf(file: File): readonly Group[] {
  let groups = known.get(file);
  if (!groups) {
    groups = made(file.blocks);
    known.set(file, groups);
  }
  return groups;
}

function made(blocks: readonly Block[]): readonly Group[] {
  const starts = blocks.flatMap((block, index) => (block.heading?.word === 'formula' ? [index] : []));
  const above: Group = { index: 0, head: null, blocks: blocks.slice(0, starts[0] ?? blocks.length) };
  return [
    above,
    ...starts.map((index, i) => ({
      index,
      head: blocks[index] ?? null,
      blocks: blocks.slice(index, starts[i + 1] ?? blocks.length),
    })),
  ];
}

/** The block a line stands in; the last one for a line past the end. */
export function blockAt(file: File, line: number): Block {
  const { blocks } = file;
  let low = 0;
  let high = blocks.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((blocks[middle] as Block).first <= line) low = middle;
    else high = middle - 1;
  }
  return blocks[low] as Block;
}

/** The group a block belongs to. */
export function groupOf(file: File, block: Block): Group {
  const groups = groupsOf(file);
  let low = 0;
  let high = groups.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (((groups[middle] as Group).head?.first ?? 0) <= block.first) low = middle;
    else high = middle - 1;
  }
  return groups[low] as Group;
}

/** A line of the group with its number. */
export interface Numbered<L extends Line = Line> {
  readonly line: L;
  readonly number: number;
}

export function* linesOf(group: Group): Generator<Numbered> {
  for (const block of group.blocks)
    for (const [index, line] of block.lines.entries()) yield { line, number: block.first + index };
}

type ChoiceLine = Extract<HeaderLine, { word: 'choice' }>;

export function choicesOf(group: Group): readonly Numbered<ChoiceLine>[] {
  return (group.head?.lines ?? []).flatMap((line, index) =>
    line.kind === 'header' && line.word === 'choice' ? [{ line, number: (group.head?.first ?? 0) + index }] : [],
  );
}
