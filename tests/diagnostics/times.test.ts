/** Setting, cooling, keeping and yield: the limits of `checker.md` from both sides. Sources stand in the rules. */
import { describe, expect, test } from 'vitest';
import { checkText, isGrave } from './corpora.ts';

const found = (text: string) => checkText(text).filter(isGrave);
const codesOf = (text: string): readonly string[] => found(text).map(({ code }) => code);

describe('set-too-short', () => {
  const jelly = (serving: string, chill: string, end: string): string => `formula Jelly
  choice serving: ${serving}
  500 g  orange juice, pasteurised, 20 °C
   50 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat orange juice, caster sugar to 60 °C
  add gelatin
  pour into ${serving === 'glass' ? 'glass' : 'mould'}
${chill}  ${end}
`;
  test.each([
    ['glass', '  chill to 4 °C for 2 h\n', 'serve', []],
    ['glass', '  chill to 4 °C for 1 h\n', 'serve', ['set-too-short']],
    ['mould', '  chill to 4 °C for 4 h\n', 'unmould', []],
    ['mould', '  chill to 4 °C for 3-5 h\n', 'unmould', ['set-too-short']],
    ['mould', '  chill to 4 °C for 2 h\n  chill to 4 °C for 2 h\n', 'unmould', []],
    ['mould', '  chill to 4 °C for overnight\n', 'unmould', []],
    ['mould', '  freeze to -18 °C for 3 h\n', 'unmould', []],
    ['cut', '  chill to 4 °C for 5 h\n', 'cut into 8 bars of 9 x 3 cm', ['set-too-short']],
    ['cut', '  chill to 4 °C for 6 h\n', 'cut into 8 bars of 9 x 3 cm', []],
    ['mould', '  chill to 4 °C\n', 'unmould', []],
  ])('%s: %j, %s', (serving, chill, end, expected) => {
    expect(codesOf(jelly(serving, chill, end)).filter((code) => code !== 'gelatin-share')).toEqual(expected);
  });

  test('the last layer of a glass needs its own time', () => {
    const layers = (last: string): string => `formula Two layers
  choice serving: glass
component cream
  400 g  cream, 35 % fat, 4 °C
    3 g  gelatin, sheet, 200 bloom
   18 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat cream to 60 °C
  add gelatin
  cool to 25 °C
component jelly
  300 g  orange juice, pasteurised
    3 g  gelatin, sheet, 200 bloom
   18 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat orange juice to 60 °C
  add gelatin
  cool to 25 °C
assembly
  pour cream into glass
  chill to 4 °C for 3 h
  pour jelly into glass
  chill to 4 °C for ${last}
  serve
`;
    expect(codesOf(layers('1 h'))).toEqual(['set-too-short']);
    expect(codesOf(layers('2 h'))).toEqual([]);
  });
});

/** FDA Food Code 2022, 3-501.14(A): 57 to 21 °C within 2 h, to 5 °C within 6 h in all. */
describe('cooling-too-slow', () => {
  const custard = (steps: string, first = ''): string => `${first}formula Custard
  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
${steps}`;
  test.each([
    ['  cool to 20 °C for 1 h\n  cool in fridge to 5 °C for 3 h\n', []],
    ['  cool to 20 °C for 1 h\n  cool in fridge to 5 °C for 8 h\n', ['cooling-too-slow']],
    ['  cool at room to 22-24 °C for 4 h\n', ['cooling-too-slow']],
    ['  cool at room to 25 °C\n  rest at 22 °C for 5 h\n', ['cooling-too-slow']],
    ['  cool at room to 30-32 °C\n  chill to 4 °C for 12 h\n', []],
    ['  cool at room to 22 °C\n', []],
    ['  chill to 4 °C for 12 h\n', []],
  ])('%j', (steps, expected) => {
    expect(codesOf(custard(steps))).toEqual(expected);
  });

  test('what was boiled again after a long cooling is judged from there', () => {
    expect(codesOf(custard('  cool in ice bath to 4 °C\n  heat to 80-82 °C\n  cool in ice bath to 4 °C for 40 min\n'))).toEqual(
      [],
    );
  });

  test('a deep pot cools by conduction or slowly: even at its quickest too late', () => {
    const pot = 'equipment\n  stock pot 20 l, 26 cm wide\n\n';
    const deep = custard('  cool at room to 20 °C using stock pot\n', pot).replace('500 g', '12 kg').replace('120 g', '2.9 kg');
    expect(codesOf(deep.replace('100 g', '2.4 kg'))).toEqual(['cooling-too-slow']);
  });

  test('syrup, jam and baked sponge are not perishable', () => {
    expect(
      codesOf(`formula Syrup
  500 g  water
  500 g  caster sugar
  boil water, caster sugar
  cool to 22 °C for 10 h
`),
    ).toEqual([]);
  });
});

