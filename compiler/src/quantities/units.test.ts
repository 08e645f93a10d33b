/** Every unit against GNU units (version 2.22, the Debian package `units`), and quantities through density and piece mass. */
import { execFileSync } from 'node:child_process';
import { parseLine, type UnitWord, units } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { celsius, gramsOf, gramsPer, gramsPerUnit, millilitresPer, millimetresPer, secondsPer } from './units.ts';

const gnu = (from: string, to: string): number =>
  Number(execFileSync('units', ['--terse', '--digits', '15', from, to], { encoding: 'utf8' }));

/** Our word, what GNU units calls it, and what it is measured in. */
const masses = { mg: 'mg', g: 'g', kg: 'kg', oz: 'oz', lb: 'lb' } as const;
const volumes = { ml: 'ml', cl: 'cl', dl: 'dl', l: 'l', tsp: 'ustsp', tbsp: 'ustbsp', cup: 'uscup', floz: 'usfloz' } as const;
const lengths = { mm: 'mm', cm: 'cm', m: 'm' } as const;
const times = { s: 's', min: 'min', h: 'hour', d: 'day' } as const;

describe('GNU units agrees on', () => {
  const tables = [
    ['grams', 'g', masses, gramsPer],
    ['millilitres', 'ml', volumes, millilitresPer],
    ['millimetres', 'mm', lengths, millimetresPer],
    ['seconds', 's', times, secondsPer],
  ] as const;
  for (const [what, to, names, factors] of tables)
    for (const [word, from] of Object.entries(names))
      test(`${what} in one ${word}`, () => {
        const factor = (factors as Readonly<Record<string, number>>)[word] ?? Number.NaN;
        expect(Math.abs(factor / gnu(from, to) - 1)).toBeLessThan(1e-12);
      });

  for (const fahrenheit of [-40, 0, 32, 95, 180, 212, 250])
    test(`${fahrenheit} °F`, () => {
      expect(celsius(fahrenheit, 'F')).toBeCloseTo(gnu(`tempF(${fahrenheit})`, 'tempC'), 9);
    });

  test('no unit of the notation is left out', () => {
    const checked = new Set<string>([masses, volumes, lengths, times].flatMap((table) => Object.keys(table)));
    const bare: readonly UnitWord[] = ['pc', '%', 'brix', 'bloom', '°C', '°F'];
    expect(units.map(({ word }) => word).filter((word) => !checked.has(word) && !bare.includes(word))).toEqual([]);
  });
});

describe('a quantity in grams', () => {
  const written = (text: string) => {
    const line = parseLine(text, 'formula');
    if (line.kind !== 'ingredient') throw new Error(text);
    return line.quantity.base;
  };
  const milk = { density: 1.03, piece: null };

  test('a mass needs nothing known', () => {
    expect(gramsOf(written('1 1/2 lb flour'), { density: null, piece: null })?.valueOf()).toEqual({
      low: 680.388555,
      high: 680.388555,
    });
  });

  test('a volume takes the density', () => {
    // GNU units: 1 uscup * 1.03 g/ml = 243.68588 g
    expect(gramsPerUnit('cup', milk)).toBeCloseTo(gnu('uscup * 1.03 g/ml', 'g'), 9);
    expect(gramsOf(written('2-3 dl milk'), milk)).toEqual({ low: 206, high: 309 });
  });

  test('a volume without a density and pieces without a piece mass are refused, never guessed', () => {
    expect(gramsOf(written('1 cup crumble'), { density: null, piece: 9 })).toBe('needs density');
    expect(gramsOf(written('3 biscuits'), { density: 0.5, piece: null })).toBe('needs piece mass');
    expect(gramsOf(written('3 eggs'), { density: null, piece: 50 })).toEqual({ low: 150, high: 150 });
  });

  test('percentages and `some` have no grams of their own', () => {
    expect(gramsOf(written('12 % sugar'), milk)).toBeNull();
    expect(gramsOf(written('some flour'), milk)).toBeNull();
  });
});
