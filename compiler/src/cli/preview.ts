/** `nappe preview`: a page on the loopback address that is drawn anew as the file, or what it takes from, is saved. */
import { type FSWatcher, watch } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, relative } from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import type { Workspace } from '../resolve/workspace.ts';
import { UsageError } from './failure.ts';
import { readText, realPathWithin, slashed } from './files.ts';
import { shownPath, values, workspaceOf } from './formula.ts';
import { type PreviewOptions, previewHtml, previewMain, previewPart, previewScript } from './preview-page.ts';
import { isFormula, standardInput, targetOf } from './targets.ts';
import { complain, print } from './terminal.ts';

interface Options {
  readonly port: number;
  readonly with?: readonly string[];
  readonly for?: string;
}

export function define(command: Command): void {
  command
    .argument('<file>', 'a formula file; others in its folder and below can be opened beside it')
    .option('--port <number>', 'the port to listen on; by default one that is free', portOf, 0)
    .option('--for <yield>', 'how much to make: "24 glasses", "2.4 kg"')
    .option('--with <values>', 'choice values, such as "cut, raspberry"; the others stay at their first', values)
    .addHelpText(
      'after',
      '\nOnly this computer can open the page, and nothing outside the folder of the file is shown. Ctrl-C ends it.',
    )
    .action(run);
}

function portOf(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65535) throw new InvalidArgumentError('a port is a number up to 65535.');
  return port;
}

/** The loopback address alone: no other computer can reach it. */
const address = '127.0.0.1';

/** Until it is interrupted. @throws UsageError, Unreadable */
async function run(file: string, options: Options): Promise<void> {
  if (file === standardInput) throw new UsageError('A preview needs a file that can be saved again; name one.');
  const target = targetOf(file);
  if (!isFormula(target.path))
    throw new UsageError(`${shownPath(target.path)} is no formula file; its name should end in .nappe.`);
  readText(target.path);
  const preview = new Preview(workspaceOf(target), dirname(target.path), {
    with: options.with ?? [],
    ...(options.for !== undefined && { for: options.for }),
  });
  const port = await preview.listen(options.port);
  const path = encodeURI(relative(dirname(target.path), target.path));
  print(`http://${address}:${port}/${path}\n`);
  complain('open this address in a browser; Ctrl-C ends the preview.');
  await interrupted();
  preview.end();
}

/** One of the usual ways to be told to stop. */
const interrupted = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });

class Preview {
  private readonly server: Server;
  private readonly listeners = new Set<ServerResponse>();
  private readonly watchers = new Map<string, FSWatcher>();
  private waiting: NodeJS.Timeout | undefined;
  private hosts: readonly string[] = [];

  constructor(
    private readonly workspace: Workspace,
    private readonly folder: string,
    private readonly options: PreviewOptions,
  ) {
    this.server = createServer((request, response) => this.answer(request, response));
  }

  /** The port it listens on. @throws UsageError where that is taken */
  listen(wanted: number): Promise<number> {
    return new Promise((resolve, reject) => {
      this.server.once('error', ({ code }: NodeJS.ErrnoException) =>
        reject(
          new UsageError(
            code === 'EADDRINUSE'
              ? `port ${wanted} is taken; give another with --port.`
              : `port ${wanted} cannot be opened (${code}).`,
          ),
        ),
      );
      this.server.listen(wanted, address, () => {
        const { port } = this.server.address() as AddressInfo;
        this.hosts = [`${address}:${port}`, `localhost:${port}`];
        resolve(port);
      });
    });
  }

  end(): void {
    clearTimeout(this.waiting);
    for (const watcher of this.watchers.values()) watcher.close();
    for (const listener of this.listeners) listener.end();
    this.server.close();
    this.server.closeAllConnections();
  }

  private answer(request: IncomingMessage, response: ServerResponse): void {
    const refusal = this.refusal(request);
    const path = decoded(request.url ?? '/');
    if (refusal) send(response, refusal.status, 'text/plain', `${refusal.why}\n`);
    else if (path === '/preview.js') send(response, 200, 'text/javascript', previewScript);
    else if (path === '/events') this.listenTo(response);
    else this.show(path === null ? null : this.fileAt(path), request.headers.accept === 'text/x-main', response);
  }

  private show(file: string | null, partOnly: boolean, response: ServerResponse): void {
    if (file === null) {
      send(response, 404, 'text/plain', 'There is no such formula in this folder.\n');
      return;
    }
    const main = previewMain(this.workspace, file, this.options);
    this.watch(file);
    send(response, 200, 'text/html', partOnly ? previewPart(main) : previewHtml(shownPath(file), main, '/preview.js'));
  }

  /** A page of another site may send its requests here, or have a name of its own lead here: both are told by their headers. */
  private refusal({ method, headers }: IncomingMessage): { status: number; why: string } | null {
    if (!this.hosts.includes(headers.host ?? '')) return { status: 403, why: 'This preview answers to its own address only.' };
    const { origin } = headers;
    if (origin !== undefined && !this.hosts.some((host) => origin === `http://${host}`))
      return { status: 403, why: 'This preview does not answer the pages of others.' };
    const site = headers['sec-fetch-site'];
    if (site !== undefined && site !== 'same-origin' && site !== 'none')
      return { status: 403, why: 'This preview does not answer the pages of others.' };
    return method === 'GET' || method === 'HEAD' ? null : { status: 405, why: 'This preview can only be read.' };
  }

  /** The real path of a formula file in the folder or below it, links followed; null for anything else. */
  private fileAt(path: string): string | null {
    const below = path.slice(1);
    if (!isFormula(below) || below.split('/').some((part) => part.startsWith('.'))) return null;
    try {
      return slashed(realPathWithin(this.folder, below));
    } catch {
      return null;
    }
  }

  private listenTo(response: ServerResponse): void {
    response.writeHead(200, { ...safety, 'Content-Type': 'text/event-stream' });
    response.write(': listening\n\n');
    this.listeners.add(response);
    response.on('close', () => this.listeners.delete(response));
  }

  /** The folders of the file and of all it takes from: an editor may save by putting a new file in the old one's place. */
  private watch(file: string): void {
    for (const { path } of this.workspace.reachable(this.workspace.unit(file))) {
      const folder = dirname(path);
      if (this.watchers.has(folder)) continue;
      try {
        const watcher = watch(folder, () => this.changed());
        watcher.on('error', () => this.watchers.delete(folder));
        this.watchers.set(folder, watcher);
      } catch {
        complain(`${shownPath(folder)} cannot be watched; load the page again to see what was saved.`);
      }
    }
  }

  /** A save is several events within a moment. */
  private changed(): void {
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => {
      this.workspace.changed();
      for (const listener of this.listeners) listener.write('data: changed\n\n');
    }, 40);
  }
}

/** Nothing from elsewhere is loaded, and no other page may frame this one. */
const safety = {
  'Cache-Control': 'no-store',
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; connect-src 'self'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
} as const;

function send(response: ServerResponse, status: number, type: string, body: string): void {
  response.writeHead(status, { ...safety, 'Content-Type': `${type}; charset=utf-8` });
  response.end(body);
}

function decoded(url: string): string | null {
  try {
    const path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? '');
    return path.startsWith('/') && !path.includes('\0') ? path : null;
  } catch {
    return null;
  }
}
