/** What breaks inside costs itself alone, and is told once. */
import { ruleOf } from 'nappe';
import { afterEach, expect, test } from 'vitest';
import { requests } from '../../server/src/requests.ts';
import { InProcess } from './in-process.ts';

const undo: (() => void)[] = [];
afterEach(() => {
  for (const one of undo.splice(0)) one();
});

/** Puts something that breaks in a part's place, until the test ends. */
function breakPart<T extends object, K extends keyof T>(owner: T, key: K): void {
  const before = owner[key];
  undo.push(() => {
    owner[key] = before;
  });
  owner[key] = (() => {
    throw new Error('broken on purpose');
  }) as T[K];
}

const text = 'formula A\n  10 g  water\n  5 g  salt\n  mix water, wine\n';

async function opened(): Promise<InProcess> {
  const server = new InProcess(new Map([['/work/a.nappe', text]]));
  await server.index();
  await server.notify('textDocument/didOpen', {
    textDocument: { uri: 'file:///work/a.nappe', languageId: 'nappe', version: 1, text },
  });
  return server;
}

const textDocument = { uri: 'file:///work/a.nappe' };

const codes = async (server: InProcess) =>
  ((await server.ask('textDocument/diagnostic', { textDocument })) as { items: { code: string }[] }).items.map(
    ({ code }) => code,
  );

test('a rule that breaks is left out, the others go on', async () => {
  const server = await opened();
  breakPart(ruleOf('fold-too-warm') as { check: unknown }, 'check');
  expect(await codes(server)).toEqual(expect.arrayContaining(['unused-ingredient', 'unknown-name']));
  for (let version = 2; version < 6; version++) {
    await server.notify('textDocument/didChange', {
      textDocument: { ...textDocument, version },
      contentChanges: [{ text: text.replace('10 g', `1${version} g`) }],
    });
    expect(await codes(server)).toContain('unknown-name');
  }
  expect(server.faults).toHaveLength(1);
  expect(server.faults[0]).toMatch(/fold-too-warm.*everything else goes on.*broken on purpose/s);
});

test('a feature that breaks answers nothing, the others go on', async () => {
  const server = await opened();
  breakPart(requests as Record<string, unknown>, 'textDocument/hover');
  const position = { line: 1, character: 9 };
  for (let i = 0; i < 3; i++) expect(await server.ask('textDocument/hover', { textDocument, position })).toBeNull();
  expect(await server.ask('textDocument/definition', { textDocument, position: { line: 3, character: 7 } })).toHaveLength(1);
  expect(server.faults).toHaveLength(1);
});

test('a file system that breaks is a file that cannot be read', async () => {
  const files = new Map([['/work/a.nappe', text]]);
  const server = new InProcess(files);
  breakPart(files, 'get');
  await server.index();
  expect(await server.ask('textDocument/diagnostic', { textDocument })).toMatchObject({ items: [] });
  expect(server.faults).toEqual([]);
});
