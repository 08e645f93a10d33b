/** Selection ranges: from the word to the name, the clause, the line, the block, the formula and the file. */
import type { Line, Span } from 'nappe-grammar';
import type { Position, Range, SelectionRange } from 'vscode-languageserver';
import { blockAt, groupOf } from '../names/groups.ts';
import type { Analysis } from '../project.ts';
import { rangeOfLines, rangeOn, within } from '../ranges.ts';

/** One answer a position, innermost first. */
export const selectionRanges = (analysis: Analysis, positions: readonly Position[]): SelectionRange[] =>
  positions.map((position) => selectionAt(analysis, position));

function selectionAt(analysis: Analysis, position: Position): SelectionRange {
  const { file } = analysis;
  const { line, character } = within(analysis, position);
  const node = file.lines[line] as Line;
  const block = blockAt(file, line);
  const { blocks } = groupOf(file, block);
  const ranges: Range[] = [
    rangeOfLines(file, 0, file.lines.length),
    rangeOfLines(file, blocks[0]?.first ?? 0, blocks.at(-1)?.end ?? file.lines.length),
    rangeOfLines(file, block.first, block.end),
    rangeOn(line, { start: 0, end: node.text.length }),
    rangeOn(line, node.span),
    ...spansAround(node, character).map((span) => rangeOn(line, span)),
    rangeOn(line, wordAt(node.text, character)),
  ];
  let selection: SelectionRange | undefined;
  for (const range of ranges) {
    if (selection && !isInside(range, selection.range)) continue;
    selection = { range, ...(selection && { parent: selection }) };
  }
  return selection as SelectionRange;
}

/** Every node of the line's tree that holds the column, largest first. */
function spansAround(line: Line, column: number): Span[] {
  const found: Span[] = [];
  visit(line, 0);
  return found.sort((a, b) => b.end - b.start - (a.end - a.start));

  function visit(value: unknown, depth: number): void {
    if (typeof value !== 'object' || value === null || depth > 8) return;
    if (Array.isArray(value)) {
      for (const item of value) visit(item, depth + 1);
      return;
    }
    if (isSpan(value) && value.start <= column && column <= value.end) found.push({ start: value.start, end: value.end });
    for (const [key, inner] of Object.entries(value)) if (key !== 'problems') visit(inner, depth + 1);
  }
}

const isSpan = (value: object): value is Span =>
  'start' in value && 'end' in value && typeof value.start === 'number' && typeof value.end === 'number';

/** Letters, digits and marks around the column; nothing where there are none. */
function wordAt(text: string, column: number): Span {
  const isWord = (at: number) => /[\p{L}\p{M}\p{N}'’-]/u.test(text[at] ?? '');
  let start = column;
  let end = column;
  while (start > 0 && isWord(start - 1)) start -= 1;
  while (end < text.length && isWord(end)) end += 1;
  return { start, end };
}

/** Strictly or equally inside, and not the very same. */
function isInside(inner: Range, outer: Range): boolean {
  const startsIn = compare(inner.start, outer.start) >= 0;
  const endsIn = compare(inner.end, outer.end) <= 0;
  return startsIn && endsIn && (compare(inner.start, outer.start) > 0 || compare(inner.end, outer.end) < 0);
}

const compare = (a: Position, b: Position): number => a.line - b.line || a.character - b.character;
