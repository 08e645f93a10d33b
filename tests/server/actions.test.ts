/** Code actions: fixes and refactorings, each held by what the text says afterwards. */
import { describe, expect, test } from 'vitest';
import { type Editor, edit } from './editor.ts';
import { edited, type Position } from './fixture.ts';

type Edits = Parameters<typeof edited>[1];

interface Action {
  readonly title: string;
  readonly kind: string;
  readonly isPreferred?: boolean;
  readonly disabled?: { readonly reason: string };
  readonly diagnostics?: readonly { readonly code: string }[];
  readonly edit?: {
    readonly changes?: Record<string, Edits>;
    readonly documentChanges?: readonly (
      | { readonly kind: 'create'; readonly uri: string }
      | { readonly kind?: undefined; readonly textDocument: { readonly uri: string }; readonly edits: Edits }
    )[];
  };
}

async function actionsAt(editor: Editor, position: Position, context: object = { diagnostics: [] }): Promise<Action[]> {
  return editor.ask('textDocument/codeAction', { range: { start: position, end: position }, context });
}

/** The text after the action of that title at the cursor. */
async function act(fixture: string, title: string | RegExp, context?: object): Promise<string> {
  const editor = await edit(fixture);
  const actions = await actionsAt(editor, editor.cursor(), context);
  const action = actions.find((one) => (typeof title === 'string' ? one.title === title : title.test(one.title)));
  expect(editor.faults()).toEqual([]);
  const text = editor.text();
  const edits = action?.edit?.changes?.[editor.uri()];
  await editor.stop();
  if (action?.disabled) return action.disabled.reason;
  return edits ? edited(text, edits) : `only ${actions.map((one) => one.title).join(' | ')}`;
}

const titles = async (fixture: string): Promise<string[]> => {
  const editor = await edit(fixture);
  const actions = await actionsAt(editor, editor.cursor());
  await editor.stop();
  return actions.map(({ title }) => title);
};

describe('fixes', () => {
  test('are those of the diagnostics, hung on the client’s own', async () => {
    const editor = await edit('formula A\n  10 g  water\n  mix wat<|>re\n');
    const diagnostics = await editor.diagnostics();
    const actions = await actionsAt(editor, editor.cursor(), { diagnostics });
    const fix = actions.find(({ kind }) => kind === 'quickfix');
    expect(fix).toMatchObject({ isPreferred: true, diagnostics: [{ code: 'unknown-name' }] });
    expect(edited(editor.text(), fix?.edit?.changes?.[editor.uri()] ?? [])).toBe('formula A\n  10 g  water\n  mix water\n');
    await editor.stop();
  });

  test('every code but syntax can be allowed on its line, with a reason to be written', async () => {
    const fixture = 'formula A\n  10 g  water\n  5 g  sa<|>lt\n  mix water\n';
    expect(await act(fixture, /^Allow unused-ingredient/)).toBe(
      'formula A\n  10 g  water\n  // allow unused-ingredient: \n  5 g  salt\n  mix water\n',
    );
    expect((await titles('formula A\n  10 g  water\n  miks wa<|>ter\n')).some((title) => title.startsWith('Allow'))).toBe(false);
  });

  test('a fix is one for the file it is in, and the text is clean after it', async () => {
    const editor = await edit(
      'formula A\n  300 g  whole milk, 4 °C\n  90 g  egg yolk\n  80 g  caster sugar\n  8 g  gelatin, sheet, 200 bloom\n  48 g  water, 10 °C\n  270 g  cream, 35 % fat, 4 °C\n  bloom gelatin in water for 10 min\n  heat whole milk to 80-85 °C\n  whisk egg yolk, caster sugar until dissolved as liaison\n  temper whole milk into liaison\n  cook to 82-84 °C until nappe\n  add gelatin\n  whip cream to soft-medium peak\n  f<|>old cream into liaison in 3 additions: whisk, spatula\n  pour into jar\n  chill to 4 °C for 4 h\n',
    );
    const fix = (await actionsAt(editor, editor.cursor())).find(({ kind }) => kind === 'quickfix');
    const after = edited(editor.text(), fix?.edit?.changes?.[editor.uri()] ?? []);
    expect(after).toContain('  cool liaison to 30-34 °C\n  fold cream');
    editor.write(after);
    expect(await editor.diagnostics()).toEqual([]);
    await editor.stop();
  });

  test('all at once where each has one remedy', async () => {
    const fixture = '<|>formula A\n  10 g  water\n  5 g  salt\n  mix watre\n  mix slat\n';
    expect(await act(fixture, /^Fix all/, { diagnostics: [], only: ['source.fixAll'] })).toBe(
      'formula A\n  10 g  water\n  5 g  salt\n  mix water\n  mix salt\n',
    );
  });
});

