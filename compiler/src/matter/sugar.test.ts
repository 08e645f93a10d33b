/** Checks of sugar against GNU units (NIST Circular 440, Starzak & Peacock), handbook tables and the trade's stages. */
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  baume,
  boilingPoint,
  boilingPointOfSyrup,
  brixOf,
  brixOfBaume,
  concentrationAt,
  solubility,
  stageNames,
  stageRanges,
  syrupDensity,
  waterLeft,
} from './sugar.ts';

/** GNU units must be installed (Debian: units); a missing program fails the test. */
const units = (have: string, want: string): number => Number(execFileSync('units', ['-t', have, want], { encoding: 'utf8' }));

const airBuoyancy = 1 - 0.99717 / 0.9982;

describe('boiling', () => {
  test.each([
    // Reference reckoning of Starzak & Peacock 1997 with another vapour-pressure equation.
    [50, 101.7],
    [60, 102.8],
    [70, 104.9],
    [75, 106.7],
    [80, 109.4],
    [85, 114.0],
    [90, 122.5],
    [92, 128.0],
    [95, 139.6],
    [98, 154.5],
  ])('%d %% sucrose boils at %d °C', (percent, celsius) => {
    expect(Math.abs(boilingPoint(percent) - celsius)).toBeLessThan(0.8);
  });

  test('GNU units, sugar_conc_bpe (Saska 2002, after Starzak & Peacock): within 0.7 K from 10 to 97 %', () => {
    for (const percent of [10, 30, 50, 60, 70, 75, 80, 85, 90, 95, 97]) {
      expect(Math.abs(boilingPoint(percent) - 100 - units(`sugar_conc_bpe(${percent})`, 'K'))).toBeLessThan(0.7);
    }
  });

  test('the fragmentary kitchen table printed in GNU units agrees within 3 K to 95 %', () => {
    const table: [celsius: number, percent: number][] = [
      [101, 40],
      [102, 50],
      [103, 60],
      [106, 70],
      [112, 80],
      [123, 90],
      [140, 95],
    ];
    for (const [celsius, percent] of table) expect(Math.abs(boilingPoint(percent) - celsius)).toBeLessThan(3);
  });

  test('confectionery table: soft ball is about 85 %, firm ball 87 %, hard ball 90-92 %, soft crack 95 %', () => {
    for (const [celsius, percent] of [
      [114, 85],
      [118, 87],
      [125, 91],
      [139, 95],
    ] as const) {
      expect(Math.abs(concentrationAt(celsius) - percent)).toBeLessThan(1.5);
    }
  });

  test('the two directions undo each other, at sea level and above', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 97, noNaN: true }), fc.integer({ min: 0, max: 3000 }), (percent, metres) => {
        expect(concentrationAt(boilingPoint(percent, metres), metres)).toBeCloseTo(percent, 4);
      }),
      { numRuns: 30 },
    );
  });

  test('McGee: a syrup boils about 1 °C lower for every 305 m', () => {
    expect(boilingPoint(85, 0) - boilingPoint(85, 915)).toBeCloseTo(3, 0);
  });

  test('more sugar never lowers the boiling point, more water never raises it', () => {
    const grams = fc.double({ min: 1, max: 300, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, grams, (water, sucrose, otherSugars, more) => {
        fc.pre(sucrose < 20 * water && sucrose + more < 20 * water);
        const point = boilingPointOfSyrup({ water, sucrose, otherSugars });
        expect(boilingPointOfSyrup({ water, sucrose: sucrose + more, otherSugars })).toBeGreaterThanOrEqual(point - 1e-9);
        expect(boilingPointOfSyrup({ water: water + more, sucrose, otherSugars })).toBeLessThanOrEqual(point + 1e-9);
      }),
    );
  });

  test('250 g of sugar boiled to 118 °C keeps what an 88 % syrup holds, 34 g of water', () => {
    // 88 % boils at 118.5 °C and 87 % at 116.8 °C (reference reckoning above).
    expect(waterLeft({ sucrose: 250, otherSugars: 0 }, 118)).toBeGreaterThan(250 * (12 / 88) - 1);
    expect(waterLeft({ sucrose: 250, otherSugars: 0 }, 118)).toBeLessThan(250 * (13 / 87) + 1);
    expect(waterLeft({ sucrose: 250, otherSugars: 0 }, 99)).toBe(Number.POSITIVE_INFINITY);
    expect(waterLeft({ sucrose: 0, otherSugars: 0 }, 118)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('solubility', () => {
  test.each([
    // Mohos 2010, Confectionery and Chocolate Engineering, tables A2.2 and A2.3; and a refiner's handbook (g/100 g of water).
    [0, 179.2, 181.2],
    [20, 203.9, 200.7],
    [40, 238.1, 235.8],
    [60, 287.3, 289.4],
    [80, 362.1, 370.4],
    [100, 487.2, 484.4],
  ])('at %d °C: Mohos %d within 4 %%, handbook %d within 1.6 %%', (celsius, mohos, handbook) => {
    const per100Water = (100 * solubility(celsius)) / (100 - solubility(celsius));
    expect(Math.abs(per100Water / mohos - 1)).toBeLessThan(0.04);
    expect(Math.abs(per100Water / handbook - 1)).toBeLessThan(0.016);
  });

  test('67.5 % at 25 °C', () => expect(solubility(25)).toBeCloseTo(67.5, 1));
});

describe('density', () => {
  test('NIST Circular 440 as GNU units has it, apparent in air against water: within 0.05 % from 0 to 95 Brix', () => {
    for (const brix of [5, 10, 20, 30, 40, 50, 60, 65, 70, 80, 90, 95]) {
      expect(Math.abs((syrupDensity(brix) * (1 - airBuoyancy)) / units(`brix(${brix})`, 'g/cm^3') - 1)).toBeLessThan(0.0005);
    }
  });

  test('Asadi 2007, Beet-Sugar Handbook, table A.1: 10 % 1040.0, 15 % 1061.0, 20 % 1082.9 kg/m³', () => {
    for (const [brix, printed] of [
      [10, 1040.0],
      [15, 1061.0],
      [20, 1082.9],
    ] as const) {
      expect(Math.abs(syrupDensity(brix) * 1000 - printed)).toBeLessThan(2);
    }
  });

  test('Mohos 2010, table A2.1: Baumé of 10 to 80 Brix within 0.4 degrees', () => {
    for (const [brix, printed] of [
      [10, 5.6],
      [20, 11.1],
      [30, 16.6],
      [40, 22],
      [50, 27.5],
      [60, 32.5],
      [70, 37.6],
      [80, 42.5],
    ] as const) {
      expect(Math.abs(baume(brix) - printed)).toBeLessThan(0.4);
    }
  });

  test('GNU units, baume(): within 0.4 degrees (its density of water is the apparent one)', () => {
    for (const degrees of [10, 20, 30, 40]) {
      expect(Math.abs(brixOfBaume(degrees) - brixOf(units(`baume(${degrees})`, 'g/cm^3')))).toBeLessThan(0.8);
    }
  });

  test('Brix and density undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 95, noNaN: true }), (brix) => {
        expect(brixOf(syrupDensity(brix))).toBeCloseTo(brix, 6);
        expect(brixOfBaume(baume(brix))).toBeCloseTo(brix, 6);
      }),
    );
  });
});

describe('stages', () => {
  test('the same word differs between traditions: hard crack 146-157 °C', () => {
    const ranges = stageRanges('Hard-crack stage').map((stage) => stage.celsius);
    expect(Math.min(...ranges.map((r) => r.low))).toBe(146);
    expect(Math.max(...ranges.map((r) => r.high))).toBe(157);
    expect(ranges).toHaveLength(3);
  });

  test('a word that is no stage has no range', () => expect(stageRanges('boiling hot')).toEqual([]));

  test('every stage below caramel lies where the boiling-point curve finds a syrup of 60 to 98 %', () => {
    for (const name of stageNames.filter((word) => !word.includes('caramel') && word !== 'clear liquid')) {
      for (const { celsius } of stageRanges(name)) {
        expect(concentrationAt(celsius.low)).toBeGreaterThan(50);
        expect(concentrationAt(celsius.high)).toBeLessThan(99.2);
      }
    }
  });
});
