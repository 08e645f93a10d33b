/** Checks of vapour pressure and altitude against steam tables and McGee's rule. */
import { expect, test } from 'vitest';
import { airPressure, boilingPointOfWater, vapourPressure } from './steam.ts';

test.each([
  // Steam tables (IAPWS saturation line), kPa; from memory.
  [20, 2.339],
  [40, 7.385],
  [60, 19.95],
  [80, 47.41],
  [100, 101.42],
  [120, 198.67],
  [150, 476.2],
])('steam tables at %d °C', (celsius, kilopascal) => {
  expect(Math.abs(vapourPressure(celsius) / 1000 / kilopascal - 1)).toBeLessThan(celsius < 40 ? 0.015 : 0.006);
});

test('ISO 2533: 89.87 kPa at 1000 m, 70.11 kPa at 3000 m (from memory)', () => {
  expect(airPressure(1000) / 1000).toBeCloseTo(89.87, 1);
  expect(airPressure(3000) / 1000).toBeCloseTo(70.11, 1);
});

test('McGee, On Food and Cooking (2004): about 1 °C less for every 305 m', () => {
  expect(boilingPointOfWater(0)).toBeCloseTo(100, 6);
  for (const metres of [305, 1000, 2000]) expect(100 - boilingPointOfWater(metres)).toBeCloseTo(metres / 305, 0);
});
