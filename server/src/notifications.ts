/** What the client tells: documents opened, changed and closed, files changed outside, folders, settings. */
import {
  type CancellationToken,
  type Connection,
  MessageType,
  ShowMessageNotification,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver';
import type { Client } from './client.ts';
import type { Faults } from './faults.ts';
import { type Host, mostFiles } from './host.ts';
import { invalid, record, textIn, uriIn } from './params.ts';
import { pause } from './pause.ts';
import type { Publisher } from './publisher.ts';
import { isFormulaFile, type Session } from './session.ts';
import { settingsFrom } from './settings.ts';
import { pathOf } from './uris.ts';

export class Notifications {
  private indexing: { isCancelled: boolean } | null = null;

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly client: Client,
    private readonly host: Host,
    private readonly publisher: Publisher,
    private readonly faults: Faults,
  ) {}

  async take(method: string, params: unknown): Promise<void> {
    switch (method) {
      case 'textDocument/didOpen':
        return this.opened(params);
      case 'textDocument/didChange':
        return this.changed(params);
      case 'textDocument/didClose':
        return this.closed(params);
      case 'workspace/didChangeWatchedFiles':
        return this.watched(params);
      case 'workspace/didChangeConfiguration':
        return this.configure(params);
      case 'workspace/didChangeWorkspaceFolders':
        return this.folders(params);
    }
  }

  /** From the client where it gives settings when asked, else from what it sent. */
  async configure(params?: unknown): Promise<void> {
    const sent = params === undefined ? undefined : record(record(params).settings ?? {}).nappe;
    const settings = this.client.configuration ? await this.connection.workspace.getConfiguration('nappe') : sent;
    if (settings === undefined || settings === null) return;
    this.session.settings = settingsFrom(settings);
    if (params !== undefined) this.publisher.refreshAll();
  }

  /** Finds the files of every folder, showing how far it is; a later call ends an earlier one. */
  async indexFolders(): Promise<void> {
    if (this.indexing) this.indexing.isCancelled = true;
    const own = { isCancelled: false };
    this.indexing = own;
    for (const root of this.session.roots) await this.indexFolder(root, own);
  }

  private async indexFolder(root: string, own: { isCancelled: boolean }): Promise<void> {
    const progress = this.client.progress ? await this.connection.window.createWorkDoneProgress().catch(() => null) : null;
    const token: CancellationToken | undefined = progress?.token;
    const isCancelled = () => own.isCancelled || token?.isCancellationRequested === true;
    progress?.begin('Nappe', 0, 'finding formulas', true);
    try {
      const step = async (done: number, of: number) => {
        progress?.report(Math.round((100 * done) / of), `${done} of ${of} files`);
        await pause();
      };
      const { fresh, isCut } = await this.session.index(root, anyDepth, isCancelled, step);
      if (isCut) await this.warn(tooMany);
      this.publisher.touch(fresh);
    } catch (error) {
      this.faults.report('indexing', error);
    } finally {
      progress?.done();
    }
  }

  private warn(message: string): Promise<void> {
    return this.connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message });
  }

  private async opened(params: unknown): Promise<void> {
    const { textDocument } = record(params);
    const { languageId, version } = record(textDocument);
    const uri = uriIn(params);
    const text = textIn(textDocument, 'text');
    const { path } = this.session.documents.open(
      uri,
      String(languageId ?? 'nappe'),
      typeof version === 'number' ? version : 0,
      text,
    );
    this.publisher.touch(this.session.changed(path), path);
    if (this.session.isInFolder(path) || path.startsWith('/untitled:')) return;
    // A lone file: the files beside it may be its bases.
    const folder = path.slice(0, path.lastIndexOf('/'));
    const { fresh } = await this.session.index(folder, 1, () => false, pause);
    if (fresh.length > 0) this.publisher.touch([path, ...fresh]);
  }

  private changed(params: unknown): void {
    const { textDocument, contentChanges } = record(params);
    const { version } = record(textDocument);
    const uri = uriIn(params);
    if (!Array.isArray(contentChanges)) throw invalid('contentChanges is missing');
    const changes = contentChanges.filter(
      (one): one is TextDocumentContentChangeEvent => typeof one === 'object' && one !== null && typeof one.text === 'string',
    );
    const document = this.session.documents.change(uri, typeof version === 'number' ? version : 0, changes);
    if (document) this.publisher.touch(this.session.changed(document.path), document.path);
  }

  /** From now on the file on disk counts, if there is one. */
  private async closed(params: unknown): Promise<void> {
    const document = this.session.documents.close(uriIn(params));
    if (!document) return;
    this.session.tokens.drop(document.path);
    await this.host.refresh?.([document.path]);
    this.publisher.touch(this.session.changed(document.path), document.path);
  }

  private async watched(params: unknown): Promise<void> {
    const { changes } = record(params);
    if (!Array.isArray(changes)) throw invalid('changes is missing');
    const paths = [...new Set(changes.map((change) => pathOf(textIn(change, 'uri'))))].filter(isFormulaFile);
    await this.host.refresh?.(paths);
    const touched = new Set<string>();
    let since = Date.now();
    for (const path of paths) {
      // What the editor has open counts, whatever happens on disk.
      if (this.session.documents.ofPath(path)) continue;
      for (const other of this.session.changed(path)) touched.add(other);
      if (Date.now() - since > 12) {
        await pause();
        since = Date.now();
      }
    }
    this.publisher.touch([...touched]);
  }

  private async folders(params: unknown): Promise<void> {
    const { added, removed } = record(record(params).event);
    const gone = new Set(folderUris(removed).map(pathOf));
    const kept = this.session.folderUris.filter((uri) => !gone.has(pathOf(uri)));
    this.session.setFolders([...new Set([...kept, ...folderUris(added)])]);
    this.publisher.refreshAll();
    await this.indexFolders();
  }
}

/** As deep as the command line walks. */
const anyDepth = 64;

const tooMany = `This folder holds more than ${mostFiles.toLocaleString('en')} files of formulas and Markdown: so many are looked through for faults, the others when they are opened.`;

const folderUris = (value: unknown): readonly string[] => (Array.isArray(value) ? value.map((one) => textIn(one, 'uri')) : []);
