/** Gelatin, boiled sugar, chocolate and ganache: how the same fault comes about, and what looks like one and is none. */
import { describe, expect, test } from 'vitest';
import { checkText } from './corpora.ts';

const codes: ReadonlySet<string> = new Set([
  'gelatin-dry',
  'gelatin-underhydrated',
  'gelatin-not-melted',
  'gelatin-shock',
  'gelatin-boiled',
  'gelatin-share',
  'syrup-stage',
  'chocolate-too-hot',
  'chocolate-seizes',
  'out-of-temper',
  'ganache-splits',
]);

/** `code line` of what these rules find, and of every error: a formula that does not run proves nothing. */
const found = (text: string): readonly string[] =>
  checkText(text.replace(/^\n/, ''))
    .filter(({ code, severity }) => codes.has(code) || severity === 'error')
    .map(({ code, line }) => `${code} ${line}`);

const gelatin = (amount: string, water: string): string =>
  `  ${amount}  gelatin, sheet, 200 bloom\n  ${water}  cold water, 10 °C\n`;

describe('gelatin that swells in its own way', () => {
  test.each([
    [
      'powder on cold milk, left to stand, then warmed with it',
      '\nformula A\n  400 g  whole milk, 4 °C\n   50 g  caster sugar\n    5 g  gelatin, powder, 200 bloom\n  stir gelatin into whole milk\n  rest for 5 min\n  add caster sugar\n  heat to 60 °C\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'powder kept apart by sugar, into hot juice',
      '\nformula A\n  400 g  orange juice, pasteurised\n   60 g  caster sugar\n    6 g  gelatin, powder, 200 bloom\n  mix caster sugar, gelatin as dry mix\n  heat orange juice to 80 °C\n  whisk dry mix into orange juice\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'instant gelatin',
      '\nformula A\n  400 g  mango purée, pasteurised, 20 °C\n   60 g  caster sugar\n   10 g  instant gelatin\n  mix caster sugar, instant gelatin as dry mix\n  whisk dry mix into mango purée\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'ready gelatin mass, into something hot',
      '\nformula A\n  400 g  mango purée, pasteurised, 20 °C\n   60 g  caster sugar\n   40 g  gelatin mass, 200 bloom\n  heat mango purée, caster sugar to 60 °C\n  add gelatin mass\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'sheets in the cold purée itself, warmed with it',
      '\nformula A\n  400 g  raspberry purée, pasteurised, 4 °C\n   60 g  caster sugar\n    6 g  gelatin, sheet, 200 bloom\n  bloom gelatin in raspberry purée for 10 min as base\n  add caster sugar\n  heat to 55 °C\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'bloomed gelatin stirred into cold purée that is heated afterwards',
      `\nformula A\n  400 g  raspberry purée, pasteurised, 20 °C\n${gelatin('6 g', '36 g')}  bloom gelatin in cold water for 5 min\n  mix raspberry purée, gelatin as base\n  heat base to 60 °C\n  pour into glass\n  chill to 4 °C for 4 h\n`,
    ],
    [
      'hot syrup poured on the bloomed gelatin',
      '\nformula A\n  300 g  caster sugar\n  100 g  invert sugar\n  100 g  water\n   24 g  gelatin, powder, 200 bloom\n  120 g  cold water\n  bloom gelatin in cold water for 10 min\n  boil water, caster sugar, invert sugar to 115 °C as syrup\n  pour syrup over gelatin\n  whip on high until thick\n  pour into frame\n  rest at room for 12 h\n',
    ],
    [
      'melted gelatin drizzled into cream at the whisk',
      `\nformula A\n  400 g  cream, 35 % fat, 4 °C\n${gelatin('2 g', '12 g')}  bloom gelatin in cold water for 5 min\n  melt gelatin to 35-40 °C\n  whip cream to soft peak\n  pour gelatin into cream while whipping\n  whip to medium peak\n  pipe into glass\n`,
    ],
    [
      'melted gelatin into cheese at room temperature',
      `\nformula A\n  400 g  cream cheese, 20 °C\n  200 g  yoghurt, 20 °C\n${gelatin('8 g', '48 g')}  bloom gelatin in cold water for 5 min\n  mix cream cheese, yoghurt until smooth as base\n  melt gelatin to 50 °C\n  whisk gelatin into base\n  pour into mould\n  chill to 4 °C for 6 h\n`,
    ],
    [
      'a small part of the cold purée melts it, then goes back',
      `\nformula A\n  400 g  mango purée, pasteurised, 4 °C\n${gelatin('6 g', '36 g')}  bloom gelatin in cold water for 5 min\n  heat 60 g of mango purée to 60 °C as warm purée\n  add gelatin\n  stir warm purée into mango purée\n  pour into glass\n  chill to 4 °C for 4 h\n`,
    ],
    [
      'silver sheets counted in pieces',
      '\nformula A\n  400 g  cream, 35 % fat, 4 °C\n    2 pc  silver gelatin\n   30 g  cold water\n  soak silver gelatin in cold water for 10 min\n  heat cream to 60 °C\n  add silver gelatin\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
  ])('%s', (_, text) => expect(found(text)).toEqual([]));

  test.each([
    [
      'hot milk poured on dry sheets',
      'gelatin-dry 5',
      '\nformula A\n  400 g  whole milk\n    5 g  gelatin, sheet, 200 bloom\n  heat whole milk to 80 °C\n  pour whole milk over gelatin\n  pour into glass\n',
    ],
    [
      'powder dissolved in hot water',
      'gelatin-dry 6',
      '\nformula A\n  100 g  water\n    5 g  gelatin, powder, 200 bloom\n  400 g  orange juice, pasteurised, 20 °C\n  heat water to 90 °C\n  dissolve gelatin in water\n  stir water into orange juice\n  pour into glass\n',
    ],
    [
      'sheets into cold purée that is never warmed',
      'gelatin-dry 4',
      '\nformula A\n  400 g  mango purée, pasteurised, 20 °C\n    5 g  gelatin, sheet, 200 bloom\n  whisk gelatin into mango purée\n  pour into glass\n  chill to 4 °C for 4 h\n',
    ],
    [
      'bloomed sheets into whipped cream',
      'gelatin-not-melted 7',
      `\nformula A\n  400 g  cream, 35 % fat, 4 °C\n${gelatin('4 g', '24 g')}  bloom gelatin in cold water for 5 min\n  whip cream to soft peak\n  whisk gelatin into cream\n  pipe into glass\n`,
    ],
    [
      'gelatin mass into cold purée',
      'gelatin-not-melted 4',
      '\nformula A\n  400 g  mango purée, pasteurised, 20 °C\n   40 g  gelatin mass, 200 bloom\n  whisk gelatin mass into mango purée\n  pour into glass\n',
    ],
    [
      'melted gelatin mass mixed with cold yoghurt',
      'gelatin-shock 5',
      '\nformula A\n  400 g  yoghurt, 4 °C\n   40 g  gelatin mass, 200 bloom\n  melt gelatin mass to 45 °C\n  mix yoghurt, gelatin mass until smooth\n  pour into glass\n',
    ],
    [
      'heated until boiling',
      'gelatin-boiled 7',
      `\nformula A\n  400 g  orange juice\n${gelatin('6 g', '36 g')}  bloom gelatin in cold water for 5 min\n  mix orange juice, gelatin as base\n  heat base until boiling\n  pour into glass\n`,
    ],
    [
      'written to a reading at its boil',
      'gelatin-boiled 8',
      `\nformula A\n  400 g  orange juice\n${gelatin('6 g', '36 g')}  bloom gelatin in cold water for 5 min\n  heat orange juice to 60 °C\n  add gelatin\n  heat to 215 °F\n  pour into glass\n`,
    ],
  ])('but not: %s', (_, expected, text) => expect(found(text)).toEqual([expected]));
});

describe('gelatin’s share is that of the mass it sets', () => {
  const mousse = (serving: string, grams: number, more = ''): string => `
formula A
  choice serving: ${serving}
component mousse
  300 g  mango purée, pasteurised
  ${gelatin(`${grams} g`, `${grams * 6} g`).trimStart()}  300 g  cream, 35 % fat, 4 °C
  bloom gelatin in cold water for 5 min
  heat mango purée to 60 °C
  add gelatin
  cool to 25-28 °C
  whip cream to soft peak
  fold cream into mango purée in 3 additions: whisk, spatula
assembly
  600 g  sponge cake
  layer sponge cake, mousse into frame
  ${more}chill to 4 °C for 8 h
`;

  test('not of the sponge under it', () => {
    expect(found(mousse('cut', 10))).toEqual([]);
    expect(found(mousse('cut', 3))).toEqual(['gelatin-share 5']);
    expect(found(mousse('glass', 3))).toEqual([]);
    expect(found(mousse('glass', 12))).toEqual(['gelatin-share 5']);
  });

  test('served frozen, it may be as little as one likes', () => {
    expect(found(mousse('cut', 3).replace('chill to 4 °C for 8 h', 'freeze at -18 °C for 8 h'))).toEqual([]);
  });

  test('grades count by the law the formula chooses', () => {
    const jelly = (law: string): string =>
      `\nformula A\n  gelatin ${law}\n  choice serving: mould\n  500 g  orange juice, pasteurised\n    9 g  gelatin, powder, 100 bloom\n   54 g  cold water\n  bloom gelatin in cold water for 10 min\n  heat orange juice to 60 °C\n  add gelatin\n  pour into mould\n  chill to 4 °C for 6 h\n`;
    // 9 g of 100 bloom in 563 g: 1.13 % by concentration (÷ √2), 0.80 % by strength (÷ 2).
    expect(found(jelly('by concentration'))).toEqual([]);
    expect(found(jelly('by strength'))).toEqual([]);
    expect(found(jelly('by strength').replace('9 g  gelatin', '7 g  gelatin'))).toEqual(['gelatin-share 5']);
    expect(found(jelly('by concentration').replace('9 g  gelatin', '7 g  gelatin'))).toEqual([]);
  });

  test('the dextrins of glucose syrup count as sugar: a glaze may hold 2 %', () => {
    const glaze =
      '\nformula A\n   20 g  gelatin, powder, 200 bloom\n  100 g  cold water\n  150 g  water\n  200 g  caster sugar\n  300 g  glucose syrup\n  150 g  cream, 35 % fat\n  bloom gelatin in cold water for 10 min\n  boil water, caster sugar, glucose syrup to 103 °C as syrup\n  add cream\n  cool to 65 °C\n  add gelatin\n  cool to 30-32 °C\n';
    expect(found(glaze)).toEqual([]);
    expect(found(glaze.replace('20 g  gelatin', ' 8 g  gelatin'))).toEqual(['gelatin-share 2']);
  });
});

describe('stages of sugar', () => {
  const boiled = (reading: string, sign: string): string =>
    `\nformula A\n  300 g  caster sugar\n  100 g  water\n  boil water, caster sugar to ${reading} until ${sign}\n`;

  test.each([
    ['114-116 °C', 'soft ball'],
    ['240 °F', 'soft ball'],
    ['118 °C', '"petit boulé"'],
    ['105 °C', 'thread'],
    ['150-160 °C', '"the hard crack stage"'],
    ['175 °C', '"amber caramel"'],
    ['123 °C', '"a drop in cold water makes a hard ball"'],
  ])('%s and %s belong together', (reading, sign) => expect(found(boiled(reading, sign))).toEqual([]));

  test.each([
    ['110 °C', 'hard ball'],
    ['121 °C', '"petit cassé"'],
    ['300 °F', 'soft ball'],
  ])('%s and %s do not', (reading, sign) => expect(found(boiled(reading, sign))).toEqual(['syrup-stage 4']));

  test('in the mountains a stage comes sooner', () => {
    const high = (reading: string): string => `equipment\n  altitude 1500 m\n${boiled(reading, 'soft ball').trimStart()}`;
    expect(found(high('110 °C'))).toEqual([]);
    expect(found(high('122 °C'))).toEqual(['syrup-stage 6']);
  });

  const foam = (reading: string, egg: string, after: string): string =>
    `\nformula A\n  100 g  ${egg}, pasteurised\n  200 g  caster sugar\n   60 g  water\n  150 g  almonds\n  boil caster sugar, water to ${reading} as syrup\n  whip ${egg} until frothy\n  pour syrup over ${egg} while whipping\n${after}`;

  test('a meringue’s or bombe’s syrup is boiled to 110-125 °C; a nougat’s on', () => {
    expect(found(foam('118-121 °C', 'egg white', '  whip to stiff peak\n'))).toEqual([]);
    expect(found(foam('135 °C', 'egg white', '  whip to stiff peak\n'))).toEqual(['syrup-stage 6']);
    expect(found(foam('145 °C', 'egg white', '  stir almonds into egg white\n'))).toEqual([]);
    expect(found(foam('105 °C', 'egg yolk', '  whip until ribbon\n'))).toEqual(['syrup-stage 6']);
  });

  test('a thin syrup on yolks that are cooked afterwards is none of its business', () => {
    expect(found(foam('105 °C', 'egg yolk', '  whip in bain-marie to 82-84 °C until ribbon\n'))).toEqual([]);
  });
});

describe('chocolate by itself', () => {
  test.each([
    [
      'white chocolate browned in the oven',
      '\nformula A\n  300 g  white chocolate, 34 % cocoa\n  toast white chocolate at 120 °C for 60 min until golden\n',
    ],
    [
      'ice cream dipped in warm chocolate',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa\n   60 g  cocoa butter\n  400 g  sorbet, is raspberry purée, frozen\n  melt dark chocolate, cocoa butter to 45 °C as coating\n  cool coating to 35-38 °C\n  dip sorbet in coating\n',
    ],
    [
      'a glaze of chocolate and oil',
      '\nformula A\n  300 g  milk chocolate, 40 % cocoa\n   45 g  sunflower oil\n  400 g  sponge cake\n  melt milk chocolate to 45 °C\n  add sunflower oil\n  cool to 34-36 °C\n  coat sponge cake with milk chocolate\n',
    ],
    [
      'tempered by seeding',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa, as couverture\n  100 g  dark chocolate, 64 % cocoa, as seed\n  200 g  candied orange peel\n  melt couverture to 45-50 °C\n  stir seed into couverture until smooth to 31-32 °C\n  dip candied orange peel in couverture\n',
    ],
    [
      'shavings to roll in',
      '\nformula A\n  100 g  dark chocolate, 64 % cocoa, "shaved"\n  200 g  sponge cake\n  coat sponge cake with dark chocolate\n',
    ],
    [
      'nuts and flakes hold their water',
      '\nformula A\n  300 g  milk chocolate, 40 % cocoa\n  150 g  flaked almonds\n  melt milk chocolate to 45 °C\n  stir flaked almonds into milk chocolate\n',
    ],
    [
      'a modelling paste of chocolate and glucose',
      '\nformula A\n  300 g  dark chocolate, 55 % cocoa\n  140 g  glucose syrup\n  melt dark chocolate to 40-45 °C\n  stir glucose syrup into dark chocolate\n',
    ],
    [
      'coffee with butter',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n   80 g  butter\n   20 g  brewed coffee\n  melt dark chocolate, butter to 45-50 °C as base\n  stir brewed coffee into base\n',
    ],
    [
      'yolks first, whites after',
      '\nformula A\n  200 g  dark chocolate, 70 % cocoa\n   20 g  egg yolk, pasteurised\n  160 g  egg white, pasteurised\n  melt dark chocolate to 50 °C\n  whisk egg yolk into dark chocolate\n  whip egg white to medium peak\n  fold egg white into dark chocolate in 3 additions: whisk, spatula\n',
    ],
  ])('in peace: %s', (_, text) => expect(found(text)).toEqual([]));

  test.each([
    [
      'held too hot',
      'chocolate-too-hot 4',
      '\nformula A\n  300 g  milk chocolate, 40 % cocoa\n  melt milk chocolate in bain-marie to 48 °C\n  hold milk chocolate at 58 °C for 30 min\n',
    ],
    [
      'brandy',
      'chocolate-seizes 5',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa\n   15 g  brandy\n  melt dark chocolate to 45 °C\n  stir brandy into dark chocolate\n',
    ],
    [
      'moulded straight after melting',
      'out-of-temper 4',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa\n  melt dark chocolate\n  pour into mould\n',
    ],
    [
      'filled into moulds too warm',
      'out-of-temper 5',
      '\nformula A\n  300 g  white chocolate, 34 % cocoa\n  melt white chocolate to 45 °C\n  cool white chocolate to 34-35 °C\n  fill mould with white chocolate\n',
    ],
    [
      'coated with too cold',
      'out-of-temper 6',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa\n  200 g  almonds\n  melt dark chocolate to 45 °C\n  cool to 26 °C\n  coat almonds with dark chocolate\n',
    ],
  ])('not: %s', (_, expected, text) => expect(found(text)).toEqual([expected]));
});

describe('ganache', () => {
  test.each([
    [
      'boiling cream on chopped chocolate',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n  200 g  cream, 35 % fat\n  boil cream\n  pour cream over dark chocolate\n  blend until smooth\n  cool to 28 °C\n  pipe into mould\n',
    ],
    [
      'built by thirds',
      '\nformula A\n  300 g  dark chocolate, 64 % cocoa\n  300 g  cream, 35 % fat\n  melt dark chocolate to 45 °C\n  heat cream to 60 °C\n  stir 1/3 of cream into dark chocolate\n  stir 1/3 of cream into dark chocolate\n  stir rest of cream into dark chocolate until glossy\n  pipe into mould\n',
    ],
    [
      'a firm one, two to one',
      '\nformula A\n  250 g  dark chocolate, 64 % cocoa\n  125 g  cream, 35 % fat\n  heat cream to 80 °C\n  pour cream over dark chocolate\n  stir until smooth\n  pipe into glass\n',
    ],
    [
      'a white one for bonbons, nearly three to one',
      '\nformula A\n  300 g  white chocolate, 34 % cocoa\n  110 g  cream, 35 % fat\n   20 g  glucose syrup\n  heat cream, glucose syrup to 75 °C as dairy\n  melt white chocolate to 40 °C\n  pour dairy over white chocolate\n  blend until smooth\n  cool to 28 °C\n  pipe into mould\n',
    ],
    [
      'chocolate added to boiling pastry cream',
      '\nformula A\n  500 g  whole milk, 4 °C\n  100 g  egg yolk\n  100 g  caster sugar\n   45 g  corn starch\n  150 g  dark chocolate, 66 % cocoa\n  heat whole milk to 85 °C\n  whisk egg yolk, caster sugar, corn starch until smooth as liaison\n  temper whole milk into liaison\n  boil for 2 min until thick\n  add dark chocolate\n  blend until glossy\n  pour into mould\n  chill to 4 °C for 4 h\n',
    ],
    [
      'a hot sauce for a jar',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n  200 g  cream, 35 % fat\n  boil cream\n  add dark chocolate\n  blend until smooth\n  pour into jar\n',
    ],
    [
      'a brownie in a frame',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n  200 g  butter\n  200 g  egg\n  250 g  caster sugar\n  120 g  plain flour\n  melt dark chocolate, butter to 45-50 °C as base\n  whisk egg, caster sugar until frothy as eggs\n  stir eggs into base\n  fold plain flour into base\n  pour into frame\n  bake at 170 °C for 25 min until golden\n',
    ],
  ])('in peace: %s', (_, text) => expect(found(text)).toEqual([]));

  test.each([
    [
      'milk chocolate, five to one',
      'ganache-splits 7',
      '\nformula A\n  500 g  milk chocolate, 40 % cocoa\n  100 g  cream, 35 % fat\n  melt milk chocolate to 45 °C\n  heat cream to 60 °C\n  pour cream over milk chocolate\n  stir until smooth\n  pour into frame\n',
    ],
    [
      'boiling cream, twice the melted chocolate',
      'ganache-splits 7',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n  400 g  cream, 35 % fat\n  boil cream\n  melt dark chocolate to 50 °C\n  pour cream over dark chocolate\n  blend until smooth\n  pour into mould\n',
    ],
    [
      'a written reading too warm',
      'ganache-splits 7',
      '\nformula A\n  200 g  dark chocolate, 64 % cocoa\n  200 g  cream, 35 % fat\n  boil cream\n  pour cream over dark chocolate\n  check 149 °F\n  blend until smooth\n  pipe into mould\n',
    ],
  ])('not: %s', (_, expected, text) => expect(found(text)).toEqual([expected]));
});
