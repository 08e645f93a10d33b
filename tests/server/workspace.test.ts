/** Folders, files and settings: what happens outside the document. */
import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fullCapabilities } from './client.ts';
import { type Diagnostic, type Editor, edit } from './editor.ts';

const isEnd = (params: unknown): boolean => (params as { value: { kind: string } }).value.kind === 'end';

/** The first indexing may be over before anyone waits for it. */
async function indexed(editor: Editor): Promise<void> {
  if (editor.notifications('$/progress').some(({ params }) => isEnd(params))) return;
  await editor.client.next(({ method, params }) => method === '$/progress' && isEnd(params));
}

const codes = (found: readonly Diagnostic[]) => found.map(({ code }) => code);

const taker = 'take base from "base.nappe"\nformula A\n  10 g  base\n  mix base\n';
const base = 'component base\n  10 g  water\n  mix water\n';

describe('files', () => {
  test('that appear, change and go are followed', async () => {
    const editor = await edit(taker);
    expect(codes(await editor.diagnostics())).toContain('import-missing');
    writeFileSync(join(editor.root, 'base.nappe'), base);
    editor.tellFiles(1, ['base.nappe']);
    expect(await editor.diagnostics()).toEqual([]);
    writeFileSync(join(editor.root, 'base.nappe'), base.replace('base', 'other'));
    editor.tellFiles(2, ['base.nappe']);
    expect(codes(await editor.diagnostics())).toContain('import-missing');
    rmSync(join(editor.root, 'base.nappe'));
    editor.tellFiles(3, ['base.nappe']);
    expect(codes(await editor.diagnostics())).toContain('import-missing');
    await editor.stop();
  });

  test('deleted while open live on in the editor', async () => {
    const editor = await edit(`${taker}--- base.nappe\n${base}`);
    rmSync(join(editor.root, 'base.nappe'));
    editor.tellFiles(3, ['base.nappe']);
    expect(await editor.diagnostics()).toEqual([]);
    editor.close('base.nappe');
    expect(codes(await editor.diagnostics())).toContain('import-missing');
    await editor.stop();
  });

  test('outside the workspace are not read, by whatever way', async () => {
    const editor = await edit('take a from "../outside.nappe"\ntake b from "link.nappe"\ntake c from "/etc/hostname"\n');
    writeFileSync(join(editor.root, '..', '..', 'outside-of-it.nappe'), 'component b\n  1 g  water\n');
    symlinkSync(join(editor.root, '..', '..', 'outside-of-it.nappe'), join(editor.root, 'link.nappe'));
    editor.tellFiles(1, ['link.nappe']);
    const found = codes(await editor.diagnostics());
    expect(found.filter((code) => code === 'outside-workspace').length).toBeGreaterThanOrEqual(2);
    rmSync(join(editor.root, '..', '..', 'outside-of-it.nappe'));
    await editor.stop();
  });

  test('of a lone file, without a folder open, are those beside it', async () => {
    const editor = await edit(`${taker}--- base.nappe\n${base}`, { folder: false, closed: ['base.nappe'] });
    expect(await editor.diagnostics()).toEqual([]);
    await editor.stop();
  });

  test('that were never saved are checked too', async () => {
    const editor = await edit(base);
    const uri = 'untitled:Untitled-1';
    editor.client.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: 'nappe', version: 1, text: 'formula A\n  10 g  water\n  mix wine\n' },
    });
    const { items } = await editor.client.request<{ items: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } });
    expect(codes(items)).toContain('unknown-name');
    editor.client.notify('textDocument/didOpen', {
      textDocument: { uri: 'untitled:Notes', languageId: 'markdown', version: 1, text: '# x\nmix wine\n' },
    });
    const notes = await editor.client.request<{ items: Diagnostic[] }>('textDocument/diagnostic', {
      textDocument: { uri: 'untitled:Notes' },
    });
    expect(notes.items).toEqual([]);
    await editor.stop();
  });
});

