/** The server without a process: the same code from the table of requests inward, over files in memory. */
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { ResponseError } from 'vscode-languageserver';
import { clientOf } from '../../server/src/client.ts';
import type { Host } from '../../server/src/host.ts';
import { createServer, type Server } from '../../server/src/server.ts';
import { fullCapabilities } from './client.ts';

/** Every answer of one server, and whatever it logged as broken. */
export class InProcess {
  readonly faults: string[] = [];
  /** Notifications it sent. */
  readonly told: { readonly method: string; readonly params: unknown }[] = [];
  private readonly server: Server;

  /** `files` are those on disk, by path below `/work`; `kept` as for `createServer`. */
  constructor(files: ReadonlyMap<string, string>, kept?: number) {
    const client = clientOf({
      processId: null,
      rootUri: 'file:///work',
      workspaceFolders: [{ uri: 'file:///work', name: 'work' }],
      capabilities: { ...fullCapabilities, textDocument: { ...fullCapabilities.textDocument, diagnostic: {} } } as never,
    });
    const host: Host = {
      read(_root, path) {
        const text = files.get(path);
        return text === undefined ? { refused: 'missing', why: 'there is no such file' } : { text };
      },
      list: async () => [...files.keys()],
      rootOf: () => '/work',
    };
    const done = Promise.resolve(undefined);
    const connection = {
      console: { error: (text: string) => this.faults.push(text) },
      sendNotification: (type: string | { readonly method: string }, params: unknown) => {
        this.told.push({ method: typeof type === 'string' ? type : type.method, params });
        return done;
      },
      sendDiagnostics: () => done,
      sendRequest: () => done,
      sendProgress: () => done,
      client: { register: () => done },
      workspace: { getConfiguration: () => done },
      window: { createWorkDoneProgress: async () => ({ begin() {}, report() {}, done() {}, token: never }) },
    };
    this.server = createServer(connection as unknown as Connection, host, client, kept);
  }

  index(): Promise<void> {
    return this.server.initialized();
  }

  notify(method: string, params: unknown): Promise<void> {
    return this.server.notify(method, params);
  }

  /** The answer, or the refusal as `{ refused }`. */
  async ask(method: string, params: unknown): Promise<unknown> {
    try {
      return await this.server.request(method, params, never);
    } catch (error) {
      if (error instanceof ResponseError) return { refused: error.message };
      throw error;
    }
  }
}

const never: CancellationToken = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose() {} }) };
