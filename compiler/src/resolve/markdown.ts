/** The notation inside a Markdown file: a text of the same lines in which everything outside `nappe` fences is blank. */
import { splitLines } from 'nappe-grammar';

interface Fence {
  readonly mark: '`' | '~';
  readonly length: number;
  readonly nappe: boolean;
}

/**
 * All `nappe` fences of a CommonMark file as one text of as many lines, so that a line's number and columns are those of the
 * Markdown. Fences open with three or more backticks or tildes after at most three spaces, and close with at least as many
 * (CommonMark 0.31, section 4.5); the info word is `nappe`, perhaps followed by `source`. A fence shown inside a longer one is text.
 */
export function fencesOf(markdown: string): string {
  const eol = markdown.includes('\r\n') ? '\r\n' : '\n';
  let open: Fence | null = null;
  const lines = splitLines(markdown).map((line) => {
    if (open === null) {
      open = openingOf(line);
      return '';
    }
    if (closes(line, open)) {
      open = null;
      return '';
    }
    return open.nappe ? line : '';
  });
  return lines.join(eol);
}

function openingOf(line: string): Fence | null {
  const start = indentOf(line);
  if (start === null) return null;
  const mark = line[start];
  if (mark !== '`' && mark !== '~') return null;
  const length = runOf(line, start, mark);
  const info = line.slice(start + length).trim();
  if (length < 3 || (mark === '`' && info.includes('`'))) return null;
  return { mark, length, nappe: info.split(/\s/, 1)[0]?.toLowerCase() === 'nappe' };
}

function closes(line: string, { mark, length }: Fence): boolean {
  const start = indentOf(line);
  if (start === null || line[start] !== mark) return false;
  const run = runOf(line, start, mark);
  return run >= length && line.slice(start + run).trim() === '';
}

/** Where a line's text starts, if after at most three spaces. */
function indentOf(line: string): number | null {
  let at = 0;
  while (at < 4 && line[at] === ' ') at++;
  return at <= 3 ? at : null;
}

function runOf(line: string, start: number, mark: string): number {
  let end = start;
  while (line[end] === mark) end++;
  return end - start;
}

export const isMarkdown = (path: string): boolean => /\.(md|markdown)$/i.test(path);
