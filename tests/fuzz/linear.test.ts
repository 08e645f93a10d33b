/**
 * Reading takes work in proportion to the text's length: counted, not timed. V8 itself counts how often each part of the program
 * runs; twice the text must not run more than twice as much of it, whether the text is of many lines or of one long one.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { limits } from 'nappe-grammar';
import { beforeAll, expect, test } from 'vitest';
import { written } from './texts.ts';

const program = join(mkdtempSync(join(tmpdir(), 'nappe-work-')), 'work.mjs');

beforeAll(async () => {
  const entryPoints = [join(import.meta.dirname, 'work.ts')];
  await build({
    entryPoints,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    outfile: program,
    logLevel: 'error',
  });
});

/** How much more work four times as much text is than twice as much. */
function ratio(make: (size: number) => string, size: number): number {
  // Optimised code is not counted.
  const flags = ['--no-opt', '--no-maglev', '--no-sparkplug', '--no-lazy-feedback-allocation', '--no-flush-bytecode'];
  const input = JSON.stringify([make(2 * size), make(4 * size)]);
  const { stdout, stderr } = spawnSync(process.execPath, [...flags, program], { input, encoding: 'utf8' });
  if (stdout === '') throw new Error(stderr);
  const [less = 0, more = 0] = JSON.parse(stdout) as number[];
  expect(less).toBeGreaterThan(0);
  return more / less;
}

let unlike = 0;
const distinct = (line: string): string => `${line} // ${unlike++}`;
const ofLines = (some: readonly string[]) => (size: number) =>
  Array.from({ length: size }, (_, i) => distinct(some[i % some.length] ?? '')).join('\n');

const lines = written.flatMap((text) => text.split('\n')).filter((line) => line.trim() !== '' && !line.includes('//'));

test('in many lines', () => {
  const some = lines.slice(0, 200);
  expect(ratio(ofLines(some), some.length)).toBeLessThan(2.15);
});

test('in many lines that cannot be read', () => {
  const some = [
    'xyzzy foo',
    'heat milk to',
    '1 g a, b, ,',
    'whisk ( a',
    'cook into into b',
    '"',
    '240 g "a',
    'in in in',
    '( ( (',
  ];
  expect(ratio(ofLines(some), 180)).toBeLessThan(2.15);
});

/** Repeated as often as a line is long. */
const longest = Math.floor(limits.line / 8);
const longLines: readonly (readonly [string, string, string])[] = [
  ['operands', '  stir milk', ', milk'],
  ['digits', '  ', '1'],
  ['numbers', '  ', '1 '],
  ['minus signs', '  cook to ', '-'],
  ['full stops', '  cook to 1', '.'],
  ['parentheses', '  240 g ', '('],
  ['pairs of parentheses', '  240 g ', '(a 1 g)'],
  ['overrides', '  240 g (a 1 g', ', a 1 g'],
  ['quotation marks', '  stir ', '"'],
  ['spaces', '  stir milk', ' '],
  ['spaces and a comment', '  stir milk', ' /'],
  ['clauses', '  stir milk', ' for 1 min'],
  ['connectives', '  stir milk', ' into in over to at for'],
  ['letters', '  ', 'a'],
  ['capitals and accents', '  ', 'É'],
  ['combining accents', '  e', '\u0301'],
  ['fractions', '  ', '1/2'],
  ['times', '  makes ', '16 x '],
  ['commas', 'formula A', ','],
  ['a note', '  | ', '*_`['],
  ['a comment of allows', '  stir milk // allow', ' a,'],
];

test.each(longLines)('in one long line of %s', { timeout: 120_000 }, (_, start, piece) => {
  const make = (size: number): string => `formula A\n${(start + piece.repeat(size)).slice(0, limits.line)}`;
  // Below where the line would be refused.
  const size = Math.max(8, Math.floor(Math.min(longest, (limits.line - start.length) / piece.length) / 4) - 1);
  expect(ratio(make, size)).toBeLessThan(2.3);
});
