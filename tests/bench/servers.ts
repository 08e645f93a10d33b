/** Language servers as an editor drives them: start, opening, one-character edits, hover, completion, formatting, memory. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Client } from '../server/client.ts';
import { type Figures, median, quantile } from './figures.ts';
import { checking } from './in-process.ts';
import { jsonOfLines, nappeOfLines, repository, typescriptOfLines, yamlOfLines } from './inputs.ts';

interface Kind {
  readonly name: string;
  readonly command: readonly string[];
  readonly uri: string;
  readonly languageId: string;
  readonly text: (lines: number) => string;
  /** Lines to edit and to ask about, the one nearest the middle: of one formula, so that sizes can be compared. */
  readonly line?: RegExp;
  /** Asks for diagnostics at once, where the server has a request of its own for it: what it publishes waits for a pause in typing. */
  readonly pull?: (client: Client, uri: string) => Promise<unknown>;
  readonly options: Readonly<Record<string, unknown>>;
}

const node = process.execPath;
const own: Kind = {
  name: 'nappe',
  command: [node, join(repository, 'server/dist/nappe-server.js'), '--stdio'],
  uri: 'file:///bench/a.nappe',
  languageId: 'nappe',
  text: nappeOfLines,
  line: /instant coffee/,
  options: {},
};
const json: Kind = {
  name: 'JSON',
  command: [node, join(repository, 'node_modules/vscode-json-languageserver/bin/vscode-json-languageserver'), '--stdio'],
  uri: 'file:///bench/a.json',
  languageId: 'json',
  text: jsonOfLines,
  options: { provideFormatter: true },
  pull: (client, uri) => client.request('json/validate', uri),
};
const yaml: Kind = {
  name: 'YAML',
  command: [node, join(repository, 'node_modules/yaml-language-server/bin/yaml-language-server'), '--stdio'],
  uri: 'file:///bench/a.yaml',
  languageId: 'yaml',
  text: yamlOfLines,
  options: {},
};
const typescript: Kind = {
  name: 'TypeScript 7',
  command: [node, join(repository, 'node_modules/typescript-native/bin/tsc'), '--lsp', '--stdio'],
  uri: 'file:///bench/a.ts',
  languageId: 'typescript',
  text: (lines) => typescriptOfLines(lines, 0),
  options: {},
};

const capabilities = {
  workspace: { configuration: true, workspaceFolders: true },
  textDocument: {
    diagnostic: {},
    hover: { contentFormat: ['markdown'] },
    completion: { completionItem: {} },
    publishDiagnostics: { versionSupport: true },
    synchronization: {},
  },
};

/** One server with one document. */
class Session {
  private version = 1;
  private lines: string[] = [];
  private middle = 0;
  private pulls = false;
  /** The request that lays the whole document out, of those the server knows. */
  layout: 'textDocument/formatting' | 'textDocument/rangeFormatting' | null = null;

  private constructor(
    private readonly kind: Kind,
    readonly client: Client,
  ) {}

