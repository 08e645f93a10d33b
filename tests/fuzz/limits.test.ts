/** Every stated limit is enforced with a sentence, and what lies just inside it is read: see the table in DEVELOPERS.md. */
import { checkUnit, createWorkspace, type Diagnostic } from 'nappe';
import { limits } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { noteTree } from '../../compiler/src/card/index.ts';
import { handoutOf } from '../../compiler/src/handout/index.ts';
import { mostBatches, mostNested } from '../../compiler/src/resolve/extent.ts';
import { mostComponents } from '../../compiler/src/resolve/scopes.ts';
import { largestFactor } from '../../compiler/src/scale/factor.ts';
import { mostSteps } from '../../compiler/src/timeline/index.ts';
import { mostFiles } from '../../server/src/host.ts';
import { tryCard } from '../card/support.ts';
import { folderWith, nappe } from '../cli/nappe.ts';
import { InProcess } from '../server/in-process.ts';

const root = '/limits';

type Texts = Readonly<Record<string, string>>;

function workspaceOf(files: Texts) {
  const read = (path: string) => {
    const text = files[path.slice(root.length + 1)];
    return text === undefined ? { refused: 'missing' as const, why: 'there is no such file' } : { text };
  };
  return createWorkspace({ root, read });
}

function said(files: Texts, file = 'a.nappe'): readonly Diagnostic[] {
  const { diagnostics, faults } = checkUnit(workspaceOf(files), `${root}/${file}`);
  expect(faults).toEqual([]);
  return diagnostics;
}

const messages = (text: string): string =>
  said({ 'a.nappe': text })
    .map(({ message }) => message)
    .join('\n');

const errors = (files: Texts) => said(files).filter(({ severity }) => severity === 'error');

const note = (length: number): string => `formula A\n  100 g  water\n  stir water\n  | ${'a'.repeat(length)}\n`;
const titled = (length: number): string => `formula ${'a'.repeat(length)}\n  100 g  water\n  stir water\n`;
const named = (length: number): string => `formula A\n  100 g  ${'a'.repeat(length)}\n`;
const quoted = (length: number): string => `formula A\n  100 g  "${'a'.repeat(length)}"\n`;
const long = (length: number): string =>
  `formula A\n  100 g  water\n  stir water // ${'a'.repeat(length - '  stir water // '.length)}\n`;
const whole = (count: number): string => `formula A\n  ${'1'.repeat(count)} g  water\n  stir water\n`;
const decimal = (count: number): string => `formula A\n  1.${'1'.repeat(count - 2)} g  water\n  stir water\n`;
const fraction = (count: number): string => `formula A\n  1/${'2'.repeat(count)} g  water\n  stir water\n`;

describe('one line', () => {
  test.each([
    ['a line', long, limits.line, /A line has at most 20000 characters/],
    ['a title', titled, limits.name, /A name has at most 200 characters/],
    ['a name', named, limits.name, /A name has at most 200 characters/],
    ['a name in quotes', quoted, limits.name, /A name has at most 200 characters/],
    ['a note', note, limits.note, /A line of a note has at most 10000 characters/],
    ['a whole number', whole, limits.digits, /more than 12 digits/],
    ['a decimal number', decimal, limits.digits, /more than 12 digits/],
    ['a fraction', fraction, limits.digits, /more than 12 digits/],
  ] as const)('%s', (_, make, most, sentence) => {
    expect(messages(make(most))).not.toMatch(sentence);
    expect(messages(make(most + 1))).toMatch(sentence);
  });
});

