/** Diagnostics out: published to a client that waits for them, answered to one that asks; the same reports for both. */
import {
  type CancellationToken,
  CodeLensRefreshRequest,
  type Connection,
  type Diagnostic,
  DiagnosticRefreshRequest,
  DiagnosticSeverity,
  type DocumentDiagnosticReport,
  InlayHintRefreshRequest,
  ProgressType,
  type WorkspaceDiagnosticReport,
  type WorkspaceDiagnosticReportPartialResult,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import type { Client } from './client.ts';
import { inBytes } from './encoding.ts';
import type { Faults } from './faults.ts';
import { diagnostics } from './features/diagnostics.ts';
import { record } from './params.ts';
import { pause } from './pause.ts';
import { cardChanged } from './protocol.ts';
import type { Session } from './session.ts';
import { pathOf, uriOf } from './uris.ts';

/** What was found in one file, under an id that changes when it does. */
interface Report {
  readonly id: string;
  readonly items: readonly Diagnostic[];
  readonly json: string;
}

export class Publisher {
  private readonly reports = new Map<string, Report>();
  private readonly published = new Map<string, string>();
  /** Open documents are seen to before the others. */
  private readonly waiting = { open: new Set<string>(), closed: new Set<string>() };
  private isAtWork = false;
  private count = 0;

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly client: Client,
    private readonly faults: Faults,
  ) {}

  /** Answers of these files may be others now; `own` is the one whose change the client made itself. */
  touch(paths: readonly string[], own?: string): void {
    if (this.client.pullsDiagnostics) {
      if (paths.some((path) => path !== own)) void this.askForPulls();
    } else {
      for (const path of paths) {
        const isOpen = this.session.documents.ofPath(path) !== null;
        if (this.isReported(path) || this.published.has(path)) (isOpen ? this.waiting.open : this.waiting.closed).add(path);
      }
      if (!this.isAtWork) void this.work();
    }
    if (this.client.options.cards === true && paths.length > 0)
      unanswered(this.connection.sendNotification(cardChanged, { uris: paths.map((path) => this.uriOf(path)) }));
  }

  /** The answer to a pull of one document. */
  documentReport(uri: string, previous: string | undefined): DocumentDiagnosticReport {
    const { id, items } = this.report(this.session.documents.get(uri)?.path ?? pathOf(uri));
    return id === previous ? { kind: 'unchanged', resultId: id } : { kind: 'full', resultId: id, items: [...items] };
  }

  /** The answer to a pull of everything, in pieces where the client takes them so. */
  async workspaceReport(params: unknown, token: CancellationToken): Promise<WorkspaceDiagnosticReport> {
    const { previousResultIds, partialResultToken } = record(params);
    const before = previousIds(previousResultIds);
    const all: WorkspaceDocumentDiagnosticReport[] = [];
    let items: WorkspaceDocumentDiagnosticReport[] = [];
    let since = Date.now();
    const flush = async () => {
      if (typeof partialResultToken === 'string' || typeof partialResultToken === 'number')
        await this.connection.sendProgress(partial, partialResultToken, { items: this.encodedItems(items) });
      else all.push(...items);
      items = [];
    };
    const paths = this.allReported();
    for (const path of paths) {
      if (token.isCancellationRequested) break;
      items.push(this.workspaceItem(path, before.get(path)));
      const isPiece = items.length >= 100;
      if (isPiece) await flush();
      if (isPiece || Date.now() - since > slice) {
        await pause();
        since = Date.now();
      }
    }
    const here = new Set(paths);
    for (const path of before.keys())
      if (!here.has(path)) items.push({ kind: 'full', uri: this.uriOf(path), version: null, items: [] });
    await flush();
    return { items: all };
  }

  /** The settings changed, or the folders: everything is looked at anew. */
  refreshAll(): void {
    for (const project of this.session.allProjects()) project.unsettle();
    this.touch([...new Set([...this.allReported(), ...this.published.keys()])]);
  }

  private workspaceItem(path: string, previous: string | undefined): WorkspaceDocumentDiagnosticReport {
    const { id, items } = this.report(path);
    this.session.settle(path);
    const open = this.session.documents.ofPath(path);
    const base = { uri: this.uriOf(path), version: open?.version ?? null, resultId: id };
    return id === previous ? { kind: 'unchanged', ...base } : { kind: 'full', ...base, items: [...items] };
  }

  /** One file after another, the open documents first, letting messages in between. */
  private async work(): Promise<void> {
    this.isAtWork = true;
    let since = 0;
    for (;;) {
      if (Date.now() - since > slice) {
        await pause();
        since = Date.now();
      }
      const next = this.nextWaiting();
      if (next === undefined) break;
      try {
        this.publish(next);
        this.session.settle(next);
      } catch (error) {
        this.faults.report('diagnostics', error);
      }
    }
    this.isAtWork = false;
  }

  private nextWaiting(): string | undefined {
    for (const set of [this.waiting.open, this.waiting.closed])
      for (const path of set) {
        set.delete(path);
        return path;
      }
    return undefined;
  }

  private publish(path: string): void {
    const { items, json } = this.isReported(path) ? this.report(path) : nothing;
    const open = this.session.documents.ofPath(path);
    if (!open && json === (this.published.get(path) ?? nothing.json)) return;
    if (items.length === 0 && !open) this.published.delete(path);
    else this.published.set(path, json);
    const uri = this.uriOf(path);
    const params = { uri, diagnostics: [...items], ...(open && { version: open.version }) };
    const sent = this.client.units === 'utf-16' ? params : inBytes(params, uri, (at) => this.session.lineTexts(at));
    unanswered(this.connection.sendDiagnostics(sent));
  }

  /** Several changes in a row are one question; a client that refuses is not asked to explain. */
  private async askForPulls(): Promise<void> {
    if (this.isAtWork) return;
    this.isAtWork = true;
    await pause();
    this.isAtWork = false;
    const { refresh } = this.client;
    const asked = [
      ...(refresh.diagnostics ? [DiagnosticRefreshRequest.type] : []),
      ...(refresh.hints ? [InlayHintRefreshRequest.type] : []),
      ...(refresh.lenses ? [CodeLensRefreshRequest.type] : []),
    ];
    for (const type of asked) unanswered(this.connection.sendRequest(type));
  }

  private report(path: string): Report {
    const settled = this.session.isSettled(path) ? this.reports.get(path) : undefined;
    if (settled) return settled;
    const items = this.found(path);
    if (items === null) return nothing;
    const json = JSON.stringify(items);
    const known = this.reports.get(path);
    if (known?.json === json) return known;
    this.count += 1;
    const report = { id: String(this.count), items, json };
    this.reports.set(path, report);
    return report;
  }

  /** Null where there is no such file. */
  private found(path: string): readonly Diagnostic[] | null {
    const analysis = this.session.analysisAt(path);
    if (analysis) {
      this.faults.reportAll(analysis.checked.faults);
      return diagnostics(analysis, this.client.diagnostics);
    }
    const why = this.session.documents.ofPath(path) ? this.session.whyUnread(path) : null;
    return why === null ? null : [unread(why)];
  }

  /** Open documents always; others where they lie in a workspace folder and the settings want them. */
  private isReported(path: string): boolean {
    if (this.session.documents.ofPath(path)) return true;
    return this.session.settings.diagnostics.workspace && this.session.isInFolder(path);
  }

  private allReported(): readonly string[] {
    const paths = this.session.allProjects().flatMap((project) => project.paths());
    return paths.filter((path) => this.isReported(path));
  }

  private encodedItems(items: WorkspaceDocumentDiagnosticReport[]): WorkspaceDocumentDiagnosticReport[] {
    return this.client.units === 'utf-16' ? items : inBytes(items, '', (at) => this.session.lineTexts(at));
  }

  private uriOf(path: string): string {
    return this.session.documents.ofPath(path)?.uri ?? uriOf(path);
  }
}

const nothing: Report = { id: '0', items: [], json: '[]' };

const partial = new ProgressType<WorkspaceDiagnosticReportPartialResult>();

/** What the client makes of it is its own affair, as is a connection that is closing. */
const unanswered = (sent: Promise<unknown>): void => void sent.catch(() => undefined);

/** At the start of a document that is not read. */
const unread = (why: string): Diagnostic => ({
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: DiagnosticSeverity.Error,
  source: 'nappe',
  message: `This file is not read: ${why}.`,
});

/** Milliseconds of work between two looks at the messages. */
const slice = 12;

function previousIds(value: unknown): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  for (const one of Array.isArray(value) ? value : []) {
    const { uri, value: id } = record(one);
    if (typeof uri === 'string' && typeof id === 'string') ids.set(pathOf(uri), id);
  }
  return ids;
}
