/** Text edits by file, and how the text reads after them. */
import type { FileEdit } from 'nappe';
import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { grouped } from './grouped.ts';
import type { Project } from './project.ts';
import { isBefore } from './ranges.ts';

/** The compiler's edits, lines and columns from 1, file names being paths. */
export function workspaceEdit(project: Project, edits: readonly FileEdit[]): WorkspaceEdit {
  const byFile = grouped(edits, ({ file }) => file);
  return { changes: Object.fromEntries([...byFile].map(([path, list]) => [project.uriOf(path), list.map(textEdit)])) };
}

export const textEdit = ({ line, column, endLine, endColumn, text }: FileEdit): TextEdit => ({
  range: { start: { line: line - 1, character: column - 1 }, end: { line: endLine - 1, character: endColumn - 1 } },
  newText: text,
});

/** Whether two edits touch the same text; two insertions at one place do too, since their order is not known. */
export const collide = (a: TextEdit, b: TextEdit): boolean =>
  (isBefore(a.range.start, b.range.end) && isBefore(b.range.start, a.range.end)) ||
  (a.range.start.line === b.range.start.line && a.range.start.character === b.range.start.character);
