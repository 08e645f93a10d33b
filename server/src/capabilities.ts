/** What the server offers, said at `initialize`. */
import { CodeActionKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import type { Client } from './client.ts';
import { legend } from './legend.ts';
import { explanationScheme } from './protocol.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.nappe`;

export const capabilities = (client: Client): ServerCapabilities => ({
  positionEncoding: client.units,
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: false },
  ...(client.pullsDiagnostics && {
    diagnosticProvider: { identifier: 'nappe', interFileDependencies: true, workspaceDiagnostics: true },
  }),
  hoverProvider: true,
  completionProvider: { triggerCharacters: [' ', ',', '"', '#', '(', '/'], resolveProvider: true },
  codeActionProvider: {
    codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorExtract, CodeActionKind.RefactorRewrite, fixAllKind],
  },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
  renameProvider: { prepareProvider: true },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  documentSymbolProvider: true,
  workspaceSymbolProvider: true,
  foldingRangeProvider: true,
  selectionRangeProvider: true,
  semanticTokensProvider: { legend, full: { delta: true }, range: true },
  documentLinkProvider: {},
  inlayHintProvider: true,
  codeLensProvider: { resolveProvider: true },
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    textDocumentContent: { schemes: [explanationScheme] },
  },
});
