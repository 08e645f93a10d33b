/** `nappe/bases`: the components of other files that this one can take, each with the edit that takes it. */
import { type File, nameKey, type TakeLine } from 'nappe-grammar';
import type { TextEdit } from 'vscode-languageserver';
import { inStep } from '../names/written.ts';
import type { Analysis } from '../project.ts';
import type { Base } from '../protocol.ts';
import { folderOf, relativePath } from '../uris.ts';

/** By file, then as they stand there; what is taken already is left out. */
export function basesFor({ project, path, file }: Analysis): readonly Base[] {
  const takes = takesIn(file);
  return project
    .paths()
    .filter((other) => other !== path)
    .flatMap((other) => {
      const written = relativePath(folderOf(path), other);
      const take = takes.find(({ node }) => node.from?.path === written && node.from.formula === null);
      const taken = new Set(take?.node.items.map(({ name }) => name.key));
      return namesOffered(project.workspace, other)
        .filter((name) => !taken.has(nameKey(name)))
        .map((name): Base => ({ name, file: written, edit: take ? joined(take, name) : fresh(file, takes, name, written) }));
    });
}

/** Components above any formula, and house ingredients. */
function namesOffered(workspace: Analysis['project']['workspace'], path: string): readonly string[] {
  const { houseKinds } = workspace.unit(path);
  return [...workspace.bases(path).map(({ name }) => name), ...[...houseKinds.values()].map(({ name }) => name)];
}

interface Placed {
  readonly node: TakeLine;
  readonly line: number;
}

/** Those above any formula. */
function takesIn({ lines, blocks }: File): readonly Placed[] {
  const end = blocks.find(({ heading }) => heading?.word === 'formula')?.first ?? lines.length;
  return lines.slice(0, end).flatMap((node, line) => (node.kind === 'take' && node.items.length > 0 ? [{ node, line }] : []));
}

/** One more name on a line that takes from the file already. */
function joined({ node, line }: Placed, name: string): TextEdit {
  const last = node.items[node.items.length - 1];
  const character = (last?.as ?? last?.name ?? node.span).end;
  return { range: { start: { line, character }, end: { line, character } }, newText: `, ${inStep(name)}` };
}

/** A line of its own: under the last that takes, else above the first formula, else at the end. */
function fresh(file: File, takes: readonly Placed[], name: string, from: string): TextEdit {
  const last = takes.at(-1);
  const formula = file.blocks.find(({ heading }) => heading?.word === 'formula');
  const text = `take ${inStep(name)} from "${from}"${file.eol}`;
  const at = (line: number): TextEdit['range'] => ({ start: { line, character: 0 }, end: { line, character: 0 } });
  if (last) return { range: at(last.line + 1), newText: text };
  if (formula) return { range: at(formula.first), newText: `${text}${file.eol}` };
  return { range: at(file.lines.length), newText: text };
}
