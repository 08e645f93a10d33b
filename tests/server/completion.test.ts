/** Completion: what may stand at the cursor, what is still unused first. */
import { describe, expect, test } from 'vitest';
import { edit } from './editor.ts';
import { edited, type Position } from './fixture.ts';

interface Item {
  readonly label: string;
  readonly detail?: string;
  readonly sortText: string;
  readonly filterText?: string;
  readonly insertTextFormat?: number;
  readonly data?: unknown;
  readonly textEdit: { readonly range: { readonly start: Position; readonly end: Position }; readonly newText: string };
}

async function complete(fixture: string): Promise<{ items: readonly Item[]; after(label: string): string }> {
  const editor = await edit(fixture);
  const name = [...editor.files].find(([, { cursors }]) => cursors.length > 0)?.[0] ?? 'main.nappe';
  const { items } = await editor.ask<{ items: Item[] }>('textDocument/completion', {}, name);
  const text = editor.text(name);
  expect(editor.faults()).toEqual([]);
  await editor.stop();
  const after = (label: string) => {
    const item = items.find((one) => one.label === label);
    return item ? edited(text, [item.textEdit]) : `no ${label} among ${items.map((one) => one.label).join(', ')}`;
  };
  return { items, after };
}

const labels = async (fixture: string) => (await complete(fixture)).items.map(({ label }) => label);

describe('at a line’s start', () => {
  test('of a component: verbs with templates first, then headers that may stand there, then blocks', async () => {
    const { items, after } = await complete('formula A\ncomponent b\n  10 g  water\n  <|>\n');
    const all = items.map(({ label }) => label);
    expect(all.indexOf('whisk')).toBeLessThan(all.indexOf('loss'));
    expect(all.indexOf('loss')).toBeLessThan(all.indexOf('component'));
    expect(all).not.toContain('makes');
    expect(after('cook')).toMatch(/\n {2}cook to \$\{1:82-84\} °C until \$\{2:nappe\}\n/);
    expect(items.find(({ label }) => label === 'cook')?.insertTextFormat).toBe(2);
  });
  test('of a formula: headers first', async () => {
    const all = await labels('formula A\n  <|>\n');
    expect(all.indexOf('makes')).toBeLessThan(all.indexOf('whisk'));
  });
  test('of a house ingredient: its facts', async () => {
    const all = await labels('ingredient x\n  <|>\n');
    expect(all.slice(0, 3)).toEqual(['like', 'water', 'milk fat']);
    expect(all).not.toContain('whisk');
  });
  test('of a file: blocks', async () => {
    expect((await labels('<|>\n')).slice(0, 2)).toEqual(['formula', 'component']);
  });
  test('a client without snippets gets the template’s own words', async () => {
    const editor = await edit('formula A\n  10 g  water\n  <|>\n', { capabilities: {} });
    const { items } = await editor.ask<{ items: Item[] }>('textDocument/completion');
    expect(items.find(({ label }) => label === 'cook')?.textEdit.newText).toBe('cook to 82-84 °C until nappe');
    await editor.stop();
  });
});

describe('on an ingredient line', () => {
  test('units after a number', async () => {
    expect((await labels('formula A\n  10 <|>\n'))[0]).toBe('g');
  });
  test('kinds of the catalogue by any of their names', async () => {
    const { items } = await complete('formula A\n  10 g  powdered su<|>\n');
    expect(items[0]).toMatchObject({ label: expect.stringContaining('powdered sugar'), detail: 'icing sugar' });
  });
  test('what the file and others it takes from have, first', async () => {
    const all = await labels(
      'take crème from "b.nappe"\ningredient praline\n  like hazelnut paste\nformula A\ncomponent custard\n  1 g  water\nassembly\n  10 g  <|>\n--- b.nappe\ncomponent crème\n  1 g  water\n',
    );
    expect(all.slice(0, 3).sort()).toEqual(['crème', 'custard', 'praline']);
  });
  test('attributes after the comma, those usual for the ingredient first', async () => {
    const all = await labels('formula A\n  10 g  gelatin, <|>\n');
    expect(all.slice(0, 2)).toEqual(['200 bloom', 'sheet']);
    expect(all).toContain('pasteurised');
  });
  test('kinds after “is”', async () => {
    expect(await labels('formula A\n  10 g  roasted green tea, is tea l<|>\n')).toEqual(['tea leaf', 'green tea leaf']);
  });
  test('values in parentheses and after “when”', async () => {
    const head = 'formula A\n  choice serving: glass, mould\n';
    expect(await labels(`${head}  10 g (<|>)  water\n`)).toEqual(['glass', 'mould']);
    expect(await labels(`${head}  10 g  water   when <|>\n`)).toEqual(['glass', 'mould']);
    expect(await labels(`${head}  10 g  water   when glass, <|>\n`)).toEqual(['mould']);
  });
});

