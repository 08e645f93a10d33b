/** The table of requests: each method, and the feature that answers it. */
import { explainMarkdown } from 'nappe';
import type {
  CancellationToken,
  CodeActionContext,
  CodeLens,
  CompletionItem,
  Connection,
  Position,
  Range,
  SemanticTokens,
} from 'vscode-languageserver';
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Client } from './client.ts';
import { isPosition } from './encoding.ts';
import { basesFor } from './features/bases.ts';
import { codeActions } from './features/code-actions.ts';
import { codeLenses, resolveLens, status } from './features/code-lens.ts';
import { completion, documentationOf } from './features/completion.ts';
import { definition, definitionLinks } from './features/definition.ts';
import { documentLinks } from './features/document-links.ts';
import { documentSymbols, flatSymbols } from './features/document-symbols.ts';
import { foldingRanges } from './features/folding.ts';
import { formatting, onTypeFormatting, rangeFormatting } from './features/formatting.ts';
import { highlights } from './features/highlight.ts';
import { hover } from './features/hover.ts';
import { inlayHints } from './features/inlay-hints.ts';
import { markup } from './features/markup.ts';
import { references } from './features/references.ts';
import { prepareRename, type Refusal, rename } from './features/rename.ts';
import { selectionRanges } from './features/selection-ranges.ts';
import { semanticTokens, tokensDelta } from './features/semantic-tokens.ts';
import { workspaceSymbols } from './features/workspace-symbols.ts';
import { invalid, isRange, positionIn, rangeIn, record, textIn, uriIn } from './params.ts';
import { pause } from './pause.ts';
import type { Analysis } from './project.ts';
import {
  basesRequest,
  type CardParams,
  cardRequest,
  compareRequest,
  explainRequest,
  explanationScheme,
  type ScaleParams,
  scaleRequest,
  statusRequest,
} from './protocol.ts';
import type { Publisher } from './publisher.ts';
import type { Session } from './session.ts';

/** What answering takes. */
export interface Answering {
  readonly session: Session;
  readonly client: Client;
  readonly connection: Connection;
  readonly publisher: Publisher;
}

type Answer = (answering: Answering, params: unknown, token: CancellationToken) => unknown;

/** Of a document that is neither open nor readable there is nothing to say. */
const ofDocument =
  (answer: (analysis: Analysis, params: unknown, answering: Answering) => unknown): Answer =>
  (answering, params) => {
    const analysis = answering.session.analysis(uriIn(params));
    return analysis ? answer(analysis, params, answering) : null;
  };

const atPosition = (answer: (analysis: Analysis, position: Position, params: unknown, answering: Answering) => unknown): Answer =>
  ofDocument((analysis, params, answering) => answer(analysis, positionIn(params), params, answering));

const inRange = (answer: (analysis: Analysis, range: Range, params: unknown, answering: Answering) => unknown): Answer =>
  ofDocument((analysis, params, answering) => answer(analysis, rangeIn(params), params, answering));

