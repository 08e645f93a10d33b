/** What the client tells the server, and which documents it speaks of. */
import type { InitializationOptions } from 'nappe-server/protocol';
import { workspace } from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

/** `files`: the editor reads files for a server that cannot. */
export function clientOptions({ files }: { readonly files: boolean }): LanguageClientOptions {
  const initializationOptions: InitializationOptions = { cards: true, ...(files && { files: true }) };
  // Markdown from other providers (previews, explanations, other extensions' pages) holds no formulas of the folder.
  const schemes = new Set(['file', 'untitled', ...(workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)]);
  return {
    documentSelector: [{ language: 'nappe' }, ...[...schemes].map((scheme) => ({ language: 'markdown', scheme }))],
    initializationOptions,
    progressOnInitialization: false,
  };
}