describe('in a step', () => {
  const lines = 'formula A\n  10 g  water\n  5 g  fine salt\n  5 g  "salt in water"\n  mix water as brine\n';
  test('names still unused first, those used last, the line’s own not at all', async () => {
    const { items, after } = await complete(`${lines}  whisk brine, <|>\n`);
    const all = items.map(({ label }) => label);
    expect(all.slice(0, 3)).toEqual(['fine salt', 'salt in water', 'water']);
    expect(all).not.toContain('brine');
    expect(after('salt in water')).toContain('whisk brine, "salt in water"');
  });
  test('a name of several words is completed whole', async () => {
    expect((await complete(`${lines}  whisk fine s<|>\n`)).after('fine salt')).toContain('  whisk fine salt\n');
  });
  test('after the name, the clauses its verb takes and does not have yet', async () => {
    const all = await labels(`${lines}  cook brine <|>\n`);
    expect(all.some((label) => label.startsWith('until'))).toBe(true);
    expect(all.some((label) => label.startsWith('over'))).toBe(false);
    const { items } = await complete(`${lines}  cook brine to 84 °C <|>\n`);
    expect(items.some(({ filterText }) => filterText === 'until')).toBe(true);
    expect(items.some(({ filterText }) => filterText === 'to')).toBe(false);
  });
  test('readings usual for the verb', async () => {
    expect((await labels(`${lines}  cook brine to <|>\n`))[0]).toBe('82-84 °C');
    expect((await labels(`${lines}  bake brine at <|>\n`))[0]).toBe('160 °C');
    expect((await labels(`${lines}  bloom brine for <|>\n`))[0]).toBe('10 min');
  });
  test('peaks, signs, media, tools, levels, vessels', async () => {
    expect(await labels(`${lines}  whip brine to <|>\n`)).toContain('stiff peak');
    expect(await labels(`${lines}  cook brine until <|>\n`)).toContain('nappe');
    expect(await labels(`${lines}  cool brine in <|>\n`)).toContain('ice bath');
    expect(await labels(`${lines}  whisk brine with <|>\n`)).toContain('whisk');
    expect(await labels(`${lines}  cook brine on <|>\n`)).toEqual(expect.arrayContaining(['low', 'medium', 'high']));
    expect(await labels(`${lines}  pour brine into <|>\n`)).toContain('glass');
    expect(await labels(`equipment\n  copper pan 3 l\n${lines}  cook brine using <|>\n`)).toContain('copper pan');
  });
  test('nouns of “makes” before other vessels', async () => {
    const all = await labels('formula A\n  makes 2 domes of 100 ml\n  10 g  water\n  pour into <|>\n');
    expect(all.indexOf('domes')).toBeLessThan(all.indexOf('jar'));
  });
});

describe('in headers, blocks and requests', () => {
  test('values of headers', async () => {
    expect(await labels('formula A\n  free from <|>\n')).toContain('hazelnut');
    expect(await labels('formula A\n  gelatin by <|>\n')).toEqual(['concentration', 'strength', 'when']);
    expect(await labels('formula A\n  served at <|>\n')).toContain('4-6 °C');
    expect(await labels('formula A\n  10 g  flour\n  basis <|>\n')).toEqual(expect.arrayContaining(['total', 'flour']));
    expect(await labels('ingredient x\n  stored <|>\n')).toEqual(['chilled', 'ambient', 'frozen']);
  });
  test('what other files offer to take, with the file', async () => {
    const fixture = 'take <|>\n--- sub/b.nappe\ncomponent pastry cream\n  1 g  water\n';
    expect((await complete(fixture)).after('pastry cream')).toBe(
      'take "pastry cream" from "sub/b.nappe"\n'.replaceAll('"pastry cream"', 'pastry cream'),
    );
  });
  test('files in quotes and without', async () => {
    const others = '--- sub/b.nappe\nformula B\n  1 g  water\n';
    expect((await complete(`card "<|>\n${others}`)).after('sub/b.nappe')).toBe('card "sub/b.nappe\n');
    expect((await complete(`take x from <|>\n${others}`)).after('sub/b.nappe')).toBe('take x from "sub/b.nappe"\n');
  });
  test('titles after “#”, values and yields of the formula asked for', async () => {
    const other = '--- b.nappe\nformula Lemon tart\n  makes 8 tarts of 100 g\n  choice size: small, large\n  1 g  water\n';
    expect(await labels(`card "b.nappe#<|>"\n${other}`)).toEqual(['Lemon tart']);
    expect(await labels(`card "b.nappe" with <|>\n${other}`)).toEqual(['small', 'large']);
    expect(await labels(`card "b.nappe" for <|>\n${other}`)).toContain('16 tarts');
  });
  test('codes to allow, those raised below first', async () => {
    const all = await labels('formula A\n  10 g  water\n  // allow <|>\n  5 g  salt\n  mix water\n');
    expect(all[0]).toBe('unused-ingredient');
  });
  test('nothing in notes, comments, and Markdown outside the fences', async () => {
    expect(await labels('formula A\n  | mi<|>\n')).toEqual([]);
    expect(await labels('formula A\n  // mi<|>\n')).toEqual([]);
    expect(await labels('--- a.md\n# Text\n<|>\n')).toEqual([]);
    expect(await labels('--- a.md\n```nappe\n<|>\n```\n')).toContain('formula');
  });
});

test('documentation comes when asked for', async () => {
  const editor = await edit('formula A\n  10 g  whole mi<|>\n');
  const { items } = await editor.ask<{ items: Item[] }>('textDocument/completion');
  const milk = items.find(({ label }) => label === 'whole milk');
  expect(milk).not.toHaveProperty('documentation');
  const resolved = await editor.client.request<{ documentation: { kind: string; value: string } }>(
    'completionItem/resolve',
    milk,
  );
  expect(resolved.documentation.kind).toBe('markdown');
  expect(resolved.documentation.value).toContain('USDA');
  expect(await editor.client.request('completionItem/resolve', { label: 'x', data: { what: 'nothing', word: 3 } })).toEqual({
    label: 'x',
    data: { what: 'nothing', word: 3 },
  });
  await editor.stop();
});