describe('units', () => {
  test('of a quantity and its overrides', async () => {
    const fixture = 'formula A\n  choice s: small, large\n  1 lb (large 2 lb)  bu<|>tter\n  melt butter\n';
    expect(await act(fixture, 'Write this line in grams')).toContain('  454 g (large 907 g)  butter\n');
    expect(await act('formula A\n  100 g  bu<|>tter\n', 'Write this line in ounces')).toContain('  3.527 oz  butter\n');
  });
  test('of a volume, through the density the line went by', async () => {
    expect(await act('formula A\n  2 cup  whole mi<|>lk\n', 'Write this line in grams')).toMatch(/ {2}48\d g {2}whole milk/);
    expect(await act('formula A\n  2 cup  whole mi<|>lk\n', 'Write this line in millilitres')).toContain('  473 ml  whole milk');
  });
  test('of a reading', async () => {
    expect(await act('formula A\n  10 g  water\n  he<|>at water to 80-85 °C\n', 'Write this line in °F')).toContain(
      'to 176-185 °F',
    );
    expect(await act('formula A\n  10 g  water\n  he<|>at water to 176 °F\n', 'Write this line in °C')).toContain('to 80 °C');
  });
});

describe('naming a result', () => {
  test('stands before the guard, under a name that is free', async () => {
    const fixture =
      'formula A\n  choice s: x, y\n  10 g  water\n  5 g  salt\n  mi<|>x water, salt for 2 min   when x\n  mix water, salt as mixture   when y\n';
    expect(await act(fixture, /^Name the result/)).toContain('  mix water, salt for 2 min as second mixture   when x\n');
  });
  test('is not offered where there is a name', async () => {
    expect((await titles('formula A\n  10 g  water\n  mi<|>x water as x\n')).some((title) => title.startsWith('Name'))).toBe(
      false,
    );
  });
});

describe('scaling in place', () => {
  const fixture = `<|>formula A
  makes 12 glasses of 100 ml
  choice s: x, y
  240 g (y 300 g)  cream
  3 pc  egg
  some  salt
  reserve 40 g of cream as rest
  mix cream, egg, salt, 20 g of rest
  portion 100 ml into glass
`;
  test('follows lines, parts and counts, not what goes into each vessel', async () => {
    expect(await act(fixture, 'Scale the whole formula ×½')).toBe(`formula A
  makes 6 glasses of 100 ml
  choice s: x, y
  120 g (y 150 g)  cream
  1.5 pc  egg
  some  salt
  reserve 20 g of cream as rest
  mix cream, egg, salt, 10 g of rest
  portion 100 ml into glass
`);
  });
  test('is refused where a base is taken whole, and not offered where a count would be halved', async () => {
    const taken =
      '<|>formula A\n  makes 3 tarts of 100 g\ntake b from "b.nappe"\n  10 g  cream\n  mix cream, b\n--- b.nappe\ncomponent b\n  1 g  water\n';
    expect(await act(taken, 'Scale the whole formula ×2')).toContain('taken whole');
    expect(await titles(taken)).not.toContain('Scale the whole formula ×½');
  });
  test('to any yield, for the extension', async () => {
    const editor = await edit(fixture);
    const answer = await editor.client.request<{ factor: number; edit: { changes: Record<string, Edits> } }>('nappe/scale', {
      uri: editor.uri(),
      for: '18 glasses',
    });
    expect(answer.factor).toBe(1.5);
    expect(edited(editor.text(), answer.edit.changes[editor.uri()] ?? [])).toContain('makes 18 glasses of 100 ml\n');
    const tarts = await editor.client.request<{ edit: { changes: Record<string, Edits> } }>('nappe/scale', {
      uri: editor.uri(),
      for: '2.4 l',
    });
    expect(edited(editor.text(), tarts.edit.changes[editor.uri()] ?? [])).toContain('  makes 2.4 l\n');
    expect(await editor.client.request('nappe/scale', { uri: editor.uri(), for: 'much' })).toMatchObject({
      problem: expect.any(String),
    });
    expect(await editor.client.request('nappe/scale', { uri: editor.uri(), factor: -1 })).toMatchObject({
      problem: expect.any(String),
    });
    await editor.stop();
  });
});

