/**
 * Random edits to the samples, each followed by every request at random places: nothing breaks, and every answer is the one that a
 * server started afresh on the same texts gives. `NAPPE_FUZZ=10000` for the long run, `NAPPE_SEED` to repeat one.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { InProcess } from './in-process.ts';

const edits = Number(process.env.NAPPE_FUZZ ?? 40);
const seed = Number(process.env.NAPPE_SEED ?? Date.now() % 1_000_000);

const samples = new URL('../../samples/', import.meta.url);
const originals = new Map<string, string>();
for (const folder of ['', 'course/'])
  for (const name of readdirSync(new URL(folder, samples)))
    if (/\.(nappe|md)$/.test(name))
      originals.set(`/work/${folder}${name}`, readFileSync(new URL(folder + name, samples), 'utf8'));

/** Files that rest on each other, so that an edit in one is felt in the others; some are never opened. */
const tied: Readonly<Record<string, string>> = {
  'base.nappe': `take syrup from "deep.nappe"
equipment
  saucepan 2 l
component custard
  300 g  whole milk, 4 °C
   60 g  egg yolk
   20 g  syrup
  whisk whole milk, egg yolk, syrup
  cook to 82-84 °C until nappe
  cool to 30-34 °C in ice bath
ingredient praline
  like hazelnut paste
formula Whole
  choice serving: glass, mould
component cream base
  200 g (mould 240 g)  cream, 35 % fat
  heat to 60 °C
`,
  'deep.nappe': `component syrup
  100 g  water
  100 g  caster sugar
  boil water, caster sugar for 1 min
`,
  'taker.nappe': `take custard, praline, equipment from "base.nappe"
formula Taker
  choice serving: glass, mould
  makes 4 glasses of 100 ml   when glass
  makes 2 rings of 16 x 3 cm   when mould
  200 g  custard
   20 g  praline
  100 g  cream, 35 % fat, 4 °C
  whip cream to soft peak as foam
  whisk praline into custard
  fold foam into custard in 3 additions: whisk, spatula
  chill to 4 °C for 4 h (mould 6 h)
`,
  'closed.nappe': `take "cream base" as foundation from "base.nappe#Whole"
formula Closed
  choice serving: glass, mould
  100 g  foundation
  // allow leftover: kept for tomorrow
  90 g   water
  cool foundation to 4 °C for 4 h
`,
  'menu.md': '# Menu\n\n```nappe\ncard "taker.nappe" for 8 glasses with glass\ncompare "taker.nappe" with "closed.nappe"\n```\n',
};
for (const [name, text] of Object.entries(tied)) originals.set(`/work/tied/${name}`, text);
const tiedPaths = Object.keys(tied).map((name) => `/work/tied/${name}`);

/** Small pieces a cook, or a cat on the keyboard, may type. */
const pieces = [
  ' ',
  '\n',
  '\n\n',
  '\r\n',
  '\t',
  '"',
  '(',
  ')',
  ',',
  '#',
  '//',
  '| ',
  '%',
  '°',
  '½',
  '𝄞',
  '\u0301',
  '-',
  '..',
  '0',
  '9',
  '99999999999999',
  '-3',
  'formula X',
  'component y',
  'assembly',
  'ingredient z',
  'equipment',
  'prices EUR',
  'take a from "bases.nappe"',
  'card "bases.nappe" for 3 kg',
  'compare "a" with "b"',
  '  10 g  cream',
  '  1 pc each  raspberry',
  '  5 %  water',
  '  some  salt',
  '  fold x into y in 3 additions: whisk, spatula',
  '  cook to 84 °C',
  '  cool to 30-34 °C (cut 20 °C)',
  '  makes 12 glasses of 100 ml',
  '  choice a: b, c',
  '  basis total',
  '  loss 5 %',
  ' when cut',
  ' unless glass',
  ' as z',
  ' into ',
  ' in ',
  ' with ',
  ' to ',
  ' at ',
  ' for 5 min',
  ' until ',
  '// allow raw-egg: because',
  '```nappe\n',
  '```\n',
  'egg yolk',
  'custard',
  'whisk',
  'g',
  'kg',
  'cup',
  'brix',
];

