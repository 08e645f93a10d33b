/** What the server speaks beside the protocol: cards, comparisons, bases. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { CardAnswer, CompareAnswer, Problem } from '../../server/src/protocol.ts';
import { type Editor, edit } from './editor.ts';

const bavarois = readFileSync(new URL('../../samples/hojicha-bavarois.nappe', import.meta.url), 'utf8');

const card = (editor: Editor, params: object = {}) =>
  editor.client.request<CardAnswer>('nappe/card', { uri: editor.uri(), ...params });

test('a card comes as a page, with the choices, and where its steps stand', async () => {
  const editor = await edit(bavarois);
  const answer = await card(editor);
  expect(answer.html).toMatch(/^<!doctype html>/i);
  expect(answer.formula).toBe('Hojicha bavarois');
  expect(answer.choices).toEqual([
    { name: 'serving', values: ['glass', 'mould', 'cut'], value: 'glass' },
    { name: 'flavour', values: ['tea', 'raspberry'], value: 'tea' },
  ]);
  expect(answer.makes).toContain('12 glasses');
  const lines = bavarois.split('\n');
  expect(answer.steps.map(({ line }) => lines[line]?.trim().split(' ')[0])).toEqual(
    expect.arrayContaining(['bloom', 'heat', 'whip', 'fold', 'portion']),
  );
  for (const { uri } of answer.steps) expect(uri).toBe(editor.uri());
  await editor.stop();
});

test('it follows size, choices, units and language', async () => {
  const editor = await edit(bavarois);
  const answer = await card(editor, { for: '24 glasses', choices: ['raspberry'], language: 'fr-CA' });
  expect(answer.makes).toMatch(/24/);
  expect(answer.choices[1]?.value).toBe('raspberry');
  expect(answer.html).toContain('lang="fr"');
  expect(answer.html).toContain('480');
  expect((await card(editor, { units: 'us' })).html).not.toBe((await card(editor)).html);
  expect(answer.languages.map(({ code }) => code)).toContain('fr');
  await editor.stop();
});

test('it is of the text as it is being written', async () => {
  const editor = await edit(bavarois);
  editor.replace('320 g  cream', '333 g  cream');
  expect((await card(editor)).html).toContain('333');
  await editor.stop();
});

test('of a file of several formulas it is the one named, or the one the line is in', async () => {
  const editor = await edit(
    'formula One\n  makes 100 g\n  100 g  water\n  boil\n\nformula Two\n  makes 100 g\n  100 g  water\n  boil\n',
  );
  expect((await card(editor, { formula: 'two' })).formula).toBe('Two');
  expect((await card(editor, { line: 7 })).formula).toBe('Two');
  expect((await card(editor)).formulas).toEqual(['One', 'Two']);
  expect(await card(editor, { formula: 'Three' })).toEqual({ problem: expect.stringContaining('Three') });
  await editor.stop();
});

test('where there is none, one sentence says why', async () => {
  const editor = await edit('// nothing yet\n--- bad.nappe\nformula A\n  10 g  water\n  miks water\n');
  const problem = async (params: object) => ((await editor.client.request('nappe/card', params)) as Problem).problem;
  expect(await problem({ uri: editor.uri() })).toContain('no formula');
  expect(await problem({ uri: editor.uri('bad.nappe') })).toContain('cannot be read');
  expect(await problem({ uri: editor.uri('none.nappe') })).toContain('cannot be read');
  await editor.stop();
});

test('a request that is no size is answered with what is one', async () => {
  const editor = await edit(bavarois);
  expect(await card(editor, { for: 'plenty' })).toEqual({ problem: expect.stringContaining('24 glasses') });
  await editor.stop();
});

test('steps of a base stand in the base’s file', async () => {
  const editor = await edit(
    'take base from "sub/base.nappe"\nformula A\n  makes 50 g\n  50 g  base\n  chill base to 4 °C for 1 h\n--- sub/base.nappe\ncomponent base\n  100 g  water\n  boil for 2 min\n',
  );
  const { steps } = await card(editor);
  expect(steps.map(({ uri, line }) => [uri, line])).toEqual([
    [editor.uri('sub/base.nappe'), 2],
    [editor.uri(), 4],
  ]);
  await editor.stop();
});

test('two files are compared, or a file with an earlier text of it', async () => {
  const editor = await edit(`${bavarois}--- old.nappe\n${bavarois.replace('320 g', '300 g')}`);
  const compare = (params: object) => editor.client.request<CompareAnswer>('nappe/compare', params);
  const files = await compare({ old: editor.uri('old.nappe'), new: editor.uri() });
  expect(files.markdown).toContain('300 g');
  expect(files.changes.length).toBeGreaterThan(0);
  const same = await compare({ old: editor.uri(), new: editor.uri(), oldText: bavarois });
  expect(same.changes).toEqual([]);
  await editor.stop();
});

test('what other files offer comes with the edit that takes it', async () => {
  const editor = await edit('formula A\n  10 g  water\n--- base.nappe\ncomponent pastry cream\n  10 g  water\n');
  const answer = await editor.client.request<object>('nappe/bases', { uri: editor.uri() });
  expect(JSON.stringify(answer)).toContain('take pastry cream from \\"base.nappe\\"');
  await editor.stop();
});

test('a client that wants to know is told whose cards are stale', async () => {
  const editor = await edit(
    'take base from "base.nappe"\nformula A\n  10 g  base\n  boil base\n--- base.nappe\ncomponent base\n  10 g  water\n',
    { capabilities: {}, initializationOptions: { cards: true } },
  );
  await editor.diagnostics();
  const told = editor.client.next(
    ({ method, params }) => method === 'nappe/cardChanged' && (params as { uris: string[] }).uris.length > 1,
  );
  editor.replace('10 g', '20 g', 'base.nappe');
  expect((await told).params).toEqual({ uris: [editor.uri('base.nappe'), editor.uri()] });
  await editor.stop();
});
