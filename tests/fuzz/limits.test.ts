/** Every stated limit is enforced with a sentence, and what lies just inside it is read. */
import { checkUnit, createWorkspace, type Diagnostic } from 'nappe';
import { limits } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';

const root = '/limits';

function said(files: Readonly<Record<string, string>>, file = 'a.nappe'): readonly Diagnostic[] {
  const read = (path: string) => {
    const text = files[path.slice(root.length + 1)];
    return text === undefined ? { refused: 'missing' as const, why: 'there is no such file' } : { text };
  };
  const { diagnostics, faults } = checkUnit(createWorkspace({ root, read }), `${root}/${file}`);
  expect(faults).toEqual([]);
  return diagnostics;
}

const messages = (text: string): string =>
  said({ 'a.nappe': text })
    .map(({ message }) => message)
    .join('\n');

const note = (length: number): string => `formula A\n  100 g  water\n  stir water\n  | ${'a'.repeat(length)}\n`;
const named = (length: number): string => `formula ${'a'.repeat(length)}\n  100 g  water\n  stir water\n`;
const long = (length: number): string =>
  `formula A\n  100 g  water\n  stir water // ${'a'.repeat(length - '  stir water // '.length)}\n`;
const digits = (count: number): string => `formula A\n  ${'1'.repeat(count)} g  water\n  stir water\n`;

describe('one line', () => {
  test.each([
    ['a line', long, limits.line, /A line has at most 20000 characters/],
    ['a name', named, limits.name, /A name has at most 200 characters/],
    ['a note', note, limits.note, /A line of a note has at most 10000 characters/],
  ] as const)('%s', (_, make, most, sentence) => {
    expect(messages(make(most))).not.toMatch(sentence);
    expect(messages(make(most + 1))).toMatch(sentence);
  });

  test('the digits of a number', () => {
    expect(messages(digits(limits.digits))).not.toMatch(/digits/);
    expect(messages(digits(limits.digits + 1))).toMatch(/digits/);
  });
});

describe('one file', () => {
  test('its lines', () => {
    const text = `formula A\n  100 g  water\n  stir water\n${'\n'.repeat(limits.lines)}`;
    expect(messages(text)).toMatch(/at most 200000 lines/);
  });

  test('values of choices: past 64 combinations a covering set is run, and the checker says so', () => {
    const choices = (count: number): string =>
      Array.from(
        { length: count },
        (_, i) => `  choice pick ${'abcdefgh'[i]}: one ${'abcdefgh'[i]}, other ${'abcdefgh'[i]}`,
      ).join('\n');
    const text = (count: number): string => `formula A\n${choices(count)}\n  100 g  water\n  stir water\n`;
    const codes = (count: number): readonly string[] => said({ 'a.nappe': text(count) }).map(({ code }) => code);
    expect(codes(6)).not.toContain('too-many-combinations');
    expect(codes(7)).toContain('too-many-combinations');
  });
});

describe('many files', () => {
  const chain = (length: number): Record<string, string> =>
    Object.fromEntries(
      Array.from({ length }, (_, i) => [
        i === 0 ? 'a.nappe' : `b${i}.nappe`,
        `${i < length - 1 ? `take base ${'x'.repeat(i + 1)} from "b${i + 1}.nappe"\n` : ''}${i === 0 ? 'formula A' : `component base ${'x'.repeat(i)}`}\n  100 g  ${i < length - 1 ? `base ${'x'.repeat(i + 1)}` : 'water'}\n`,
      ]),
    );

  test('taken from each other in a long row, nothing hangs and nothing breaks', () => {
    const short = said(chain(20)).filter(({ severity }) => severity === 'error');
    expect(short).toEqual([]);
    said(chain(150));
  });

  test('taken in a ring', () => {
    const codes = said({
      'a.nappe': 'take b from "b.nappe"\ncomponent a\n  10 g  b\n',
      'b.nappe': 'take a from "a.nappe"\ncomponent b\n  10 g  a\n',
    }).map(({ code }) => code);
    expect(codes).toContain('import-cycle');
  });
});
