/** The shape of a document: symbols, folding, selection, tokens, layout, hints and lenses. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { edit } from './editor.ts';
import { edited, type Position } from './fixture.ts';

type Edits = Parameters<typeof edited>[1];

const bavarois = readFileSync(new URL('../../samples/hojicha-bavarois.nappe', import.meta.url), 'utf8');

interface Symbol {
  readonly name: string;
  readonly detail?: string;
  readonly children?: readonly Symbol[];
  readonly range: { readonly start: Position; readonly end: Position };
  readonly selectionRange: { readonly start: Position; readonly end: Position };
}

describe('symbols', () => {
  test('of a document: formulas hold components hold lines and results', async () => {
    const editor = await edit(bavarois);
    const [formula] = await editor.ask<Symbol[]>('textDocument/documentSymbol');
    expect(formula?.name).toBe('Hojicha bavarois');
    expect(formula?.children?.map(({ name }) => name)).toEqual(['serving', 'flavour', 'custard', 'whipped cream', 'assembly']);
    const custard = formula?.children?.find(({ name }) => name === 'custard');
    expect(custard?.children?.slice(0, 2).map(({ name, detail }) => [name, detail])).toEqual([
      ['whole milk', '240 g'],
      ['cream', '160 g'],
    ]);
    expect(custard?.children?.some(({ name, detail }) => name === 'liaison' && detail === 'whisk')).toBe(true);
    const isInside = (inner: Symbol, outer: Symbol) =>
      inner.range.start.line >= outer.range.start.line && inner.range.end.line <= outer.range.end.line;
    for (const child of formula?.children ?? []) expect(isInside(child, formula as Symbol)).toBe(true);
    await editor.stop();
  });

  test('for a client without a tree, in a row', async () => {
    const editor = await edit(bavarois, { capabilities: {} });
    const flat =
      await editor.ask<{ name: string; containerName?: string; location: { uri: string } }[]>('textDocument/documentSymbol');
    expect(flat.find(({ name }) => name === 'custard')).toMatchObject({
      containerName: 'Hojicha bavarois',
      location: { uri: editor.uri() },
    });
    await editor.stop();
  });

  test('of the workspace, by letters in order', async () => {
    const editor = await edit(
      `formula Lemon tart\n  1 g  water\n--- b.nappe\ncomponent lime curd\n  1 g  water\ningredient house praline\n  like hazelnut paste\n`,
    );
    const names = async (query: string) =>
      (await editor.client.request<{ name: string; location: { uri: string } }[]>('workspace/symbol', { query }))
        .filter(({ location }) => location.uri.startsWith(editor.uri('').slice(0, -1)))
        .map(({ name }) => name);
    expect(await names('lemtart')).toEqual(['Lemon tart']);
    expect((await names('')).sort()).toEqual(['Lemon tart', 'house praline', 'lime curd']);
    await editor.stop();
  });
});

test('folding: formulas, blocks, notes and comments', async () => {
  const editor = await edit(
    '// one\n// two\nformula A\n  | note\n  | more\ncomponent b\n  1 g  water\n\ncomponent c\n  1 g  water\n',
  );
  const ranges = await editor.ask<{ startLine: number; endLine: number; kind?: string }[]>('textDocument/foldingRange');
  expect(ranges.map(({ startLine, endLine, kind }) => [startLine, endLine, kind])).toEqual([
    [0, 1, 'comment'],
    [2, 9, undefined],
    [3, 4, undefined],
    [5, 6, undefined],
    [8, 9, undefined],
  ]);
  await editor.stop();
});

test('selection grows from the word to the file', async () => {
  const editor = await edit(
    'formula A\ncomponent b\n  240 g  whole mi<|>lk, 4 °C\n  heat whole milk to 80-85 °C\n\nformula C\n  1 g  water\n',
  );
  interface Selection {
    readonly range: { readonly start: Position; readonly end: Position };
    readonly parent?: Selection;
  }
  const [selection] = await editor.ask<Selection[]>('textDocument/selectionRange', { positions: [editor.cursor()] });
  const texts: string[] = [];
  const lines = editor.text().split('\n');
  for (let one = selection; one; one = one.parent) {
    const { start, end } = one.range;
    texts.push(
      start.line === end.line ? (lines[start.line]?.slice(start.character, end.character) ?? '') : `${start.line}-${end.line}`,
    );
  }
  expect(texts).toEqual(['milk', 'whole milk', '240 g  whole milk, 4 °C', '  240 g  whole milk, 4 °C', '1-4', '0-4', '0-7']);
  await editor.stop();
});

describe('semantic tokens', () => {
  interface Tokens {
    readonly resultId: string;
    readonly data: readonly number[];
  }

  const decode = (data: readonly number[], text: string, types: readonly string[]) => {
    const lines = text.split('\n');
    const tokens: string[] = [];
    let line = 0;
    let start = 0;
    for (let at = 0; at < data.length; at += 5) {
      const [down = 0, right = 0, length = 0, type = 0] = data.slice(at, at + 4);
      start = down > 0 ? right : start + right;
      line += down;
      tokens.push(`${types[type]}:${lines[line]?.slice(start, start + length)}`);
    }
    return tokens;
  };

  test('say what each word is', async () => {
    const text =
      'formula A\n  choice s: x, y\n  240 g (y 10 g)  whole milk, is cream, 4 °C   when x // c\n  heat whole milk to 80-85 °C until smooth as dairy\n    | a note\n';
    const editor = await edit(text, { capabilities: {} });
    const { legend } = editor.result.capabilities.semanticTokensProvider as { legend: { tokenTypes: string[] } };
    const { data } = await editor.ask<Tokens>('textDocument/semanticTokens/full');
    expect(decode(data, text, legend.tokenTypes)).toEqual([
      'keyword:formula',
      'class:A',
      'keyword:choice',
      'property:s',
      'enumMember:x',
      'enumMember:y',
      'number:240',
      'type:g',
      'enumMember:y',
      'number:10',
      'type:g',
      'variable:whole milk',
      'keyword:is',
      'struct:cream',
      'number:4',
      'type:°C',
      'keyword:when',
      'enumMember:x',
      'comment:// c',
      'function:heat',
      'variable:whole milk',
      'keyword:to',
      'number:80',
      'number:85',
      'type:°C',
      'keyword:until',
      'string:smooth',
      'keyword:as',
      'variable:dairy',
      'string:| a note',
    ]);
    await editor.stop();
  });

  test('as a difference give what the whole gives', async () => {
    const editor = await edit(bavarois);
    const first = await editor.ask<Tokens>('textDocument/semanticTokens/full');
    editor.replace('whole milk, 4 °C', 'whole milk, 4 °C, "warm"');
    const delta = await editor.ask<{ resultId: string; edits: { start: number; deleteCount: number; data: number[] }[] }>(
      'textDocument/semanticTokens/full/delta',
      { previousResultId: first.resultId },
    );
    const data = [...first.data];
    for (const { start, deleteCount, data: inserted } of [...delta.edits].reverse()) data.splice(start, deleteCount, ...inserted);
    expect(delta.edits[0]?.data.length).toBeLessThan(100);
    const whole = await editor.ask<Tokens>('textDocument/semanticTokens/full');
    expect(data).toEqual(whole.data);
    expect(await editor.ask('textDocument/semanticTokens/full/delta', { previousResultId: 'gone' })).toMatchObject({
      data: whole.data,
    });
    await editor.stop();
  });

  test('of a range are those of its lines', async () => {
    const editor = await edit('formula A\n  1 g  water\n  mix water\n');
    const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 11 } };
    const { data } = await editor.ask<Tokens>('textDocument/semanticTokens/range', { range });
    expect(data).toEqual([2, 2, 3, 1, 0, 0, 4, 5, 2, 0]);
    await editor.stop();
  });
});

describe('layout', () => {
  const untidy = 'formula A\n10 g   water  \n     5 g salt\n\n\n\n mix   water,salt\n\n';
  const tidy = 'formula A\n  10 g  water\n   5 g  salt\n\n  mix water, salt\n';

  const formatted = async (fixture: string, method: string, more: object = {}, name = 'main.nappe') => {
    const editor = await edit(fixture);
    const edits = await editor.ask<Edits | null>(method, { options: { tabSize: 2, insertSpaces: true }, ...more }, name);
    const after = edited(editor.text(name), edits ?? []);
    await editor.stop();
    return after;
  };

  test('of a document', async () => {
    expect(await formatted(untidy, 'textDocument/formatting')).toBe(tidy);
    expect(await formatted(tidy, 'textDocument/formatting')).toBe(tidy);
    expect(await formatted('\n\n', 'textDocument/formatting')).toBe('');
    expect(await formatted(untidy.replaceAll('\n', '\r\n'), 'textDocument/formatting')).toBe(tidy.replaceAll('\n', '\r\n'));
  });

  test('of a tidy document is no edit, of another only the lines that change', async () => {
    const editor = await edit(tidy.replace('   5 g', '     5 g'));
    expect(await editor.ask('textDocument/formatting')).toEqual([
      { range: { start: { line: 2, character: 0 }, end: { line: 2, character: 14 } }, newText: '   5 g  salt' },
    ]);
    await editor.stop();
  });

  test('of a range, its lines alone', async () => {
    const range = { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } };
    expect(await formatted(untidy, 'textDocument/rangeFormatting', { range })).toBe(
      untidy.replace('10 g   water  ', '  10 g  water'),
    );
  });

  test('after Enter, the line above, and the indentation of the new one', async () => {
    const fixture = 'formula A\n10 g   water\n<|>\n';
    expect(await formatted(fixture, 'textDocument/onTypeFormatting', { ch: '\n' })).toBe('formula A\n  10 g  water\n  \n');
  });

  test('of a Markdown file, its fences alone', async () => {
    const fixture = '--- a.md\n#  Title\n\n   text\n\n```nappe\nformula A\n10 g   water\n```\n\n\n\n* x\n';
    expect(await formatted(fixture, 'textDocument/formatting', {}, 'a.md')).toBe(
      '#  Title\n\n   text\n\n```nappe\nformula A\n  10 g  water\n```\n\n\n\n* x\n',
    );
  });

  test('leaves a line that cannot be read as it is', async () => {
    expect(await formatted('formula A\n  10 g  water\n mix watter of of\n', 'textDocument/formatting')).toContain(
      '\n mix watter of of\n',
    );
  });
});

describe('hints', () => {
  interface Hint {
    readonly position: Position;
    readonly label: string;
  }

  test('show shares, the temperature after each addition, and how long cooling takes', async () => {
    const editor = await edit(bavarois);
    const lines = editor.text().split('\n');
    const range = { start: { line: 0, character: 0 }, end: { line: lines.length - 1, character: 0 } };
    const hints = await editor.ask<Hint[]>('textDocument/inlayHint', { range });
    const on = (start: string) =>
      hints.filter(({ position }) => lines[position.line]?.trimStart().startsWith(start)).map(({ label }) => label);
    expect(on('240 g')).toEqual([expect.stringMatching(/^2\d(\.\d)? %$/)]);
    expect(on('100 g')).toEqual([]);
    expect(on('fold')).toEqual([expect.stringMatching(/^\d+ → \d+ → \d+ → \d+ °C$/)]);
    expect(on('cool')).toEqual([expect.stringMatching(/^about .*min/)]);
    await editor.stop();
  });

  test('only for the lines asked for', async () => {
    const editor = await edit(bavarois);
    const range = { start: { line: 16, character: 0 }, end: { line: 16, character: 10 } };
    const hints = await editor.ask<Hint[]>('textDocument/inlayHint', { range });
    expect(hints.map(({ position }) => position.line)).toEqual([16]);
    await editor.stop();
  });

  test('can be turned off', async () => {
    const editor = await edit(bavarois, {
      capabilities: {},
      initializationOptions: { settings: { inlayHints: { shares: false, temperatures: false, times: false } } },
    });
    const range = { start: { line: 0, character: 0 }, end: { line: 60, character: 0 } };
    expect(await editor.ask('textDocument/inlayHint', { range })).toEqual([]);
    await editor.stop();
  });
});

test('lenses say what a formula makes, when shown, and open its card', async () => {
  const editor = await edit(bavarois);
  interface Lens {
    readonly range: { readonly start: Position };
    readonly command?: { readonly title: string; readonly command: string; readonly arguments?: readonly unknown[] };
  }
  const lenses = await editor.ask<Lens[]>('textDocument/codeLens');
  expect(lenses).toHaveLength(2);
  expect(lenses[1]?.command).toEqual({
    title: 'Open the card',
    command: 'nappe.openCard',
    arguments: [{ uri: editor.uri(), formula: 'Hojicha bavarois' }],
  });
  const resolved = await editor.client.request<Lens>('codeLens/resolve', lenses[0]);
  expect(resolved.command?.title).toMatch(/^makes 12 glasses of 100 ml · \d+ g$/);
  await editor.stop();
});

test.each([
  ['565 g', 'makes 565 g, comes to 500 g'],
  ['500 g', 'makes 500 g'],
])('a lens names a weight that is written, %s, and the one it comes to, where they differ', async (written, title) => {
  const editor = await edit(`formula Tea\n  makes ${written}\n  500 g  water\n  stir water\n`);
  const [lens] = await editor.ask<object[]>('textDocument/codeLens');
  const resolved = await editor.client.request<{ command?: { title: string } }>('codeLens/resolve', lens);
  expect(resolved.command?.title).toBe(title);
  await editor.stop();
});
