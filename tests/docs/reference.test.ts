/** No reference page is stale: each is what `npm run docs` would write now, and every model says its range, source and error. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { catalogueTable, rules } from '../../compiler/src/index.ts';
import { verbs } from '../../grammar/src/index.ts';
import { repository } from '../cli/nappe.ts';
import { folder, headerOf, pages } from './pages.ts';

const made = pages(repository);
const kept = (name: string): string => readFileSync(join(repository, folder, name), 'utf8');

test.each(Object.keys(made))('%s is up to date (npm run docs)', (name) => {
  expect(kept(name)).toBe(made[name]);
});

test('there is no page that nothing makes', () => {
  expect(readdirSync(join(repository, folder)).sort()).toEqual(Object.keys(made).sort());
});

test('every verb, code and kind is there', () => {
  for (const { word } of verbs) expect(kept('verbs.md')).toContain(`| \`${word}\` |`);
  for (const { code } of rules) expect(kept('diagnostics.md')).toContain(`## \`${code}\``);
  for (const { name } of catalogueTable()) expect(kept('catalogue.md')).toContain(`| ${name} |`);
});

describe('every model', () => {
  // Tools and shapes of data, without physics in them.
  const plain = ['composition.ts', 'curve.ts'];
  const at = join(repository, 'compiler/src/matter');
  const files = readdirSync(at).filter((name) => !name.endsWith('.test.ts') && !plain.includes(name));

  test.each(files)('%s says its range and its error, and where its figures are from', (name) => {
    const text = headerOf(readFileSync(join(at, name), 'utf8')).join('\n');
    expect(text).toMatch(/\bRange\b/);
    expect(text).toMatch(/\bErrors?\b/);
    expect(text).toMatch(/Source|Formula|\b(19|20)\d\d\b/);
  });
});
