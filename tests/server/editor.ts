/** An editor with files in a folder of their own, for tests: opens, types, asks. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll } from 'vitest';
import { Client, fullCapabilities, serverFile } from './client.ts';
import { filesOf, type Marked, type Position } from './fixture.ts';

export interface Options {
  readonly capabilities?: object;
  readonly initializationOptions?: object;
  /** False: no folder is open. */
  readonly folder?: boolean;
  /** Files that are on disk but not open. */
  readonly closed?: readonly string[];
}

export class Editor {
  private readonly versions = new Map<string, number>();
  private readonly texts = new Map<string, string>();
  /** Where this fixture's notifications begin. */
  private readonly from: number;
  result: { readonly capabilities: Record<string, unknown> } = { capabilities: {} };

  constructor(
    readonly client: Client,
    readonly root: string,
    readonly files: ReadonlyMap<string, Marked>,
    private readonly isShared: boolean,
  ) {
    this.from = client.notifications.length;
  }

  uri(name = 'main.nappe'): string {
    return pathToFileURL(join(this.root, name)).href;
  }

  file(name = 'main.nappe'): Marked {
    const file = this.files.get(name);
    if (!file) throw new Error(`no file ${name}`);
    return file;
  }

  cursor(name = 'main.nappe', index = 0): Position {
    const cursor = this.file(name).cursors[index];
    if (!cursor) throw new Error(`no cursor ${index} in ${name}`);
    return cursor;
  }

  text(name = 'main.nappe'): string {
    return this.texts.get(name) ?? this.file(name).text;
  }

  open(name = 'main.nappe', text = this.file(name).text): void {
    this.versions.set(name, 1);
    this.texts.set(name, text);
    const languageId = name.endsWith('.md') ? 'markdown' : 'nappe';
    this.client.notify('textDocument/didOpen', { textDocument: { uri: this.uri(name), languageId, version: 1, text } });
  }

  change(contentChanges: readonly object[], name = 'main.nappe'): void {
    const version = (this.versions.get(name) ?? 0) + 1;
    this.versions.set(name, version);
    this.client.notify('textDocument/didChange', { textDocument: { uri: this.uri(name), version }, contentChanges });
  }

  /** The whole text in place of what is there. */
  write(text: string, name = 'main.nappe'): void {
    this.texts.set(name, text);
    this.change([{ text }], name);
  }

  /** One place replaced, by its range. */
  replace(found: string, by: string, name = 'main.nappe'): void {
    const text = this.text(name);
    const at = text.indexOf(found);
    if (at < 0) throw new Error(`${found} does not stand in ${name}`);
    const position = (offset: number) => {
      const before = text.slice(0, offset).split('\n');
      return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
    };
    this.texts.set(name, text.slice(0, at) + by + text.slice(at + found.length));
    this.change([{ range: { start: position(at), end: position(at + found.length) }, text: by }], name);
  }

  close(name = 'main.nappe'): void {
    this.client.notify('textDocument/didClose', { textDocument: { uri: this.uri(name) } });
  }

  /** A request about a document, at its first cursor unless told otherwise. */
  ask<T = unknown>(method: string, more: object = {}, name = 'main.nappe'): Promise<T> {
    const [position] = this.files.get(name)?.cursors ?? [];
    return this.client.request<T>(method, { textDocument: { uri: this.uri(name) }, ...(position && { position }), ...more });
  }

  async diagnostics(name = 'main.nappe'): Promise<readonly Diagnostic[]> {
    const report = await this.ask<{ items: Diagnostic[] }>('textDocument/diagnostic', {}, name);
    return report.items;
  }

  /** As a file watcher would: 1 created, 2 changed, 3 deleted. */
  tellFiles(type: 1 | 2 | 3, names: readonly string[] = [...this.files.keys()]): void {
    this.client.notify('workspace/didChangeWatchedFiles', { changes: names.map((name) => ({ uri: this.uri(name), type })) });
  }

  notifications(method: string): readonly { readonly params?: unknown }[] {
    return this.client.notifications.slice(this.from).filter((message) => message.method === method);
  }

  async stop(): Promise<void> {
    if (this.isShared) {
      for (const name of this.versions.keys()) this.close(name);
      rmSync(this.root, { recursive: true, force: true });
      this.tellFiles(3);
      return;
    }
    const code = await this.client.stop();
    rmSync(this.root, { recursive: true, force: true });
    if (code !== 0) throw new Error(`the server ended with ${code}`);
  }

  /** What the server logged as broken. */
  faults(): readonly unknown[] {
    return this.client.notifications
      .filter(({ method, params }) => method === 'window/logMessage' && (params as { type: number }).type === 1)
      .map(({ params }) => params);
  }
}

export interface Diagnostic {
  readonly range: { readonly start: Position; readonly end: Position };
  readonly severity: number;
  readonly code: string;
  readonly message: string;
  readonly tags?: readonly number[];
  readonly codeDescription?: { readonly href: string };
  readonly relatedInformation?: readonly {
    readonly location: { readonly uri: string; readonly range: { readonly start: Position } };
    readonly message: string;
  }[];
}

/**
 * Opens a fixture's files. Tests share one server as long as they ask for nothing special, each fixture in a folder of its own below
 * one workspace folder; what asks for other capabilities or options gets a server for itself.
 */
export async function edit(fixture: string, options: Options = {}): Promise<Editor> {
  const isShared = Object.keys(options).every((key) => key === 'closed');
  if (isShared) sharedServer ??= startShared();
  const parent = isShared ? await sharedServer : null;
  const root = parent ? join(parent.root, `fixture-${++fixtures}`) : realpathSync(mkdtempSync(join(tmpdir(), 'nappe-edit-')));
  const files = filesOf(fixture);
  for (const [name, { text }] of files) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
  const client = parent?.client ?? new Client([process.execPath, await serverFile(), '--stdio']);
  const editor = new Editor(client, root, files, parent !== null);
  if (parent) editor.tellFiles(1);
  else editor.result = await begin(client, root, options);
  for (const name of files.keys()) if (!options.closed?.includes(name)) editor.open(name);
  return editor;
}

let sharedServer: Promise<{ readonly client: Client; readonly root: string }> | undefined;
let fixtures = 0;

async function startShared(): Promise<{ client: Client; root: string }> {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'nappe-shared-')));
  const client = new Client([process.execPath, await serverFile(), '--stdio']);
  await begin(client, root, {});
  return { client, root };
}

afterAll(async () => {
  if (!sharedServer) return;
  const { client, root } = await sharedServer;
  const code = await client.stop();
  rmSync(root, { recursive: true, force: true });
  if (code !== 0) throw new Error(`the server ended with ${code}`);
});

/** `initialize` and `initialized`, as an editor with one folder open does. */
async function begin(client: Client, root: string, options: Options): Promise<Editor['result']> {
  const folder = { uri: pathToFileURL(root).href, name: 'work' };
  const result = await client.request<Editor['result']>('initialize', {
    processId: process.pid,
    rootUri: options.folder === false ? null : folder.uri,
    workspaceFolders: options.folder === false ? null : [folder],
    capabilities: options.capabilities ?? fullCapabilities,
    initializationOptions: options.initializationOptions ?? {},
  });
  client.notify('initialized', {});
  return result;
}
