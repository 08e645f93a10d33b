/** The same ways out of the workspace by the two doors that stay open: the preview over HTTP, and the language server. */
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, onTestFinished, test } from 'vitest';
import { program } from '../cli/nappe.ts';
import { Client, fullCapabilities, serverFile } from '../server/client.ts';
import { attacks, ground, secret, secretPicture } from './attacks.ts';

/** Neither the secret's text nor its picture. */
function expectKept(answer: string, where: string): void {
  expect(answer.includes(secret), where).toBe(false);
  expect(answer.includes(secretPicture.slice(12, 40)), where).toBe(false);
}

const takes = (outer: string): string =>
  attacks.map(([, write], i) => `take base as b${i} from "${write('secret.nappe', outer)}"\n`).join('');

const formula = (outer: string): string =>
  `${takes(outer)}formula A\n  makes 100 g\n${attacks.map((_, i) => `  10 g  b${i}\n`).join('')}  mix b0, b1\n`;

describe('the preview', () => {
  async function preview(cwd: string, file: string): Promise<number> {
    const child: ChildProcess = spawn(process.execPath, [program, 'preview', file], {
      cwd,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    const address = await new Promise<string>((resolve) =>
      child.stdout?.once('data', (data: Buffer) => resolve(data.toString())),
    );
    return Number(new URL(address.trim()).port);
  }

  /** The whole answer to a request whose first line goes out byte by byte as it is. */
  function ask(port: number, target: string): Promise<string> {
    return new Promise((resolve, reject) => {
      let answer = '';
      const socket = connect(port, '127.0.0.1', () =>
        socket.write(`GET ${target} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: close\r\n\r\n`),
      );
      socket.on('data', (data: Buffer) => {
        answer += data.toString();
      });
      socket.on('close', () => resolve(answer));
      socket.on('error', reject);
    });
  }

  const escaped = (path: string): string => encodeURI(path).replace(/%25/g, '%');

  test.each([
    ['as it is', (path: string) => `/${path}`],
    ['without a slash', (path: string) => path],
    ['escaped', (path: string) => `/${encodeURI(path)}`],
    ['escaped where it has to be', (path: string) => `/${escaped(path)}`],
    ['escaped whole', (path: string) => `/${encodeURIComponent(path)}`],
    ['escaped whole, twice', (path: string) => `/${encodeURIComponent(encodeURIComponent(path))}`],
    ['with the whole address', (path: string) => `http://127.0.0.1/${escaped(path)}`],
    ['below its own file', (path: string) => `/own.nappe/../${escaped(path)}`],
  ])('shows no file outside, the path %s', async (_, write) => {
    const { outer, root } = ground();
    const port = await preview(root, 'own.nappe');
    expect(await ask(port, '/own.nappe')).toMatch(/^HTTP\/1\.1 200/);
    for (const ending of ['nappe', 'md', 'png'])
      for (const [kind, attack] of attacks) {
        const answer = await ask(port, write(attack(`secret.${ending}`, outer)));
        expectKept(answer, kind);
        expect(answer, kind).toMatch(/^HTTP\/1\.1 (404|400|431) /);
        expect(answer, kind).not.toContain(outer);
      }
  });

  test('shows nothing of what its formula may not take, and says so', async () => {
    const { outer, root } = ground();
    writeFileSync(join(root, 'a.nappe'), formula(outer));
    const port = await preview(root, 'a.nappe');
    const answer = await ask(port, '/a.nappe');
    expect(answer).toMatch(/^HTTP\/1\.1 200/);
    expectKept(answer, 'a.nappe');
    for (const [i, [kind]] of attacks.entries()) expect(answer, kind).toMatch(new RegExp(`<b>error</b> line ${i + 1} `));
  });

  test('would show it where its folder reaches further', async () => {
    const { outer } = ground(true);
    const port = await preview(outer, 'secret.nappe');
    expect(await ask(port, '/secret.nappe')).toContain(secret);
  });
});

describe('the language server', () => {
  async function answers(
    open: boolean,
  ): Promise<{ readonly all: readonly (readonly [string, string])[]; readonly codes: readonly string[][] }> {
    const { outer, root } = ground(open);
    const text = formula(outer);
    const handout = `# A\n\n\`\`\`nappe\n${attacks.map(([, write]) => `card "${write('secret.nappe', outer)}"`).join('\n')}\n\`\`\`\n`;
    writeFileSync(join(root, 'a.nappe'), text);
    writeFileSync(join(root, 'b.md'), handout);
    const client = new Client([process.execPath, await serverFile(), '--stdio']);
    onTestFinished(() => client.kill());
    const folder = { uri: pathToFileURL(open ? outer : root).href, name: 'work' };
    await client.request('initialize', {
      processId: process.pid,
      rootUri: folder.uri,
      workspaceFolders: [folder],
      capabilities: { ...fullCapabilities, textDocument: { ...fullCapabilities.textDocument, diagnostic: {} } },
    });
    client.notify('initialized', {});
    const all: (readonly [string, string])[] = [];
    const ask = async <T>(method: string, params: object): Promise<T> => {
      const answer = await client.request<T>(method, params);
      all.push([`${method} ${JSON.stringify(params).slice(0, 200)}`, JSON.stringify(answer)]);
      return answer;
    };
    const codes: string[][] = [];
    for (const [name, languageId, whole] of [
      ['a.nappe', 'nappe', text],
      ['b.md', 'markdown', handout],
    ] as const) {
      const textDocument = { uri: pathToFileURL(join(root, name)).href };
      client.notify('textDocument/didOpen', { textDocument: { ...textDocument, languageId, version: 1, text: whole } });
      const { items } = await ask<{ items: { code: string; range: { start: { line: number } } }[] }>('textDocument/diagnostic', {
        textDocument,
      });
      const links = await ask<{ target: string }[]>('textDocument/documentLink', { textDocument });
      if (!open) expect(links).toEqual([]);
      await ask('textDocument/documentSymbol', { textDocument });
      await ask('textDocument/inlayHint', {
        textDocument,
        range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
      });
      await ask('nappe/card', { ...textDocument, markdown: true });
      await ask('nappe/bases', textDocument);
      const first = name === 'b.md' ? 3 : 0;
      for (const index of attacks.keys()) {
        const line = first + index;
        const written = whole.split('\n')[line] ?? '';
        const quote = written.indexOf('"');
        codes.push(items.filter(({ range }) => range.start.line === line).map(({ code }) => code));
        for (const character of [
          written.indexOf(' ') + 1,
          quote + 1,
          written.lastIndexOf('/') + 1,
          written.length - 1,
          written.length,
        ]) {
          const at = { textDocument, position: { line, character } };
          await ask('textDocument/completion', at);
          await ask('textDocument/hover', at);
          await ask('textDocument/definition', at);
          await ask('textDocument/references', { ...at, context: { includeDeclaration: true } });
        }
        const range = { start: { line, character: 0 }, end: { line, character: written.length } };
        await ask('textDocument/codeAction', {
          textDocument,
          range,
          context: { diagnostics: items.filter((one) => one.range.start.line === line) },
        });
      }
    }
    await ask('workspace/symbol', { query: '' });
    await ask('workspace/diagnostic', { previousResultIds: [] });
    all.push(['what it said of its own accord', JSON.stringify(client.notifications)]);
    expect(client.notifications.filter(({ params }) => (params as { type?: number }).type === 1)).toEqual([]);
    expect(await client.stop()).toBe(0);
    return { all, codes };
  }

  test('reads nothing outside for any answer, and marks every line', async () => {
    const { all, codes } = await answers(false);
    for (const [where, answer] of all) expectKept(answer, where);
    expect(all.length).toBeGreaterThan(1000);
    for (const [i, found] of codes.entries())
      expect(
        found.some((code) => /^(outside-workspace|import-missing|syntax)$/.test(code)),
        attacks[i % attacks.length]?.[0],
      ).toBe(true);
  });

  test('would, where the folder open reaches further', async () => {
    const { all } = await answers(true);
    expect(all.some(([, answer]) => answer.includes(secret))).toBe(true);
  });
});
