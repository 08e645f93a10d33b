/** The same core in a browser's worker: nothing of Node at hand, files by way of the client. */
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';

const files = new Map([
  ['vscode-vfs://github/school/course/lesson.nappe', 'take base from "base.nappe"\nformula A\n  10 g  base\n  mix base, wine\n'],
  ['vscode-vfs://github/school/course/base.nappe', 'component base\n  10 g  water\n  boil for 2 min\n'],
]);

/** A client on the other end of a channel, as a page is to its worker. */
class Page {
  readonly said: { method?: string; params?: unknown }[] = [];
  private readonly open = new Map<number, (message: { result?: unknown; error?: unknown }) => void>();
  private count = 0;

  constructor(private readonly port: MessagePort) {
    port.onmessage = ({ data }) => {
      if (data.method === undefined) this.open.get(data.id)?.(data);
      else if (data.id === undefined) this.said.push(data);
      else port.postMessage({ jsonrpc: '2.0', id: data.id, result: this.answer(data.method, data.params) });
    };
  }

  request<T>(method: string, params: unknown): Promise<T> {
    this.count += 1;
    const id = this.count;
    this.port.postMessage({ jsonrpc: '2.0', id, method, params });
    return new Promise((resolve, reject) =>
      this.open.set(id, ({ result, error }) => (error ? reject(error) : resolve(result as T))),
    );
  }

  notify(method: string, params: unknown): void {
    this.port.postMessage({ jsonrpc: '2.0', method, params });
  }

  async until(isThere: () => boolean): Promise<void> {
    while (!isThere()) await new Promise((resolve) => setTimeout(resolve, 10));
  }

  private answer(method: string, params: unknown): unknown {
    if (method === 'nappe/files') return { uris: [...files.keys()] };
    if (method === 'nappe/file') return { text: files.get((params as { uri: string }).uri) ?? null };
    return null;
  }
}

const { port1, port2 } = new MessageChannel();
let page: Page;

beforeAll(async () => {
  const { outputFiles } = await build({
    stdin: {
      contents: "import { startOn } from './server/src/browser.ts'; startOn(port);",
      resolveDir: fileURLToPath(new URL('../..', import.meta.url)),
      loader: 'ts',
    },
    bundle: true,
    write: false,
    platform: 'browser',
    conditions: ['worker'],
    format: 'iife',
    target: 'es2022',
    logLevel: 'error',
  });
  const offered = ['setTimeout', 'clearTimeout', 'console', 'TextEncoder', 'TextDecoder', 'URL', 'queueMicrotask'] as const;
  const scope = { port: port2, self: {}, ...Object.fromEntries(offered.map((name) => [name, globalThis[name]])) };
  runInContext(outputFiles[0]?.text ?? '', createContext(scope));
  page = new Page(port1);
  await page.request('initialize', {
    processId: null,
    rootUri: null,
    workspaceFolders: [{ uri: 'vscode-vfs://github/school/course', name: 'course' }],
    capabilities: { textDocument: { publishDiagnostics: {} }, window: { workDoneProgress: true } },
    initializationOptions: { files: true },
  });
  page.notify('initialized', {});
});

afterAll(() => {
  port1.close();
  port2.close();
});

test('finds the workspace’s files by way of the client, and checks them', async () => {
  const published = (uri: string) =>
    page.said.find(
      ({ method, params }) => method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri === uri,
    );
  const uri = 'vscode-vfs://github/school/course/lesson.nappe';
  await page.until(() => published(uri) !== undefined);
  const { diagnostics = [] } = (published(uri)?.params ?? {}) as { diagnostics?: { code: string }[] };
  expect(diagnostics.map(({ code }) => code)).toEqual(['unknown-name']);
});

test('answers like the other one', async () => {
  const uri = 'vscode-vfs://github/school/course/lesson.nappe';
  page.notify('textDocument/didOpen', {
    textDocument: { uri, languageId: 'nappe', version: 1, text: files.get(uri)?.replace(', wine', '') },
  });
  const report = await page.request<{ items: unknown[] }>('textDocument/diagnostic', { textDocument: { uri } });
  expect(report.items).toEqual([]);
  const [definition] = await page.request<{ uri: string }[]>('textDocument/definition', {
    textDocument: { uri },
    position: { line: 0, character: 6 },
  });
  expect(definition?.uri).toBe('vscode-vfs://github/school/course/base.nappe');
  const card = await page.request<{ html: string }>('nappe/card', { uri });
  expect(card.html).toMatch(/^<!doctype html>/i);
});

test('hears of a changed file by asking for it again', async () => {
  const uri = 'vscode-vfs://github/school/course/base.nappe';
  files.set(uri, 'component other\n  10 g  water\n');
  page.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
  const lesson = 'vscode-vfs://github/school/course/lesson.nappe';
  await page.until(() =>
    page.said.some(
      ({ method, params }) =>
        method === 'textDocument/publishDiagnostics' &&
        (params as { uri: string }).uri === lesson &&
        JSON.stringify(params).includes('import-missing'),
    ),
  );
});
