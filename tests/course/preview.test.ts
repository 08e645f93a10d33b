/** The preview as a cook uses it: a real browser shows the card, draws it anew on save, and nobody else gets an answer. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { launch } from '../card/browser.ts';
import { custard, faultyCustard, folderWith, nappe, program } from '../cli/nappe.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

interface Running {
  readonly url: string;
  readonly port: number;
  readonly child: ChildProcess;
  readonly ended: Promise<{ readonly code: number | null; readonly err: string }>;
}

/** Once it has said where it is. */
async function preview(folder: string, ...words: string[]): Promise<Running> {
  const child = spawn(process.execPath, [program, 'preview', ...words], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let err = '';
  child.stderr.on('data', (data: Buffer) => {
    err += data.toString();
  });
  const ended = new Promise<{ code: number | null; err: string }>((resolve) =>
    child.once('exit', (code) => resolve({ code, err })),
  );
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (data: Buffer) => resolve(data.toString().trim()));
    child.once('exit', () => reject(new Error(`ended at once: ${err}`)));
  });
  return { url, port: Number(new URL(url).port), child, ended };
}

/** Status and body of a plain request with headers of the test's choice; `path` goes out as it is. */
function get(port: number, path: string, headers: Record<string, string> = {}, method = 'GET') {
  return new Promise<{ status: number; body: string; headers: NodeJS.Dict<string | string[]> }>((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      let body = '';
      response.on('data', (data: Buffer) => {
        body += data.toString();
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body, headers: response.headers }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

test('a browser shows the card and its faults, and draws both anew when the file, or what it takes, is saved', async () => {
  const taker =
    'take lemon syrup from "bases.nappe"\n\nformula Drink\n  100 g  lemon syrup\n  200 g  water\n  mix lemon syrup, water\n';
  const base = (sugar: number) =>
    `component lemon syrup\n  100 g  water\n  ${sugar} g  caster sugar\n  boil water, caster sugar\n`;
  const folder = folderWith({ 'custard.nappe': custard, 'drink.nappe': taker, 'bases.nappe': base(80) });
  const { url } = await preview(folder, 'custard.nappe');
  const context = await browser.newContext({ viewport: { width: 1300, height: 900 } });
  const page = await context.newPage();
  const noise: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => noise.push(message.text()));
  page.on('pageerror', (error) => noise.push(error.message));
  page.on('request', (one) => requests.push(one.url()));
  await page.goto(url);
  await page.waitForSelector('h1:has-text("Pouring custard")');
  expect(await page.textContent('aside')).toContain('Nothing wrong.');
  await page.waitForFunction(() => document.querySelector('.state') !== null);

  writeFileSync(join(folder, 'custard.nappe'), faultyCustard);
  await page.waitForSelector('aside li.error');
  expect(await page.textContent('aside')).toMatch(/line 10[\s\S]*mlik/);

  // As many editors save: a new file in the old one's place.
  writeFileSync(join(folder, 'aside.tmp'), custard.replace('formula Pouring custard', 'formula <b>Poured</b> custard'));
  renameSync(join(folder, 'aside.tmp'), join(folder, 'custard.nappe'));
  await page.waitForSelector('h1:has-text("<b>Poured</b> custard")');
  expect(await page.textContent('aside')).toContain('Nothing wrong.');

  writeFileSync(join(folder, 'custard.nappe'), custard.replace('  heat whole', '  ((( heat whole'));
  await page.waitForSelector('.no-card');

  await page.goto(new URL('/drink.nappe', url).href);
  await page.waitForSelector('h1:has-text("Drink")');
  const shown = await page.textContent('main');
  writeFileSync(join(folder, 'bases.nappe'), base(20));
  await page.waitForFunction((before) => document.querySelector('main')?.textContent !== before, shown);

  const own = new URL(url).origin;
  expect(requests.filter((one) => !one.startsWith(own))).toEqual([]);
  expect(noise).toEqual([]);
  await context.close();
});

test('only its own address is answered: no other host, no page of another site, nothing but reading', async () => {
  const folder = folderWith({ 'custard.nappe': custard });
  const { port } = await preview(folder, 'custard.nappe');
  const own = `127.0.0.1:${port}`;
  const statusWith = async (headers: Record<string, string>, method?: string) =>
    (await get(port, '/custard.nappe', headers, method)).status;
  expect(await statusWith({})).toBe(200);
  expect(await statusWith({ Host: `localhost:${port}`, Origin: `http://localhost:${port}` })).toBe(200);
  expect(await statusWith({ Host: 'evil.example' })).toBe(403);
  expect(await statusWith({ Host: `evil.example:${port}` })).toBe(403);
  expect(await statusWith({ Host: own, Origin: 'http://evil.example' })).toBe(403);
  expect(await statusWith({ Host: own, Origin: 'null' })).toBe(403);
  expect(await statusWith({ Host: own, 'Sec-Fetch-Site': 'cross-site' })).toBe(403);
  expect(await statusWith({ Host: own }, 'POST')).toBe(405);
  expect(await statusWith({ Host: own }, 'DELETE')).toBe(405);
  const { headers } = await get(port, '/custard.nappe');
  expect(headers['content-security-policy']).toContain("default-src 'none'");
  expect(headers['access-control-allow-origin']).toBeUndefined();
});

test('nothing outside the folder is shown, by whatever path', async () => {
  const outer = folderWith({
    'secret.nappe': custard.replace('Pouring custard', 'Secret'),
    'course/custard.nappe': custard,
    'package.json': '{}',
  });
  const folder = join(outer, 'course');
  mkdirSync(join(folder, '.hidden'));
  writeFileSync(join(folder, '.hidden/a.nappe'), custard);
  writeFileSync(join(folder, 'notes.txt'), 'mine');
  symlinkSync(join(outer, 'secret.nappe'), join(folder, 'link.nappe'));
  const { port } = await preview(folder, 'custard.nappe');
  for (const path of [
    '/../secret.nappe',
    '/%2e%2e/secret.nappe',
    '/..%2fsecret.nappe',
    '/x/../../secret.nappe',
    `/${join(outer, 'secret.nappe')}`,
    '/link.nappe',
    '/.hidden/a.nappe',
    '/notes.txt',
    '/',
    '/absent.nappe',
    '/%ff.nappe',
    '/custard.nappe%00.nappe',
    '//127.0.0.1/custard.nappe',
  ]) {
    const { status, body } = await get(port, path);
    expect({ path, status }).toEqual({ path, status: 404 });
    expect(body).not.toContain('Secret');
  }
});

test.each(['SIGINT', 'SIGTERM'] as const)('%s ends it cleanly, with a browser still listening', async (signal) => {
  const folder = folderWith({ 'custard.nappe': custard });
  const { url, port, child, ended } = await preview(folder, 'custard.nappe');
  const page = await browser.newPage();
  await page.goto(url);
  await page.waitForFunction(() => document.querySelector('.state') !== null);
  child.kill(signal);
  const { code, err } = await ended;
  expect(code).toBe(0);
  expect(err).toBe('nappe: open this address in a browser; Ctrl-C ends the preview.\n');
  await page.waitForSelector('.state:has-text("has ended")');
  await expect(get(port, '/custard.nappe')).rejects.toThrow();
  await page.close();
});

test('what cannot be shown is said at once', async () => {
  const folder = folderWith({ 'custard.nappe': custard, 'note.txt': 'x' });
  const { port } = await preview(folder, 'custard.nappe');
  for (const words of [
    ['absent.nappe'],
    ['note.txt'],
    ['.'],
    ['-'],
    ['custard.nappe', '--port', 'many'],
    ['custard.nappe', '--port', String(port)],
  ]) {
    const { status, out, err } = nappe(['preview', ...words], { cwd: folder });
    expect({ words, status, out }).toEqual({ words, status: 2, out: '' });
    expect(err).toMatch(/^nappe: .+\n$/);
  }
});
