/** The comparison names what changed in meaning and nothing else: over pairs that differ by one known edit, and in every form. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createWorkspace } from 'nappe';
import { format, parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import {
  comparableOf,
  comparisonHtml,
  comparisonJson,
  comparisonMarkdown,
  comparisonText,
} from '../../compiler/src/compare/index.ts';
import type { Change, Comparison } from '../../compiler/src/compare/model.ts';
import { bases, before, type Pair, pairs } from './compare-pairs.ts';

const folder = fileURLToPath(new URL('../../samples', import.meta.url));
const samples = readdirSync(folder).filter((name) => name.endsWith('.nappe'));

describe('of two versions that differ by one edit, that edit is named and nothing else', () => {
  test('the version they are made from is well made, and the same as itself', () => {
    expect(compared(before, before).changes).toEqual([]);
  });

  test.each(pairs)('$edit', ({ swaps, inBases = [], changes }) => {
    const after = edited(before, swaps);
    expect(compared(before, after, edited(bases, inBases)).changes.map(words)).toEqual(changes);
  });

  test.each(pairs)('$edit, the other way round: as many changes, nothing for nothing', ({ swaps, inBases = [], changes }) => {
    const after = edited(before, swaps);
    const back = compared(after, before, bases, edited(bases, inBases)).changes;
    expect(back.length).toBe(changes.length);
  });
});

describe.each(samples)('%s', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  const compared = (after: string) => {
    const read = (own: string) => (path: string) => {
      if (path === `/work/${name}`) return { text: own };
      const file = join(folder, path.slice('/work/'.length));
      return existsSync(file) ? { text: readFileSync(file, 'utf8') } : { refused: 'missing' as const, why: 'it is not there' };
    };
    const at = (own: string) => ({
      workspace: createWorkspace({ root: '/work', read: read(own) }),
      path: `/work/${name}`,
      file: name,
    });
    const { comparisons, added, dropped } = comparableOf(at(text), at(after));
    return [...comparisons.flatMap(({ changes }) => changes), ...added, ...dropped];
  };

  test('laid out anew, with comments and other line ends: nothing changed', () => {
    expect(compared(format(parse(text)))).toEqual([]);
    const spaced = text
      .split('\n')
      .map((line) => (/^\s*(?:\||\/\/|$)/.test(line) ? line : `${line.replaceAll('  ', '    ')}   // as before`));
    expect(compared(spaced.join('\r\n'))).toEqual([]);
  });
});

describe('every form of the answer', () => {
  const pair = pairs.find(({ edit }) => edit === 'an allergen by a new ingredient') as Pair;
  const comparison = compared(before, edited(before, pair.swaps));

  test('text: the line it stands on now, else where it stood', () => {
    const text = comparisonText(comparison);
    expect(text).toContain('Harbour bavarois: old.nappe → new.nappe');
    expect(text).toMatch(/:39 {2}plain flour: 120 g → 60 g/);
    expect(text).toMatch(/almond: allergen now in it/);
  });

  test('Markdown names every change once', () => {
    const markdown = comparisonMarkdown(comparison);
    expect(markdown).toContain('- **plain flour**: 120 g → 60 g');
    expect(markdown.match(/^- /gm)).toHaveLength(comparison.changes.length);
  });

  test('HTML has a row a change, and names stay text', () => {
    const html = comparisonHtml([{ ...comparison, formula: '<img src=x onerror=alert(1)>' }]);
    expect(html.match(/<tr><th scope="row">/g)).toHaveLength(comparison.changes.length);
    expect(html).not.toContain('<img');
  });

  test('data has the shape programs rely on', () => {
    const { version, changes } = comparisonJson([comparison]);
    expect(version).toBe(1);
    for (const change of changes)
      expect(Object.keys(change).sort()).toEqual(['component', 'kind', 'name', 'new', 'newLine', 'old', 'oldLine']);
  });
});

function compared(old: string, next: string, nextBases = bases, oldBases = bases): Comparison {
  const { comparisons } = comparableOf(side('old.nappe', old, oldBases), side('new.nappe', next, nextBases));
  expect(new Set(comparisons.map(({ formula }) => formula)).size).toBe(comparisons.length);
  return { ...(comparisons.at(-1) as Comparison), changes: comparisons.flatMap(({ changes }) => changes) };
}

function side(file: string, text: string, taken: string) {
  const texts = new Map([
    [`/work/${file}`, text],
    ['/work/bases.nappe', taken],
  ]);
  const workspace = createWorkspace({
    root: '/work',
    read: (path) => (texts.has(path) ? { text: texts.get(path) as string } : { refused: 'missing', why: 'it is not there' }),
  });
  return { workspace, path: `/work/${file}`, file };
}

/** Each swap must find what it replaces, else the pair would be of two equal versions. */
function edited(text: string, swaps: Pair['swaps']): string {
  return swaps.reduce((result, [from, to]) => {
    expect(result).toContain(from);
    return result.replace(from, to);
  }, text);
}

const words = ({ kind, component, name, old, new: next }: Change): string =>
  kind === 'diagnostic'
    ? `diagnostic | ${name} | ${next === null ? 'lost' : 'gained'}`
    : `${kind} | ${component} | ${name} | ${old ?? '-'} → ${next ?? '-'}`;
