/** A real VS Code with the packaged extension in it, in a real browser, and the few gestures the tests make. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { closeSync, cpSync, existsSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Frame, FrameLocator, Page } from 'playwright-core';
import { launch } from '../card/browser.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));
const program = join(root, 'tests/editor/node_modules/code-server/out/node/entry.js');
export const vsix = join(root, 'extension/nappe.vsix');

/** Screenshots, to be looked at. */
const artefacts = join(root, 'artefacts/editor');

export interface Editor {
  readonly page: Page;
  /** The folder that is open. */
  readonly folder: string;
  /** The folder that holds the extension as installed. */
  readonly extensions: string;
  /** Addresses outside the loopback that the page asked for. */
  readonly strangers: readonly string[];
  stop(): Promise<void>;
}

/** `files`: name in the folder, and where in the repository it is copied from. The folder is under git, everything committed. */
export async function startEditor(files: Readonly<Record<string, string>>): Promise<Editor> {
  if (!existsSync(program)) throw new Error('the editor is not installed: node tests/editor/install.mjs');
  if (!existsSync(vsix)) throw new Error('the extension is not packaged: npm run package');
  const home = mkdtempSync(join(tmpdir(), 'nappe-editor-'));
  const [folder, user, extensions] = ['formulas', 'user', 'extensions'].map((name) => join(home, name)) as [
    string,
    string,
    string,
  ];
  for (const path of [folder, join(user, 'User'), extensions, join(home, 'tmp')]) mkdirSync(path, { recursive: true });
  for (const [name, from] of Object.entries(files)) cpSync(join(root, from), join(folder, name));
  const git = (...words: string[]) =>
    execFileSync('git', ['-c', 'user.name=Harbour Road', '-c', 'user.email=school@example.org', ...words], { cwd: folder });
  git('init', '--quiet');
  git('add', '.');
  git('commit', '--quiet', '-m', 'First tasting');
  writeFileSync(join(user, 'User/settings.json'), JSON.stringify(settings));
  const env = {
    ...process.env,
    TMPDIR: join(home, 'tmp'),
    XDG_CONFIG_HOME: join(home, 'config'),
    XDG_DATA_HOME: join(home, 'data'),
  };
  const folders = ['--user-data-dir', user, '--extensions-dir', extensions];
  execFileSync(process.execPath, [program, ...folders, '--install-extension', vsix, '--force'], { env, stdio: 'pipe' });

  const port = await freePort();
  const log = openSync(join(home, 'log'), 'w');
  const flags = ['--bind-addr', `127.0.0.1:${port}`, '--auth', 'none', '--disable-telemetry', '--disable-update-check'];
  const server = spawn(process.execPath, [program, ...folders, ...flags], { env, detached: true, stdio: ['ignore', log, log] });
  closeSync(log);
  let browser: Browser | undefined;
  const stop = async () => {
    await browser?.close();
    endGroup(server);
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    await until(
      async () => (await fetch(`http://127.0.0.1:${port}/healthz`).catch(() => null))?.ok === true,
      () => readFileSync(join(home, 'log'), 'utf8'),
    );
    browser = await launch();
    const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
    context.setDefaultTimeout(patience);
    const page = await context.newPage();
    const strangers: string[] = [];
    page.on('request', (request) => {
      const { hostname, protocol, href } = new URL(request.url());
      if (protocol.startsWith('http') && hostname !== '127.0.0.1' && !hostname.endsWith('.vscode-resource.vscode-cdn.net'))
        strangers.push(href);
    });
    await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`);
    await page.locator('.monaco-workbench').waitFor();
    await page.locator('.explorer-folders-view').waitFor();
    return { page, folder, extensions, strangers, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** Milliseconds for anything to appear on a busy machine. */
export const patience = Number(process.env.NAPPE_PATIENCE ?? 60_000);

const settings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.colorTheme': 'Default Light Modern',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'telemetry.telemetryLevel': 'off',
  'remote.autoForwardPorts': false,
  'git.openRepositoryInParentFolders': 'never',
  'files.autoSave': 'off',
  'files.simpleDialog.enable': true,
  'editor.minimap.enabled': false,
  'editor.inlayHints.enabled': 'off',
  '[nappe]': { 'editor.wordWrap': 'off' },
  'window.commandCenter': false,
  'chat.commandCenter.enabled': false,
};

/** Opens a file of the folder by its name, at the left. */
export async function openFile(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+1');
  await pick(page, name, name, 'Control+P');
  await page.locator(`.tab.active[data-resource-name="${name}"]`).first().waitFor();
  await page.locator('.editor-instance .view-lines').first().waitFor();
}

/** Runs a command by its title. */
export async function run(page: Page, title: string): Promise<void> {
  await pick(page, `>${title}`, title, 'F1');
}

/** Types into the box that is open, or that a key opens, and takes the row that says so. */
export async function pick(page: Page, typed: string, row: string, opensBy?: string): Promise<void> {
  const rows = page.locator('.quick-input-list .monaco-list-row').filter({ hasText: row });
  await typeInBox(page, typed, () => rows.first().click({ timeout: again }), opensBy);
  await page
    .locator('.quick-input-widget')
    .waitFor({ state: 'hidden' })
    .catch(() => undefined);
}

/** Puts the cursor, from 1. */
export async function go(page: Page, line: number, column = 1): Promise<void> {
  const enter = async () => {
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-widget').waitFor({ state: 'hidden', timeout: again });
  };
  await typeInBox(page, `:${line}:${column}`, enter, 'Control+G');
}

/** Milliseconds after which the box is asked for and filled again: one that is still being made may lose what was typed. */
const again = 6000;

async function typeInBox(page: Page, text: string, then: () => Promise<void>, opensBy?: string): Promise<void> {
  const input = page.locator('.quick-input-widget input[type="text"]').first();
  for (const until = Date.now() + patience; ; ) {
    try {
      if (opensBy && !(await input.isVisible())) await page.keyboard.press(opensBy);
      await input.fill('', { timeout: again });
      await input.fill(text, { timeout: again });
      return await then();
    } catch (error) {
      if (Date.now() > until) throw error;
    }
  }
}

/** Replaces so many characters from a place with what is typed. */
export async function retype(page: Page, line: number, column: number, count: number, text: string): Promise<void> {
  await go(page, line, column);
  for (let at = 0; at < count; at++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.type(text, { delay: 30 });
  await page.keyboard.press('Escape');
}

/** What the status bar says of the cursor: line and column from 1. */
export async function cursor(page: Page): Promise<string> {
  return ((await page.locator('#status\\.editor\\.selection').textContent()) ?? '').replace(/\s*\(.*/, '').trim();
}

/** A line of the first editor by its number, spaces as spaces; empty where it is not in view. */
export async function lineText(page: Page, number: number): Promise<string> {
  const text = await page
    .locator('.editor-instance')
    .first()
    .evaluate((editor, wanted) => {
      const rows = [...editor.querySelectorAll<HTMLElement>('.margin-view-overlays > div')];
      const row = rows.find((one) => one.querySelector('.line-numbers')?.textContent?.trim() === wanted);
      const lines = [...editor.querySelectorAll<HTMLElement>('.view-line')];
      return lines.find(({ style }) => style.top === row?.style.top)?.textContent ?? '';
    }, String(number));
  return text.replaceAll('\u00a0', ' ');
}

/** The card's page inside the editor's page. */
export const cardFrame = (page: Page): FrameLocator =>
  page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');

export async function frameOfCard(page: Page): Promise<Frame> {
  const handle = await cardFrame(page).locator('body').elementHandle();
  const frame = await handle?.ownerFrame();
  if (!frame) throw new Error('there is no card');
  return frame;
}

export async function screenshot(page: Page, name: string): Promise<void> {
  mkdirSync(artefacts, { recursive: true });
  // A webview shows a moment after it has its content.
  await page.waitForTimeout(400);
  await page.screenshot({ path: join(artefacts, `${name}.png`) });
}

export async function until(isSo: () => Promise<boolean>, elseSay: () => string = () => 'it did not come about'): Promise<void> {
  for (const end = Date.now() + patience; Date.now() < end; ) {
    if (await isSo()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(elseSay());
}

/** The server starts processes of its own: all of its group end. */
function endGroup({ pid }: ChildProcess): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // Gone already.
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no port'))));
    });
  });
}
