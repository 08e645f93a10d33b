/** What the packages hold when they are packed, and that one runs by itself where nothing else is installed. */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { custard } from '../cli/nappe.ts';
import { root } from './sources.ts';

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly private?: boolean;
  readonly type: string;
  readonly license: string;
  readonly engines?: { readonly node: string };
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly bin?: Readonly<Record<string, string>>;
}

const manifest = (folder: string): Manifest => JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));

/** Programs that are packed, each bundled: `server` joins when it has its entry. */
const packed = ['compiler', 'server'].filter((folder) => existsSync(join(root, folder, 'dist')));

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'nappe-pack-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const npm = (cwd: string, ...words: string[]): string =>
  execFileSync('npm', words, {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, npm_config_offline: 'true' },
  });

test('every package has the same version, licence and kind of module', () => {
  const manifests = ['.', 'grammar', 'compiler', 'server', 'extension', 'tests'].map(manifest);
  expect(new Set(manifests.map(({ version }) => version)).size).toBe(1);
  expect(manifests.every(({ license, type }) => license === 'MIT' && type === 'module')).toBe(true);
});

test('what is packed carries the licence', () => {
  const licence = readFileSync(join(root, 'LICENSE'), 'utf8');
  for (const name of ['compiler', 'server', 'extension'])
    expect(readFileSync(join(root, name, 'LICENSE'), 'utf8'), name).toBe(licence);
});

describe.each(packed)('the package in %s', (name) => {
  test('needs nothing else installed, since its program is bundled', () => {
    expect(manifest(name).dependencies ?? {}).toEqual({});
    expect(manifest(name).private ?? false).toBe(false);
  });

  test('holds its program, its licences and its words to the reader, and nothing else', () => {
    const [listing] = JSON.parse(npm(join(root, name), 'pack', '--dry-run', '--json')) as [{ files: { path: string }[] }];
    const program = Object.keys(manifest(name).bin ?? {})[0];
    expect(listing.files.map(({ path }) => path).sort()).toEqual(
      [
        'LICENSE',
        'README.md',
        'dist/LICENSES.txt',
        `dist/${program}.js`,
        `dist/${program}.program.js`,
        'dist/package.json',
        'package.json',
      ].sort(),
    );
  });

  test('names the licence of every library in its bundle', () => {
    const text = readFileSync(join(root, name, 'dist/LICENSES.txt'), 'utf8');
    const libraries = [...text.matchAll(/^== (\S+) (\S+) \((.+)\)$/gm)];
    expect(libraries.length).toBeGreaterThan(1);
    const free = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD'];
    expect(libraries.filter(([, , , licence]) => !free.includes(licence as string)).map(([line]) => line)).toEqual([]);
  });
});

test('npx from the packed tarball checks a formula in a folder where nothing is installed', () => {
  const [{ filename }] = JSON.parse(npm(join(root, 'compiler'), 'pack', '--json', '--pack-destination', folder)) as [
    { filename: string },
  ];
  writeFileSync(join(folder, 'custard.nappe'), custard);
  const answer = npm(
    folder,
    'exec',
    '--yes',
    `--package=${join(folder, filename)}`,
    '--',
    'nappe',
    'check',
    '--format',
    'json',
    'custard.nappe',
  );
  expect(JSON.parse(answer)).toMatchObject({ version: 1, summary: { files: 1, errors: 0, warnings: 0 } });
});

test('npx from the packed tarball starts a server that answers an editor, where nothing else is installed', async () => {
  const [{ filename }] = JSON.parse(npm(join(root, 'server'), 'pack', '--json', '--pack-destination', folder)) as [
    { filename: string },
  ];
  const words = ['exec', '--yes', `--package=${join(folder, filename)}`, '--', 'nappe-server', '--stdio'];
  const editor = spawn('npm', words, {
    cwd: folder,
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, npm_config_offline: 'true' },
  });
  const say = (body: object): void => {
    const text = JSON.stringify({ jsonrpc: '2.0', ...body });
    editor.stdin.write(`Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`);
  };
  let heard = '';
  say({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
  // An editor waits for each answer; the server leaves when its input ends.
  editor.stdout.on('data', (part: Buffer) => {
    const before = heard;
    heard += part.toString('utf8');
    if (!before.includes('"id":1') && heard.includes('"id":1')) say({ id: 2, method: 'shutdown' });
    if (!before.includes('"id":2') && heard.includes('"id":2')) say({ method: 'exit' });
  });
  const [status] = (await once(editor, 'close')) as [number | null];
  expect(heard).toContain('"capabilities"');
  expect(status).toBe(0);
});
