/** An edit re-runs the block it touches and what depends on it, and nothing else: counted. */
import { readFileSync } from 'node:fs';
import { runsCounted } from 'nappe';
import { describe, expect, test } from 'vitest';
import { InProcess } from './in-process.ts';

const hojicha = readFileSync(new URL('../../samples/hojicha-bavarois.nappe', import.meta.url), 'utf8');

class Kitchen {
  readonly server: InProcess;
  private readonly texts: Map<string, string>;
  private version = 1;

  constructor(files: Readonly<Record<string, string>>) {
    this.texts = new Map(Object.entries(files).map(([name, text]) => [`/work/${name}`, text]));
    this.server = new InProcess(this.texts);
  }

  async open(...names: readonly string[]): Promise<void> {
    await this.server.index();
    for (const name of names)
      await this.server.notify('textDocument/didOpen', {
        textDocument: { uri: `file:///work/${name}`, languageId: 'nappe', version: 1, text: this.texts.get(`/work/${name}`) },
      });
    for (const path of this.texts.keys()) await this.codes(path.slice('/work/'.length));
  }

  async codes(name: string): Promise<string[]> {
    const { items } = (await this.server.ask('textDocument/diagnostic', { textDocument: { uri: `file:///work/${name}` } })) as {
      items: { code: string }[];
    };
    return items.map(({ code }) => code);
  }

  /** How many blocks were run for the edit, over all the files' diagnostics. */
  async runsFor(name: string, found: string, by: string): Promise<number> {
    const path = `/work/${name}`;
    const text = this.texts.get(path) ?? '';
    const at = text.indexOf(found);
    if (at < 0) throw new Error(`${found} does not stand in ${name}`);
    const place = (offset: number) => {
      const lines = text.slice(0, offset).split('\n');
      return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
    };
    this.texts.set(path, text.slice(0, at) + by + text.slice(at + found.length));
    this.version += 1;
    const before = runsCounted.count;
    await this.server.notify('textDocument/didChange', {
      textDocument: { uri: `file:///work/${name}`, version: this.version },
      contentChanges: [{ range: { start: place(at), end: place(at + found.length) }, text: by }],
    });
    for (const other of this.texts.keys()) await this.codes(other.slice('/work/'.length));
    expect(this.server.faults).toEqual([]);
    return runsCounted.count - before;
  }
}

/** Three servings times two flavours. */
const combinations = 6;

describe('in one file', () => {
  test('an edit in the assembly runs the assembly', async () => {
    const kitchen = new Kitchen({ 'a.nappe': hojicha });
    await kitchen.open('a.nappe');
    const runs = await kitchen.runsFor('a.nappe', 'for 4 h', 'for 5 h');
    expect(runs).toBeGreaterThan(0);
    expect(runs).toBeLessThanOrEqual(combinations);
  });

  test('an edit in a component runs it and the assembly', async () => {
    const kitchen = new Kitchen({ 'a.nappe': hojicha });
    await kitchen.open('a.nappe');
    const runs = await kitchen.runsFor('a.nappe', '320 g  cream', '330 g  cream');
    expect(runs).toBeGreaterThan(combinations);
    // Whipped cream once for each of the two yields: it knows no choice.
    expect(runs).toBeLessThanOrEqual(combinations + 2);
  });

  test('comments, blank lines, and looking at it run nothing', async () => {
    const kitchen = new Kitchen({ 'a.nappe': hojicha });
    await kitchen.open('a.nappe');
    expect(await kitchen.runsFor('a.nappe', 'formula', '// one more\n\n\nformula')).toBe(0);
    expect(await kitchen.runsFor('a.nappe', '  by Harbour', '  // here\n  by Harbour')).toBe(0);
    expect(await kitchen.runsFor('a.nappe', 'whole milk, 4 °C', 'whole milk, 4 °C   // cold')).toBeLessThanOrEqual(
      2 * combinations,
    );
    const before = runsCounted.count;
    const textDocument = { uri: 'file:///work/a.nappe' };
    await kitchen.server.ask('textDocument/hover', { textDocument, position: { line: 30, character: 4 } });
    expect(runsCounted.count).toBe(before);
  });

  test('an edit undone costs no more than it did', async () => {
    const kitchen = new Kitchen({ 'a.nappe': hojicha });
    await kitchen.open('a.nappe');
    await kitchen.runsFor('a.nappe', 'for 4 h', 'for 5 h');
    expect(await kitchen.runsFor('a.nappe', 'for 5 h', 'for 4 h')).toBeLessThanOrEqual(combinations);
  });

  test('the cost follows the block, not the file', async () => {
    const many = Array.from({ length: 40 }, (_, i) => hojicha.replace('Hojicha bavarois', `Bavarois ${i}`)).join('\n');
    const one = new Kitchen({ 'a.nappe': hojicha });
    const file = new Kitchen({ 'a.nappe': many });
    await one.open('a.nappe');
    await file.open('a.nappe');
    expect(await file.runsFor('a.nappe', '320 g  cream', '330 g  cream')).toBe(
      await one.runsFor('a.nappe', '320 g  cream', '330 g  cream'),
    );
  });
});