describe('percentages', () => {
  const grams =
    'formula A\ncomponent dough\n  500 g  plain flour\n  300 g  wa<|>ter\n  10 g  fine salt\n  knead plain flour, water, fine salt\n';
  test('of the total, the largest line keeping the size', async () => {
    const after = await act(grams, 'Turn amounts into percentages of the total');
    expect(after).toContain('  500 g  plain flour\n  37.037 %  water\n  1.235 %  fine salt\n');
  });
  test('of a basis line', async () => {
    expect(await act(grams.replace('  knead', '  basis plain flour\n  knead'), /percentages of plain flour/)).toContain(
      '  500 g  plain flour\n  60 %  water\n  2 %  fine salt\n',
    );
  });
  test('back into grams, as the run weighs them', async () => {
    const percent = grams.replace('300 g', '60 %').replace('10 g', '2 %').replace('  knead', '  basis plain flour\n  knead');
    expect(await act(percent, 'Turn percentages into grams')).toContain(
      '  500 g  plain flour\n  300 g  water\n  10 g  fine salt\n',
    );
  });
  test('not where choices differ', async () => {
    expect(
      await act(
        'formula A\n  choice s: x, y\n  500 g (y 600 g)  plain fl<|>our\n  300 g  water\n  knead plain flour, water\n',
        'Turn amounts into percentages',
      ),
    ).toContain('differs between choices');
  });
});

describe('moving a component to a file', () => {
  test('makes the file and takes from it, and nothing else is found wrong', async () => {
    const fixture = `take stock from "bases.nappe"

formula A
  makes 500 g

<|>component soup
  200 g  stock
  100 g  water
  mix stock, water
    | Slowly.

assembly
  10 g  fine salt
  mix soup, fine salt
--- bases.nappe
component stock
  100 g  water
  boil
`;
    const editor = await edit(fixture);
    const before = (await editor.diagnostics()).map(({ code }) => code);
    const action = (await actionsAt(editor, editor.cursor())).find(({ title }) => title.startsWith('Move'));
    expect(action?.title).toBe('Move “soup” to soup.nappe');
    const [create, filled, own] = action?.edit?.documentChanges ?? [];
    expect(create).toMatchObject({ kind: 'create', uri: editor.uri('soup.nappe') });
    const made = edited('', (filled && 'edits' in filled && filled.edits) || []);
    expect(made).toBe(
      'take stock from "bases.nappe"\n\ncomponent soup\n  200 g  stock\n  100 g  water\n  mix stock, water\n    | Slowly.\n',
    );
    const after = edited(editor.text(), (own && 'edits' in own && own.edits) || []);
    expect(after).toBe(
      'take stock from "bases.nappe"\ntake soup from "soup.nappe"\n\nformula A\n  makes 500 g\n\nassembly\n  10 g  fine salt\n  mix soup, fine salt\n',
    );
    editor.open('soup.nappe', made);
    editor.write(after);
    expect((await editor.diagnostics()).map(({ code }) => code)).toEqual(before);
    await editor.stop();
  });

  test('is refused with the reason where it would change what is made', async () => {
    const choice = 'formula A\n  choice s: x, y\n<|>component soup\n  10 g  water   when x\n  mix water\n';
    expect(await act(choice, /^Move/)).toContain('differ between choices');
    const shared = 'formula A\n<|>component soup\n  10 g  water\n  mix water\nassembly\n  5 g  soup\n  mix soup\n';
    expect(await act(shared, /^Move/)).toContain('share of it');
  });

  test('is not offered to a client that cannot make files', async () => {
    const editor = await edit('formula A\n<|>component soup\n  10 g  water\n  mix water\n', { capabilities: {} });
    expect((await actionsAt(editor, editor.cursor())).some(({ title }) => title.startsWith('Move'))).toBe(false);
    await editor.stop();
  });
});