  static async start(kind: Kind): Promise<{ session: Session; ms: number }> {
    const start = performance.now();
    const client = new Client(kind.command);
    client.answer('workspace/configuration', (params) => (params as { items: unknown[] }).items.map(() => null));
    const session = new Session(kind, client);
    const { capabilities: can } = await client.request<{
      capabilities: {
        diagnosticProvider?: unknown;
        documentFormattingProvider?: unknown;
        documentRangeFormattingProvider?: unknown;
      };
    }>('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities,
      initializationOptions: kind.options,
    });
    const ms = performance.now() - start;
    session.pulls = can.diagnosticProvider !== undefined;
    if (can.documentFormattingProvider) session.layout = 'textDocument/formatting';
    else if (can.documentRangeFormattingProvider) session.layout = 'textDocument/rangeFormatting';
    client.notify('initialized', {});
    return { session, ms };
  }

  async open(lines: number): Promise<number> {
    const text = this.kind.text(lines);
    this.lines = text.split('\n');
    this.middle = this.middleOf(this.lines);
    const { uri, languageId } = this.kind;
    const start = performance.now();
    const published = this.published();
    this.client.notify('textDocument/didOpen', { textDocument: { uri, languageId, version: this.version, text } });
    await this.diagnostics(published);
    return performance.now() - start;
  }

  /** Types one letter at the end of the middle line, or takes it back. */
  async edit(): Promise<number> {
    const line = this.middle;
    const character = this.lines[line]!.length;
    const typed = this.version % 2 === 1;
    this.version++;
    const { uri } = this.kind;
    // A letter would only break JSON and code; a space makes them as new.
    const range = typed
      ? { start: { line, character }, end: { line, character } }
      : { start: { line, character }, end: { line, character: character + 1 } };
    const published = this.published();
    const start = performance.now();
    this.client.notify('textDocument/didChange', {
      textDocument: { uri, version: this.version },
      contentChanges: [{ range, text: typed ? ' ' : '' }],
    });
    await this.diagnostics(published);
    return performance.now() - start;
  }

  async ask(method: string, more: object = {}): Promise<number> {
    const start = performance.now();
    await this.client.request(method, {
      textDocument: { uri: this.kind.uri },
      position: { line: this.middle, character: Math.max(0, this.lines[this.middle]!.length - 3) },
      ...more,
    });
    return performance.now() - start;
  }

  /** Of the lines the kind wants, or else of those that say something, the nearest to the middle. */
  private middleOf(lines: readonly string[]): number {
    const middle = lines.length >> 1;
    const nearest = (wanted: RegExp): number | undefined =>
      [...lines.keys()]
        .filter((line) => wanted.test(lines[line]!))
        .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0];
    return (this.kind.line && nearest(this.kind.line)) ?? nearest(/\w.*\w/) ?? 0;
  }

  private published(): Promise<unknown> | null {
    if (this.pulls || this.kind.pull) return null;
    return this.client.next(({ method }) => method === 'textDocument/publishDiagnostics');
  }

  private async diagnostics(published: Promise<unknown> | null): Promise<void> {
    if (this.kind.pull) await this.kind.pull(this.client, this.kind.uri);
    else if (published) await published;
    else await this.client.request('textDocument/diagnostic', { textDocument: { uri: this.kind.uri } });
  }

  /** MB. */
  memory(): number {
    return memoryOf(this.client.pid ?? 0) / 1000;
  }

  async stop(): Promise<void> {
    await Promise.race([this.client.stop().catch(() => null), new Promise((resolve) => setTimeout(resolve, 1000))]);
    this.client.kill();
  }
}

/** kB of a process and of those it started: a launcher may leave the work to another program. */
function memoryOf(pid: number): number {
  const own = Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
  const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean);
  return children.reduce((sum, child) => sum + memoryOf(Number(child)), own);
}

const sizes = [100, 500, 1000, 5000] as const;

export async function servers(figures: Figures): Promise<void> {
  for (const kind of [own, json, yaml, typescript]) {
    await starts(figures, kind);
    for (const lines of kind === yaml ? sizes.slice(0, 3) : sizes) await at(figures, kind, lines);
  }
  targets(figures);
}

async function starts(figures: Figures, kind: Kind): Promise<void> {
  const ms: number[] = [];
  for (let turn = 0; turn < 7; turn++) {
    const { session, ms: one } = await Session.start(kind);
    ms.push(one);
    await session.stop();
  }
  figures.put({ name: `${kind.name} server: start to initialize`, median: median(ms.slice(1)), unit: 'ms' });
}

async function at(figures: Figures, kind: Kind, lines: number): Promise<void> {
  const opened: number[] = [];
  for (let turn = 0; turn < 3; turn++) {
    const { session } = await Session.start(kind);
    opened.push(await session.open(lines));
    if (turn === 2) await asked(figures, kind, lines, session);
    await session.stop();
  }
  put(figures, kind, lines, 'open to diagnostics', opened);
}

