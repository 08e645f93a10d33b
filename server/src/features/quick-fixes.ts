/** Quick fixes: what the diagnostics themselves propose, and allowing a code on its line; fix-all applies every sole proposal. */
import type { Diagnostic as Found } from 'nappe';
import { type CodeAction, CodeActionKind, type Diagnostic, type Range, type TextEdit } from 'vscode-languageserver';
import { fixAllKind } from '../capabilities.ts';
import { collide, textEdit, workspaceEdit } from '../edits.ts';
import type { Analysis } from '../project.ts';
import { rangeOn, touches } from '../ranges.ts';

/** For the findings of this file that the range touches; `given` are the client's, to hang the fixes on. */
export function quickFixes(analysis: Analysis, range: Range, given: readonly Diagnostic[]): CodeAction[] {
  const here = analysis.checked.diagnostics.filter((found) => found.file === analysis.path && touches(rangeOf(found), range));
  return [
    ...here.flatMap((found) => fixesOf(analysis, found, given)),
    ...here.flatMap((found) => allowOf(analysis, found, given)),
  ];
}

function fixesOf({ project }: Analysis, found: Found, given: readonly Diagnostic[]): CodeAction[] {
  return found.fixes.map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: matching(found, given),
    isPreferred: found.fixes.length === 1,
    edit: workspaceEdit(project, edits),
  }));
}

/** A comment above the line; without a reason it is reported until one is written. */
function allowOf({ project, path, file }: Analysis, found: Found, given: readonly Diagnostic[]): CodeAction[] {
  if (found.code === 'syntax' || found.code === 'unused-allow') return [];
  const number = found.line - 1;
  const line = file.lines[number];
  if (!line) return [];
  const indent = line.text.slice(0, line.span.start);
  const edit: TextEdit = {
    range: rangeOn(number, { start: 0, end: 0 }),
    newText: `${indent}// allow ${found.code}: ${file.eol}`,
  };
  return [
    {
      title: `Allow ${found.code} here, with a reason`,
      kind: CodeActionKind.QuickFix,
      diagnostics: matching(found, given),
      edit: { changes: { [project.uriOf(path)]: [edit] } },
    },
  ];
}

/** Every finding with one proposal only, as far as they do not touch each other. */
export function fixAll(analysis: Analysis): CodeAction[] {
  const { checked, path, project } = analysis;
  const edits: TextEdit[] = [];
  for (const { fixes, file } of checked.diagnostics) {
    const [only, second] = fixes;
    if (file !== path || !only || second || only.edits.some((edit) => edit.file !== path)) continue;
    const wanted = only.edits.map(textEdit);
    if (!wanted.some((edit) => edits.some((other) => collide(edit, other)))) edits.push(...wanted);
  }
  if (edits.length === 0) return [];
  return [{ title: 'Fix all that has one remedy', kind: fixAllKind, edit: { changes: { [project.uriOf(path)]: edits } } }];
}

const rangeOf = ({ line, column, endLine, endColumn }: Found): Range => ({
  start: { line: line - 1, character: column - 1 },
  end: { line: endLine - 1, character: endColumn - 1 },
});

const matching = (found: Found, given: readonly Diagnostic[]): Diagnostic[] =>
  given.filter(
    ({ code, range }) => code === found.code && range.start.line === found.line - 1 && range.start.character === found.column - 1,
  );
