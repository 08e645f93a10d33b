/** What every source file looks like: a header that says what it is, a length one can read, no default export, nothing put off. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesBelow, packages, root, type SourceFile, sourcesOf } from './sources.ts';

/** Lines; data tables below are read by looking a row up, not from top to bottom. */
const longest = 400;
const tables = [
  /^compiler\/src\/catalogue\//,
  /^grammar\/src\/vocabulary\//,
  /^grammar\/src\/tree\.ts$/,
  /^compiler\/src\/card\/languages\//,
];

const sources = [...packages.flatMap((name) => sourcesOf(`${name}/src`, true)), ...sourcesOf('tests', true)];
const scripts = filesBelow(join(root, 'tests/scripts')).filter((path) => path.endsWith('.mjs'));

const faulty = (files: readonly SourceFile[], isFaulty: (file: SourceFile) => boolean) =>
  files.filter(isFaulty).map(({ path }) => path);

describe('every source file', () => {
  test('opens with a header comment of at least one sentence', () => {
    expect(faulty(sources, ({ text }) => !/^\/\*\*[\s*]+[^\s*][\s\S]*?[.!?:;](?=\s)/.test(text.slice(0, 600)))).toEqual([]);
    expect(scripts.filter((path) => !/^(#!.*\n)?\/\*\*/.test(readFileSync(path, 'utf8')))).toEqual([]);
  });

  test(`is at most ${longest} lines long, unless it is a table or a list of cases`, () => {
    const long = sources.filter(
      ({ path, text }) =>
        !path.endsWith('.test.ts') && !tables.some((table) => table.test(path)) && text.split('\n').length > longest + 1,
    );
    expect(long.map(({ path, text }) => `${path}: ${text.split('\n').length}`)).toEqual([]);
  });

  test('exports by name', () => {
    expect(faulty(sources, ({ text }) => /^export default\b/m.test(text))).toEqual([]);
  });

  test('puts nothing off and silences no type error', () => {
    const putOff = /\bTODO\b|\bFIXME\b|@ts-(?:ignore|nocheck)/;
    expect(faulty(sources, ({ path, text }) => !path.startsWith('tests/house/') && putOff.test(text))).toEqual([]);
  });

  test('runs: no test is skipped or alone', () => {
    const lonely = /\b(test|it|describe)\.(only|skip|todo)\(/;
    expect(
      faulty(sources, ({ path, text }) => path.endsWith('.test.ts') && !path.startsWith('tests/house/') && lonely.test(text)),
    ).toEqual([]);
  });
});
