/** Beginning, end, and what no client should send: answered, never a crash. */
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { Client, fullCapabilities, serverFile } from './client.ts';
import { type Editor, edit } from './editor.ts';

const failure = (promise: Promise<unknown>): Promise<{ code: number }> =>
  promise.then(
    (value) => {
      throw new Error(`answered ${JSON.stringify(value)}`);
    },
    (error: { code: number }) => error,
  );

const start = async () => new Client([process.execPath, await serverFile(), '--stdio']);

describe('the program', () => {
  test('says its version and what it is for', async () => {
    const file = await serverFile();
    expect(spawnSync(process.execPath, [file, '--version'], { encoding: 'utf8' }).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect(spawnSync(process.execPath, [file, '--help'], { encoding: 'utf8' }).stdout).toContain('--stdio');
    const nothing = spawnSync(process.execPath, [file], { encoding: 'utf8' });
    expect(nothing).toMatchObject({ status: 2, stdout: '' });
    expect(nothing.stderr).toContain('--stdio');
  });

  test('refuses requests before initialize and after shutdown, and ends with 0', async () => {
    const client = await start();
    expect(await failure(client.request('textDocument/hover', {}))).toMatchObject({ code: -32002 });
    client.notify('textDocument/didOpen', {});
    const { capabilities, serverInfo } = await client.request<{ capabilities: object; serverInfo: object }>('initialize', {
      processId: null,
      rootUri: null,
      capabilities: {},
    });
    expect(serverInfo).toMatchObject({ name: 'nappe-server' });
    expect(capabilities).toMatchObject({ positionEncoding: 'utf-16', hoverProvider: true });
    expect(capabilities).not.toHaveProperty('diagnosticProvider');
    await client.request('shutdown');
    expect(await failure(client.request('textDocument/hover', {}))).toMatchObject({ code: -32600 });
    client.notify('exit');
    expect(await client.exited).toBe(0);
  });

  test('ends with 1 where it was not shut down', async () => {
    const client = await start();
    await client.request('initialize', { processId: null, rootUri: null, capabilities: {} });
    client.notify('exit');
    expect(await client.exited).toBe(1);
  });
});

test('a client that refuses whatever it is asked is served all the same', async () => {
  const client = await start();
  for (const method of ['client/registerCapability', 'workspace/configuration', 'window/workDoneProgress/create'])
    client.answer(method, () => {
      throw new Error('no');
    });
  await client.request('initialize', { processId: null, rootUri: null, capabilities: fullCapabilities });
  expect(await failure(client.request('initialize', { processId: null, rootUri: null, capabilities: {} }))).toMatchObject({
    code: -32600,
  });
  client.notify('initialized', {});
  const textDocument = { uri: 'untitled:a', languageId: 'nappe', version: 1, text: 'formula A\n  10 g  water\n  mix wine\n' };
  client.notify('textDocument/didOpen', { textDocument });
  const { items } = await client.request<{ items: { code: string }[] }>('textDocument/diagnostic', { textDocument });
  expect(items.map(({ code }) => code)).toContain('unknown-name');
  expect(await client.stop()).toBe(0);
});

describe('what is asked wrongly', () => {
  let editor: Editor;
  const with_ = async (ask: () => Promise<void>) => {
    editor = await edit('formula A\n  10 g  water\n  mix water\n');
    await ask();
    expect(editor.faults()).toEqual([]);
    await editor.stop();
  };

  test('an unknown method is said to be unknown, an unknown notification ignored', () =>
    with_(async () => {
      expect(await failure(editor.client.request('textDocument/nonsense', {}))).toMatchObject({ code: -32601 });
      editor.client.notify('nonsense/happened', { a: 1 });
      editor.client.notify('textDocument/didChange', 'nonsense');
      editor.client.notify('textDocument/didOpen', { textDocument: 3 });
      editor.client.notify('textDocument/didChange', {
        textDocument: { uri: editor.uri(), version: 2 },
        contentChanges: [null, 3, {}],
      });
      editor.client.notify('workspace/didChangeWatchedFiles', { changes: [{}] });
      editor.client.notify('workspace/didChangeConfiguration', null);
      expect(await editor.diagnostics()).toEqual([]);
    }));

  const documentMethods = [
    'textDocument/diagnostic',
    'textDocument/formatting',
    'textDocument/documentSymbol',
    'textDocument/foldingRange',
    'textDocument/semanticTokens/full',
    'textDocument/documentLink',
    'textDocument/codeLens',
  ];
  const positionMethods = [
    'textDocument/hover',
    'textDocument/completion',
    'textDocument/definition',
    'textDocument/references',
    'textDocument/documentHighlight',
    'textDocument/prepareRename',
    'textDocument/rename',
    'textDocument/onTypeFormatting',
  ];
  const rangeMethods = [
    'textDocument/codeAction',
    'textDocument/rangeFormatting',
    'textDocument/inlayHint',
    'textDocument/semanticTokens/range',
  ];
  const malformed = [undefined, null, 3, [], {}, { textDocument: null }, { textDocument: { uri: 3 } }];

  test('parameters that are none are refused as such', () =>
    with_(async () => {
      for (const method of [...documentMethods, ...positionMethods, ...rangeMethods])
        for (const params of malformed)
          expect(await failure(editor.client.request(method, params)), `${method} ${JSON.stringify(params)}`).toMatchObject({
            code: -32602,
          });
      for (const position of [undefined, null, {}, { line: '1', character: 0 }, { line: 0.5, character: 0 }])
        for (const method of positionMethods)
          expect(await failure(editor.ask(method, { position }))).toMatchObject({ code: -32602 });
      for (const method of rangeMethods)
        expect(await failure(editor.ask(method, { range: { start: {} } }))).toMatchObject({ code: -32602 });
    }));

  test('positions outside the text are its nearest place', () =>
    with_(async () => {
      for (const position of [
        { line: 99, character: 99 },
        { line: -1, character: -5 },
        { line: 1, character: 1e9 },
      ]) {
        for (const method of positionMethods.filter((one) => !/rename/i.test(one)))
          await editor.ask(method, { position, ch: '\n', newName: 'x', context: {} });
        for (const method of rangeMethods) await editor.ask(method, { range: { start: position, end: position }, context: {} });
        await editor.ask('textDocument/selectionRange', { positions: [position] });
      }
    }));

  test('of files that are not there, closed, or nowhere, there is nothing to say', () =>
    with_(async () => {
      for (const uri of [
        editor.uri('none.nappe'),
        'untitled:Untitled-9',
        'nonsense',
        '',
        'file:///%zz',
        'https://example.org/a.nappe',
        'file:///etc/passwd',
      ])
        for (const method of [...documentMethods, ...positionMethods, ...rangeMethods].filter((one) => !/rename/i.test(one))) {
          const position = { line: 0, character: 0 };
          const answer = await editor.client.request(method, {
            textDocument: { uri },
            position,
            range: { start: position, end: position },
            ch: '\n',
            context: {},
          });
          if (method === 'textDocument/diagnostic') expect(answer).toMatchObject({ items: [] });
          else expect(answer, `${method} ${uri}`).toBeNull();
        }
    }));

  test('a closed document is the file on disk again', () =>
    with_(async () => {
      editor.replace('mix water', 'mix wine');
      expect((await editor.diagnostics()).map(({ code }) => code)).toContain('unknown-name');
      editor.close();
      editor.change([{ text: 'late' }]);
      expect(await editor.diagnostics()).toEqual([]);
    }));
});

test('a request cancelled before its turn is answered as cancelled', async () => {
  const editor = await edit('formula A\n  10 g  water\n  mix water\n');
  const requests = Array.from({ length: 40 }, () =>
    editor.client.request('textDocument/hover', { textDocument: { uri: editor.uri() }, position: { line: 1, character: 9 } }),
  );
  const late = editor.client.request('textDocument/hover', {
    textDocument: { uri: editor.uri() },
    position: { line: 1, character: 9 },
  });
  editor.client.notify('$/cancelRequest', { id: late.id });
  expect(await failure(late)).toMatchObject({ code: -32800 });
  await Promise.all(requests);
  await editor.stop();
});

test('a document too long to be read says so, and is read again when it is shorter', async () => {
  const editor = await edit('formula A\n  10 g  water\n  mix water\n');
  editor.write('  10 g  water\n'.repeat(700_000));
  expect((await editor.diagnostics()).map(({ message }) => message)).toEqual([
    expect.stringMatching(/^This file is not read: .*eight million/),
  ]);
  expect(await editor.ask('textDocument/hover', { position: { line: 1, character: 9 } })).toBeNull();
  editor.write('formula A\n  10 g  water\n  mix water\n');
  expect(await editor.diagnostics()).toEqual([]);
  await editor.stop();
});
