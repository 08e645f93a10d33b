/** Fences of a handout as one text of notation; openings and closings as in CommonMark 0.31, section 4.5. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fencesOf } from './markdown.ts';

const lines = (text: string): string[] => fencesOf(text).split('\n');

test('everything outside is blank, line for line', () => {
  expect(lines('# Week 3\n\n```nappe\nformula A\n  1 g b\n```\n\ntext\n')).toEqual([
    '',
    '',
    '',
    'formula A',
    '  1 g b',
    '',
    '',
    '',
    '',
  ]);
});

test('all fences of a file are one text', () => {
  expect(lines('```nappe\na\n```\nx\n~~~ nappe\nb\n~~~')).toEqual(['', 'a', '', '', '', 'b', '']);
});

test('`nappe source` holds notation too; other words do not', () => {
  expect(lines('```nappe source\na\n```\n```nappes\nb\n```\n```\nc\n```\n```js nappe\nd\n```')).toEqual([
    '',
    'a',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
  ]);
});

test('up to three spaces before the fence; the text keeps its columns', () => {
  expect(lines('   ```nappe\n     a\n   ```')).toEqual(['', '     a', '']);
  expect(lines('    ```nappe\na\n    ```')).toEqual(['', '', '']);
});

test('a fence closes with its own mark, at least as long, and nothing behind', () => {
  expect(lines('````nappe\na\n```\n~~~~\n```` b\n````\nc')).toEqual(['', 'a', '```', '~~~~', '```` b', '', '']);
  expect(lines('~~~nappe\na\n`````\n~~~~~\nb')).toEqual(['', 'a', '`````', '', '']);
});

test('a fence shown inside a longer one is text', () => {
  expect(lines('````markdown\n```nappe\na\n```\n````\n```nappe\nb\n```')).toEqual(['', '', '', '', '', '', 'b', '']);
});

test('an opening whose info holds a backtick is code in a line', () => {
  expect(lines('``` nappe ` x\na\n```nappe\nb\n```')).toEqual(['', '', '', 'b', '']);
});

test('a fence that never closes runs to the end', () => {
  expect(lines('```nappe\na\nb')).toEqual(['', 'a', 'b']);
});

test('CRLF stays CRLF', () => {
  expect(fencesOf('x\r\n```nappe\r\na\r\n```\r\n')).toBe('\r\n\r\na\r\n\r\n');
});

test('any text keeps its number of lines', () => {
  const piece = fc.constantFrom('```', '~~~', '```nappe', '````', 'formula A', '', '   ', 'x');
  fc.assert(fc.property(fc.array(piece), (parts) => lines(parts.join('\n')).length === parts.join('\n').split('\n').length));
});
