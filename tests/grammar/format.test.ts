/** The canonical layout. */

import { format, formatLines, parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { example } from './helpers.ts';

test("the notation's own formula is its canonical layout, whatever the spaces before", () => {
  expect(format(parse(example))).toBe(example);
  const loose = example
    .split('\n')
    .map((line) => line.trim().split(/ +/).join(' '))
    .join('\n');
  expect(format(parse(loose))).toBe(example);
});

describe('a line at a time', () => {
  const cases: [string, string][] = [
    ['1 Litre milk', '1 l  milk'],
    ['240G  milk ,4degC,35% Fat', '240 g  milk, 4 °C, 35 % Fat'],
    ['1 ½ cups milk', '1½ cup  milk'],
    ['.5 kg milk', '0.5 kg  milk'],
    ['30..35g milk', '30-35 g  milk'],
    ['30 g – 35 g milk', '30-35 g  milk'],
    ['900 g - 1 kg milk', '900 g-1 kg  milk'],
    ['9 g(mould 11g ,cut 13) gelatin,RAW', '9 g (mould 11 g, cut 13)  gelatin, raw'],
    ['1 PC each egg', '1 pc each  egg'],
    ['SOME butter', 'some  butter'],
    ['HEAT milk,cream TO 80–85 ºC As dairy', 'heat milk, cream to 80-85 °C as dairy'],
    ['freeze to −18 C', 'freeze to -18 °C'],
    ['freeze to -20 - -18 C', 'freeze to -20..-18 °C'],
    ['whip until Soft peaks', 'whip to soft peak'],
    ['whisk on High speed with "big paddle"', 'whisk on high with "big paddle"'],
    ['bake at 160C for 1h30', 'bake at 160 °C for 1 h 30 min'],
    ['cool to Below 4C', 'cool to below 4 °C'],
    ['fold a into b in 3-4 additions:whisk,spatula', 'fold a into b in 3-4 additions: whisk, spatula'],
    ['makes 2 rings of 16cm×3cm', 'makes 2 rings of 16 x 3 cm'],
    ['choice a:b,c', 'choice a: b, c'],
    ['add "cream of tartar"and egg', 'add "cream of tartar" and egg'],
    ['timeline "a.nappe"  for 24 glasses  ready 18:30', 'timeline "a.nappe" for 24 glasses ready 18:30'],
    ['take a As b from "x.nappe"', 'take a as b from "x.nappe"'],
    ['formula   A  B', 'formula A  B'],
    ['by   A  B //c', 'by A  B  //c'],
    ['|text', '| text'],
    ['|', '|'],
    ['  // a comment', '// a comment'],
  ];
  test.each(cases)('%s', (text, canonical) => {
    expect(format(parse(text))).toBe(`${canonical}\n`);
    expect(format(parse(canonical))).toBe(`${canonical}\n`);
  });
});

test('notes, comments and blank lines stand with what they belong to', () => {
  const text = `

// top
formula X
| about X
// allow raw-egg: on purpose
component a
// first
240 g milk
| cold


1.5 kg flour // plain
// last

// of b
component b
add milk
| gently`;
  expect(format(parse(text))).toBe(
    `// top
formula X
  | about X
// allow raw-egg: on purpose
component a
  // first
   240 g  milk
    | cold

  1.5 kg  flour  // plain
  // last

// of b
component b
  add milk
    | gently
`.replace('   240 g  milk', '  240 g  milk'),
  );
});

test('line ends and the byte-order mark are kept; an empty file stays empty', () => {
  expect(format(parse('\uFEFFformula X\r\n\r\n\r\nby Y'))).toBe('\uFEFFformula X\r\n\r\n  by Y\r\n');
  expect(format(parse(''))).toBe('');
  expect(format(parse(' \n\t\n'))).toBe('');
});

test('one very long override or body does not push the others', () => {
  const text = `component a
  1 g (${Array.from({ length: 6 }, (_, index) => `value${index} 1 g`).join(', ')})  milk
  2 g (tea 1 g)  sugar when tea
`;
  expect(format(parse(text)).split('\n')[2]).toBe('  2 g (tea 1 g)  sugar                                             when tea');
});

test('some lines of a file are laid out in the columns of the whole', () => {
  const loose = parse(
    example
      .split('\n')
      .map((line) => line.trim())
      .join('\n'),
  );
  expect(formatLines(loose, 13, 15)).toBe(example.split('\n').slice(13, 15).join('\n'));
});
