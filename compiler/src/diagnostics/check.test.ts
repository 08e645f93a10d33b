/** Checking a file: combinations, allows, positions, order, what is remembered, and what a crash of ours costs. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { inMemory } from '../resolve/in-memory.ts';
import * as running from '../run/run.ts';
import { type Checked, type CheckOptions, checkUnit } from './check.ts';
import { leftover } from './leftover.ts';
import { rules } from './registry.ts';
import { renderText } from './render-text.ts';
import { checkJson, merged } from './report-json.ts';
import type { Rule } from './rule.ts';

vi.mock('../run/run.ts', { spy: true });
afterEach(() => vi.clearAllMocks());

const check = (text: string, options: CheckOptions = {}, name = 'a.nappe'): Checked =>
  checkUnit(inMemory({ [name]: text }).workspace, `/work/${name}`, options);
const codes = ({ diagnostics }: Checked): string[] => diagnostics.map(({ line, code }) => `${line} ${code}`);

describe('combinations', () => {
  const text = (step: string, lines = ''): string => `formula A
  choice serving: glass, mould, cut
  choice flavour: plain, sharp
  400 g  raspberry purée, pasteurised
   60 g  caster sugar
${lines}  stir raspberry purée, ${step} until dissolved
`;
  const whenOf = (source: string): unknown => check(source).diagnostics.map(({ code, when }) => ({ code, when }));

  test('one that holds in all has no `when`', () => {
    expect(whenOf(text('40 g of caster sugar'))).toEqual([{ code: 'leftover', when: undefined }]);
  });
  test('choices that do not matter are left out', () => {
    expect(whenOf(text('60 g (mould 40 g, cut 30 g) of caster sugar'))).toEqual([
      { code: 'leftover', when: [{ serving: 'mould' }, { serving: 'cut' }] },
    ]);
  });
  test('choices that matter together stay together', () => {
    const lines = '    8 g  lemon juice   when cut, sharp\n';
    expect(whenOf(text('caster sugar', lines))).toEqual([
      { code: 'unused-ingredient', when: [{ serving: 'cut', flavour: 'sharp' }] },
    ]);
  });
  test('what stands on a guarded line holds where the line does', () => {
    expect(whenOf(text('caster sugar', '    8 g  caster sugar   when cut\n'))).toEqual([
      { code: 'duplicate-name', when: [{ serving: 'cut' }] },
    ]);
  });
  test('`with` fixes a value, the others run', () => {
    const source = text('60 g (mould 40 g, cut 30 g) of caster sugar');
    expect(codes(check(source, { with: ['glass'] }))).toEqual([]);
    expect(check(source, { with: ['Cut'] }).diagnostics.map(({ when }) => when)).toEqual([undefined]);
  });
  test('above 64 a notice says how many are checked', () => {
    const choices = ['p', 'q', 'r', 's'].map((name) => `  choice ${name}: ${name}x, ${name}y, ${name}z\n`).join('');
    const [notice] = check(`formula A\n${choices}  10 g  caster sugar\n`).diagnostics;
    expect(notice).toMatchObject({
      code: 'too-many-combinations',
      line: 2,
      severity: 'notice',
      numbers: { combinations: 81, pairs: true },
    });
    expect(notice?.numbers.checked).toBeLessThan(20);
  });
});

describe('allow', () => {
  const text = (comment: string): string => `formula A
  400 g  raspberry purée, pasteurised
${comment}
   60 g  caster sugar
  stir raspberry purée, 40 g of caster sugar until dissolved
`;
  test('with a reason turns the code off on the next line, and is listed', () => {
    const checked = check(text('  // allow leftover: it dusts the plates'));
    expect(codes(checked)).toEqual([]);
    expect(checked.allowed).toMatchObject([
      { file: 'a.nappe', line: 4, code: 'leftover', reason: 'it dusts the plates', safety: false },
    ]);
    expect(checked.summary).toEqual({ files: 1, errors: 0, warnings: 0, notices: 0, allowed: 1 });
  });
  test('without a reason it does nothing', () => {
    expect(codes(check(text('  // allow leftover')))).toEqual(['3 unused-allow', '4 leftover']);
  });
  test('an unknown code, one that hides nothing, `syntax`', () => {
    const checked = check(text('  // allow leftovers, used-up, syntax, leftover: it dusts the plates'));
    expect(checked.diagnostics.map(({ column, code, numbers }) => `${column} ${code} ${numbers.problem}`)).toEqual([
      '12 unused-allow unknown code',
      '23 unused-allow hides nothing',
      '32 unused-allow syntax',
    ]);
    expect(checked.allowed.map(({ code }) => code)).toEqual(['leftover']);
  });
});

describe('positions', () => {
  const lines = [
    '// a comment',
    '',
    'formula A',
    '  400 g  raspberry purée, pasteurised',
    '  stir raspberry puree until smooth',
    '',
  ];

  test('count from 1, ends exclusive, the same on CRLF and LF', () => {
    const [plain] = check(lines.join('\n')).diagnostics;
    expect(plain).toMatchObject({ code: 'unknown-name', line: 5, column: 8, endLine: 5, endColumn: 23 });
    const unix = check(lines.join('\n')).diagnostics.map(({ fixes: _, ...rest }) => rest);
    expect(check(lines.join('\r\n')).diagnostics.map(({ fixes: _, ...rest }) => rest)).toEqual(unix);
  });

  test('a fix on a CRLF file inserts CRLF', () => {
    const [loose] = check('  10 g  caster sugar\r\n').diagnostics;
    expect(loose?.fixes[0]?.edits[0]).toMatchObject({ line: 1, column: 1, endColumn: 1, text: 'formula Untitled\r\n' });
  });

  test('in a handout they are those of the Markdown', () => {
    const [one] = check(`# Week 1\n\n\`\`\`nappe\n${lines.join('\n')}\`\`\`\n`, {}, 'a.md').diagnostics;
    expect(one).toMatchObject({ file: 'a.md', code: 'unknown-name', line: 8 });
  });

  test('what a rule finds in a taken component stands in its file, with the line that takes it', () => {
    const everyStep: Rule = {
      ...leftover,
      code: 'leftover',
      check: (run, report) => {
        for (const { step } of run.records)
          if (step.node.verb === 'stir') report({ place: step.place, numbers: { name: 'x', left: 1, weighed: 2 } });
      },
    };
    const { workspace } = inMemory({
      'bases.nappe': 'component sauce\n  400 g  raspberry purée, pasteurised\n  stir raspberry purée until smooth\n',
      'main.nappe': 'take sauce from "bases.nappe"\n\nformula A\n  200 g  sauce\n  pour sauce into glass\n',
    });
    (rules as Rule[]).push(everyStep);
    try {
      const [one, ...more] = checkUnit(workspace, '/work/main.nappe').diagnostics;
      expect(more).toEqual([]);
      expect(one).toMatchObject({
        file: 'bases.nappe',
        line: 3,
        related: [{ file: 'main.nappe', line: 4, message: 'taken here' }],
      });
    } finally {
      (rules as Rule[]).pop();
    }
  });
});

test('diagnostics come in order of their place', () => {
  const checked = check('formula A\n  10 g  nowhere\n  20 pc  plain flour\n  stir else\n\nformula A\n  1 g  nothing\n');
  const places = checked.diagnostics.map(({ line, column }) => line * 1000 + column);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

describe('one fault raises one diagnostic', () => {
  test('an unreadable line hides what it declared and used', () => {
    expect(
      codes(
        check('formula A\n  400 g  raspberry purée, pasteurised\n  60 ? caster sugar\n  stir raspberry purée, caster sugar\n'),
      ),
    ).toEqual(['3 syntax']);
    expect(
      codes(
        check(
          'formula A\n  400 g  raspberry purée, pasteurised\n  60 g  caster sugar\n  gently stir raspberry purée, caster sugar\n',
        ),
      ),
    ).toEqual(['4 syntax']);
  });
  test('a take that fails hides the names it should have brought', () => {
    expect(codes(check('take sauce from "gone.nappe"\n\nformula A\n  100 g  water\n  add sauce\n'))).not.toContain(
      '5 unknown-name',
    );
  });
  test('a mistyped name hides that the right one is not used', () => {
    expect(
      codes(
        check('formula A\n  400 g  raspberry purée, pasteurised\n  60 g  caster sugar\n  stir raspberry purée, castor sugar\n'),
      ),
    ).toEqual(['4 unknown-name']);
  });
});

describe('a crash of ours', () => {
  const text =
    'formula A\n  400 g  raspberry purée, pasteurised\n  60 g  caster sugar\n  stir raspberry purée, 40 g of caster sugar\n';

  test('in a rule costs that rule alone and is told once', () => {
    const broken = { ...leftover, code: 'zz-broken', check: () => JSON.parse('{') } as unknown as Rule;
    (rules as Rule[]).push(broken);
    try {
      const checked = check(text.replace('formula A\n', 'formula A\n  choice c: x, y\n'));
      expect(codes(checked)).toEqual(['4 leftover']);
      expect(checked.faults).toMatchObject([{ part: 'zz-broken', formula: 'A' }]);
    } finally {
      (rules as Rule[]).pop();
    }
  });

  test('in the run leaves the findings that need none', () => {
    vi.mocked(running.runFormula).mockImplementationOnce(() => {
      throw new Error('boom');
    });
    const checked = check(`${text}  20 pc  plain flour\n`);
    expect(codes(checked)).toEqual(['5 needs-piece-mass']);
    expect(checked.faults).toMatchObject([{ part: 'run' }]);
    expect(checked.faults[0]?.message).toContain('boom');
  });
});

test('an edit runs again only the formula it touches', () => {
  const text = (grams: number): string => `formula A\n  ${grams} g  caster sugar\n\nformula B\n  10 g  caster sugar\n`;
  const { workspace, write } = inMemory({ 'a.nappe': text(10) });
  const runs = (): string[] => vi.mocked(running.runFormula).mock.calls.map(([formula]) => formula.name);
  checkUnit(workspace, '/work/a.nappe');
  expect(runs()).toEqual(['A', 'B']);
  vi.clearAllMocks();
  checkUnit(workspace, '/work/a.nappe');
  write('a.nappe', text(10));
  checkUnit(workspace, '/work/a.nappe');
  write('a.nappe', `// above\n${text(10)}`);
  checkUnit(workspace, '/work/a.nappe');
  expect(runs()).toEqual([]);
  write('a.nappe', text(20));
  checkUnit(workspace, '/work/a.nappe');
  expect(runs()).toEqual(['A']);
});

test('the JSON is what the interface says', () => {
  const checked = check(
    'formula A\n  400 g  raspberry purée, pasteurised\n   60 g  caster sugar\n  stir raspberry purée, castor sugar\n',
  );
  expect(checkJson(merged([checked, checked]))).toEqual({
    version: 1,
    diagnostics: [
      {
        file: 'a.nappe',
        line: 4,
        column: 25,
        endLine: 4,
        endColumn: 37,
        severity: 'error',
        code: 'unknown-name',
        message: expect.stringContaining('castor sugar'),
        numbers: { name: 'castor sugar', nearest: 'caster sugar', guarded: false },
        fixes: [
          {
            title: 'Change to caster sugar',
            edits: [{ file: 'a.nappe', line: 4, column: 25, endLine: 4, endColumn: 37, text: 'caster sugar' }],
          },
        ],
        related: [],
      },
    ],
    allowed: [],
    summary: { files: 2, errors: 1, warnings: 0, notices: 0, allowed: 0 },
  });
});

test('as text: the place, the line with a mark, the sentence, what to do', () => {
  const text = 'formula A\n  choice c: x, y\n  10 g  crème   when y\n  10 g  Crème\n';
  const [diagnostic] = check(text).diagnostics.filter(({ code }) => code === 'duplicate-name');
  if (!diagnostic) throw new Error('none');
  expect(renderText(diagnostic, () => text.split('\n'))).toBe(
    [
      'a.nappe:4:9: error: Something else here is already called “Crème”. [duplicate-name]',
      '   4 |   10 g  Crème',
      '     |         ^^^^^',
      '      = crème is declared here first: a.nappe:3:9',
      '      = when c is y',
      '      = to do: Give the second one a name of its own with `as` (`90 g caster sugar, as yolk sugar`), or put both amounts on one line.',
    ].join('\n'),
  );
});

test('as text: a long line is cut around its place and control characters obey nobody', () => {
  const long = `${'x '.repeat(300)}\u001b[31m`;
  const diagnostic = { ...check('nonsense here\n').diagnostics[0], line: 1, column: 401, endLine: 1, endColumn: 404 };
  const [, excerpt = '', mark = ''] = renderText(diagnostic as never, () => [long]).split('\n');
  expect(excerpt.length).toBeLessThan(130);
  expect(excerpt).not.toContain('\u001b');
  expect(mark.trimEnd().length).toBeLessThanOrEqual(excerpt.length);
});