describe('one file', () => {
  test('its lines', () => {
    const text = (lines: number) => `formula A\n  100 g  water\n  stir water${'\n'.repeat(lines - 3)}`;
    expect(messages(text(limits.lines))).not.toMatch(/at most/);
    expect(messages(text(limits.lines + 1))).toMatch(/at most 200000 lines/);
  });

  test('its characters, where another reads it than the command line', () => {
    const why = (length: number) => {
      const source = workspaceOf({ 'a.nappe': ' '.repeat(length) }).source(`${root}/a.nappe`);
      return 'refused' in source ? source.why : null;
    };
    expect(why(8_000_000)).toBeNull();
    expect(why(8_000_001)).toBe('it is longer than eight million characters');
  });

  test('values of choices', () => {
    const text = (count: number): string =>
      `formula A\n  choice pick: ${Array.from({ length: count }, (_, i) => `v${i}`).join(', ')}\n  100 g  water\n  stir water\n`;
    expect(messages(text(200))).not.toMatch(/at most/);
    expect(messages(text(201))).toMatch(/A formula has at most 200 values over all its choices; what comes after is not read/);
  });

  test('combinations: past 64 those that cover every pair are run, past 1,024 rows every value, and the checker says so', () => {
    const text = (sizes: readonly number[]): string => {
      const choices = sizes.map(
        (size, c) =>
          `  choice pick ${'abcdefgh'[c]}: ${Array.from({ length: size }, (_, v) => `${'abcdefgh'[c]}${v}`).join(', ')}`,
      );
      return `formula A\n${choices.join('\n')}\n  100 g  water\n  stir water\n`;
    };
    const told = (sizes: readonly number[]) =>
      said({ 'a.nappe': text(sizes) }).find(({ code }) => code === 'too-many-combinations')?.message ?? null;
    expect(told([2, 2, 2, 2, 2, 2])).toBeNull();
    expect(told([2, 2, 2, 2, 2, 2, 2])).toMatch(/There are 128 combinations.*pair/);
    expect(told([32, 31, 2])).toMatch(/pair/);
    expect(told([33, 32, 2])).toMatch(/2112 combinations.*every value/);
  });

  test.each(['each above what draws on it', 'each below what draws on it'] as const)('components in a row, %s', (order) => {
    const text = (count: number): string => {
      const parts = Array.from(
        { length: count - 1 },
        (_, i) => `component part x${i}\n  100 g  ${i === 0 ? 'water' : `part x${i - 1}`}\n   10 g  caster sugar\n`,
      );
      if (order === 'each below what draws on it') parts.reverse();
      return `formula A\n${parts.join('')}assembly\n  pour part x${count - 2} into glass\n`;
    };
    expect(errors({ 'a.nappe': text(mostNested) })).toEqual([]);
    expect(errors({ 'a.nappe': text(mostNested + 1) })).toMatchObject([
      {
        code: 'syntax',
        message: '“assembly” draws on components that draw on others, more than 100 in a row; 100 are the most.',
      },
    ]);
    expect(errors({ 'a.nappe': text(mostComponents) })).toMatchObject([{ code: 'syntax' }]);
  });

  test('components of a formula', () => {
    const text = (count: number): string =>
      `formula A\n${Array.from({ length: count }, (_, i) => `component part x${i}\n  100 g  water\n`).join('')}`;
    expect(errors({ 'a.nappe': text(mostComponents) })).toEqual([]);
    expect(errors({ 'a.nappe': text(mostComponents + 1) })).toMatchObject([
      { line: 2 * mostComponents + 2, message: 'A formula has at most 1000 components; what comes after is not read.' },
    ]);
  });

  test('nested quotes of a note, which is then shown as text', () => {
    const first = (depth: number) => noteTree(`${'>'.repeat(2 * depth)}x`).children[0];
    expect(first(40)).toMatchObject({ type: 'blockquote' });
    expect(first(41)).toMatchObject({ type: 'paragraph', children: [{ value: `${'>'.repeat(82)}x` }] });
  });

  test('nested lists and quotes of a handout', () => {
    const deep = (depth: number) =>
      handoutOf({
        workspace: workspaceOf({ 'a.md': '> '.repeat(depth) }),
        path: `${root}/a.md`,
        fileName: (path) => path,
        date: '2025-11-25',
      });
    expect(deep(399)).not.toBeNull();
    expect(deep(401)).toBeNull();
    const folder = folderWith({ 'a.md': '>'.repeat(1000) });
    expect(nappe(['handout', 'a.md'], { cwd: folder })).toEqual({
      status: 2,
      out: '',
      err: 'nappe: a.md nests lists, quotes or emphasis more than 400 deep.\n',
    });
  });
});

