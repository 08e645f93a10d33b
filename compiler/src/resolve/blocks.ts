/** A file's blocks, named and grouped: what stands above any formula, and each formula with the blocks under it. */
import type { Block, BlockLine, File, Line, LineFix, Problem, Span } from 'nappe-grammar';
import type { BlockId, Condition, Fix, Place, RawFinding } from './model.ts';

/** A block with its id; everything in it has places relative to its first line. The identical object while its lines stay the same. */
export interface NamedBlock {
  readonly id: BlockId;
  readonly heading: BlockLine | null;
  readonly lines: readonly Line[];
}

/** A formula's own block and the blocks under it, in order; `head` null for what stands above any formula. */
export interface Group {
  readonly head: NamedBlock | null;
  readonly blocks: readonly NamedBlock[];
}

export interface Grouped {
  /** What stands above any formula (always first, perhaps empty), then one group a formula. */
  readonly groups: readonly Group[];
  /** Every block in order, with the index of its first line. */
  readonly firsts: ReadonlyMap<BlockId, number>;
  readonly blocks: readonly NamedBlock[];
}

/** A group in which no block changed is the identical object of `earlier`. */
export function groupsOf(path: string, file: File, earlier: readonly Group[]): Grouped {
  const used = new Map<string, number>();
  const firsts = new Map<BlockId, number>();
  const blocks: NamedBlock[] = [];
  const groups: { head: NamedBlock | null; blocks: NamedBlock[] }[] = [{ head: null, blocks: [] }];
  for (const block of file.blocks) {
    const named = nameBlock(idOf(path, block, used), block);
    firsts.set(named.id, block.first);
    blocks.push(named);
    if (block.heading?.word === 'formula') groups.push({ head: named, blocks: [] });
    else groups.at(-1)?.blocks.push(named);
  }
  const before = new Map(earlier.map((group) => [group.head, group]));
  return { groups: groups.map((group) => same(group, before.get(group.head))), firsts, blocks };
}

const same = (group: Group, earlier: Group | undefined): Group =>
  earlier && sameItems(earlier.blocks, group.blocks) ? earlier : group;

const named = new WeakMap<readonly Line[], NamedBlock>();

function nameBlock(id: BlockId, { heading, lines }: Block): NamedBlock {
  const before = named.get(lines);
  if (before?.id === id) return before;
  const block = { id, heading, lines };
  named.set(lines, block);
  return block;
}

/** What a block alone decides, made once for the identical block. */
export function ofBlock<T>(make: (block: NamedBlock) => T): (block: NamedBlock) => T {
  const known = new WeakMap<NamedBlock, { readonly value: T }>();
  return (block) => {
    const before = known.get(block);
    if (before) return before.value;
    const value = make(block);
    known.set(block, { value });
    return value;
  };
}

/** `file#component custard`; the second of a name in a file is `file#component custard~2`. */
function idOf(path: string, { heading }: Block, used: Map<string, number>): BlockId {
  const title = heading === null ? 'top' : heading.name === null ? heading.word : `${heading.word} ${heading.name.key}`;
  const count = (used.get(title) ?? 0) + 1;
  used.set(title, count);
  return count === 1 ? `${path}#${title}` : `${path}#${title}~${count}`;
}

export const placeIn = (block: BlockId, line: number, span: Span): Place => ({ block, line, start: span.start, end: span.end });

/** The heading of a block, or its first line where it has none. */
export const headingPlace = (block: NamedBlock): Place =>
  placeIn(block.id, 0, block.heading?.span ?? block.lines[0]?.span ?? { start: 0, end: 0 });

/** What the grammar found in a block. */
export const problemsIn = (block: NamedBlock): readonly RawFinding[] =>
  block.lines.flatMap((line, index) =>
    line.problems.map((problem) =>
      findingOf(block.id, index, problem, line.kind === 'bad' ? rowOf(block.lines, index) : line.text),
    ),
  );

/** Unreadable lines in a row are one problem: the texts of all of them. */
function rowOf(lines: readonly Line[], index: number): string {
  let end = index;
  while (lines[end]?.kind === 'bad') end++;
  return lines
    .slice(index, end)
    .map(({ text }) => text)
    .join('\n');
}

function findingOf(block: BlockId, line: number, problem: Problem, text: string): RawFinding {
  return {
    code: problem.code,
    place: placeIn(block, line, problem),
    numbers: { message: problem.message },
    fixes: problem.fixes.map((fix) => fixIn(block, line, fix)),
    ...(problem.code !== 'range-reversed' && { unreadable: text }),
  };
}

export const fixIn = (block: BlockId, line: number, { title, edits }: LineFix): Fix => ({
  title,
  edits: edits.map((edit) => ({ ...placeIn(block, line, edit), text: edit.text })),
});

/** The notes of a block: by the index of the line they belong to; those after a heading or a header are the block's. */
export interface Notes {
  readonly block: readonly string[];
  readonly at: ReadonlyMap<number, readonly string[]>;
}

/** Note lines with only blank lines between are one text. */
export function notesIn(lines: readonly Line[]): Notes {
  const block: string[] = [];
  const at = new Map<number, string[]>();
  let owner: number | null = null;
  let text: string[] = [];
  const flush = (): void => {
    while (text.at(-1) === '') text.pop();
    if (text.length > 0) {
      const notes = owner === null ? block : (at.get(owner) ?? []);
      notes.push(text.join('\n'));
      if (owner !== null) at.set(owner, notes);
    }
    text = [];
  };
  lines.forEach((line, index) => {
    if (line.kind === 'note') text.push(line.markdown);
    else if (line.kind === 'blank') {
      if (text.length > 0) text.push('');
    } else {
      flush();
      if (line.kind === 'ingredient' || line.kind === 'step') owner = index;
      else if (line.kind === 'block' || line.kind === 'header') owner = null;
    }
  });
  flush();
  return { block, at };
}

/** A finding that is there only where the conditions hold too. */
export const under = (finding: RawFinding, conditions: readonly (Condition | null)[]): RawFinding => {
  const added = conditions.filter((condition) => condition !== null);
  return added.length === 0 ? finding : { ...finding, conditions: [...(finding.conditions ?? []), ...added] };
};

/** Whether two arrays hold the identical things in the same order. */
export const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || (a.length === b.length && a.every((item, i) => item === b[i]));

/** The earlier array where nothing in it changed, so that identity says so. */
export const kept = <T>(earlier: readonly T[] | undefined, now: readonly T[]): readonly T[] =>
  earlier !== undefined && sameItems(earlier, now) ? earlier : now;
