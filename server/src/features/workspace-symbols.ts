/** Workspace symbols: formulas, components and house ingredients of every known file, by the letters asked for. */
import { nameKey } from 'nappe-grammar';
import { SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver';
import type { Offered } from '../names/offered.ts';
import type { Project } from '../project.ts';
import { locationOf } from '../ranges.ts';
import { baseName } from '../uris.ts';

/** At most so many answers; a longer query finds the rest. */
const most = 256;

/** One file's symbols that hold the letters of the query in order. */
export function symbolsIn(project: Project, path: string, query: string): WorkspaceSymbol[] {
  const wanted = nameKey(query).replaceAll(' ', '');
  return project.offeredBy(path).flatMap(({ word, name, line, formula }) =>
    holdsInOrder(name.key, wanted)
      ? [
          {
            name: name.text.trim(),
            kind: kinds[word],
            containerName: formula ?? baseName(path),
            location: locationOf(project, path, line, name),
          },
        ]
      : [],
  );
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

const kinds: Record<Offered['word'], SymbolKind> = {
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
