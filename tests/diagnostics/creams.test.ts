/** Whipping cream, ganache and butter: what may be whipped, how cold, and when it has gone too far. Limits as in `checker.md`. */
import { describe, expect, test } from 'vitest';
import { checkText, isGrave } from './corpora.ts';

const codesOf = (text: string): readonly string[] =>
  checkText(text)
    .filter(isGrave)
    .map(({ severity, code }) => `${severity} ${code}`);

const cream = (line: string, steps = 'whip cream to soft-medium peak'): string => `formula Cream
  ${line}
  ${steps}
  pipe into glass
`;

describe('fat and temperature of cream', () => {
  test.each([
    ['500 g  cream, 30 % fat, 4 °C', []],
    ['500 g  cream, 29 % fat, 4 °C', ['warning cream-too-lean']],
    ['500 g  cream, 24 % fat, 4 °C', ['error cream-too-lean']],
    ['500 g  cream, 35 % fat', []],
    ['500 g  cream, 35 % fat, 10 °C', []],
    ['500 g  cream, 35 % fat, 50 °F', []],
    ['500 g  cream, 35 % fat, 12 °C', ['warning cream-too-warm']],
    ['500 g  cream, 35 % fat, 8-14 °C', ['warning cream-too-warm']],
    ['500 g  oat cream, is plant cream, 18 °C, as cream', []],
  ])('%s', (line, expected) => {
    expect(codesOf(cream(line))).toEqual(expected);
  });

  test('a whisk that whips is held to the same', () => {
    expect(codesOf(cream('500 g  cream, 24 % fat, 14 °C', 'whisk cream to soft peak'))).toEqual([
      'error cream-too-lean',
      'warning cream-too-warm',
    ]);
  });

  test('sugar and vanilla from the shelf neither thin nor warm it, mascarpone and gelatin hold it', () => {
    expect(
      codesOf(`formula Sweet cream
  500 g  cream, 30 % fat, 8 °C
   60 g  icing sugar
    4 g  vanilla extract
  whip cream, icing sugar, vanilla extract to soft-medium peak
`),
    ).toEqual([]);
    expect(
      codesOf(`formula Light mascarpone cream
  400 g  cream, 25 % fat, 4 °C
  150 g  mascarpone, 4 °C
  whip cream, mascarpone to soft-medium peak
`),
    ).toEqual([]);
  });

  test('heated cream needs its night', () => {
    const infused = (chill: string): string => `formula Vanilla cream
  500 g  cream, 35 % fat, 4 °C
    1 pc  vanilla pod
  heat cream to 80 °C
  infuse vanilla pod in cream for 15 min
  strain cream
${chill}  whip to soft peak
  pipe into glass
`;
    expect(codesOf(infused(''))).toEqual(['warning cream-too-warm']);
    expect(codesOf(infused('  cool to 4 °C in ice bath\n  chill to 4 °C for 12 h\n'))).toEqual([]);
  });
});

describe('whipping on', () => {
  const twice = (second: string): string => cream('500 g  cream, 35 % fat, 4 °C', `whip cream to stiff peak\n  ${second}`);
  test('past stiff it is butter, and an error', () => {
    expect(codesOf(twice('whip on high'))).toEqual(['error over-whipped']);
    expect(codesOf(twice('whip for 3 min'))).toEqual(['error over-whipped']);
  });
  test('unless butter is what is wanted', () => {
    expect(codesOf(twice('whip for 8 min until butter'))).toEqual([]);
  });
  test('a soft cream may be whipped on', () => {
    expect(codesOf(cream('500 g  cream, 35 % fat, 4 °C', 'whip cream to soft peak\n  whip to medium peak'))).toEqual([]);
  });
});

describe('a ganache to be whipped', () => {
  const ganache = (rest: string): string => `formula Whipped ganache
  300 g  cream, 35 % fat, 4 °C
  200 g  dark chocolate, 60 % cocoa
  heat cream to 80 °C
  pour cream over dark chocolate
  blend until glossy
${rest}  whip to soft peak
  pipe into glass
`;
  test.each([
    ['', ['warning rest-before-whipping']],
    ['  chill to 4 °C for 3 h\n', ['warning rest-before-whipping']],
    ['  chill to 4 °C for 3 h\n  chill to 4 °C for 3 h\n', []],
    ['  chill to 4 °C for overnight\n', []],
    ['  chill at 4 °C\n', []],
    ['  chill to 4 °C for 12 h\n  heat to 14 °C\n', ['warning rest-before-whipping']],
  ])('%j', (rest, expected) => {
    expect(codesOf(ganache(rest))).toEqual(expected);
  });
});

describe('buttercream', () => {
  const buttercream = (butter: string, meringue: string): string => `formula Swiss buttercream
  160 g  egg white
  260 g  caster sugar
  400 g  ${butter}
  whisk egg white, caster sugar in bain-marie to 72-75 °C as meringue
  hold meringue at 72-75 °C for 1 min
  whip meringue on high to stiff peak
${meringue}  add butter in 8 additions
  whip on medium for 4 min until smooth
`;
  test.each([
    ['butter, 20 °C', '  cool to 21-23 °C\n', []],
    ['butter, 16-25 °C', '  cool to 20 °C\n', []],
    ['butter, "soft"', '', []],
    ['butter, 4 °C', '  cool to 21-23 °C\n', ['warning buttercream-temperature']],
    ['butter, 28 °C', '  cool to 21-23 °C\n', ['warning buttercream-temperature']],
    ['butter, 20 °C', '  cool to 30-32 °C\n', ['warning buttercream-temperature']],
    ['butter, 17 °C', '  cool to 24-25 °C\n', ['warning buttercream-temperature']],
  ])('%s, meringue %j', (butter, meringue, expected) => {
    expect(codesOf(buttercream(butter, meringue))).toEqual(expected);
  });

  test('butter into hot pastry cream, or a cake batter, is another matter', () => {
    expect(
      codesOf(`formula Pound cake
  250 g  butter, 4 °C
  250 g  caster sugar
  250 g  egg, 4 °C
  250 g  plain flour
  cream butter, caster sugar until fluffy as batter
  add egg in 4 additions
  fold plain flour into batter
  pour into tin
  bake at 165 °C for 55 min until golden
`),
    ).toEqual([]);
  });
});