/** Mulberry32: small, seeded, good enough to pick places. */
function random(from: number): () => number {
  let state = from >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const next = random(seed);
const upTo = (count: number): number => Math.floor(next() * count);
const pick = <T>(items: readonly T[]): T => items[upTo(items.length)] as T;

interface Place {
  readonly line: number;
  readonly character: number;
}

const linesOf = (text: string): string[] => text.split(/\r\n|\n|\r/);

function placeIn(text: string): Place {
  const lines = linesOf(text);
  const line = upTo(lines.length);
  return { line, character: upTo((lines[line]?.length ?? 0) + 1) };
}

const ordered = (a: Place, b: Place): [Place, Place] =>
  a.line < b.line || (a.line === b.line && a.character <= b.character) ? [a, b] : [b, a];

/** The text between lines as an editor sees it, whatever ends them. */
function replaced(text: string, start: Place, end: Place, by: string): string {
  const starts = [0];
  for (const { index, 0: found } of text.matchAll(/\r\n|\n|\r/g)) starts.push(index + found.length);
  const offset = ({ line, character }: Place) => (starts[line] ?? text.length) + character;
  return text.slice(0, offset(start)) + by + text.slice(offset(end));
}

interface Change {
  readonly range?: { readonly start: Place; readonly end: Place };
  readonly text: string;
}

function changeOf(text: string): Change {
  const kind = upTo(18);
  const lines = linesOf(text);
  const line = upTo(lines.length);
  const whole = { start: { line, character: 0 }, end: { line, character: lines[line]?.length ?? 0 } };
  if (kind === 0 && line + 1 < lines.length)
    return { range: { start: whole.start, end: { line: line + 1, character: 0 } }, text: '' };
  if (kind === 1)
    return { range: { start: whole.start, end: whole.start }, text: `${pick(linesOf(pick([...originals.values()])))}\n` };
  if (kind === 2) return { range: whole, text: pick(lines) };
  if (kind === 3) {
    const [start, end] = ordered(placeIn(text), placeIn(text));
    return end.line - start.line > 6 ? { range: whole, text: '' } : { range: { start, end }, text: pick(pieces) };
  }
  if (kind === 4) return { text };
  if (kind >= 12) return sensible(lines, line) ?? { range: whole, text: lines[line] ?? '' };
  const at = placeIn(text);
  if (kind < 8)
    return {
      range: { start: at, end: { line: at.line, character: Math.min(lines[at.line]?.length ?? 0, at.character + 1 + upTo(3)) } },
      text: '',
    };
  return { range: { start: at, end: at }, text: pick(pieces) };
}

/** A number or a word of the line in place of another: what a cook changes most. */
function sensible(lines: readonly string[], line: number): Change | null {
  const words = [...(lines[line] ?? '').matchAll(/\d+|[\p{L}]+/gu)];
  if (words.length === 0) return null;
  const { 0: word, index } = pick(words);
  const others = [...lines.join('\n').matchAll(/[\p{L}]+/gu)].map(([other]) => other);
  const by = /\d/.test(word) ? String(pick([1, 4, 12, 30, 45, 84, 90, 100, 300])) : pick(others);
  return { range: { start: { line, character: index }, end: { line, character: index + word.length } }, text: by };
}

const full = (lines: number) => ({ start: { line: 0, character: 0 }, end: { line: lines, character: 0 } });

/** Every request, at places of their own. */
function questions(uri: string, text: string): (readonly [string, object])[] {
  const textDocument = { uri };
  const position = () => ({ textDocument, position: placeIn(text) });
  const range = () => {
    const [start, end] = ordered(placeIn(text), placeIn(text));
    return { textDocument, range: { start, end } };
  };
  const lines = linesOf(text).length;
  return [
    ['textDocument/diagnostic', { textDocument }],
    ['textDocument/hover', position()],
    ['textDocument/hover', position()],
    ['textDocument/completion', position()],
    ['textDocument/completion', position()],
    ['textDocument/definition', position()],
    ['textDocument/references', { ...position(), context: { includeDeclaration: true } }],
    ['textDocument/documentHighlight', position()],
    ['textDocument/prepareRename', position()],
    ['textDocument/rename', { ...position(), newName: pick(['cream', 'new name', 'in between', 'Ünï', '3 eggs']) }],
    ['textDocument/codeAction', { ...range(), context: { diagnostics: [] } }],
    ['textDocument/codeAction', { textDocument, range: full(lines), context: { diagnostics: [], only: ['source.fixAll'] } }],
    ['textDocument/formatting', { textDocument }],
    ['textDocument/rangeFormatting', range()],
    ['textDocument/onTypeFormatting', { ...position(), ch: '\n' }],
    ['textDocument/documentSymbol', { textDocument }],
    ['textDocument/foldingRange', { textDocument }],
    ['textDocument/selectionRange', { textDocument, positions: [placeIn(text), placeIn(text)] }],
    ['textDocument/semanticTokens/full', { textDocument }],
    ['textDocument/semanticTokens/range', range()],
    ['textDocument/documentLink', { textDocument }],
    ['textDocument/inlayHint', { textDocument, range: full(lines) }],
    ['textDocument/codeLens', { textDocument }],
    ['workspace/symbol', { query: pick(['', 'c', 'bav', 'zz']) }],
    ['nappe/card', { uri, ...(next() < 0.3 && { for: pick(['3 kg', '12 glasses', '1 l', 'nonsense']) }) }],
    ['nappe/scale', { uri, factor: pick([2, 0.5, 1 / 3]) }],
  ];
}

/** Ids of answers differ from server to server; everything else is the same. */
const withoutIds = (answer: unknown): string =>
  JSON.stringify(answer, (key, value: unknown) => (key === 'resultId' ? undefined : value));

async function fresh(texts: ReadonlyMap<string, string>): Promise<InProcess> {
  const server = new InProcess(originals);
  await server.index();
  for (const [path, text] of texts) await server.notify('textDocument/didOpen', openParams(path, text));
  return server;
}

const openParams = (path: string, text: string) => ({
  textDocument: { uri: `file://${path}`, languageId: path.endsWith('.md') ? 'markdown' : 'nappe', version: 1, text },
});

test(`${edits} random edits, seed ${seed}`, { timeout: 60_000 + edits * 2_000 }, async () => {
  // Half the runs let go of closed files, as a server does that has thousands.
  const server = new InProcess(originals, seed % 2 === 0 ? 0 : undefined);
  await server.index();
  const texts = new Map<string, string>();
  const lastTokens = new Map<string, { resultId: string; data: number[] }>();
  for (let count = 0; count < edits; count++) {
    const path =
      next() < 0.4
        ? pick(tiedPaths.slice(0, 3))
        : next() < 0.6 && texts.size > 0
          ? pick([...texts.keys()])
          : pick([...originals.keys()]);
    const uri = `file://${path}`;
    let text = texts.get(path);
    if (text === undefined || next() < 0.08) {
      if (text !== undefined) await server.notify('textDocument/didClose', { textDocument: { uri } });
      text = originals.get(path) ?? '';
      lastTokens.delete(path);
      await server.notify('textDocument/didOpen', openParams(path, text));
    }
    const changes = Array.from({ length: 1 + (next() < 0.2 ? upTo(3) : 0) }, () => {
      const change = changeOf(text as string);
      text = change.range ? replaced(text as string, change.range.start, change.range.end, change.text) : change.text;
      return change;
    });
    texts.set(path, text);
    await server.notify('textDocument/didChange', { textDocument: { uri, version: count + 2 }, contentChanges: changes });

    const where = `edit ${count} of seed ${seed} in ${path}: ${JSON.stringify(changes)}`;
    const other = await fresh(texts);
    for (const [method, params] of questions(uri, text)) {
      const answer = await server.ask(method, params);
      expect(withoutIds(answer), `${method} ${JSON.stringify(params)} after ${where}`).toBe(
        withoutIds(await other.ask(method, params)),
      );
      if (method === 'textDocument/semanticTokens/full')
        await deltaAgrees(uri, path, answer as { resultId: string; data: number[] });
    }
    for (const open of count % 5 === 0 ? [...new Set([...texts.keys(), ...tiedPaths])] : tiedPaths) {
      const params = { textDocument: { uri: `file://${open}` } };
      expect(withoutIds(await server.ask('textDocument/diagnostic', params)), `${open} after ${where}`).toBe(
        withoutIds(await other.ask('textDocument/diagnostic', params)),
      );
    }
    if (seed % 2 === 0) await server.ask('workspace/diagnostic', { previousResultIds: [] });
    expect(server.faults, where).toEqual([]);
    expect(other.faults, where).toEqual([]);
  }

  /** The difference to the last answer, carried out, is this one. */
  async function deltaAgrees(uri: string, path: string, now: { resultId: string; data: number[] }): Promise<void> {
    const delta = (await server.ask('textDocument/semanticTokens/full/delta', {
      textDocument: { uri },
      previousResultId: now.resultId,
    })) as {
      resultId: string;
      edits?: { start: number; deleteCount: number; data: number[] }[];
    };
    expect(delta.edits).toEqual([]);
    lastTokens.set(path, { resultId: delta.resultId, data: now.data });
  }
});
