/** Folding ranges: formulas, blocks, notes and comments. */
import type { File, Line } from 'nappe-grammar';
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver';
import { groupsOf } from '../names/groups.ts';
import type { Analysis } from '../project.ts';

export function foldingRanges({ file }: Analysis): FoldingRange[] {
  const ranges: FoldingRange[] = [];
  for (const { head, blocks } of groupsOf(file)) {
    const last = blocks.at(-1);
    if (head && last && last !== head) add(ranges, file, head.first, last.end);
    for (const block of blocks) if (block.heading && (block !== head || last === head)) add(ranges, file, block.first, block.end);
  }
  runs(ranges, file, ({ kind }) => kind === 'note', undefined);
  runs(ranges, file, ({ kind }) => kind === 'comment', FoldingRangeKind.Comment);
  return ranges.sort((a, b) => a.startLine - b.startLine || b.endLine - a.endLine);
}

/** From a heading to its last line that is not blank. */
function add(ranges: FoldingRange[], file: File, first: number, end: number, kind?: FoldingRangeKind): void {
  let last = end - 1;
  while (last > first && file.lines[last]?.kind === 'blank') last -= 1;
  if (last > first) ranges.push({ startLine: first, endLine: last, ...(kind !== undefined && { kind }) });
}

/** Two or more lines of a kind after each other. */
function runs(ranges: FoldingRange[], file: File, is: (line: Line) => boolean, kind: FoldingRangeKind | undefined): void {
  let start: number | null = null;
  for (let number = 0; number <= file.lines.length; number++) {
    const line = file.lines[number];
    if (line && is(line)) start ??= number;
    else if (start !== null) {
      add(ranges, file, start, number, kind);
      start = null;
    }
  }
}
