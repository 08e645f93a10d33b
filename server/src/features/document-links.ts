/** Document links: the files that `take` and requests name. */
import { locate } from 'nappe';
import { type FileReference, nameKey } from 'nappe-grammar';
import type { DocumentLink } from 'vscode-languageserver';
import { groupsOf } from '../names/groups.ts';
import { referencesIn } from '../names/references-in.ts';
import type { Analysis } from '../project.ts';
import { rangeOn } from '../ranges.ts';

export function documentLinks(analysis: Analysis): DocumentLink[] {
  return analysis.file.lines.flatMap((line, number) =>
    referencesIn(line).flatMap((reference) => {
      const found = targetOf(analysis, reference);
      if (!found) return [];
      const fragment = found.line === null ? '' : `#L${found.line + 1}`;
      return [{ range: rangeOn(number, inside(reference)), target: `${found.target}${fragment}`, tooltip: reference.path }];
    }),
  );
}

export interface LinkAt {
  readonly target: string;
  /** Of the formula that `#name` picks, from 0. */
  readonly line: number | null;
  readonly span: { readonly start: number; readonly end: number };
}

/** The file reference under a column. */
export function linkAt(analysis: Analysis, line: number, column: number): LinkAt | null {
  const node = analysis.file.lines[line];
  const reference = (node ? referencesIn(node) : []).find(({ start, end }) => start <= column && column <= end);
  const found = reference && targetOf(analysis, reference);
  return found && reference ? { ...found, span: inside(reference) } : null;
}

/** Nothing outside the workspace and nothing that is not there is linked. */
function targetOf({ project, path }: Analysis, reference: FileReference): { target: string; line: number | null } | null {
  const located = locate(reference.path, path, project.root);
  if (!('path' in located)) return null;
  const file = project.fileAt(located.path);
  if (!file) return null;
  const wanted = reference.formula === null ? null : nameKey(reference.formula);
  const group = wanted === null ? undefined : groupsOf(file).find(({ head }) => head?.heading?.name?.key === wanted);
  return { target: project.uriOf(located.path), line: group?.head?.first ?? null };
}

/** Without the quotes. */
const inside = ({ start, end }: FileReference): { start: number; end: number } => ({
  start: start + 1,
  end: Math.max(start + 1, end - 1),
});
