/** Folding by the values the trade agrees on (common practice, no source): where each limit bites, and where it must not. */
import { describe, expect, test } from 'vitest';
import { checkText, isGrave, lineOf } from './corpora.ts';

const found = (text: string) => checkText(text).filter(isGrave);
const codesOf = (text: string): readonly string[] => found(text).map(({ severity, code }) => `${severity} ${code}`);

/** A custard, what happens to it after the gelatin, and the fold. */
const custard = (
  after: string,
  fold = 'fold cream into liaison in 3 additions: whisk, spatula',
  whip = 'soft-medium',
) => `formula Bavarois
  300 g  whole milk, 4 °C
   90 g  egg yolk
   80 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  water, 10 °C
  270 g  cream, 35 % fat, 4 °C
  bloom gelatin in water for 10 min
  heat whole milk to 80-85 °C
  whisk egg yolk, caster sugar until dissolved as liaison
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  add gelatin
${after}  whip cream to ${whip} peak
  ${fold}
  pour into glass
  chill to 4 °C for 4 h
`;

const inFahrenheit = (text: string): string =>
  text.replace(/(\d+)(?:-(\d+))? °C/g, (_, low: string, high?: string) =>
    [low, high]
      .flatMap((c) => (c === undefined ? [] : [String((Number(c) * 9) / 5 + 32)]))
      .join('-')
      .concat(' °F'),
  );

describe.each([
  ['°C', (text: string) => text],
  ['°F', inFahrenheit],
])('a custard taken to 84 °C, in %s', (_, written) => {
  test('and never cooled: an error at the fold, with 84 °C, 35 °C and where it was last heated', () => {
    const [first, ...others] = found(written(custard('')));
    expect(others).toEqual([]);
    expect(first).toMatchObject({ code: 'fold-too-warm', severity: 'error', line: 15, numbers: { celsius: 84, limit: 35 } });
    expect(first?.message).toContain('84 °C');
    expect(first?.message).toContain('35 °C');
    expect(first?.related).toContainEqual({ file: 'example.nappe', line: 12, column: 3, message: 'last heated here' });
  });

  test.each(['cool to 30-34 °C', 'cool to 35 °C', 'cool to 33-35 °C', 'cool at room to 30-32 °C', 'check 32 °C'])(
    'and then “%s”: nothing about warmth',
    (step) => {
      const codes = found(written(custard(`  ${step}\n`))).map(({ code }) => code);
      expect(codes.filter((code) => code !== 'checkpoint-contradicted')).toEqual([]);
    },
  );

  test('cooled to 36-38 °C: a warning; to 44 °C: an error', () => {
    expect(codesOf(written(custard('  cool to 36-38 °C\n')))).toEqual(['warning fold-too-warm']);
    expect(codesOf(written(custard('  cool to 44 °C\n')))).toEqual(['error fold-too-warm']);
  });

  test('folded the other way round it is as warm', () => {
    const reversed = custard('', 'fold liaison into cream in 3 additions: whisk, spatula');
    expect(codesOf(written(reversed))).toEqual(['error fold-too-warm']);
  });
});

test('a reading “at” the fold is the base’s own', () => {
  const fold = 'fold cream into liaison at 32 °C in 3 additions: whisk, spatula';
  expect(codesOf(custard('', fold))).toEqual([]);
});

const ganache = (to: string, chocolate = 'dark chocolate, 64 % cocoa') => {
  const name = chocolate.split(',')[0];
  return `formula Ganache mousse
  180 g  cream, 35 % fat, 4 °C
  220 g  ${chocolate}
  300 g  cream, 35 % fat, 4 °C, as whipping cream
  heat cream to 80-82 °C
  pour cream over ${name}
  blend until glossy
  cool to ${to}
  whip whipping cream to soft-medium peak
  fold whipping cream into ${name} in 3 additions: whisk, spatula
  pour into glass
  chill to 4 °C for 3 h
`;
};