export const requests: Readonly<Record<string, Answer | undefined>> = {
  'textDocument/diagnostic': (answering, params) => answering.publisher.documentReport(uriIn(params), resultIdIn(params)),
  'workspace/diagnostic': (answering, params, token) => answering.publisher.workspaceReport(params, token),
  'textDocument/hover': atPosition((analysis, position, _, { client }) => {
    const found = hover(analysis, position);
    return found && { contents: markup(found.markdown, client.markdownHover), range: found.range };
  }),
  'textDocument/completion': atPosition((analysis, position, _, { client }) =>
    completion(analysis, position, { snippets: client.snippets }),
  ),
  'completionItem/resolve': ({ client }, params) => {
    const item = record(params) as unknown as CompletionItem;
    const documentation = documentationOf(item.data);
    return documentation === null ? item : { ...item, documentation: markup(documentation, client.markdownCompletion) };
  },
  'textDocument/codeAction': inRange((analysis, range, params, { client }) =>
    codeActions(analysis, range, contextIn(params), client.actions),
  ),
  'textDocument/formatting': ofDocument((analysis) => formatting(analysis)),
  'textDocument/rangeFormatting': inRange((analysis, range) => rangeFormatting(analysis, range)),
  'textDocument/onTypeFormatting': atPosition((analysis, position, params) =>
    onTypeFormatting(analysis, position, textIn(params, 'ch')),
  ),
  'textDocument/prepareRename': atPosition((analysis, position) => unlessRefused(prepareRename(analysis, position))),
  'textDocument/rename': atPosition((analysis, position, params) =>
    unlessRefused(rename(analysis, position, textIn(params, 'newName'))),
  ),
  'textDocument/definition': atPosition((analysis, position, _, { client }) =>
    client.definitionLinks ? definitionLinks(analysis, position) : definition(analysis, position),
  ),
  'textDocument/references': atPosition((analysis, position, params) =>
    references(analysis, position, includesDeclaration(params)),
  ),
  'textDocument/documentHighlight': atPosition((analysis, position) => highlights(analysis, position)),
  'textDocument/documentSymbol': ofDocument((analysis, _, { client }) =>
    client.symbolTree ? documentSymbols(analysis) : flatSymbols(analysis),
  ),
  'workspace/symbol': ({ session }, params, token) =>
    workspaceSymbols(session.allProjects(), textIn(params, 'query'), () => token.isCancellationRequested, pause),
  'textDocument/foldingRange': ofDocument((analysis) => foldingRanges(analysis)),
  'textDocument/selectionRange': ofDocument((analysis, params) => {
    const { positions } = record(params);
    if (!Array.isArray(positions) || !positions.every(isPosition)) throw invalid('positions are missing');
    return selectionRanges(analysis, positions);
  }),
  'textDocument/semanticTokens/full': ofDocument((analysis, _, { session, client }) => {
    const data = semanticTokens(analysis, client.units);
    return { resultId: session.tokens.keep(analysis.path, data), data } satisfies SemanticTokens;
  }),
  'textDocument/semanticTokens/full/delta': ofDocument((analysis, params, { session, client }) => {
    const data = semanticTokens(analysis, client.units);
    const before = session.tokens.get(analysis.path, textIn(params, 'previousResultId'));
    const resultId = session.tokens.keep(analysis.path, data);
    return before ? tokensDelta(before, data, resultId) : { resultId, data };
  }),
  'textDocument/semanticTokens/range': inRange((analysis, range, _, { client }) => ({
    data: semanticTokens(analysis, client.units, range),
  })),
  'textDocument/documentLink': ofDocument((analysis) => documentLinks(analysis)),
  'textDocument/inlayHint': inRange((analysis, range) => inlayHints(analysis, range)),
  'textDocument/codeLens': ofDocument((analysis) => codeLenses(analysis)),
  'codeLens/resolve': ({ session }, params) => {
    const lens = record(params) as unknown as CodeLens;
    const { uri, line } = typeof lens.data === 'object' && lens.data !== null ? record(lens.data) : {};
    const analysis = typeof uri === 'string' ? session.analysis(uri) : null;
    return analysis && typeof uri === 'string' && typeof line === 'number' ? resolveLens(analysis, lens, { uri, line }) : lens;
  },
  'workspace/textDocumentContent': (_, params) => ({ text: explanation(textIn(params, 'uri')) ?? 'There is no such code.\n' }),
  [explainRequest]: (_, params) => {
    const markdown = explainMarkdown(textIn(params, 'code'), 1);
    return markdown === null ? { problem: `There is no code ${textIn(params, 'code')}.` } : { markdown };
  },
  [cardRequest]: async ({ session }, params) => {
    const { card } = await import('./features/card.ts');
    const analysis = session.analysis(uriIn(params));
    return analysis ? card(analysis, record(params) as unknown as CardParams, today()) : gone;
  },
  [scaleRequest]: async ({ session }, params) => {
    const { scale } = await import('./features/scale.ts');
    const analysis = session.analysis(uriIn(params));
    return analysis ? scale(analysis, record(params) as unknown as ScaleParams) : gone;
  },
  [basesRequest]: ofDocument((analysis) => ({ bases: basesFor(analysis) })),
  [statusRequest]: ofDocument((analysis, params) => {
    const { line } = record(params);
    return status(analysis, typeof line === 'number' ? line : 0);
  }),
  [compareRequest]: async ({ session }, params) => {
    const { compare } = await import('./features/compare.ts');
    const { oldText } = record(params);
    const at = (key: string) => {
      const [, uri = '', formula] = /^([^#]*)(?:#(.*))?$/s.exec(textIn(params, key)) ?? [];
      const analysis = session.analysis(uri);
      return analysis && { analysis, formula: formula === undefined ? null : decoded(formula) };
    };
    const [before, after] = [at('old'), at('new')];
    return before && after ? compare(before, after, typeof oldText === 'string' ? oldText : null) : gone;
  },
};

/** A `#title` as an address writes it. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const gone = { problem: 'This file cannot be read.' };

const today = (): string => new Date().toISOString().slice(0, 10);

function unlessRefused<T extends object>(answer: T | Refusal): T {
  if ('refusal' in answer) throw new ResponseError(LSPErrorCodes.RequestFailed, answer.refusal);
  return answer;
}

function resultIdIn(params: unknown): string | undefined {
  const { previousResultId } = record(params);
  return typeof previousResultId === 'string' ? previousResultId : undefined;
}

function includesDeclaration(params: unknown): boolean {
  const { context } = record(params);
  return typeof context !== 'object' || context === null || record(context).includeDeclaration !== false;
}

function contextIn(params: unknown): CodeActionContext {
  const { context } = record(params);
  const { only, diagnostics } = typeof context === 'object' && context !== null ? record(context) : {};
  const given = Array.isArray(diagnostics)
    ? diagnostics.filter((one) => typeof one === 'object' && one !== null && isRange(record(one).range))
    : [];
  return { diagnostics: given, ...(Array.isArray(only) && { only: only.filter((kind) => typeof kind === 'string') }) };
}

/** The page of `nappe-explain:/fold-too-warm.md`. */
function explanation(uri: string): string | null {
  if (!uri.startsWith(`${explanationScheme}:`)) return null;
  const page = uri.slice(Math.max(uri.lastIndexOf('/'), uri.indexOf(':')) + 1);
  return explainMarkdown(page.endsWith('.md') ? page.slice(0, -'.md'.length) : page, 1);
}
