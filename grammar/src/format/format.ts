/** The canonical layout of a file: columns within runs of lines, one blank line at most, lines with problems untouched. */

import type { File } from '../tree.ts';
import { type Fixed, type Row, rowsOf } from './rows.ts';

/** Guards stand at this column, or further right where a line of the run needs it. */
const guardColumn = 67;
const guardGap = 3;
/** Longer overrides and bodies do not push the other lines of their run. */
const widestOverrides = 40;
const widestBody = 100;

/** Total and idempotent; keeps every comment, the line ends and the meaning. */
export function format(file: File): string {
  const lines = layOut(rowsOf(file));
  while (lines.length > 0 && lines[0] === '') lines.shift();
  while (lines.length > 0 && lines[lines.length - 1] === '') lines.pop();
  if (lines.length === 0) return '';
  return withMark(file, lines.join(file.eol)) + file.eol;
}

/** The byte-order mark stays where the file had one, once. */
function withMark(file: File, text: string): string {
  if (!file.text.startsWith(mark)) return text;
  let from = 0;
  while (text.startsWith(mark, from)) from += 1;
  return mark + text.slice(from);
}

const mark = '\uFEFF';

/** The canonical text of lines `from` to before `to`, laid out in the columns of their whole runs; no final line end. */
export function formatLines(file: File, from: number, to: number): string {
  const rows = rowsOf(file);
  const texts = columns(rows);
  return collapseBlank(rows.slice(from, to), texts.slice(from, to)).join(file.eol);
}

function layOut(rows: readonly (Row | Fixed)[]): string[] {
  return collapseBlank(rows, columns(rows));
}

/** Each row's text, in the columns of its run. */
function columns(rows: readonly (Row | Fixed)[]): string[] {
  const texts: string[] = rows.map((row) => ('text' in row ? row.text : ''));
  let run: number[] = [];
  for (const [index, row] of rows.entries()) {
    if ('text' in row) {
      if (row.kind === 'blank') flush();
      continue;
    }
    const first = run.length > 0 ? (rows[run[0]!] as Row) : null;
    if (first !== null && (first.kind !== row.kind || first.indent !== row.indent)) flush();
    run.push(index);
  }
  flush();
  return texts;

  function flush(): void {
    const laid = layRun(run.map((index) => rows[index] as Row));
    for (const [at, index] of run.entries()) texts[index] = laid[at]!;
    run = [];
  }
}

function layRun(rows: readonly Row[]): string[] {
  const quantityWidth = widest(
    rows.map((row) => width(row.quantity)),
    Number.POSITIVE_INFINITY,
  );
  const overridesWidth = widest(
    rows.map((row) => width(row.overrides)),
    widestOverrides,
  );
  const bodies = rows.map((row) => bodyOf(row, quantityWidth, overridesWidth));
  const guarded = bodies.filter((_, index) => rows[index]!.guard !== '').map(width);
  const guardAt = Math.max(guardColumn, widest(guarded, widestBody) + guardGap);
  return rows.map((row, index) => {
    const body = bodies[index]!;
    const guard = row.guard === '' ? '' : padEnd(body, guardAt, guardGap).slice(body.length) + row.guard;
    return body + guard + (row.comment === '' ? '' : `  ${row.comment}`);
  });
}

/** The widest of those that are no wider than the limit. */
function widest(widths: readonly number[], limit: number): number {
  return widths.reduce((most, each) => (each <= limit && each > most ? each : most), 0);
}

function bodyOf(row: Row, quantityWidth: number, overridesWidth: number): string {
  const indent = ' '.repeat(row.indent);
  if (row.kind === 'other') return indent + row.body;
  const quantity = ' '.repeat(quantityWidth - width(row.quantity)) + row.quantity;
  const overrides = overridesWidth === 0 && row.overrides === '' ? '' : ` ${padEnd(row.overrides, overridesWidth, 0)}`;
  return `${indent}${quantity}${overrides}  ${row.body}`;
}

function padEnd(text: string, column: number, gap: number): string {
  return text + ' '.repeat(Math.max(gap, column - width(text)));
}

/** Columns a text takes up: combining marks take none. */
function width(text: string): number {
  let columns = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 0x300) columns += 1;
    else return columns + [...text.slice(at)].filter((character) => !combining.test(character)).length;
  }
  return columns;
}

const combining = /^\p{M}$/u;

function collapseBlank(rows: readonly (Row | Fixed)[], texts: readonly string[]): string[] {
  return texts.filter((_, index) => rows[index]!.kind !== 'blank' || index === 0 || rows[index - 1]!.kind !== 'blank');
}