describe('a ganache may be warmer', () => {
  test.each([
    ['40 °C', 'dark chocolate, 64 % cocoa', []],
    ['44-48 °C', 'dark chocolate, 64 % cocoa', []],
    ['50 °C', 'dark chocolate, 64 % cocoa', ['warning fold-too-warm']],
    ['56 °C', 'dark chocolate, 64 % cocoa', ['error fold-too-warm']],
    ['40 °C', 'milk chocolate, 38 % cocoa', []],
    ['43 °C', 'milk chocolate, 38 % cocoa', ['warning fold-too-warm']],
    ['47 °C', 'white chocolate, 32 % cocoa', ['error fold-too-warm']],
    ['30 °C', 'dark chocolate, 64 % cocoa', []],
    ['24 °C', 'dark chocolate, 64 % cocoa', ['warning fold-too-cold']],
    ['27 °C', 'white chocolate, 32 % cocoa', []],
    ['22 °C', 'white chocolate, 32 % cocoa', ['warning fold-too-cold']],
  ])('%s, %s', (to, chocolate, expected) => {
    expect(codesOf(ganache(to, chocolate))).toEqual(expected);
  });
});

test('whites are folded hot: no fault', () => {
  expect(
    codesOf(`formula Hot soufflé base
  300 g  whole milk
   60 g  egg yolk
   60 g  caster sugar
   25 g  corn starch
  150 g  egg white
   75 g  caster sugar, as whites sugar
  heat whole milk until boiling
  whisk egg yolk, caster sugar, corn starch until smooth as liaison
  temper whole milk into liaison
  boil for 2 min until thick
  whip egg white, whites sugar to medium peak as whites
  fold whites into liaison in 3 additions: whisk, spatula
  portion 100 g into ramekin
  bake at 190 °C for 12 min until golden
`),
  ).toEqual([]);
});

describe('cold bases', () => {
  test('a custard left to set is a fault, smoothed it is none', () => {
    expect(codesOf(custard('  chill to 4 °C for 6 h\n'))).toContain('warning fold-too-cold');
    const smoothed = codesOf(custard('  chill to 4 °C for 6 h\n  smooth\n'));
    expect(smoothed.filter((code) => code.includes('fold') || code.includes('sets'))).toEqual([]);
    expect(codesOf(custard('  chill to 4 °C for 6 h\n  whisk until smooth\n'))).toEqual(smoothed);
  });

  test('the range counts whole: from 18 to 24 °C it may be warm enough', () => {
    expect(codesOf(custard('  cool to 18-24 °C\n'))).not.toContain('warning fold-too-cold');
  });
});

describe('how it is folded', () => {
  test('with nothing written about additions: a notice only', () => {
    const text = custard('  cool to 30-34 °C\n', 'fold cream into liaison');
    expect(checkText(text).map(({ severity, code }) => `${severity} ${code}`)).toContain('notice fold-at-once');
    expect(codesOf(text)).toEqual([]);
  });

  test('whisk, whisk, spatula over four additions ends with the spatula', () => {
    expect(codesOf(custard('  cool to 30-34 °C\n', 'fold cream into liaison in 4 additions: whisk, whisk, spatula'))).toEqual([]);
    expect(codesOf(custard('  cool to 30-34 °C\n', 'fold cream into liaison in 2 additions: whisk, whisk, spatula'))).toEqual([
      'warning fold-tool',
    ]);
  });

  test('cream very soft to medium is right, stiff is not', () => {
    for (const peak of ['very soft', 'soft', 'soft-medium', 'medium'])
      expect(codesOf(custard('  cool to 30-34 °C\n', undefined, peak)), peak).toEqual([]);
    for (const peak of ['medium-stiff', 'stiff'])
      expect(codesOf(custard('  cool to 30-34 °C\n', undefined, peak)), peak).toEqual(['warning over-whipped']);
  });
});

test('every finding of a fold says what decided', () => {
  for (const diagnostic of found(custard(''))) {
    expect(Object.values(diagnostic.numbers).filter((value) => typeof value === 'number').length).toBeGreaterThan(1);
    expect(lineOf(diagnostic)).toMatch(/\d/);
  }
});
