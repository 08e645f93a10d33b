/** Rename: everywhere at once, or not at all. */
import { describe, expect, test } from 'vitest';
import { ResponseFailed } from './client.ts';
import { edit } from './editor.ts';
import { edited } from './fixture.ts';

interface WorkspaceEdit {
  readonly changes: Record<string, Parameters<typeof edited>[1]>;
}

/** The files after the rename, or the refusal. */
async function rename(fixture: string, newName: string): Promise<Record<string, string> | string> {
  const editor = await edit(fixture);
  const name = [...editor.files].find(([, { cursors }]) => cursors.length > 0)?.[0] ?? 'main.nappe';
  try {
    const answer = await editor.ask<WorkspaceEdit>('textDocument/rename', { newName }, name);
    const after: Record<string, string> = {};
    for (const [file, { text }] of editor.files) {
      const edits = answer.changes[editor.uri(file)];
      if (edits) after[file] = edited(text, edits);
    }
    return after;
  } catch (error) {
    if (error instanceof ResponseFailed) return error.message;
    throw error;
  } finally {
    expect(editor.faults()).toEqual([]);
    await editor.stop();
  }
}

test('a result, in its block', async () => {
  const fixture =
    'formula A\n  10 g  water\n  5 g  salt\n  mix water, salt as <|>brine\n  heat brine to 40 °C\n  pour brine into jar\n';
  expect(await rename(fixture, 'warm brine')).toEqual({
    'main.nappe':
      'formula A\n  10 g  water\n  5 g  salt\n  mix water, salt as warm brine\n  heat warm brine to 40 °C\n  pour warm brine into jar\n',
  });
});

test('an ingredient keeps what it is when its name says something else', async () => {
  const fixture = 'formula A\n  10 g  <|>whole milk, 4 °C\n  heat whole milk to 40 °C\n';
  expect(await rename(fixture, 'dairy')).toEqual({
    'main.nappe': 'formula A\n  10 g  dairy, is whole milk, 4 °C\n  heat dairy to 40 °C\n',
  });
});

test('another name of the same kind needs no “is”', async () => {
  expect(await rename('formula A\n  10 g  caster <|>sugar\n  melt caster sugar\n', 'superfine sugar')).toEqual({
    'main.nappe': 'formula A\n  10 g  superfine sugar\n  melt superfine sugar\n',
  });
});

test('a name that holds a connective stands in quotes', async () => {
  const fixture = 'formula A\n  10 g  water\n  5 g  salt\n  mix water, salt as <|>brine\n  heat brine\n';
  expect(await rename(fixture, 'salt in water')).toEqual({
    'main.nappe': 'formula A\n  10 g  water\n  5 g  salt\n  mix water, salt as "salt in water"\n  heat "salt in water"\n',
  });
});

test('a component, in its formula and in files that take it', async () => {
  const fixture = `component <|>custard
  10 g  whole milk
  heat whole milk to 80 °C
--- one.nappe
take custard from "main.nappe"
formula B
  5 g  custard
  whisk custard
--- two.nappe
take custard as base from "main.nappe"
formula C
  5 g  base
  whisk base
`;
  expect(await rename(fixture, 'crème')).toEqual({
    'main.nappe': 'component crème\n  10 g  whole milk\n  heat whole milk to 80 °C\n',
    'one.nappe': 'take crème from "main.nappe"\nformula B\n  5 g  crème\n  whisk crème\n',
    'two.nappe': 'take crème as base from "main.nappe"\nformula C\n  5 g  base\n  whisk base\n',
  });
});

test('a formula, in the requests that pick it', async () => {
  const fixture = 'formula <|>Lemon tart\n  10 g  water\n--- menu.nappe\ncard "main.nappe#Lemon tart" for 2 kg\n';
  expect(await rename(fixture, 'Citron tart')).toEqual({
    'main.nappe': 'formula Citron tart\n  10 g  water\n',
    'menu.nappe': 'card "main.nappe#Citron tart" for 2 kg\n',
  });
});

test('a value of a choice, in guards, overrides, requests and the base that follows it', async () => {
  const fixture = `formula A
  choice serving: glass, <|>mould
  10 g (mould 20 g)  water
  5 g  base   when mould
take base from "base.nappe"
--- base.nappe
formula Base
  choice serving: glass, mould
component base
  10 g  cream   unless mould
--- menu.nappe
card "main.nappe" with mould
--- other.nappe
formula Other
  choice serving: glass, mould
  1 g  water   when mould
`;
  expect(await rename(fixture, 'ring')).toEqual({
    'main.nappe':
      'formula A\n  choice serving: glass, ring\n  10 g (ring 20 g)  water\n  5 g  base   when ring\ntake base from "base.nappe"\n',
    'base.nappe': 'formula Base\n  choice serving: glass, ring\ncomponent base\n  10 g  cream   unless ring\n',
    'menu.nappe': 'card "main.nappe" with ring\n',
  });
});

describe('is refused where the new name', () => {
  test('is another line of the block', async () => {
    expect(await rename('formula A\n  10 g  <|>water\n  5 g  salt\n  mix water, salt\n', 'salt')).toMatch(/“salt” already/);
  });
  test('is a component of the formula', async () => {
    expect(
      await rename('formula A\ncomponent cream base\n  5 g  cream\ncomponent b\n  10 g  <|>water\n  mix water\n', 'cream base'),
    ).toMatch(/already/);
  });
  test('is taken in a file that takes it', async () => {
    const fixture =
      'component <|>custard\n  1 g  water\n--- b.nappe\ntake custard from "main.nappe"\nformula B\n  1 g  water\n  1 g  crème\n  mix water, crème, custard\n';
    expect(await rename(fixture, 'crème')).toMatch(/already/);
  });
  test('is another value of the choice', async () => {
    expect(await rename('formula A\n  choice a: <|>x, y\n  1 g  water   when x\n', 'y')).toMatch(/already/);
  });
  test('is no name', async () => {
    expect(await rename('formula A\n  1 g  water\n  mix water as <|>b\n', '  ')).toMatch(/letter/);
    expect(await rename('formula A\n  1 g  water\n  mix water as <|>b\n', 'a "b"')).toMatch(/quotation/);
  });
  test('would be for what is not the cook’s to name', async () => {
    expect(await rename('formula A\n  1 g  milk, is <|>whole milk\n', 'x')).toMatch(/catalogue/);
    expect(await rename('formula A\n  1 g  water\n  pour water into <|>glass\n', 'x')).toMatch(/vessel/);
    expect(await rename('formula A\n  1 g  water\n  <|>mix water\n', 'x')).toMatch(/cursor on a name/);
  });
});

test('what can be renamed is told before', async () => {
  const editor = await edit('formula A\n  1 g  water\n  mix water as <|>pale brine\n');
  expect(await editor.ask('textDocument/prepareRename')).toEqual({
    range: { start: { line: 2, character: 15 }, end: { line: 2, character: 25 } },
    placeholder: 'pale brine',
  });
  await editor.stop();
});
