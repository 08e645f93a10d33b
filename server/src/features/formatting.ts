/** Formatting: the canonical layout of a document, of some lines, or of the line just finished, as the fewest line edits. */
import { format, formatLines, splitLines } from 'nappe-grammar';
import type { Position, Range, TextEdit } from 'vscode-languageserver';
import { blockAt } from '../names/groups.ts';
import type { Analysis } from '../project.ts';
import { rangeOn } from '../ranges.ts';

/** Lines that cannot be read stay as they are. In Markdown only what stands in `nappe` fences is laid out. */
export function formatting(analysis: Analysis): TextEdit[] {
  const { file, text, isMarkdown } = analysis;
  if (!isMarkdown) return lineEdits(splitLines(text), splitLines(format(file)), 0, file.eol);
  return fencesIn(analysis).flatMap(([from, to]) => formatBetween(analysis, from, to));
}

export function rangeFormatting(analysis: Analysis, { start, end }: Range): TextEdit[] {
  const { file } = analysis;
  const from = Math.max(0, start.line);
  // A selection that ends at a line's start does not hold that line.
  const to = Math.min(file.lines.length, end.character === 0 && end.line > start.line ? end.line : end.line + 1);
  if (!analysis.isMarkdown) return formatBetween(analysis, from, to);
  return fencesIn(analysis).flatMap(([first, last]) => formatBetween(analysis, Math.max(first, from), Math.min(last, to)));
}

/** After Enter: the line above is laid out, and the new one is indented as its block is. */
export function onTypeFormatting(analysis: Analysis, { line }: Position, typed: string): TextEdit[] {
  const { file } = analysis;
  if (typed !== '\n' || line < 1 || line >= file.lines.length) return [];
  const fence = analysis.isMarkdown ? fencesIn(analysis).find(([from, to]) => from < line && line < to) : [0, 0];
  if (!fence) return [];
  const edits = formatBetween(analysis, line - 1, line);
  const now = file.lines[line]?.text ?? '';
  const indent = blockAt(file, line).heading === null || file.lines[line - 1]?.kind === 'blank' ? '' : '  ';
  const isEmpty = now.trim() === '' && now !== indent;
  return isEmpty ? [...edits, { range: rangeOn(line, { start: 0, end: now.length }), newText: indent }] : edits;
}

function formatBetween({ file }: Analysis, from: number, to: number): TextEdit[] {
  if (to <= from) return [];
  const old = file.lines.slice(from, to).map(({ text }) => text);
  return lineEdits(old, splitLines(formatLines(file, from, to)), from, file.eol);
}

/** Lines of each fence, by where the notation's text is that of the Markdown; blank lines at its ends left out. */
function fencesIn({ text, file }: Analysis): (readonly [number, number])[] {
  const markdown = splitLines(text);
  const fences: [number, number][] = [];
  let start: number | null = null;
  for (let number = 0; number <= file.lines.length; number++) {
    const isSame = number < file.lines.length && file.lines[number]?.text === markdown[number];
    const isBlank = isSame && file.lines[number]?.kind === 'blank';
    if (isSame && !isBlank) {
      start ??= number;
      const last = fences.at(-1);
      if (last?.[0] === start) last[1] = number + 1;
      else fences.push([start, number + 1]);
    } else if (!isSame) start = null;
  }
  return fences;
}

/**
 * Layout changes lines and drops blank ones, nothing else, so both texts are walked together: each changed line is one edit.
 * `first` is the number of the first old line.
 */
export function lineEdits(old: readonly string[], now: readonly string[], first: number, eol: string): TextEdit[] {
  const edits: TextEdit[] = [];
  let i = 0;
  let j = 0;
  while (i < old.length || j < now.length) {
    const before = old[i];
    const after = now[j];
    if (before !== undefined && before === after) {
      i += 1;
      j += 1;
    } else if (before !== undefined && after === undefined) {
      edits.push(restGone(old, i, first));
      i = old.length;
    } else if (before !== undefined && isBlank(before) && !isBlank(after ?? '')) {
      edits.push({
        range: { start: { line: first + i, character: 0 }, end: { line: first + i + 1, character: 0 } },
        newText: '',
      });
      i += 1;
    } else if (after !== undefined && (before === undefined || (isBlank(after) && !isBlank(before)))) {
      const at =
        before === undefined ? { line: first + i - 1, character: old[i - 1]?.length ?? 0 } : { line: first + i, character: 0 };
      edits.push({ range: { start: at, end: at }, newText: before === undefined ? `${eol}${after}` : `${after}${eol}` });
      j += 1;
    } else if (before !== undefined && after !== undefined) {
      edits.push({ range: rangeOn(first + i, { start: 0, end: before.length }), newText: after });
      i += 1;
      j += 1;
    }
  }
  return edits;
}

const isBlank = (text: string): boolean => text.trim() === '';

/** The lines from `from` on, with the line end before them. */
function restGone(old: readonly string[], from: number, first: number): TextEdit {
  const start = from === 0 ? { line: first, character: 0 } : { line: first + from - 1, character: old[from - 1]?.length ?? 0 };
  return { range: { start, end: { line: first + old.length - 1, character: old.at(-1)?.length ?? 0 } }, newText: '' };
}
