/** A plain JSON-RPC client over the server's standard input and output: no language-client library between a test and the bytes. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const repository = fileURLToPath(new URL('../..', import.meta.url));

let bundled: Promise<string> | undefined;

/** The server from the source as it is now, in one file: never a stale build. */
export function serverFile(): Promise<string> {
  bundled ??= (async () => {
    const outfile = join(mkdtempSync(join(tmpdir(), 'nappe-server-')), 'server.js');
    await build({
      absWorkingDir: repository,
      entryPoints: ['server/src/node.ts'],
      bundle: true,
      platform: 'node',
      format: 'cjs',
      target: 'node20',
      outfile,
      logLevel: 'error',
    });
    return outfile;
  })();
  return bundled;
}

export interface Message {
  readonly jsonrpc: '2.0';
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export class ResponseFailed extends Error {
  constructor(
    readonly code: number,
    message: string,
  ) {
    super(message);
  }
}

type Answerer = (params: unknown) => unknown;

export class Client {
  /** Everything the server said of its own accord, in order. */
  readonly notifications: Message[] = [];
  readonly stderr: string[] = [];
  private readonly answers = new Map<string, Answerer>();
  private readonly open = new Map<number | string, { resolve(value: unknown): void; reject(error: Error): void }>();
  private readonly waiting: { isIt(message: Message): boolean; resolve(message: Message): void }[] = [];
  private readonly process: ChildProcessWithoutNullStreams;
  private buffer = Buffer.alloc(0);
  private count = 0;
  readonly exited: Promise<number | null>;

  constructor(command: readonly string[]) {
    const [program = '', ...words] = command;
    this.process = spawn(program, words, { stdio: 'pipe' });
    this.process.stdout.on('data', (chunk: Buffer) => this.read(chunk));
    this.process.stderr.on('data', (chunk: Buffer) => this.stderr.push(chunk.toString()));
    this.exited = new Promise((resolve) => this.process.on('exit', resolve));
    void this.exited.then((code) => {
      for (const { reject } of this.open.values()) reject(new Error(`the server ended with ${code}: ${this.stderr.join('')}`));
    });
    this.answer('workspace/configuration', () => [null]);
    for (const method of [
      'client/registerCapability',
      'window/workDoneProgress/create',
      'workspace/diagnostic/refresh',
      'workspace/inlayHint/refresh',
      'workspace/codeLens/refresh',
    ])
      this.answer(method, () => null);
  }

  /** The server's process. */
  get pid(): number | undefined {
    return this.process.pid;
  }

  /** How the client answers a request of the server. */
  answer(method: string, answerer: Answerer): void {
    this.answers.set(method, answerer);
  }

  request<T = unknown>(method: string, params?: unknown): Promise<T> & { readonly id: number } {
    this.count += 1;
    const id = this.count;
    const promise = new Promise((resolve, reject) => this.open.set(id, { resolve, reject }));
    this.send({ jsonrpc: '2.0', id, method, params });
    return Object.assign(promise as Promise<T>, { id });
  }

  notify(method: string, params?: unknown): void {
    this.send({ jsonrpc: '2.0', method, params });
  }

  /** The next message that fits, of those not yet waited for as well. */
  next(isIt: (message: Message) => boolean): Promise<Message> {
    return new Promise((resolve) => this.waiting.push({ isIt, resolve }));
  }

  /** Bytes as they are, for what no client should send. */
  sendRaw(text: string): void {
    this.process.stdin.write(text);
  }

  async stop(): Promise<number | null> {
    await this.request('shutdown');
    this.notify('exit');
    return this.exited;
  }

  kill(): void {
    this.process.kill();
  }

  private send(message: Message): void {
    const body = Buffer.from(JSON.stringify(message));
    this.process.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.process.stdin.write(body);
  }

  private read(chunk: Buffer): void {
    this.buffer = Buffer.concat([this.buffer, chunk]);
    for (;;) {
      const end = this.buffer.indexOf('\r\n\r\n');
      if (end < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.buffer.subarray(0, end).toString())?.[1]);
      if (this.buffer.length < end + 4 + length) return;
      const body = this.buffer.subarray(end + 4, end + 4 + length).toString();
      this.buffer = this.buffer.subarray(end + 4 + length);
      this.take(JSON.parse(body) as Message);
    }
  }

  private take(message: Message): void {
    if (message.method === undefined) {
      const asked = this.open.get(message.id ?? -1);
      this.open.delete(message.id ?? -1);
      if (message.error) asked?.reject(new ResponseFailed(message.error.code, message.error.message));
      else asked?.resolve(message.result);
      return;
    }
    if (message.id !== undefined) {
      const answer = this.answers.get(message.method);
      const reply = replyOf(answer, message);
      this.send({ jsonrpc: '2.0', id: message.id, ...reply });
    } else this.notifications.push(message);
    const at = this.waiting.findIndex(({ isIt }) => isIt(message));
    if (at >= 0) this.waiting.splice(at, 1)[0]?.resolve(message);
  }
}

/** What it gives, or that it refuses. */
function replyOf(answer: Answerer | undefined, { method, params }: Message): object {
  try {
    return answer ? { result: answer(params) } : { error: { code: -32601, message: `no ${method}` } };
  } catch (error) {
    return { error: { code: -32603, message: String(error) } };
  }
}

/** A client that can do everything a present editor can. */
export const fullCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  window: { workDoneProgress: true },
  workspace: {
    workspaceFolders: true,
    configuration: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename', 'delete'] },
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
  },
  textDocument: {
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
    codeAction: { disabledSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    publishDiagnostics: {
      relatedInformation: true,
      codeDescriptionSupport: true,
      tagSupport: { valueSet: [1, 2] },
      versionSupport: true,
    },
  },
};
