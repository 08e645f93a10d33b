/** Ranges of the protocol from lines and columns of the tree. */
import type { File, Span } from 'nappe-grammar';
import type { Location, Position, Range } from 'vscode-languageserver';
import type { Analysis, Project } from './project.ts';

export const rangeOn = (line: number, { start, end }: Span): Range => ({
  start: { line, character: start },
  end: { line, character: end },
});

/** Whole lines from `from` to before `to`, without the last line's end. */
export function rangeOfLines(file: File, from: number, to: number): Range {
  const last = Math.max(from, Math.min(to, file.lines.length) - 1);
  return { start: { line: from, character: 0 }, end: { line: last, character: file.lines[last]?.text.length ?? 0 } };
}

export const locationOf = (project: Project, path: string, line: number, span: Span): Location => ({
  uri: project.uriOf(path),
  range: rangeOn(line, span),
});

/** A position inside the text: lines and columns past an end are that end, as the protocol has it. */
export function within({ file }: Analysis, { line, character }: Position): Position {
  if (line >= file.lines.length) {
    const last = file.lines.length - 1;
    return { line: last, character: file.lines[last]?.text.length ?? 0 };
  }
  const number = Math.max(0, line);
  return { line: number, character: Math.max(0, Math.min(character, file.lines[number]?.text.length ?? 0)) };
}

export const touches = (a: Range, b: Range): boolean => !isBefore(a.end, b.start) && !isBefore(b.end, a.start);

export const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