async function asked(figures: Figures, kind: Kind, lines: number, session: Session): Promise<void> {
  const samples = { edit: [] as number[], hover: [] as number[], 'edit, then hover': [] as number[], completion: [] as number[] };
  const tried: (keyof typeof samples)[] = [];
  for (let turn = 0; turn < 60; turn++) {
    const edit = await session.edit();
    const hover = await session.ask('textDocument/hover');
    samples.edit.push(edit);
    samples.hover.push(hover);
    samples['edit, then hover'].push(edit + hover);
    samples.completion.push(await session.ask('textDocument/completion'));
  }
  tried.push('edit', 'hover', 'edit, then hover', 'completion');
  // The first dozen warm the program up.
  for (const name of tried) put(figures, kind, lines, name === 'edit' ? 'edit to diagnostics' : name, samples[name].slice(12));
  if (session.layout) await laidOut(figures, kind, lines, session);
  figures.put({ name: `${kind.name} server, ${count(lines)} lines: memory`, median: session.memory(), unit: 'MB' });
}

async function laidOut(figures: Figures, kind: Kind, lines: number, session: Session): Promise<void> {
  const layout: number[] = [];
  const whole = { start: { line: 0, character: 0 }, end: { line: lines, character: 0 } };
  const options = { options: { tabSize: 2, insertSpaces: true }, range: whole };
  for (let turn = 0; turn < 9; turn++) layout.push(await session.ask(session.layout ?? 'textDocument/formatting', options));
  put(figures, kind, lines, 'formatting', layout.slice(3));
}

const count = (lines: number): string => lines.toLocaleString('en');

function put(figures: Figures, kind: Kind, lines: number, what: string, ms: readonly number[]): void {
  figures.put({
    name: `${kind.name} server, ${count(lines)} lines: ${what}`,
    median: median(ms),
    p95: quantile(ms, 0.95),
    unit: 'ms',
  });
}

const editing =
  'an edit reads one block anew and runs its formula under every combination of its choices, each judged by some fifty rules.';
const asking =
  'half a millisecond in the middle of the row, at its end a collection of garbage left by the edit before; the other server has next to nothing to say there.';

function targets(figures: Figures): void {
  const p95 = (name: string): number => figures.all.find((one) => one.name === name)?.p95 ?? Number.NaN;
  const name = (kind: Kind, lines: number, what: string): string => `${kind.name} server, ${count(lines)} lines: ${what}`;
  const diagnosed = 'edit to diagnostics';
  figures.ratio(
    'server, start to initialize, of node -e 0',
    'nappe server: start to initialize',
    'node -e 0',
    2,
    'reading the compiled code and the connection’s library.',
  );
  figures.ratio(
    'opening 1,000 lines, of TypeScript 7',
    name(own, 1000, 'open to diagnostics'),
    name(typescript, 1000, 'open to diagnostics'),
    1,
    `all code runs for the first time; ${checking}`,
  );
  for (const lines of [1000, 5000]) {
    const value = p95(name(own, lines, diagnosed));
    figures.target(
      `edit to diagnostics p95, ${count(lines)} lines, of JSON’s`,
      value / p95(name(json, lines, diagnosed)),
      1.5,
      editing,
    );
    figures.target(
      `edit to diagnostics p95, ${count(lines)} lines, of TypeScript 7’s`,
      value / p95(name(typescript, lines, diagnosed)),
      1,
      editing,
    );
  }
  figures.ratio('edit to diagnostics, 5,000 lines of 500', name(own, 5000, diagnosed), name(own, 500, diagnosed), 1.3, editing);
  figures.target('edit, then hover p50, 1,000 lines, ms', figures.of(name(own, 1000, 'edit, then hover')), 5, editing);
  figures.ratio(
    'edit, then hover, 5,000 lines of 1,000',
    name(own, 5000, 'edit, then hover'),
    name(own, 1000, 'edit, then hover'),
    1.3,
    editing,
  );
  for (const what of ['hover', 'completion'])
    figures.target(`${what} p95, 1,000 lines, of JSON’s`, p95(name(own, 1000, what)) / p95(name(json, 1000, what)), 1, asking);
  figures.ratio(
    'formatting 1,000 lines, of JSON’s',
    name(own, 1000, 'formatting'),
    name(json, 1000, 'formatting'),
    1,
    'every line is laid out and compared.',
  );
  figures.ratio(
    'memory after 5,000 lines, of JSON’s',
    name(own, 5000, 'memory'),
    name(json, 5000, 'memory'),
    1,
    'what was worked out of the last 128 components is kept, so that an edit runs one of them.',
  );
}
