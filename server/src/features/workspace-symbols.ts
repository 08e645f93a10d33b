/** Workspace symbols: formulas, components and house ingredients of every known file, by the letters asked for. */
import { nameKey } from 'nappe-grammar';
import { SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver';
import type { Project } from '../project.ts';
import { locationOf } from '../ranges.ts';
import { baseName } from '../uris.ts';

/** At most so many answers; a longer query finds the rest. */
const most = 256;

/** One file's symbols that hold the letters of the query in order. */
export function symbolsIn(project: Project, path: string, query: string): WorkspaceSymbol[] {
  const wanted = nameKey(query).replaceAll(' ', '');
  let formula: string | undefined;
  return (project.fileAt(path)?.blocks ?? []).flatMap(({ heading, first }) => {
    if (!heading?.name) return [];
    if (heading.word === 'formula') formula = heading.name.text;
    const kind = kinds[heading.word];
    if (kind === undefined || !holdsInOrder(heading.name.key, wanted)) return [];
    const containerName = heading.word === 'component' && formula !== undefined ? formula : baseName(path);
    return [{ name: heading.name.text, kind, containerName, location: locationOf(project, path, first, heading.name) }];
  });
}

/** Over many files, asking between them whether to stop; `pause` lets other work in. */
export async function workspaceSymbols(
  projects: readonly Project[],
  query: string,
  isCancelled: () => boolean,
  pause: () => Promise<void>,
): Promise<WorkspaceSymbol[]> {
  const found: WorkspaceSymbol[] = [];
  let since = 0;
  for (const project of projects)
    for (const path of project.paths()) {
      if (isCancelled() || found.length >= most) return found.slice(0, most);
      found.push(...symbolsIn(project, path, query));
      since += 1;
      if (since % 50 === 0) await pause();
    }
  return found.slice(0, most);
}

const kinds: Partial<Record<string, SymbolKind>> = {
  formula: SymbolKind.Class,
  component: SymbolKind.Function,
  ingredient: SymbolKind.Struct,
};

function holdsInOrder(text: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    const found = text.indexOf(letter, at);
    if (found < 0) return false;
    at = found + letter.length;
  }
  return true;
}
