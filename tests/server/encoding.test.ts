/** UTF-8 and UTF-16: the same answers, counted the way the client counts. */
import { expect, test } from 'vitest';
import { edit } from './editor.ts';
import type { edited, Position } from './fixture.ts';

const utf8 = { general: { positionEncodings: ['utf-8'] }, textDocument: { hover: { contentFormat: ['markdown'] } } };

/** `é` and `𝒜` are one and two UTF-16 code units, two and four bytes. */
const text =
  'formula Crème 𝒜\n  10 g  crème fraîche\n   5 g  sel 𝒜é\n  whisk crème fraîche, "sel 𝒜é" as mélange\n  heat mélange to 40 °C\n';

interface Location {
  readonly range: { readonly start: Position; readonly end: Position };
}

test('a client that prefers UTF-8 gets it', async () => {
  const editor = await edit(text, { capabilities: utf8 });
  expect(editor.result.capabilities.positionEncoding).toBe('utf-8');
  await editor.stop();
  const other = await edit(text, { capabilities: { general: { positionEncodings: ['utf-16', 'utf-8'] } } });
  expect(other.result.capabilities.positionEncoding).toBe('utf-16');
  await other.stop();
});

test('positions in and out are bytes', async () => {
  const editor = await edit(text, { capabilities: utf8 });
  const line = text.split('\n')[4] ?? '';
  const bytes = (column: number) => Buffer.byteLength(line.slice(0, column));
  const at = { line: 4, character: bytes(line.indexOf('mélange') + 4) };
  const [definition] = await editor.ask<Location[]>('textDocument/definition', { position: at });
  const declaring = text.split('\n')[3] ?? '';
  expect(definition?.range).toEqual({
    start: { line: 3, character: Buffer.byteLength(declaring.slice(0, declaring.indexOf('mélange'))) },
    end: { line: 3, character: Buffer.byteLength(declaring) },
  });
  const hover = await editor.ask<{ contents: { value: string }; range: unknown }>('textDocument/hover', { position: at });
  expect(hover.contents.value).toContain('mélange');
  const [selection] = await editor.ask<{ range: Location['range'] }[]>('textDocument/selectionRange', { positions: [at] });
  expect(selection?.range.start.character).toBe(bytes(line.indexOf('mélange')));
  await editor.stop();
});

test('edits by bytes change what they name', async () => {
  const editor = await edit(text, { capabilities: utf8 });
  const line = text.split('\n')[3] ?? '';
  const character = Buffer.byteLength(line.slice(0, line.indexOf('as mélange')));
  editor.change([
    {
      range: { start: { line: 3, character }, end: { line: 3, character: Buffer.byteLength(line) } },
      text: 'until smooth as mélange',
    },
  ]);
  expect((await editor.diagnostics()).filter(({ severity }) => severity === 1)).toEqual([]);
  const answer = await editor.ask<{ changes: Record<string, Parameters<typeof edited>[1]> }>('textDocument/rename', {
    position: { line: 4, character: 9 },
    newName: 'été',
  });
  const [edits = []] = Object.values(answer.changes);
  expect(edits.map(({ range }) => range.start)).toContainEqual({
    line: 3,
    character: Buffer.byteLength('  whisk crème fraîche, "sel 𝒜é" until smooth as '),
  });
  await editor.stop();
});

test('diagnostics are published in bytes', async () => {
  const editor = await edit('formula A\n  10 g  é𝒜é\n  mix é𝒜é, wine\n', { capabilities: utf8 });
  const published = editor.client.next(
    ({ method, params }) => method === 'textDocument/publishDiagnostics' && (params as { version?: number }).version === 2,
  );
  editor.write(editor.text().replace('wine', 'wines'));
  const found = (await editor.diagnostics()).find(({ code }) => code === 'unknown-name');
  expect(found?.range.start.character).toBe(Buffer.byteLength('  mix é𝒜é, '));
  expect(JSON.stringify((await published).params)).toContain(`"character":${Buffer.byteLength('  mix é𝒜é, ')}`);
  await editor.stop();
});

test('semantic tokens are counted in bytes', async () => {
  const editor = await edit('formula A\n  10 g  é𝒜é\n  mix é𝒜é as z\n', { capabilities: utf8 });
  const { data } = await editor.ask<{ data: number[] }>('textDocument/semanticTokens/full');
  const line = data.slice(-20);
  expect(line).toEqual([1, 2, 3, 1, 0, 0, 4, 8, 2, 0, 0, 9, 2, 0, 0, 0, 3, 1, 2, 1]);
  await editor.stop();
});

test('a position inside a character is its start; lone line ends count as the editor counts them', async () => {
  const editor = await edit('formula A\r  10 g  water\r  mix wa<|>ter\r', { capabilities: {} });
  expect(await editor.ask('textDocument/hover', { position: { line: 2, character: 7 } })).not.toBeNull();
  editor.change([{ range: { start: { line: 2, character: 6 }, end: { line: 2, character: 11 } }, text: 'wine' }]);
  const found = (await editor.diagnostics()).find(({ code }) => code === 'unknown-name');
  expect(found?.range).toEqual({ start: { line: 2, character: 6 }, end: { line: 2, character: 10 } });
  editor.change([{ range: { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } }, text: '\n' }]);
  expect((await editor.diagnostics()).find(({ code }) => code === 'unknown-name')?.range.start.line).toBe(2);
  await editor.stop();
});
