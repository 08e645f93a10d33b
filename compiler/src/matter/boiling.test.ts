/** Checks of boiling points against Perry's ethanol table, the syrup model and the trade's possible and impossible readings. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boilingPointOf, hottestPossible } from './boiling.ts';
import { type Composition, nothing } from './composition.ts';
import { boilingPoint } from './sugar.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

// USDA SR28 01077 and 01053.
const milk = of({ water: 88.13, protein: 3.15, milkFat: 3.25, otherSugars: 4.8, ash: 0.67 });
const cream = of({ water: 57.81, protein: 2.84, milkFat: 36.08, otherSugars: 2.74, ash: 0.53 });

describe('boiling point', () => {
  test.each([
    // Perry's Chemical Engineers' Handbook, ethanol-water at 1 atm: mole share of ethanol in the liquid, °C (from memory).
    [0.019, 95.5],
    [0.0721, 89.0],
    [0.0966, 86.7],
    [0.1238, 85.3],
    [0.1661, 84.1],
    [0.2337, 82.7],
    [0.3273, 81.5],
    [0.5079, 79.8],
    [0.7472, 78.41],
  ])("Perry's: %d mole share of ethanol boils at %d °C", (x, celsius) => {
    const mixture = of({ alcohol: x * 46.07, water: (1 - x) * 18.015 });
    expect(Math.abs(boilingPointOf(mixture)! - celsius)).toBeLessThan(0.6);
  });

  test('water 100 °C, ethanol 78.3 °C, a syrup as the syrup model has it, sugar alone not at all', () => {
    expect(boilingPointOf(of({ water: 1 }))).toBeCloseTo(100, 3);
    expect(boilingPointOf(of({ alcohol: 1 }))).toBeCloseTo(78.3, 0);
    expect(boilingPointOf(of({ water: 15, sucrose: 85 }))).toBeCloseTo(boilingPoint(85), 6);
    expect(boilingPointOf(of({ sucrose: 1 }))).toBeNull();
  });

  test('milk boils 0.1-0.5 K above water (handbook: 100.2 °C; from memory); at 1600 m 5 K lower', () => {
    expect(boilingPointOf(milk)! - 100).toBeGreaterThan(0.1);
    expect(boilingPointOf(milk)! - 100).toBeLessThan(0.5);
    expect(boilingPointOf(milk)! - boilingPointOf(milk, 1600)!).toBeCloseTo(5.3, 0);
  });

  test('alcohol never raises the boiling point of a syrup, altitude always lowers it', () => {
    const grams = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, fc.integer({ min: 1, max: 4000 }), (water, sucrose, alcohol, metres) => {
        const syrup = of({ water: water + 20, sucrose });
        expect(boilingPointOf({ ...syrup, alcohol })!).toBeLessThan(boilingPointOf(syrup)!);
        expect(boilingPointOf(syrup, metres)!).toBeLessThan(boilingPointOf(syrup)!);
      }),
    );
  });
});

describe('hottest possible', () => {
  test('milk, cream and a custard stay below 110 °C even when nearly boiled dry', () => {
    const custard = of({ water: 400, milkFat: 70, otherFat: 29, sucrose: 90, otherSugars: 16, protein: 28, ash: 4 });
    for (const c of [milk, cream, custard]) {
      expect(hottestPossible(c)!).toBeGreaterThan(100);
      expect(hottestPossible(c)!).toBeLessThan(110);
    }
  });

  test('caramel, brown butter, jam, fudge, caramel sauce and dough have no such limit', () => {
    const possible = {
      'dry caramel': of({ sucrose: 100 }),
      'syrup of equal parts to 150 °C': of({ water: 100, sucrose: 100 }),
      'butter, SR28 01145': of({ water: 17.94, milkFat: 81.11, protein: 0.85 }),
      'raspberries (SR28 09302) with their mass of sugar': of({ water: 85.75, otherSugars: 4.42, sucrose: 100, fibre: 6.5 }),
      fudge: of({ water: 120, sucrose: 400, milkFat: 90, protein: 6 }),
      'caramel sauce': of({ water: 130, sucrose: 200, milkFat: 140 }),
      'short dough': of({ water: 40, starch: 150, milkFat: 80, sucrose: 80 }),
      nothing,
    };
    for (const c of Object.values(possible)) expect(hottestPossible(c)).toBeNull();
  });
});
