/** No command and no server uses the network: run with every way out of Node watched. Only the preview listens, and on loopback alone. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { commands } from '../../compiler/src/cli/table.ts';
import { custard, folderWith, program, repository } from '../cli/nappe.ts';
import { Client, fullCapabilities } from '../server/client.ts';

const server = join(repository, 'server/dist/nappe-server.js');

/** Writes down what is tried, and refuses it; to listen is only written down. */
const hook = `
const note = (what) => require('node:fs').appendFileSync(process.env.TRIED, what + '\\n');
const refuse = (what) => function () { note(what); throw new Error(what + ' is not allowed'); };
const [net, dns, dgram, tls] = ['net', 'dns', 'dgram', 'tls'].map((name) => require('node:' + name));
net.Socket.prototype.connect = refuse('connect');
tls.connect = refuse('tls');
for (const one of [dns, dns.promises, dns.Resolver.prototype, dns.promises.Resolver.prototype])
  for (const name of ['lookup', 'lookupService', 'resolve', 'resolve4', 'resolve6', 'resolveAny', 'resolveTxt', 'reverse'])
    if (one[name]) {
      const asked = one[name];
      // An address of figures is no question to anybody: Node asks before it listens.
      one[name] = function (host, ...rest) { return net.isIP(host) ? asked.call(this, host, ...rest) : refuse('dns')(); };
    }
for (const name of ['send', 'bind', 'connect']) dgram.Socket.prototype[name] = refuse('udp');
for (const name of ['fetch', 'WebSocket', 'EventSource']) globalThis[name] = refuse(name);
const { listen } = net.Server.prototype;
net.Server.prototype.listen = function (...words) { note('listen ' + JSON.stringify(words.slice(0, 2))); return listen.apply(this, words); };
`;

let folder: string;
let watch: readonly string[];
beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'nappe-network-')));
  writeFileSync(join(folder, 'hook.cjs'), hook);
  watch = ['--require', join(folder, 'hook.cjs')];
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What was tried since the file was last read. */
function tried(): readonly string[] {
  const file = join(folder, 'tried');
  if (!existsSync(file)) return [];
  const lines = readFileSync(file, 'utf8').trim().split('\n');
  rmSync(file);
  return lines;
}

const env = () => ({ ...process.env, NO_COLOR: '1', TRIED: join(folder, 'tried') });

/** Everything in it asks for something from elsewhere. */
const files = {
  'package.json': '{}',
  'a.nappe': `take base from "https://example.org/base.nappe"\n${custard}  | ![x](https://example.org/x.png) [y](https://example.org/)\n`,
  'b.nappe': custard.replace('400 g', '401 g'),
  'a.md':
    '# A\n\n![x](https://example.org/x.png) ![y](//example.org/y.png)\n\n<img src="http://example.org/z.png">\n\n```nappe\ncard "https://example.org/base.nappe"\ncard "b.nappe"\nweigh-out "b.nappe"\ntimeline "b.nappe" ready 18:30\ncompare "a.nappe" with "b.nappe"\n```\n',
  'page.html':
    '<html><head><link rel="stylesheet" href="https://example.org/x.css"><script type="application/ld+json">{"@context":"https://schema.org","@type":"Recipe","name":"Tea cream","image":"https://example.org/x.png","recipeIngredient":["400 g cream"],"recipeInstructions":"Whip the cream."}</script></head></html>',
};

const runs: Readonly<Record<string, readonly string[]>> = {
  check: ['check', '.'],
  card: ['card', 'a.nappe', '--for', '2 kg'],
  handout: ['handout', 'a.md', '-o', 'a.html'],
  'weigh-out': ['weigh-out', 'b.nappe', '--to', 'html'],
  timeline: ['timeline', 'b.nappe', '--ready', '18:30'],
  compare: ['compare', 'a.nappe', 'b.nappe'],
  trace: ['trace', 'b.nappe'],
  label: ['label', 'b.nappe'],
  fmt: ['fmt', '--check'],
  explain: ['explain', 'custard-curdles'],
  draft: ['draft', 'page.html'],
  new: ['new', 'Tea', '--makes', '1 kg'],
  completion: ['completion', 'bash'],
};

test('the watch sees each way out', () => {
  for (const code of [
    "require('node:net').connect(9, '127.0.0.1')",
    "require('node:http').get('http://127.0.0.1:9/')",
    "require('node:https').get('https://127.0.0.1:9/')",
    "require('node:tls').connect(9, '127.0.0.1')",
    "require('node:dns').lookup('example.org', () => {})",
    "require('node:dns').promises.resolve4('example.org')",
    "require('node:dgram').createSocket('udp4').send('x', 9, '127.0.0.1')",
    "fetch('http://127.0.0.1:9/')",
    "new (require('node:worker_threads').Worker)('fetch(\"http://127.0.0.1:9/\")', { eval: true })",
    "require('node:net').createServer().listen(0, '127.0.0.1').unref()",
  ]) {
    spawnSync(process.execPath, [...watch, '-e', code], { env: env() });
    expect(tried().length, code).toBeGreaterThan(0);
  }
});

