/** `nappe/compare`: what changed in meaning between two files, or between an earlier text of a file and the file as it is. */
import { createWorkspace, type Workspace } from 'nappe';
import { comparableOf, comparisonJson, comparisonMarkdown } from 'nappe/compare';
import type { Analysis } from '../project.ts';
import type { CompareAnswer, Problem } from '../protocol.ts';
import { baseName } from '../uris.ts';

export interface ComparedFile {
  readonly analysis: Analysis;
  /** Only the formula of this name. */
  readonly formula: string | null;
}

/** `oldText` stands in place of the old file's; what that text takes is read as it is now. */
export function compare(old: ComparedFile, next: ComparedFile, oldText: string | null): CompareAnswer | Problem {
  const { comparisons, added, dropped } = comparableOf(
    { ...sideOf(old), ...(oldText !== null && earlierSide(old.analysis, oldText)) },
    sideOf(next),
  );
  if (comparisons.length === 0 && added.length + dropped.length === 0)
    return { problem: 'There are no formulas here to compare.' };
  const words = [
    ...comparisons.map((one) => comparisonMarkdown(one, 1)),
    ...added.map((name) => `**${name}** is new.\n`),
    ...dropped.map((name) => `**${name}** is gone.\n`),
  ];
  const { changes } = comparisonJson(comparisons);
  return { changes, markdown: words.join('\n') };
}

const sideOf = ({ analysis: { project, path }, formula }: ComparedFile) => ({
  workspace: project.workspace,
  path,
  file: baseName(path),
  formula,
});

function earlierSide({ project, path }: Analysis, text: string): { workspace: Workspace; file: string } {
  const { files } = project.workspace;
  const workspace = createWorkspace({ root: files.root, read: (at) => (at === path ? { text } : files.read(at)) });
  return { workspace, file: `${baseName(path)}, earlier` };
}
