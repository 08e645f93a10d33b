/** Properties over generated text: never a throw, one problem a line, formatting that settles and changes no meaning. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import {
  blocks,
  connectives,
  createCache,
  type File,
  facts,
  format,
  headers,
  type Line,
  parse,
  parseLine,
  reparse,
  units,
  verbs,
} from 'nappe-grammar';
import { expect, test } from 'vitest';
import { example, meaning } from './helpers.ts';

const words = [
  ...connectives,
  ...verbs.map((row) => row.word),
  ...headers.map((row) => row.word),
  ...blocks.map((row) => row.word),
  ...facts.map((row) => row.word),
  ...units.flatMap((row) => [row.word, ...row.spellings]),
  ...[
    'milk',
    'Crème',
    'e\u0301clair',
    'whole milk',
    'tea',
    'custard',
    'soft',
    'soft-medium',
    'peak',
    'peaks',
    'room',
    'ice bath',
    'glass',
  ],
  ...[
    'ring',
    'rings',
    'whisk',
    'spatula',
    'additions',
    'turns',
    'rest of',
    'half of',
    'overnight',
    'each',
    'some',
    'is',
    'raw',
    'sheet',
  ],
  ...[
    '1',
    '240',
    '0.5',
    '1/2',
    '1 1/2',
    '½',
    '1½',
    '30-35',
    '-18',
    '−18..-20',
    '1,5',
    '1,500',
    '16 x 3',
    '18:30',
    '10 min',
    '1 h 30 min',
  ],
  ...['240 g', '80 °C', '80-85 C', '35 % fat', '5 %', '65 brix', '200 bloom', '3 mm', '12 glasses of 100 ml', 'below 4 °C'],
  ...[',', ':', '(', ')', '"', '"x y"', '“a”', '.', ';', '-', '/', '//', '|', '&', '°', '\t', '\u00a0', '\uFEFF', '🥚', "'", '%'],
];

const soup = fc.array(fc.constantFrom(...words), { maxLength: 14 }).map((parts) => parts.join(' '));
const glued = fc.array(fc.constantFrom(...words, ' ', '  '), { maxLength: 14 }).map((parts) => parts.join(''));
const noise = fc.string({ unit: 'binary', maxLength: 60 });
const exampleLine = fc.constantFrom(...example.split('\n'));
const mutated = fc
  .tuple(exampleLine, fc.nat(80), fc.nat(3), fc.constantFrom('', ...words))
  .map(([line, at, length, word]) => line.slice(0, at) + word + line.slice(at + length));
const line = fc.oneof(soup, glued, noise, exampleLine, mutated).map((text) => text.split(/[\r\n]/).join(' '));
const text = fc.tuple(fc.array(line, { maxLength: 12 }), fc.constantFrom('\n', '\r\n')).map(([lines, eol]) => lines.join(eol));
const contexts = ['formula', 'ingredient', 'equipment', 'prices'] as const;

/** Sees that all places lie inside the line. */
function checkPlaces(node: unknown, length: number): void {
  if (typeof node !== 'object' || node === null) return;
  if ('start' in node && 'end' in node) {
    const { start, end } = node as { start: number; end: number };
    if (!(start >= 0 && start <= end && end <= length)) throw new Error(`${JSON.stringify(node)} outside 0..${length}`);
  }
  for (const child of Object.values(node)) checkPlaces(child, length);
}

function problemCount(read: Line): number {
  return read.problems.length;
}

test('any line reads in any block: never a throw, at most one problem, places inside the line, the same again', () => {
  fc.assert(
    fc.property(line, fc.constantFrom(...contexts), (written, context) => {
      const read = parseLine(written, context);
      expect(problemCount(read)).toBeLessThanOrEqual(1);
      checkPlaces(read, written.length);
      expect(parseLine(written, context)).toEqual(read);
      for (const problem of read.problems) {
        expect(problem.message.length).toBeLessThan(420);
        expect(problem.message).not.toMatch(/inside the program/);
      }
    }),
    { numRuns: 4000 },
  );
});

test('formatting settles at once and keeps meaning, comments and problems', () => {
  fc.assert(
    fc.property(text, (written) => {
      const file = parse(written);
      const once = format(file);
      const again = parse(once);
      expect(format(again)).toBe(once);
      expect(meaning(again)).toEqual(meaning(file));
    }),
    { numRuns: 2500 },
  );
});

test('the answers are the same on CRLF and LF', () => {
  fc.assert(
    fc.property(fc.array(line, { maxLength: 8 }), (lines) => {
      expect(parse(lines.join('\r\n')).lines).toEqual(parse(lines.join('\n')).lines);
    }),
    { numRuns: 500 },
  );
});

test('reading again after a change is reading it all, and keeps what did not change', () => {
  const bodies = fc.array(fc.oneof(line, exampleLine), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(bodies, bodies, fc.nat(12), fc.nat(12), (lines, inserted, at, count) => {
      const cache = createCache();
      const from = Math.min(at, lines.length);
      const to = Math.min(from + count, lines.length);
      const before = parse(lines.join('\n'), cache);
      const after = [...lines.slice(0, from), ...inserted, ...lines.slice(to)].join('\n');
      const again = reparse(before, { text: after, from, to, lines: inserted }, cache);
      expect(again).toEqual(parse(after, cache));
      for (let index = 0; index < from; index++) expect(again.lines[index]).toBe(before.lines[index]);
    }),
    { numRuns: 800 },
  );
});

test('an unchanged line is the identical object, an unchanged block keeps its lines', () => {
  const cache = createCache();
  const before = parse(example, cache);
  const after = parse(example.replace('240 g', '250 g'), cache);
  expect(after.lines.filter((each, index) => each !== before.lines[index])).toHaveLength(1);
  const lines = example.split('\n');
  const text = example.replace('90 g ', '95 g ');
  const at = lines.findIndex((each) => each.includes('90 g '));
  const again = reparse(before, { text, from: at, to: at + 1, lines: [text.split('\n')[at]!] }, cache);
  expect(again.blocks.map((block, index) => block.lines === before.blocks[index]?.lines)).toEqual([true, false, true, true]);
});

test('the cache forgets, and reads again what it has forgotten', () => {
  const cache = createCache(4);
  const first = cache.read('1 g a', 'formula');
  expect(cache.read('1 g a', 'formula')).toBe(first);
  for (let count = 0; count < 20; count++) cache.read(`${count} g b`, 'formula');
  expect(cache.read('1 g a', 'formula')).not.toBe(first);
  expect(cache.read('1 g a', 'formula')).toEqual(first);
});

const corpus = join(import.meta.dirname, '../corpus');

function filesIn(folder: string): string[] {
  return readdirSync(join(corpus, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.nappe'))
    .map((name) => join(corpus, folder, name));
}

test.each(filesIn('hostile'))('hostile: %s', (path) => {
  const file = parse(readFileSync(path, 'utf8'));
  for (const [index, read] of file.lines.entries()) {
    expect(problemCount(read)).toBeLessThanOrEqual(1);
    checkPlaces(read, file.lines[index]!.text.length);
  }
  const once = format(file);
  expect(format(parse(once))).toBe(once);
  expect(meaning(parse(once))).toEqual(meaning(file));
});

test('no false alarm on well-made formulas', () => {
  const found = filesIn('well-made').flatMap((path) => problems(path, parse(readFileSync(path, 'utf8'))));
  expect(found).toEqual([]);
});

function problems(path: string, file: File): string[] {
  return file.lines.flatMap((read, index) => read.problems.map((problem) => `${path}:${index + 1} ${problem.message}`));
}
