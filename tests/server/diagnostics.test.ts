/** Diagnostics: published and pulled, at the right places, with what goes with them. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fullCapabilities } from './client.ts';
import { type Diagnostic, type Editor, edit } from './editor.ts';

const tooWarm = readFileSync(new URL('../../samples/faulty/fold-too-warm.nappe', import.meta.url), 'utf8');
const pulls = {
  ...fullCapabilities,
  textDocument: { ...fullCapabilities.textDocument, diagnostic: { relatedDocumentSupport: true } },
};

const published = (editor: Editor, name = 'main.nappe') =>
  editor.client.next(
    ({ method, params }) => method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri === editor.uri(name),
  );

const codesIn = ({ params }: { params?: unknown }) =>
  (params as { diagnostics: Diagnostic[] }).diagnostics.map(({ code }) => code);

test('are published when a document opens and vanish after the edit', async () => {
  const editor = await edit(tooWarm, { capabilities: fullCapabilities });
  expect(codesIn(await published(editor))).toEqual(['fold-too-warm']);
  const after = published(editor);
  editor.replace('  add gelatin\n', '  add gelatin\n  cool to 30-34 °C\n');
  expect(codesIn(await after)).toEqual([]);
  await editor.stop();
});

test('carry severity, source, a link to the explanation and related places', async () => {
  const editor = await edit(tooWarm);
  const [found] = await editor.diagnostics();
  expect(found).toMatchObject({
    code: 'fold-too-warm',
    severity: 1,
    source: 'nappe',
    range: { start: { line: 15, character: 2 } },
    codeDescription: { href: 'nappe-explain:/fold-too-warm.md' },
  });
  expect(found?.message).toMatch(/84 °C/);
  expect(found?.relatedInformation?.map(({ message, location }) => [message, location.uri, location.range.start.line])).toEqual([
    ['last heated here', editor.uri(), 12],
    ['whipped here', editor.uri(), 14],
  ]);
  await editor.stop();
});

test('the link leads to a page that the server gives', async () => {
  const editor = await edit(tooWarm);
  const page = await editor.client.request<{ text: string }>('workspace/textDocumentContent', {
    uri: 'nappe-explain:/fold-too-warm.md',
  });
  expect(page.text).toMatch(/^# `fold-too-warm`/);
  expect(await editor.client.request('nappe/explain', { code: 'fold-too-warm' })).toMatchObject({ markdown: page.text });
  expect(await editor.client.request('nappe/explain', { code: 'nonsense' })).toMatchObject({ problem: expect.any(String) });
  await editor.stop();
});

test('what is not needed is tagged as such', async () => {
  const editor = await edit('formula A\n  10 g  water\n  5 g  salt\n  heat water to 40 °C\n');
  const found = (await editor.diagnostics()).find(({ code }) => code === 'unused-ingredient');
  expect(found).toMatchObject({ tags: [1], range: { start: { line: 2 } } });
  await editor.stop();
});

test('say under which choices they hold', async () => {
  const editor = await edit('formula A\n  choice mode: warm, cold\n  10 g  water\n  mix water\n  mix salt   when cold\n');
  expect((await editor.diagnostics()).find(({ code }) => code === 'unknown-name')?.message).toMatch(/\(When mode is cold\.\)$/);
  await editor.stop();
});

test('stand at the right lines of a Markdown file, and only in its fences', async () => {
  const fixture = `--- course.md
# Evening one

mix nothing here

~~~~nappe
formula A
  10 g  water
  mix wine
~~~~

\`\`\`text
mix wine
\`\`\`
`;
  const editor = await edit(fixture);
  const found = await editor.diagnostics('course.md');
  expect(
    found.filter(({ severity }) => severity === 1).map(({ code, range }) => [code, range.start.line, range.start.character]),
  ).toEqual([['unknown-name', 7, 6]]);
  await editor.stop();
});

test('what happens in a base is shown where it is taken, with the base’s line beside it', async () => {
  const fixture = `take hot cream from "base.nappe"
formula A
  200 g  hot cream
  500 g  cream, 35 % fat
  whip cream to soft peak as foam
  fold foam into hot cream in 3 additions: whisk, spatula
  chill for 4 h
--- base.nappe
component hot cream
  100 g  whole milk
   20 g  egg yolk
  whisk whole milk, egg yolk
  cook to 95 °C
`;
  const editor = await edit(fixture);
  const found = (await editor.diagnostics()).find(({ code }) => code === 'custard-curdles');
  expect(found?.range.start.line).toBe(2);
  expect(found?.message).toContain('(in base.nappe, line 5)');
  expect(found?.relatedInformation?.[0]).toMatchObject({
    location: { uri: editor.uri('base.nappe'), range: { start: { line: 4 } } },
  });
  await editor.stop();
});

describe('pulled', () => {
  test('are unchanged where they are', async () => {
    const editor = await edit(tooWarm, { capabilities: pulls });
    expect(editor.result.capabilities).toMatchObject({
      diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true },
    });
    const first = await editor.ask<{ kind: string; resultId: string }>('textDocument/diagnostic');
    expect(first.kind).toBe('full');
    const again = await editor.ask('textDocument/diagnostic', { previousResultId: first.resultId });
    expect(again).toEqual({ kind: 'unchanged', resultId: first.resultId });
    editor.replace('to 82-84 °C', 'to 82-83 °C');
    expect(await editor.ask('textDocument/diagnostic', { previousResultId: first.resultId })).toMatchObject({ kind: 'full' });
    expect(editor.notifications('textDocument/publishDiagnostics')).toEqual([]);
    await editor.stop();
  });

  test('of the whole workspace hold closed files too, and those that are gone', async () => {
    const editor = await edit(`formula A\n  10 g  water\n  mix water\n--- closed.nappe\n${tooWarm}`, {
      capabilities: pulls,
      closed: ['closed.nappe'],
    });
    await editor.client.next(
      ({ method, params }) => method === '$/progress' && (params as { value: { kind: string } }).value.kind === 'end',
    );
    const gone = { uri: editor.uri('gone.nappe'), value: '7' };
    const { items } = await editor.client.request<{ items: { uri: string; kind: string; items: Diagnostic[] }[] }>(
      'workspace/diagnostic',
      { previousResultIds: [gone] },
    );
    const codes = Object.fromEntries(items.map(({ uri, items: found }) => [uri, found.map(({ code }) => code)]));
    expect(codes[editor.uri('closed.nappe')]).toEqual(['fold-too-warm']);
    expect(codes[gone.uri]).toEqual([]);
    await editor.stop();
  });

  test('of the whole workspace come in pieces, and stop when they are no longer wanted', async () => {
    const names = Array.from({ length: 1000 }, (_, i) => `many/${i}.nappe`);
    const fixture = names.map((name) => `--- ${name}\nformula A\n  10 g  water\n  mix water\n`).join('');
    const editor = await edit(fixture, { capabilities: pulls, closed: names });
    await editor.client.next(
      ({ method, params }) => method === '$/progress' && (params as { value: { kind: string } }).value.kind === 'end',
    );
    const piece = editor.client.next(
      ({ method, params }) => method === '$/progress' && (params as { token: unknown }).token === 'pieces',
    );
    const request = editor.client.request('workspace/diagnostic', { previousResultIds: [], partialResultToken: 'pieces' });
    const { params } = await piece;
    expect((params as { value: { items: unknown[] } }).value.items).toHaveLength(100);
    editor.client.notify('$/cancelRequest', { id: request.id });
    await expect(request).rejects.toMatchObject({ code: -32800 });
    await editor.stop();
  });

  test('are asked for again when a base of an open file changes', async () => {
    const fixture =
      'take base from "base.nappe"\nformula A\n  10 g  base\n  mix base\n--- base.nappe\ncomponent base\n  10 g  water\n  mix water\n';
    const editor = await edit(fixture, { capabilities: pulls });
    expect(await editor.diagnostics()).toEqual([]);
    const asked = editor.client.next(({ method }) => method === 'workspace/diagnostic/refresh');
    editor.replace('component base', 'component ground', 'base.nappe');
    await asked;
    expect((await editor.diagnostics()).map(({ code }) => code)).toContain('import-missing');
    await editor.stop();
  });
});

test('of a closed file that takes from an edited one are published anew', async () => {
  const fixture =
    'component base\n  10 g  water\n  mix water\n--- taker.nappe\ntake base from "main.nappe"\nformula A\n  10 g  base\n  mix base\n';
  const editor = await edit(fixture, { capabilities: fullCapabilities, closed: ['taker.nappe'] });
  await editor.client.next(
    ({ method, params }) => method === '$/progress' && (params as { value: { kind: string } }).value.kind === 'end',
  );
  const after = published(editor, 'taker.nappe');
  editor.replace('component base', 'component ground');
  expect(codesIn(await after)).toContain('import-missing');
  const again = published(editor, 'taker.nappe');
  editor.replace('component ground', 'component base');
  expect(codesIn(await again)).toEqual([]);
  await editor.stop();
});
