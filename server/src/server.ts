/** The server at work: documents in, answers out; which feature answers which method stands in one table. */
import {
  type CancellationToken,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  ErrorCodes,
  LSPErrorCodes,
  ResponseError,
} from 'vscode-languageserver';
import type { Client } from './client.ts';
import { inBytes, isPosition, toUtf16 } from './encoding.ts';
import { Faults } from './faults.ts';
import type { Host } from './host.ts';
import { Notifications } from './notifications.ts';
import { isRange, record, uriIn } from './params.ts';
import { Publisher } from './publisher.ts';
import { type Answering, requests } from './requests.ts';
import { Session } from './session.ts';
import { settingsFrom } from './settings.ts';

export interface Server {
  initialized(): Promise<void>;
  request(method: string, params: unknown, token: CancellationToken): Promise<unknown>;
  notify(method: string, params: unknown): Promise<void>;
}

/** `kept`: how many files a project may have before of the closed ones only the reports are kept. */
export function createServer(connection: Connection, host: Host, client: Client, kept?: number): Server {
  return new WorkingServer(connection, host, client, kept);
}

class WorkingServer implements Server {
  private readonly faults: Faults;
  private readonly session: Session;
  private readonly publisher: Publisher;
  private readonly notifications: Notifications;
  private readonly answering: Answering;

  constructor(
    private readonly connection: Connection,
    host: Host,
    private readonly client: Client,
    kept: number | undefined,
  ) {
    this.faults = new Faults(connection);
    this.session = new Session(host, () => client.units, kept);
    this.session.settings = settingsFrom(client.options.settings);
    this.session.setFolders(client.folders);
    this.publisher = new Publisher(connection, this.session, client, this.faults);
    this.notifications = new Notifications(connection, this.session, client, host, this.publisher, this.faults);
    this.answering = { session: this.session, client, connection, publisher: this.publisher };
  }

  async initialized(): Promise<void> {
    await this.guarded('registration', () => this.register());
    await this.guarded('configuration', () => this.notifications.configure());
    await this.guarded('indexing', () => this.notifications.indexFolders());
  }

  /** A client that refuses costs what it refuses, no more. */
  private async guarded(part: string, work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      this.faults.report(part, error);
    }
  }

  /** A feature that breaks answers nothing and is told once; bad parameters and a cancellation are answered as such. */
  async request(method: string, params: unknown, token: CancellationToken): Promise<unknown> {
    const answer = requests[method];
    if (!answer) throw new ResponseError(ErrorCodes.MethodNotFound, `there is no method ${method}`);
    if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
    try {
      const result = await answer(this.answering, this.fromClient(params), token);
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
      return this.toClient(result ?? null, params);
    } catch (error) {
      if (error instanceof ResponseError) throw error;
      this.faults.report(method, error);
      return null;
    }
  }

  async notify(method: string, params: unknown): Promise<void> {
    try {
      await this.notifications.take(method, params);
    } catch (error) {
      if (!(error instanceof ResponseError)) this.faults.report(method, error);
    }
  }

  /** Positions as UTF-16, where the client counts bytes. */
  private fromClient(params: unknown): unknown {
    if (this.client.units === 'utf-16' || typeof params !== 'object' || params === null) return params;
    const uri = safeUri(params);
    if (uri === null) return params;
    const lineText = this.session.lineTexts(uri);
    const position = (value: unknown) => (isPosition(value) ? toUtf16(value, lineText) : value);
    const { position: at, range, positions, context } = record(params);
    return {
      ...params,
      ...(at !== undefined && { position: position(at) }),
      ...(isRange(range) && { range: { start: position(range.start), end: position(range.end) } }),
      ...(Array.isArray(positions) && { positions: positions.map(position) }),
      ...(hasDiagnostics(context) && {
        context: {
          ...context,
          diagnostics: context.diagnostics.map((one: unknown) => {
            const { range: place } = record(one);
            return isRange(place) ? { ...record(one), range: { start: position(place.start), end: position(place.end) } } : one;
          }),
        },
      }),
    };
  }

  private toClient(result: unknown, params: unknown): unknown {
    return this.client.units === 'utf-16' ? result : inBytes(result, safeUri(params) ?? '', (uri) => this.session.lineTexts(uri));
  }

  private async register(): Promise<void> {
    const { client } = this.connection;
    if (this.client.registersConfiguration) await client.register(DidChangeConfigurationNotification.type, { section: 'nappe' });
    if (this.client.registersWatchers)
      await client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: '**/*.{nappe,md,markdown}' }],
      });
  }
}

function safeUri(params: unknown): string | null {
  try {
    return uriIn(params);
  } catch {
    return null;
  }
}

const hasDiagnostics = (value: unknown): value is { readonly diagnostics: readonly unknown[] } =>
  typeof value === 'object' && value !== null && 'diagnostics' in value && Array.isArray(value.diagnostics);