describe('many files', () => {
  /** Each takes from the next. */
  const chain = (length: number, parts = (i: number, below: string) => `component base x${i}\n  100 g  ${below}\n`): Texts =>
    Object.fromEntries(
      Array.from({ length }, (_, i) => {
        const isLast = i === length - 1;
        const take = isLast ? '' : `take base x${i + 1} from "b${i + 1}.nappe"\n`;
        const below = isLast ? 'water' : `base x${i + 1}`;
        return i === 0
          ? ['a.nappe', `${take}formula A\n  100 g  ${below}\n  stir ${below}\n`]
          : [`b${i}.nappe`, take + parts(i, below)];
      }),
    );
  const refusal =
    'The file “b1.nappe” cannot be read: from here on more than 50 files take from each other in a row, and 50 are the most.';

  test('in a row: the file that is checked says so, and so does each whose row is too long', () => {
    expect(errors(chain(50))).toEqual([]);
    expect(errors(chain(51))).toMatchObject([{ file: 'a.nappe', line: 1, code: 'import-missing', message: refusal }]);
    expect(said(chain(51), 'b1.nappe').filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(errors(chain(2000))).toMatchObject([{ file: 'a.nappe', line: 1, message: refusal }]);
    expect(said(chain(2000), 'b1.nappe')).toMatchObject([{ file: 'b1.nappe', line: 1, code: 'import-missing' }]);
  });

  test('in a row, the answer is the same whichever was checked before', () => {
    const files = chain(120);
    const workspace = workspaceOf(files);
    for (const name of Object.keys(files).reverse())
      expect(checkUnit(workspace, `${root}/${name}`).diagnostics, name).toEqual(said(files, name));
  });

  test('in a ring', () => {
    const ring = {
      'a.nappe': 'take b from "b.nappe"\ncomponent a\n  10 g  b\n',
      'b.nappe': 'take a from "a.nappe"\ncomponent b\n  10 g  a\n',
      'c.nappe': 'take a from "a.nappe"\ncomponent c\n  10 g  a\n',
    };
    expect(said(ring).map(({ code }) => code)).toContain('import-cycle');
    expect(
      said(ring, 'c.nappe')
        .map(({ message }) => message)
        .join(),
    ).not.toContain('in a row');
    const large = Object.fromEntries(
      Array.from({ length: 120 }, (_, i) => [
        `${i}.nappe`,
        `take p${(i + 1) % 120} from "${(i + 1) % 120}.nappe"\ncomponent p${i}\n  10 g  p${(i + 1) % 120}\n`,
      ]),
    );
    expect(said(large, '0.nappe')).toMatchObject([{ line: 1, code: 'import-missing' }]);
  });

  test('components in a row over files', () => {
    const two = (i: number, below: string) =>
      `component lower x${i}\n  100 g  ${below}\ncomponent middle x${i}\n  100 g  lower x${i}\ncomponent base x${i}\n  100 g  middle x${i}\n`;
    // The formula, and three in each file but its own.
    expect(errors(chain(34, two))).toEqual([]);
    expect(errors(chain(35, two)).map(({ message }) => message)).toEqual([
      '“A” draws on components that draw on others, more than 100 in a row; 100 are the most.',
    ]);
  });

  /** Each draws two batches of the next, at sizes that no two batches share: twice as many a file. */
  const doubling = (length: number): Texts =>
    chain(
      length,
      (i, below) => `component base x${i}\n  10 g  ${below}\n  ${20 + 7 * i} g  ${below}, as other\n  stir ${below}, other\n`,
    );
  const batches = (count: number): Texts => ({
    'a.nappe': `take base from "b.nappe"\nformula A\n${Array.from({ length: count }, (_, i) => `  10 g  base, as b${i}\n`).join('')}  mix ${Array.from({ length: count }, (_, i) => `b${i}`).join(', ')}\n`,
    'b.nappe': 'component base\n  100 g  water\n',
  });

  test('batches of what is taken', () => {
    expect(errors(batches(mostBatches))).toEqual([]);
    const sentence = 'What is taken here, and what that takes in turn, comes to more than 500 batches; 500 are the most.';
    expect(errors(batches(mostBatches + 1))).toMatchObject([{ code: 'syntax', message: sentence }]);
    // Without the limit, as many batches as there are grains on the chessboard.
    expect(errors(doubling(48)).map(({ message }) => message)).toContain(sentence);
  });

  test('compared with themselves, each once', () => {
    const folder = folderWith(doubling(9));
    expect(nappe(['compare', 'a.nappe', 'a.nappe'], { cwd: folder })).toMatchObject({ status: 0, err: '' });
  });

  test('listed by the editor', async () => {
    const warnings = async (count: number) => {
      const files = new Map(Array.from({ length: count }, (_, i) => [`/work/${i}.nappe`, '']));
      const server = new InProcess(files);
      await server.index();
      expect(server.faults).toEqual([]);
      return server.told.filter((one) => one.method === 'window/showMessage').map(({ params }) => params);
    };
    expect(await warnings(mostFiles)).toEqual([]);
    expect(await warnings(mostFiles + 1)).toEqual([
      { type: 2, message: expect.stringMatching(/^This folder holds more than 20,000 files .*\.$/) },
    ]);
  });
});

describe('sizes asked for', () => {
  const text = 'formula A\n  makes 1 glass of 100 g\n  100 g  water\n  pour water into glass\n';

  test('a factor', () => {
    expect(tryCard({ text }, { for: `${largestFactor} glasses` })).not.toHaveProperty('problem');
    expect(tryCard({ text }, { for: `${largestFactor + 1} glasses` })).toEqual({
      problem: 'That is more than 100,000 times the formula: check the number and its unit.',
    });
  });

  test('the steps of a timeline', () => {
    const steps = (count: number) => `formula A\n  100 g  water\n${'  stir water\n'.repeat(count)}`;
    const folder = folderWith({
      'in.nappe': steps(mostSteps),
      'out.nappe': steps(mostSteps + 1),
      'a.md': '# T\n\n```nappe\ntimeline "out.nappe" ready 18:30\n```\n',
    });
    const sentence = 'A timeline lays out at most 400 steps, and these are 401: ask for fewer formulas at a time.';
    expect(nappe(['timeline', 'in.nappe'], { cwd: folder })).toMatchObject({ status: 0, err: '' });
    expect(nappe(['timeline', 'out.nappe'], { cwd: folder })).toEqual({ status: 2, out: '', err: `nappe: ${sentence}\n` });
    expect(nappe(['handout', 'a.md'], { cwd: folder }).err).toContain(`a.md:4: ${sentence}`);
  });
});