describe('the first indexing', () => {
  test('shows how far it is, and publishes what is wrong in closed files', async () => {
    const editor = await edit(
      '--- a.nappe\nformula A\n  10 g  water\n  mix wine\n--- sub/b.nappe\nformula B\n  10 g  water\n  mix water\n',
      { capabilities: fullCapabilities, closed: ['a.nappe', 'sub/b.nappe'] },
    );
    const published = editor.client.next(({ method }) => method === 'textDocument/publishDiagnostics');
    await indexed(editor);
    const { params } = await published;
    expect(params).toMatchObject({ uri: editor.uri('a.nappe'), diagnostics: [{ code: 'unknown-name' }] });
    const kinds = editor
      .notifications('$/progress')
      .map(({ params: shown }) => (shown as { value: { kind: string } }).value.kind);
    expect([kinds[0], kinds.at(-1)]).toEqual(['begin', 'end']);
    await editor.stop();
  });

  test('of 2,000 files leaves the open one quick to ask, and can be stopped', async () => {
    const editor = await edit('formula A\n  10 g  water\n  mix water\n', { capabilities: fullCapabilities });
    await indexed(editor);
    mkdirSync(join(editor.root, 'many'));
    const text = (i: number) => `take base from "0.nappe"\nformula F${i}\n  10 g  base\n  5 g  wine\n  mix base\n`;
    for (let i = 0; i < 2000; i++) writeFileSync(join(editor.root, 'many', `${i}.nappe`), i === 0 ? base : text(i));
    const folder = { uri: editor.uri('many'), name: 'many' };
    const last = editor.client.next(
      ({ method, params }) =>
        method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri.endsWith('/999.nappe'),
    );
    editor.client.notify('workspace/didChangeWorkspaceFolders', { event: { added: [folder], removed: [] } });
    for (let i = 0; i < 5; i++)
      expect(await editor.ask('textDocument/hover', { position: { line: 1, character: 9 } })).not.toBeNull();
    expect((await last).params).toMatchObject({
      diagnostics: expect.arrayContaining([expect.objectContaining({ code: 'unused-ingredient' })]),
    });
    const takers = ['/999.nappe', '/1999.nappe'].map((name) =>
      editor.client.next(
        ({ method, params }) =>
          method === 'textDocument/publishDiagnostics' &&
          (params as { uri: string }).uri.endsWith(name) &&
          JSON.stringify(params).includes('import-missing'),
      ),
    );
    editor.open('many/0.nappe', base.replace('component base', 'component other'));
    await Promise.all(takers);
    const symbols = await editor.client.request<unknown[]>('workspace/symbol', { query: 'F19' });
    expect(symbols.length).toBeGreaterThan(100);
    expect(editor.faults()).toEqual([]);
    await editor.stop();
  });
});

test('folders come and go', async () => {
  const editor = await edit(`--- one/${'a.nappe'}\n${taker}`, { capabilities: fullCapabilities, closed: ['one/a.nappe'] });
  await indexed(editor);
  editor.client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [], removed: [{ uri: editor.uri('').replace(/\/$/, ''), name: 'work' }] },
  });
  const gone = editor.client.next(
    ({ method, params }) =>
      method === 'textDocument/publishDiagnostics' && (params as { diagnostics: unknown[] }).diagnostics.length === 0,
  );
  expect((await gone).params).toMatchObject({ uri: editor.uri('one/a.nappe') });
  await editor.stop();
});

describe('settings', () => {
  test('are asked for, and asked for again when they change', async () => {
    const editor = await edit('formula A\n  choice s: small, large\n  10 g (large 30 g)  wa<|>ter\n  mix water\n', {
      capabilities: fullCapabilities,
    });
    await indexed(editor);
    const weight = async () => (await editor.ask<{ contents: { value: string } }>('textDocument/hover')).contents.value;
    expect(await weight()).toContain('Here 10 g');
    editor.client.answer('workspace/configuration', () => [{ choices: ['large'] }]);
    editor.client.notify('workspace/didChangeConfiguration', { settings: null });
    await editor.client.next(({ method }) => method === 'textDocument/publishDiagnostics');
    expect(await weight()).toContain('Here 30 g');
    await editor.stop();
  });

  test('come with the notification for a client that is not asked', async () => {
    const editor = await edit('formula A\n  10 g  water\n  mix water\n', { capabilities: {} });
    editor.client.notify('workspace/didChangeConfiguration', { settings: { nappe: { codeLens: { enabled: false } } } });
    expect(await editor.ask('textDocument/codeLens')).toEqual([]);
    await editor.stop();
  });

  test('that are nonsense stay at their defaults', async () => {
    const editor = await edit('formula A\n  10 g  water\n', {
      capabilities: {},
      initializationOptions: { settings: { codeLens: 3, inlayHints: null, choices: 'x', card: [] } },
    });
    expect(await editor.ask('textDocument/codeLens')).toHaveLength(2);
    await editor.stop();
  });
});

test('what is watched is asked of the client', async () => {
  const registered: unknown[] = [];
  const editor = await edit('formula A\n', { capabilities: fullCapabilities });
  editor.client.answer('client/registerCapability', (params) => {
    registered.push(params);
    return null;
  });
  await indexed(editor);
  const asked = editor.client.notifications.length >= 0 && JSON.stringify(registered);
  expect(asked).toContain('**/*.{nappe,md,markdown}');
  await editor.stop();
});