describe('commands', () => {
  test('all are tried here', () => {
    const all = commands.filter(({ hidden }) => !hidden).map(({ name }) => name);
    expect([...Object.keys(runs), 'preview'].sort()).toEqual([...all].sort());
  });

  test.each(Object.entries(runs))('%s goes nowhere, whatever the files name', (_, words) => {
    const { status, stderr } = spawnSync(process.execPath, [...watch, program, ...words], {
      cwd: folderWith(files),
      env: env(),
      encoding: 'utf8',
      input: '',
    });
    expect(tried()).toEqual([]);
    expect(status, stderr).not.toBeNull();
    expect(stderr).not.toContain('not allowed');
  });

  test('check of many files, in its workers', () => {
    const many = Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`${i}.nappe`, files['a.nappe']]));
    spawnSync(process.execPath, [...watch, program, 'check'], { cwd: folderWith(many), env: env() });
    expect(tried()).toEqual([]);
  });

  test('preview listens on loopback and goes nowhere', async () => {
    const child = spawn(process.execPath, [...watch, program, 'preview', 'a.nappe'], {
      cwd: folderWith(files),
      env: env(),
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    const url = await new Promise<string>((resolve) =>
      child.stdout.once('data', (data: Buffer) => resolve(data.toString().trim())),
    );
    const status = await new Promise((resolve) => get(url, (response) => resolve(response.resume().statusCode)));
    expect(status).toBe(200);
    expect(tried()).toEqual(['listen [0,"127.0.0.1"]']);
    // Other addresses of this machine are loopback too, but not the one it listens on.
    await expect(
      new Promise((resolve, reject) => get(url.replace('127.0.0.1', '127.0.0.2'), resolve).on('error', reject)),
    ).rejects.toThrow(/ECONNREFUSED/);
  });
});

describe('the language server', () => {
  test('speaks to its editor alone', async () => {
    const root = folderWith(files);
    process.env.TRIED = join(folder, 'tried');
    onTestFinished(() => {
      delete process.env.TRIED;
    });
    const client = new Client([process.execPath, ...watch, server, '--stdio']);
    onTestFinished(() => client.kill());
    const open = { uri: pathToFileURL(root).href, name: 'work' };
    await client.request('initialize', {
      processId: process.pid,
      rootUri: open.uri,
      workspaceFolders: [open],
      capabilities: fullCapabilities,
    });
    client.notify('initialized', {});
    for (const [name, languageId] of [
      ['a.nappe', 'nappe'],
      ['a.md', 'markdown'],
    ] as const) {
      const textDocument = { uri: pathToFileURL(join(root, name)).href };
      client.notify('textDocument/didOpen', { textDocument: { ...textDocument, languageId, version: 1, text: files[name] } });
      await client.request('textDocument/diagnostic', { textDocument });
      await client.request('textDocument/documentLink', { textDocument });
      await client.request('textDocument/hover', { textDocument, position: { line: 0, character: 12 } });
      await client.request('textDocument/completion', { textDocument, position: { line: 0, character: 18 } });
      await client.request('nappe/card', textDocument);
    }
    expect(await client.stop()).toBe(0);
    expect(tried()).toEqual([]);
  });

  test.each(['--socket=9', '--socket 9', '--stdio --socket=9'])('refuses a socket: %s', (words) => {
    const { status, stderr } = spawnSync(process.execPath, [...watch, server, ...words.split(' ')], {
      env: env(),
      encoding: 'utf8',
      input: '',
    });
    expect({ status, help: stderr.includes('nappe-server --stdio') }).toEqual({ status: 2, help: true });
    expect(tried()).toEqual([]);
  });
});

/** What the bundles name at all, so that nothing untried is left: Node's modules, and the browser's ways out. */
describe('what is packed', () => {
  const outs =
    /\brequire\("(?:node:)?(https?|http2|net|tls|dns|dgram)(?:\/[a-z]+)?"\)|\b(fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon|WebTransport|RTCPeerConnection)\b(?=\s*\()/g;
  const named = (path: string) =>
    [
      ...new Set([...readFileSync(join(repository, path), 'latin1').matchAll(outs)].map(([, module, call]) => module ?? call)),
    ].sort();

  test('the command line: the preview’s own server, and the page that asks it', () => {
    expect(named('compiler/dist/nappe.program.js')).toEqual(['EventSource', 'fetch', 'http']);
  });

  test('the server and the extension: pipes to their editor', () => {
    expect(named('server/dist/nappe-server.program.js')).toEqual(['net']);
    const bundles = readdirSync(join(repository, 'extension/dist')).filter((name) => /\.c?js$/.test(name));
    expect(Object.fromEntries(bundles.map((name) => [name, named(`extension/dist/${name}`)]))).toEqual({
      'browser.cjs': [],
      'card-page.js': [],
      'desktop.cjs': ['net'],
      'server.cjs': ['net'],
    });
  });
});
