/** Definition, references, highlights and links: where a name is from, and where else it stands. */
import { describe, expect, test } from 'vitest';
import { edit } from './editor.ts';
import type { Position } from './fixture.ts';

interface Location {
  readonly uri: string;
  readonly range: { readonly start: Position; readonly end: Position };
}

/** `name:line:column`, lines and columns from 1. */
const shown = (locations: readonly Location[] | null): string[] =>
  (locations ?? []).map(({ uri, range }) => `${uri.split('/').at(-1)}:${range.start.line + 1}:${range.start.character + 1}`);

async function ask(method: string, fixture: string, more: object = {}): Promise<string[]> {
  const editor = await edit(fixture);
  const answer = await editor.ask<Location[] | null>(method, more);
  expect(editor.faults()).toEqual([]);
  await editor.stop();
  return shown(answer);
}

const bavarois = `take pastry cream as crème from "bases.nappe"
formula Bavarois
  choice serving: glass, mould
component custard
  100 g  whole milk
   20 g  egg yolk
  mix whole milk, egg yolk as base
  cook base to 84 °C
  pour into glass   when glass
assembly
  50 g  crème
  fold custard into crème
`;

const base = `component pastry cream
  100 g  whole milk
  boil
ingredient house praline
  like hazelnut paste
`;

const with_ = (find: string, offset = 1): string => {
  const at = bavarois.indexOf(find) + offset;
  return `${bavarois.slice(0, at)}<|>${bavarois.slice(at)}--- bases.nappe\n${base}`;
};

describe('definition', () => {
  test('of an ingredient is its line', async () => {
    expect(await ask('textDocument/definition', with_('whole milk, egg'))).toEqual(['main.nappe:5:10']);
  });
  test('of a result is the step that names it', async () => {
    expect(await ask('textDocument/definition', with_('base to'))).toEqual(['main.nappe:7:31']);
  });
  test('of a component is its heading', async () => {
    expect(await ask('textDocument/definition', with_('custard into'))).toEqual(['main.nappe:4:11']);
  });
  test('of a taken name is its heading in the other file', async () => {
    expect(await ask('textDocument/definition', with_('pastry cream'))).toEqual(['bases.nappe:1:11']);
  });
  test('of another name for it is where it gets that', async () => {
    expect(await ask('textDocument/definition', with_('crème\n', 1))).toEqual(['main.nappe:1:22']);
  });
  test('of a value is the choice', async () => {
    expect(await ask('textDocument/definition', with_('glass\nassembly'))).toEqual(['main.nappe:3:19']);
  });
  test('of a file is the file', async () => {
    expect(await ask('textDocument/definition', with_('bases.nappe'))).toEqual(['bases.nappe:1:1']);
  });
  test('of a word of the notation is nothing', async () => {
    expect(await ask('textDocument/definition', with_('fold custard'))).toEqual([]);
  });
  test('carries where it starts from for a client that shows it', async () => {
    const editor = await edit(with_('base to'), { capabilities: { textDocument: { definition: { linkSupport: true } } } });
    const [link] = (await editor.ask<{ originSelectionRange: unknown; targetUri: string }[]>('textDocument/definition')) ?? [];
    expect(link).toMatchObject({
      targetUri: editor.uri(),
      originSelectionRange: { start: { line: 7, character: 7 }, end: { line: 7, character: 11 } },
    });
    await editor.stop();
  });
});

describe('references', () => {
  test('of a component stand over blocks', async () => {
    expect(await ask('textDocument/references', with_('custard\n'))).toEqual(['main.nappe:4:11', 'main.nappe:12:8']);
  });
  test('without the declaration where that is not wanted', async () => {
    expect(await ask('textDocument/references', with_('custard\n'), { context: { includeDeclaration: false } })).toEqual([
      'main.nappe:12:8',
    ]);
  });
  test('of a base stand over files', async () => {
    const fixture = `formula A\n  10 g  crème<|> anglaise\n  mix crème anglaise\n--- one.nappe\ntake crème anglaise from "bases.nappe"\nformula B\n  20 g  crème anglaise\n--- bases.nappe\ncomponent crème anglaise\n  10 g  water\n`;
    const editor = await edit(fixture);
    const answer = await editor.ask<Location[]>(
      'textDocument/references',
      { position: { line: 0, character: 12 } },
      'bases.nappe',
    );
    expect(shown(answer)).toEqual(['bases.nappe:1:11', 'one.nappe:1:6', 'one.nappe:3:9']);
    await editor.stop();
  });
});

test('highlights are those of this file, declarations as writes', async () => {
  const editor = await edit(with_('whole milk, egg'));
  const highlights = await editor.ask<{ range: { start: Position }; kind: number }[]>('textDocument/documentHighlight');
  expect(highlights.map(({ range, kind }) => [range.start.line + 1, kind])).toEqual([
    [5, 3],
    [7, 2],
  ]);
  await editor.stop();
});

test('links lead to the files that are there, and to the formula picked', async () => {
  const editor = await edit(
    `card "a.nappe#Second" for 2 glasses\ncard "none.nappe"\ncard "../../etc/passwd"\n--- a.nappe\nformula First\n  10 g  water\n\nformula Second\n  10 g  water\n`,
  );
  const links = await editor.ask<{ target: string; range: { start: Position } }[]>('textDocument/documentLink');
  expect(links.map(({ target, range }) => [target, range.start.character])).toEqual([[`${editor.uri('a.nappe')}#L4`, 6]]);
  await editor.stop();
});
