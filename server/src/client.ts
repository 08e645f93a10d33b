/** What the client said it can do, reduced to what the server asks. */
import type { InitializeParams } from 'vscode-languageserver';
import type { TextUnits } from './encoding.ts';
import type { ActionAbilities } from './features/code-actions.ts';
import type { DiagnosticAbilities } from './features/diagnostics.ts';
import type { InitializationOptions } from './protocol.ts';

export interface Client {
  readonly folders: readonly string[];
  readonly units: TextUnits;
  readonly options: InitializationOptions;
  /** Diagnostics are asked for; else they are published. */
  readonly pullsDiagnostics: boolean;
  readonly diagnostics: DiagnosticAbilities;
  readonly actions: ActionAbilities;
  readonly snippets: boolean;
  readonly markdownHover: boolean;
  readonly markdownCompletion: boolean;
  readonly symbolTree: boolean;
  readonly definitionLinks: boolean;
  readonly progress: boolean;
  readonly configuration: boolean;
  readonly changesFolders: boolean;
  readonly registersConfiguration: boolean;
  readonly registersWatchers: boolean;
  readonly refresh: {
    readonly diagnostics: boolean;
    readonly hints: boolean;
    readonly lenses: boolean;
    readonly tokens: boolean;
  };
}

/** Total: a client that says nothing can do little. */
export function clientOf(params: InitializeParams): Client {
  const { textDocument, workspace, window, general } = params.capabilities ?? {};
  const published = textDocument?.publishDiagnostics;
  const pulled = textDocument?.diagnostic;
  return {
    folders: foldersOf(params),
    units: unitsOf(general?.positionEncodings),
    options:
      typeof params.initializationOptions === 'object' && params.initializationOptions !== null
        ? params.initializationOptions
        : {},
    pullsDiagnostics: pulled !== undefined,
    diagnostics: {
      related: (published?.relatedInformation ?? pulled?.relatedInformation) === true,
      links: (published?.codeDescriptionSupport ?? pulled?.codeDescriptionSupport) === true,
      tags: (published?.tagSupport ?? pulled?.tagSupport) !== undefined,
    },
    actions: {
      createFiles:
        workspace?.workspaceEdit?.documentChanges === true &&
        workspace.workspaceEdit.resourceOperations?.includes('create') === true,
      disabled: textDocument?.codeAction?.disabledSupport === true,
    },
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    markdownHover: textDocument?.hover?.contentFormat?.includes('markdown') === true,
    markdownCompletion: textDocument?.completion?.completionItem?.documentationFormat?.includes('markdown') === true,
    symbolTree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    definitionLinks: textDocument?.definition?.linkSupport === true,
    progress: window?.workDoneProgress === true,
    configuration: workspace?.configuration === true,
    changesFolders: workspace?.workspaceFolders === true,
    registersConfiguration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refresh: {
      diagnostics: workspace?.diagnostics?.refreshSupport === true,
      hints: workspace?.inlayHint?.refreshSupport === true,
      lenses: workspace?.codeLens?.refreshSupport === true,
      tokens: workspace?.semanticTokens?.refreshSupport === true,
    },
  };
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  if (Array.isArray(workspaceFolders)) return workspaceFolders.map(({ uri }) => uri);
  return typeof rootUri === 'string' ? [rootUri] : [];
}

/** The first the client prefers of the two the server counts in. */
const unitsOf = (offered: readonly string[] | undefined): TextUnits =>
  offered?.find((one): one is TextUnits => one === 'utf-8' || one === 'utf-16') ?? 'utf-16';
