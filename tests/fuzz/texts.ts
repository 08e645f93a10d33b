/** Texts to fuzz with: written formulas with pieces taken out, put in, doubled and moved, and soups of the notation's words. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { blocks, connectives, facts, headers, units, verbs } from 'nappe-grammar';

const repository = join(import.meta.dirname, '../..');

const nappeFiles = (folder: string): readonly string[] =>
  readdirSync(join(repository, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.nappe'))
    .sort()
    .map((name) => readFileSync(join(repository, folder, name), 'utf8'));

export const written: readonly string[] = [...nappeFiles('samples'), ...nappeFiles('tests/corpus/well-made')];
export const failures: readonly string[] = nappeFiles('tests/corpus/failures');

const lines: readonly string[] = [...new Set(written.flatMap((text) => text.split('\n')))];

const words: readonly string[] = [
  ...connectives,
  ...[verbs, headers, blocks, facts].flatMap((rows) => rows.map((row) => row.word)),
  ...units.flatMap((row) => [row.word, ...row.spellings]),
  ...[
    'formula A',
    'component b',
    'assembly',
    'equipment',
    '  ',
    '\n',
    ',',
    '(',
    ')',
    ':',
    '"',
    '|',
    '//',
    '#',
    '\t',
    '\u00a0',
    '\0',
  ],
  ...['0', '-1', '1e9', '0.001', '99999999999', '1/0', '½', '80-20 °C', '-300 °C', '5000 °C', '0 g', '100 %', '101 %', '12 x 3'],
  ...['egg yolk', 'gelatin', 'cream', 'raspberry', 'water', 'dark chocolate', 'rum', 'milk', 'é', 'e\u0301', '🥚', '𝄞', '\u202e'],
];

/** What one hand may do to a text. */
interface Change {
  readonly at: number;
  readonly length: number;
  readonly text: string;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof({ weight: 3, arbitrary: fc.nat(6) }, fc.nat(400)),
  text: fc.oneof(
    fc.constant(''),
    fc.constantFrom(...words),
    fc.constantFrom(...lines).map((line) => `\n${line}\n`),
  ),
});

function changed(text: string, changes: readonly Change[]): string {
  let result = text;
  for (const { at, length, text: put } of changes) {
    const start = Math.floor(at * result.length);
    result = result.slice(0, start) + put + result.slice(start + length);
  }
  return result;
}

const hurt = fc
  .tuple(fc.constantFrom(...written), fc.array(change, { maxLength: 8 }))
  .map(([text, changes]) => changed(text, changes));

const shuffled = fc.array(fc.constantFrom(...lines), { maxLength: 50 }).map((some) => `formula Shuffled\n${some.join('\n')}\n`);

const soup = fc.array(fc.constantFrom(...words, '\n', '\n  ', ' '), { maxLength: 80 }).map((some) => some.join(' '));

const loneSurrogate = /\p{Surrogate}/gu;

/** With line feeds only; no lone surrogate, which no file can hold. */
export const texts: fc.Arbitrary<string> = fc
  .oneof({ weight: 4, arbitrary: hurt }, { weight: 2, arbitrary: shuffled }, soup)
  .map((text) => text.replaceAll(/\r\n?/g, '\n').replaceAll(loneSurrogate, ''));

/** Any bytes, read as a file is read. */
export const bytes: fc.Arbitrary<string> = fc.uint8Array({ maxLength: 400 }).map((some) => new TextDecoder('utf-8').decode(some));
