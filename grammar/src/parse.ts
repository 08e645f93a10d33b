/** Text to tree: cuts a file into lines, reads each in its block's context, and gathers the blocks. */

import { createCache, type LineCache } from './cache.ts';
import { limits } from './limits.ts';
import type { BadLine, Block, BlockLine, File, Line, LineContext } from './tree.ts';

const shared = createCache();

/** Reads a file. Never throws: what is wrong with a line stands in its `problems`. */
export function parse(text: string, cache: LineCache = shared): File {
  const lines: Line[] = [];
  const reader = startReader(cache, 'formula', false);
  for (const lineText of splitLines(text)) lines.push(reader.read(lineText));
  return { text, lines, blocks: gatherBlocks(lines), eol: eolOf(text) };
}

/** A replacement of whole lines. */
export interface LinesChange {
  /** The whole text after the change. */
  readonly text: string;
  /** Lines `from` to before `to` of the previous file are replaced. */
  readonly from: number;
  readonly to: number;
  /** What stands there now, line by line without line ends. */
  readonly lines: readonly string[];
}

/**
 * Reads a file again after some of its lines were replaced. Lines that read the same are the identical objects,
 * and blocks in which no line changed keep the identical `lines`.
 */
export function reparse(previous: File, change: LinesChange, cache: LineCache = shared): File {
  const { from, to, text } = change;
  const before = from > 0 ? previous.lines[from - 1] : undefined;
  const reader = startReader(cache, contextAt(previous, from), before?.kind === 'bad');
  const lines = previous.lines.slice(0, from);
  for (const lineText of change.lines) lines.push(reader.read(lineText));
  let next = to;
  while (next < previous.lines.length && !reader.isAt(contextAt(previous, next), previous.lines[next - 1]?.kind === 'bad')) {
    lines.push(reader.read(previous.lines[next]!.text));
    next += 1;
  }
  for (; next < previous.lines.length; next++) lines.push(previous.lines[next]!);
  return { text, lines, blocks: keepBlocks(previous.blocks, gatherBlocks(lines)), eol: eolOf(text) };
}

/** The lines of a text without their ends (LF, CRLF, or CR as editors count it), at most as many as a file may have. */
export function splitLines(text: string): string[] {
  const lines: string[] = [];
  const mixed = text.includes('\r');
  let from = 0;
  while (lines.length <= limits.lines) {
    const end = mixed ? endOfLine(text, from) : text.indexOf('\n', from);
    if (end < 0) {
      lines.push(text.slice(from));
      break;
    }
    lines.push(text.slice(from, end));
    from = text.startsWith('\r\n', end) ? end + 2 : end + 1;
  }
  return lines;
}

function endOfLine(text: string, from: number): number {
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return at;
  }
  return -1;
}

interface Reader {
  read(text: string): Line;
  /** Whether reading from here would go on as it did before. */
  isAt(context: LineContext, afterBad: boolean): boolean;
}

function startReader(cache: LineCache, startContext: LineContext, startAfterBad: boolean): Reader {
  let context = startContext;
  let afterBad = startAfterBad;
  let count = 0;
  return {
    read(text) {
      count += 1;
      if (count > limits.lines) return tooMany(text);
      let line = cache.read(text, context);
      if (line.kind === 'block') context = contextOf(line);
      const isBad = line.kind === 'bad';
      if (isBad && afterBad) line = cache.silenced(line);
      afterBad = isBad;
      return line;
    },
    isAt: (other, otherAfterBad) => other === context && otherAfterBad === afterBad,
  };
}

function tooMany(text: string): BadLine {
  const span = { start: 0, end: text.length };
  const message = `A file has at most ${limits.lines} lines; what stands from here on is not read.`;
  return { kind: 'bad', text, span, comment: null, problems: [{ code: 'syntax', message, ...span, fixes: [] }] };
}

/** How the lines under a block word are read. */
export function contextOf(heading: BlockLine | null): LineContext {
  const word = heading?.word;
  return word === 'ingredient' || word === 'equipment' || word === 'prices' ? word : 'formula';
}

/** How the line at an index is read: by the last block line above it. */
export function contextAt(file: File, index: number): LineContext {
  const block = blockBefore(file.blocks, index);
  return contextOf(block?.heading ?? null);
}

/** The block that the line above `index` stands in. */
function blockBefore(blocks: readonly Block[], index: number): Block | undefined {
  let low = 0;
  let high = blocks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (blocks[middle]!.first < index) low = middle + 1;
    else high = middle;
  }
  return blocks[low - 1];
}

function gatherBlocks(lines: readonly Line[]): Block[] {
  const blocks: Block[] = [];
  let first = 0;
  let heading: BlockLine | null = null;
  for (const [index, line] of lines.entries()) {
    if (line.kind !== 'block') continue;
    if (index > 0) blocks.push({ heading, first, end: index, lines: lines.slice(first, index) });
    first = index;
    heading = line;
  }
  blocks.push({ heading, first, end: lines.length, lines: lines.slice(first) });
  return blocks;
}

/** Blocks whose lines are all the same keep the previous array of lines, from the front and from the back. */
function keepBlocks(previous: readonly Block[], blocks: readonly Block[]): Block[] {
  const kept = [...blocks];
  const shorter = Math.min(previous.length, blocks.length);
  let front = 0;
  while (front < shorter && keep(previous[front]!, front)) front += 1;
  for (let back = 1; back <= shorter - front; back++) {
    if (!keep(previous[previous.length - back]!, kept.length - back)) break;
  }
  return kept;

  function keep(before: Block, index: number): boolean {
    const block = kept[index]!;
    if (before.lines.length !== block.lines.length || before.lines.some((line, at) => line !== block.lines[at])) return false;
    kept[index] = before.first === block.first ? before : { ...block, lines: before.lines };
    return true;
  }
}

/** The first line end decides; a file without one gets LF. */
function eolOf(text: string): File['eol'] {
  const first = text.indexOf('\n');
  return first > 0 && text.charCodeAt(first - 1) === 13 ? '\r\n' : '\n';
}
