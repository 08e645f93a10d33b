/** Paths that stay in the workspace, and every way out of it. */
import { describe, expect, test } from 'vitest';
import { isInside, locate, shown } from './paths.ts';

const root = '/school/formulas';
const from = '/school/formulas/course/week 3.md';

describe('inside', () => {
  const rows: readonly (readonly [string, string])[] = [
    ['bases.nappe', '/school/formulas/course/bases.nappe'],
    ['./bases.nappe', '/school/formulas/course/bases.nappe'],
    ['../bases.nappe', '/school/formulas/bases.nappe'],
    ['..\\bases.nappe', '/school/formulas/bases.nappe'],
    ['a//b/../c.nappe', '/school/formulas/course/a/c.nappe'],
    ['crème 35 %.nappe', '/school/formulas/course/crème 35 %.nappe'],
    ['..hidden/x.nappe', '/school/formulas/course/..hidden/x.nappe'],
  ];
  for (const [written, path] of rows) test(written, () => expect(locate(written, from, root)).toEqual({ path }));
});

describe('outside', () => {
  const rows = [
    '../../secret.nappe',
    '../../../../../../etc/passwd',
    'a/../../../secret.nappe',
    '..\\..\\secret.nappe',
    '/etc/passwd',
    '/school/formulas/bases.nappe',
    '\\\\server\\share\\x.nappe',
    '//server/share/x.nappe',
    'C:\\bases.nappe',
    'c:bases.nappe',
    'file:///school/formulas/bases.nappe',
    'https://example.org/bases.nappe',
    'data:text/plain,formula',
    'vscode-remote://x/y.nappe',
    '%2e%2e/%2e%2e/secret.nappe',
    '..%2f..%2fsecret.nappe',
    '%252e%252e/%252e%252e/secret.nappe',
    '%2Fetc%2Fpasswd',
    '%5c%5cserver%5cshare',
    '~/bases.nappe',
    'bases.nappe\u0000.png',
    'bases%00.nappe',
    '..',
    '../..',
  ];
  for (const written of rows) test(JSON.stringify(written), () => expect(locate(written, from, root)).toHaveProperty('outside'));
});

test('a sibling folder whose name starts alike is outside', () => {
  expect(isInside('/school/formulas-old/x.nappe', root)).toBe(false);
  expect(locate('../../formulas-old/x.nappe', from, root)).toHaveProperty('outside');
});

test('the file system root may be the workspace', () => {
  expect(locate('../b.nappe', '/a/c.nappe', '/')).toEqual({ path: '/b.nappe' });
  expect(locate('../../b.nappe', '/a/c.nappe', '/')).toHaveProperty('outside');
});

test('paths are shown from the root', () => {
  expect(shown('/school/formulas/course/x.nappe', root)).toBe('course/x.nappe');
  expect(shown('/elsewhere/x.nappe', root)).toBe('/elsewhere/x.nappe');
});