describe('over files', () => {
  const files = {
    'base.nappe': `component custard
  300 g  whole milk, 4 °C
   60 g  egg yolk
  whisk whole milk, egg yolk
  cook to 82-84 °C until nappe
  cool to 30-34 °C in ice bath

component syrup
  100 g  water
  100 g  caster sugar
  boil water, caster sugar for 1 min
`,
    'taker.nappe': `take custard from "base.nappe"
formula Taker
  200 g  custard
  100 g  cream, 35 % fat, 4 °C
  whip cream to soft peak as foam
  fold foam into custard in 3 additions: whisk, spatula
  chill to 4 °C for 4 h
`,
    'closed.nappe': `take custard from "base.nappe"
formula Closed
  100 g  custard
  chill custard to 4 °C for 4 h
`,
    'third.nappe': `take Closed from "closed.nappe"
formula Third
  50 g  Closed
  chill Closed to 4 °C for 1 h
`,
  };

  test('a base edited refreshes those that take it, open or not', async () => {
    const kitchen = new Kitchen(files);
    await kitchen.open('base.nappe', 'taker.nappe');
    expect(await kitchen.codes('taker.nappe')).not.toContain('fold-too-warm');
    const runs = await kitchen.runsFor('base.nappe', 'cool to 30-34 °C', 'cool to 50-54 °C');
    expect(await kitchen.codes('taker.nappe')).toContain('fold-too-warm');
    expect(runs).toBeGreaterThan(3);
    await kitchen.runsFor('base.nappe', 'component custard', 'component crème');
    for (const name of ['taker.nappe', 'closed.nappe']) expect(await kitchen.codes(name)).toContain('import-missing');
  });

  test('what nobody takes is run for itself alone', async () => {
    const kitchen = new Kitchen(files);
    await kitchen.open('base.nappe', 'taker.nappe');
    expect(await kitchen.runsFor('base.nappe', 'for 1 min', 'for 2 min')).toBe(1);
  });

  test('an unchanged interface stops the wave', async () => {
    const kitchen = new Kitchen(files);
    await kitchen.open('base.nappe', 'taker.nappe');
    expect(await kitchen.runsFor('base.nappe', 'boil water', 'boil  water')).toBeLessThanOrEqual(1);
    const uri = 'file:///work/taker.nappe';
    const first = (await kitchen.server.ask('textDocument/diagnostic', { textDocument: { uri } })) as { resultId: string };
    await kitchen.runsFor('base.nappe', 'until nappe', 'until nappe   // coats');
    expect(
      await kitchen.server.ask('textDocument/diagnostic', { textDocument: { uri }, previousResultId: first.resultId }),
    ).toMatchObject({ kind: 'unchanged' });
  });

  test('a batch is of the taker’s line as it stands now', async () => {
    const base = files['base.nappe'].replace('82-84 °C', '94-96 °C');
    const kitchen = new Kitchen({ 'base.nappe': base, 'taker.nappe': files['taker.nappe'] });
    await kitchen.open('taker.nappe');
    await kitchen.runsFor('taker.nappe', '  200 g', '      200 g');
    const { items } = (await kitchen.server.ask('textDocument/diagnostic', {
      textDocument: { uri: 'file:///work/taker.nappe' },
    })) as { items: { code: string; range: { start: object } }[] };
    const curdled = items.find(({ code }) => code === 'custard-curdles');
    expect(curdled?.range.start).toEqual({ line: 2, character: 6 });
  });
});

describe('what a finding rests on is looked at again', () => {
  const whole = { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } };
  const seen = async ({ server }: Kitchen): Promise<string> => {
    const textDocument = { uri: 'file:///work/fool.nappe' };
    const hints = await server.ask('textDocument/inlayHint', { textDocument, range: whole });
    const { items } = (await server.ask('textDocument/diagnostic', { textDocument })) as { items: unknown };
    return JSON.stringify([hints, items]);
  };
  const opened = async (text: string): Promise<Kitchen> => {
    const kitchen = new Kitchen({ 'fool.nappe': text });
    await kitchen.open('fool.nappe');
    return kitchen;
  };
  const fool = (fold: string) => `formula Fool

component base
  300 g  mango purée, pasteurised
   50 g  caster sugar
  whisk mango purée, caster sugar until dissolved

component whipped cream
  320 g  cream, 35 % fat, 4 °C
  whip to soft peak

assembly
  ${fold}
  pour into glass
`;

  test('a component that a mistyped name was read as', async () => {
    const text = fool('fold wipped cream into base in 3 additions: whisk, spatula');
    const kitchen = await opened(text);
    await kitchen.runsFor('fool.nappe', '320 g', '160 g');
    expect(await seen(kitchen)).toBe(await seen(await opened(text.replace('320 g', '160 g'))));
  });

  test('where in another block the last of something went', async () => {
    const text = `formula Fool\n  40 g  honey\n  stir whipped cream, honey\n${fool('// once\n  fold whipped cream into base in 2 additions: spatula').slice(13)}`;
    const kitchen = await opened(text);
    await kitchen.runsFor('fool.nappe', '  // once\n', '');
    expect(await seen(kitchen)).toBe(await seen(await opened(text.replace('  // once\n', ''))));
  });
});
