/** The server in a browser's worker: it starts, reads files by way of its client, and finds what the server of the desktop finds. */
import { fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from '../card/browser.ts';
import { root } from '../house/sources.ts';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: { readonly uri: string; readonly diagnostics: readonly object[] };
  readonly error?: object;
}

type Found = Readonly<Record<string, readonly object[]>>;

const server = join(root, 'extension/dist/server.cjs');
const folder = pathToFileURL(join(root, 'samples')).href;
const files: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(join(root, 'samples'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(nappe|md)$/.test(path))
    .map((path) => [`${folder}/${path.replaceAll('\\', '/')}`, readFileSync(join(root, 'samples', path), 'utf8')]),
);

const opened = Object.entries(files).map(([uri, text]) => ({
  method: 'textDocument/didOpen',
  params: { textDocument: { uri, languageId: uri.endsWith('.md') ? 'markdown' : 'nappe', version: 1, text } },
}));
const initialize = (inBrowser: boolean) => ({
  id: 1,
  method: 'initialize',
  params: {
    processId: null,
    rootUri: null,
    workspaceFolders: [{ uri: folder, name: 'samples' }],
    capabilities: { textDocument: { publishDiagnostics: { relatedInformation: true } } },
    initializationOptions: { files: inBrowser },
  },
});

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test('a worker in a browser gives the same diagnostics as the program on the desktop', async () => {
  const [there, here] = await Promise.all([inWorker(), onDesktop()]);
  expect(Object.keys(here).sort()).toEqual(Object.keys(files).sort());
  expect(Object.values(here).flat().length).toBeGreaterThan(50);
  expect(there).toEqual(here);
});

/** Milliseconds in which nothing more is published: then what was published last holds. */
const quiet = 1500;

/** The last diagnostics of each file. */
async function inWorker(): Promise<Found> {
  const page = await browser.newPage();
  const noise: string[] = [];
  page.on('pageerror', (error) => noise.push(error.message));
  page.on('request', (request) => {
    if (!/^(blob|about|data):/.test(request.url())) noise.push(request.url());
  });
  const found = await page.evaluate(
    async ({ source, first, rest, texts, wait }) => {
      let settled: ReturnType<typeof setTimeout> | undefined;
      const worker = new Worker(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })));
      const send = (message: object) => worker.postMessage({ jsonrpc: '2.0', ...message });
      const last: Record<string, readonly object[]> = {};
      return new Promise<Found>((resolve, reject) => {
        worker.onerror = ({ message }) => reject(new Error(message));
        worker.onmessage = ({ data }: MessageEvent<Message & { params: { uri: string; diagnostics: object[] } }>) => {
          if (data.error) reject(new Error(JSON.stringify(data.error)));
          else if (data.method === 'nappe/files') send({ id: data.id, result: { uris: Object.keys(texts) } });
          else if (data.method === 'nappe/file') send({ id: data.id, result: { text: texts[data.params.uri] ?? null } });
          else if (data.method === 'textDocument/publishDiagnostics') {
            last[data.params.uri] = data.params.diagnostics;
            clearTimeout(settled);
            if (Object.keys(last).length === Object.keys(texts).length) settled = setTimeout(() => resolve(last), wait);
          } else if (data.method !== undefined && data.id !== undefined) send({ id: data.id, result: null });
          else if (data.id === 1) for (const message of [{ method: 'initialized', params: {} }, ...rest]) send(message);
        };
        send(first);
      });
    },
    { source: readFileSync(server, 'utf8'), first: initialize(true), rest: opened, texts: files, wait: quiet },
  );
  expect(noise).toEqual([]);
  await page.close();
  return found;
}

function onDesktop(): Promise<Found> {
  let settled: ReturnType<typeof setTimeout> | undefined;
  const program = fork(server, ['--node-ipc']);
  const send = (message: object) => program.send({ jsonrpc: '2.0', ...message });
  const last: Record<string, readonly object[]> = {};
  return new Promise<Found>((resolve, reject) => {
    program.on('error', reject);
    program.on('message', (message: Message) => {
      if (message.error) reject(new Error(JSON.stringify(message.error)));
      else if (message.method === 'textDocument/publishDiagnostics' && message.params) {
        last[message.params.uri] = message.params.diagnostics;
        clearTimeout(settled);
        if (Object.keys(last).length === Object.keys(files).length) settled = setTimeout(() => resolve(last), quiet);
      } else if (message.method !== undefined && message.id !== undefined) send({ id: message.id, result: null });
      else if (message.id === 1) for (const one of [{ method: 'initialized', params: {} }, ...opened]) send(one);
    });
    send(initialize(false));
  }).finally(() => program.kill());
}
