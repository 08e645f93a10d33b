/**
 * No regular expression of the program can go back past linear: every literal of the source is searched for it by scslre, which builds
 * the expression's automata and looks for two ways to read the same run of a letter. What it cannot see, runs of several letters, was
 * looked for by hand with a slower search; one is left, which reads sentences of 400 letters at most (`longest` in draft/step.ts).
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { analyse } from 'scslre';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { packages, root, sourcesOf } from '../house/sources.ts';

interface Found {
  readonly at: string;
  readonly expression: RegExp;
}

/** Every literal of a file. */
function expressionsIn(path: string, text: string): readonly Found[] {
  const found: Found[] = [];
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    if (node.kind === ts.SyntaxKind.RegularExpressionLiteral) {
      const written = node.getText();
      const end = written.lastIndexOf('/');
      const at = `${path}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
      found.push({ at, expression: new RegExp(written.slice(1, end), written.slice(end + 1)) });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const kinds = ({ expression }: Found): readonly string[] => analyse(expression).reports.map(({ type }) => type);

test('the search finds what it is to find', () => {
  for (const bad of ['(a+)+$', '\\s+$', 'a*a*b', '\\d+\\d+x', '"[^"]*"*$'])
    expect(kinds({ at: bad, expression: new RegExp(bad) }).length, bad).toBeGreaterThan(0);
  for (const good of ['^\\s+', '"[^"]*"', '(?:ab)+c', '^a*b*$'])
    expect(kinds({ at: good, expression: new RegExp(good) }), good).toEqual([]);
});

test('no expression of the source', () => {
  const all = packages.flatMap((name) => sourcesOf(`${name}/src`)).flatMap(({ path, text }) => expressionsIn(path, text));
  expect(all.length).toBeGreaterThan(200);
  expect(all.filter((one) => kinds(one).length > 0).map(({ at, expression }) => `${at} ${expression}`)).toEqual([]);
});

/** Built at run time, from tables of the program's own; nothing a file says becomes an expression. */
test('expressions are built in one place, from a table', () => {
  const built = packages
    .flatMap((name) => sourcesOf(`${name}/src`))
    .filter(({ path }) => /\bnew RegExp\(|\bRegExp\(/.test(readFileSync(join(root, path), 'utf8')))
    .map(({ path }) => path);
  expect(built).toEqual(['compiler/src/draft/numbers.ts']);
});