describe('keeps-too-long', () => {
  const custard = (keeps: string): string => `formula Custard sauce
  keeps ${keeps}
  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  cool in ice bath to 4 °C
`;
  test.each([
    ['6 d at 0-5 °C', []],
    ['7 d at 0-4 °C', ['keeps-too-long']],
    ['2 d', []],
    ['1 d at 8 °C', ['keeps-too-long']],
    ['60 d at -18 °C', []],
    ['2 d at 36-41 °F', []],
  ])('%s', (keeps, expected) => {
    expect(codesOf(custard(keeps))).toEqual(expected);
  });

  test('biscuits and curds keep as they always have', () => {
    expect(
      codesOf(`formula Biscuits
  keeps 21 d at 18-22 °C
  200 g  butter, 18 °C
  100 g  icing sugar
  280 g  plain flour
  cream butter, icing sugar until smooth as dough
  mix plain flour into dough
  bake at 160 °C for 18 min until golden
`),
    ).toEqual([]);
  });
});

describe('yield-mismatch', () => {
  const cream = (makes: string): string => `formula Sweet cream
  makes ${makes}
  500 g  cream, 35 % fat, 4 °C
   50 g  icing sugar
  whip cream, icing sugar to soft-medium peak
`;
  test.each([
    ['550 g', []],
    ['600 g', []],
    ['620 g', ['yield-mismatch']],
    ['490 g', ['yield-mismatch']],
    ['1 l', []],
    ['3 l', ['yield-mismatch']],
    ['5 portions of 110 g', []],
    ['40 choux', []],
    ['20 lb', ['yield-mismatch']],
  ])('%s', (makes, expected) => {
    expect(codesOf(cream(makes))).toEqual(expected);
  });
});

describe('impossible-temperature and checkpoint-contradicted', () => {
  const heated = (lines: string, steps: string): string => `formula Hot\n${lines}\n${steps}\n`;
  test.each([
    ['  500 g  whole milk, 4 °C', '  heat to 101 °C', []],
    ['  500 g  whole milk, 4 °C', '  heat to 120 °C', ['impossible-temperature']],
    ['  200 g  caster sugar\n  60 g  water', '  boil caster sugar, water to 160 °C', []],
    ['  200 g  caster sugar', '  caramelise to 185 °C', []],
    ['  200 g  caster sugar', '  caramelise to 210 °C', ['impossible-temperature']],
    ['  200 g  butter, 18 °C', '  heat to 150 °C until browned', []],
    ['  500 g  whole milk, 4 °C', '  heat to 80 °C\n  heat to 60 °C', ['checkpoint-contradicted']],
    ['  500 g  whole milk, 4 °C', '  heat to 80 °C\n  heat to 77 °C', []],
    ['  500 g  whole milk, 4 °C', '  heat to 80 °C\n  check 50 °C', ['checkpoint-contradicted']],
    ['  500 g  whole milk, 4 °C', '  heat to 40 °C\n  cool to 60 °C', ['checkpoint-contradicted']],
  ])('%s %s', (lines, steps, expected) => {
    expect(codesOf(heated(lines, steps))).toEqual(expected);
  });
});
