/** The corpora as tests see them: formulas read from disk, what is marked in them, and what the checker says of them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkUnit, createWorkspace, type Diagnostic, type FileEdit, type Files, type Workspace } from 'nappe';
import { type Expected, expectedIn } from '../../compiler/src/diagnostics/expectations.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export const samples = join(root, 'samples');
export const wellMade = join(root, 'tests/corpus/well-made');
export const faulty = join(root, 'tests/corpus/faulty');

/** `.nappe` files of a folder, not below it, by name. */
export const formulasIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.nappe'))
    .sort()
    .map((name) => join(folder, name));

export const shortName = (path: string): string => relative(root, path).split(sep).join('/');

/** A workspace on disk. */
export function workspaceAt(folder: string): Workspace {
  const files: Files = {
    root: folder,
    read(path) {
      try {
        return { text: readFileSync(path, 'utf8') };
      } catch (error) {
        return { refused: 'missing', why: String(error) };
      }
    },
  };
  return createWorkspace(files);
}

/** One text as the only file there is. */
export function checkText(text: string): readonly Diagnostic[] {
  const path = '/formulas/example.nappe';
  const files: Files = {
    root: '/formulas',
    read: (asked) => (asked === path ? { text } : { refused: 'missing', why: 'there is no such file' }),
  };
  return checked(createWorkspace(files), path);
}

/** What is wrong with a file; nothing of ours may break over it. */
export function checked(workspace: Workspace, path: string): readonly Diagnostic[] {
  const { diagnostics, faults } = checkUnit(workspace, path);
  if (faults.length > 0) throw new Error(faults.map(({ part, message }) => `${part}: ${message}`).join('\n'));
  return diagnostics;
}

export const isGrave = ({ severity }: { readonly severity: string }): boolean => severity !== 'notice';

/** `mousse.nappe:12 warning fold-too-cold when cut: The base …`, for a test's answer to be read. */
export function lineOf({ file, line, severity, code, when, message }: Diagnostic): string {
  const combinations = when ? ` when ${when.map((one) => Object.values(one).join(' + ')).join(' or ')}` : '';
  return `${file}:${line} ${severity} ${code}${combinations}: ${message}`;
}

/** A text with edits carried out, from the last to the first so that none moves another. */
export function applied(text: string, edits: readonly FileEdit[]): string {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  const offset = (line: number, column: number): number => (starts[line - 1] ?? text.length) + column - 1;
  return [...edits]
    .sort((a, b) => offset(b.line, b.column) - offset(a.line, a.column))
    .reduce(
      (result, edit) =>
        result.slice(0, offset(edit.line, edit.column)) + edit.text + result.slice(offset(edit.endLine, edit.endColumn)),
      text,
    );
}

/** Marks without a diagnostic, and errors and warnings (notices where marked) without a mark. Empty: the file says what it should. */
export function disagreements(workspace: Workspace, path: string): readonly string[] {
  const texts = new Map<string, string>();
  const textOf = (file: string): string => {
    const known = texts.get(file) ?? readFileSync(join(workspace.files.root, file), 'utf8');
    texts.set(file, known);
    return known;
  };
  const own = relative(workspace.files.root, path).split(sep).join('/');
  const diagnostics = checked(workspace, path);
  const missed = expectedIn(textOf(own))
    .filter((mark) => !diagnostics.some((found) => found.file === own && meets(found, mark, textOf(own))))
    .map(({ line, code, severity, when }) => `missing ${own}:${line} ${severity ?? ''} ${code}${when ? ` when ${when}` : ''}`);
  const unmarked = diagnostics
    .filter((found) => isGrave(found) && !expectedIn(textOf(found.file)).some((mark) => meets(found, mark, textOf(found.file))))
    .map((found) => `unmarked ${lineOf(found)}`);
  return [...missed, ...unmarked];
}

function meets({ line, code, severity, when }: Diagnostic, mark: Expected, text: string): boolean {
  if (line !== mark.line || code !== mark.code) return false;
  if (mark.severity !== null && severity !== mark.severity) return false;
  const { when: value } = mark;
  if (value !== null) return when?.every((selection) => Object.values(selection).includes(value)) === true;
  return when === undefined || / (when|unless) /.test(text.split('\n')[line - 1] ?? '');
}
