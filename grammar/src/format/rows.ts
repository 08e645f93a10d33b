/** Turns lines into rows of cells: indentation, quantity, overrides, body, guard, comment. */

import type { Token } from '../scanner/tokens.ts';
import * as t from '../scanner/tokens.ts';
import type { File, Line } from '../tree.ts';
import { joinTokens, type TokenLine, tokensOf, wordOf } from './tokens.ts';

/** A line to be laid out in columns. */
export interface Row {
  readonly kind: 'ingredient' | 'other';
  readonly indent: number;
  /** Right-aligned within a run of ingredient lines; empty elsewhere. */
  readonly quantity: string;
  readonly overrides: string;
  readonly body: string;
  readonly guard: string;
  readonly comment: string;
}

/** A line kept as it is: blank, a note, a comment, or one with a problem. */
export interface Fixed {
  readonly kind: 'blank' | 'fixed';
  readonly text: string;
}

export function rowsOf(file: File): (Row | Fixed)[] {
  const rows: (Row | Fixed)[] = [];
  const below = linesBelow(file.lines);
  let above: Line | null = null;
  let owner: Line | null = null;
  for (const block of file.blocks) {
    const inside = block.heading === null ? 0 : 2;
    for (const [index, line] of block.lines.entries()) {
      if (line.kind === 'comment') {
        rows.push({
          kind: 'fixed',
          text: ' '.repeat(commentIndent(inside, below[block.first + index]!, above)) + commentText(line),
        });
        continue;
      }
      rows.push(rowOf(line, inside, owner));
      above = line.kind === 'blank' ? null : line;
      if (line.kind !== 'blank' && line.kind !== 'note') owner = line;
    }
  }
  return rows;
}

/** For each line, the next one of its paragraph that is no comment. */
function linesBelow(lines: readonly Line[]): (Line | null)[] {
  const below: (Line | null)[] = new Array(lines.length).fill(null);
  let next: Line | null = null;
  for (let index = lines.length - 1; index >= 0; index--) {
    below[index] = next;
    const line = lines[index]!;
    if (line.kind !== 'comment') next = line.kind === 'blank' ? null : line;
  }
  return below;
}

function rowOf(line: Exclude<Line, { kind: 'comment' }>, inside: number, owner: Line | null): Row | Fixed {
  if (line.kind === 'blank') return { kind: 'blank', text: '' };
  if (line.kind === 'bad' || line.problems.length > 0) return { kind: 'fixed', text: line.text };
  if (line.kind !== 'note') return tokenRow(line, indentOf(line, inside));
  const bar = line.markdown === '' ? '|' : `| ${line.markdown}`;
  return { kind: 'fixed', text: ' '.repeat(noteIndent(inside, owner)) + bar };
}

/** Rows made before: a line's own text is all that its row depends on, beside the indentation. */
const known = new WeakMap<Line, Row>();

function tokenRow(line: TokenLine, indent: number): Row {
  const before = known.get(line);
  if (before?.indent === indent) return before;
  const row = line.kind === 'ingredient' ? ingredientRow(line, indent) : otherRow(line, indent);
  known.set(line, row);
  return row;
}

function ingredientRow(line: TokenLine, indent: number): Row {
  const tokens = tokensOf(line);
  const guardAt = guardIndex(line, tokens);
  const bodyAt = tokens[1]?.tokenType === t.OpenToken ? tokens.findIndex((token) => token.tokenType === t.CloseToken) + 1 : 1;
  return {
    kind: 'ingredient',
    indent,
    quantity: joinTokens(line, tokens.slice(0, 1)),
    overrides: joinTokens(line, tokens.slice(1, bodyAt)),
    body: joinTokens(line, tokens.slice(bodyAt, guardAt)),
    guard: joinTokens(line, tokens.slice(guardAt)),
    comment: commentText(line),
  };
}

function otherRow(line: TokenLine, indent: number): Row {
  const word = wordOf(line);
  const free = freeText(line);
  const tokens = free === null ? tokensOf(line) : [];
  const guardAt = free === null ? guardIndex(line, tokens) : 0;
  const rest = free ?? joinTokens(line, tokens.slice(0, guardAt));
  return {
    kind: 'other',
    indent,
    quantity: '',
    overrides: '',
    body: word === '' || rest === '' ? word + rest : `${word} ${rest}`,
    guard: joinTokens(line, tokens.slice(guardAt)),
    comment: commentText(line),
  };
}

/** What stands after `formula`, `by` and `version`, kept as written. */
function freeText(line: TokenLine): string | null {
  if (line.kind === 'block' && line.word === 'formula') return line.text.slice(line.wordSpan.end, line.span.end).trim();
  return line.kind === 'header' && (line.word === 'by' || line.word === 'version') ? line.value.text : null;
}

function guardIndex(line: TokenLine, tokens: readonly Token[]): number {
  const start = 'guard' in line ? line.guard?.start : undefined;
  if (start === undefined) return tokens.length;
  return tokens.findIndex((token) => token.startOffset === start);
}

function commentText(line: Line): string {
  return line.comment === null ? '' : line.text.slice(line.comment.start, line.comment.end);
}

function indentOf(line: Line, inside: number): number {
  return line.kind === 'block' || line.kind === 'request' ? 0 : inside;
}

/** A note is indented under what it belongs to: a line, or the block. */
function noteIndent(inside: number, owner: Line | null): number {
  if (owner === null) return 0;
  return owner.kind === 'block' || owner.kind === 'header' ? 2 : inside + 2;
}

/** A comment stands like the line it introduces; at the end of a paragraph, like the line above. */
function commentIndent(inside: number, below: Line | null, above: Line | null): number {
  if (below !== null) return indentOf(below, inside);
  if (above === null) return 0;
  return above.kind === 'block' ? 2 : indentOf(above, inside);
}
