/** Checks of conduction against textbook coefficients and an independent reckoning of pans in a refrigerator. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Faces, type SlabMatter, slabOf, slabSeconds } from './slab.ts';

// A thick custard: k 0.5 W/(m·K), density 1050 kg/m³, specific heat 3.6 kJ/(kg·K).
const custard = { conductivity: 0.5, heatPerVolume: 1050 * 3600 };
const secondsOf = (matter: SlabMatter, faces: Faces, remaining: number) => slabSeconds(slabOf(matter, faces), remaining);
const share = (from: number, to: number, surroundings: number) => (to - surroundings) / (from - surroundings);
const hours = (depthMm: number, transfer: number, to: number, surroundings: number) =>
  secondsOf(custard, { halfThickness: [depthMm / 2000], transfer }, share(57.2, to, surroundings)) / 3600;

test.each([
  // Reference reckoning: one-term series, both faces, middle, from 57.2 °C: hours to 21.1 and to 5.0 °C.
  ['5.1 cm, 3 °C, h 12', 51, 3, 12, 3.2, 9.1],
  ['5.1 cm, 3 °C, h 25', 51, 3, 25, 1.9, 5.3],
  ['5.1 cm, -18 °C, h 15', 51, -18, 15, 1.7, 2.9],
  ['2.5 cm, 3 °C, h 12', 25, 3, 12, 1.4, 4.0],
  ['5.1 cm, -2 °C, h 40', 51, -2, 40, 1.3, 2.7],
] as const)('%s', (_, depth, surroundings, transfer, to21, to5) => {
  expect(Math.abs(hours(depth, transfer, 21.1, surroundings) - to21)).toBeLessThan(0.11);
  expect(Math.abs(hours(depth, transfer, 5.0, surroundings) - to5)).toBeLessThan(0.11);
});

test.each([
  // Incropera, one-term coefficients for the plane wall: Bi, ζ1, C1 (from memory).
  [0.1, 0.3111, 1.016],
  [1, 0.8603, 1.1191],
  [10, 1.4289, 1.262],
])('Incropera: Bi %d has ζ %d and C %d', (biot, zeta, constant) => {
  // With k = 1, heat 1 and half a thickness of 1 m, Fo is the time and Bi the transfer.
  const time = secondsOf({ conductivity: 1, heatPerVolume: 1 }, { halfThickness: [1], transfer: biot }, 0.1);
  expect(Math.abs(time / (Math.log(constant / 0.1) / zeta ** 2) - 1)).toBeLessThan(0.005);
});

describe('laws', () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  test('with a cold face time goes with the square of the depth', () => {
    expect(hours(100, 1e6, 21.1, 3) / hours(50, 1e6, 21.1, 3)).toBeCloseTo(4, 2);
  });

  test('thicker or less well cooled is never quicker, cooling at the sides too is never slower', () => {
    fc.assert(
      fc.property(number(5, 200), number(3, 500), number(0.02, 0.95), number(1, 3), (depth, transfer, remaining, more) => {
        const at = (halfThickness: number[], h: number) => secondsOf(custard, { halfThickness, transfer: h }, remaining);
        const half = depth / 2000;
        expect(at([half * more], transfer)).toBeGreaterThanOrEqual(at([half], transfer) - 1e-3);
        expect(at([half], transfer * more)).toBeLessThanOrEqual(at([half], transfer) + 1e-3);
        expect(at([half, half * more], transfer)).toBeLessThanOrEqual(at([half], transfer) + 1e-3);
      }),
    );
    expect(secondsOf(custard, { halfThickness: [0.02, 0.1, 0.1], transfer: 12 }, 0.3)).toBeLessThan(
      secondsOf(custard, { halfThickness: [0.02], transfer: 12 }, 0.3),
    );
  });

  test('late in its cooling the middle follows the first term', () => {
    const faces = { halfThickness: [0.03, 0.08], transfer: 15 };
    const late = secondsOf(custard, faces, 0.01) - secondsOf(custard, faces, 0.02);
    expect(late).toBeCloseTo(Math.log(2) / slabOf(custard, faces).rate, 0);
  });

  test('a mass already there takes no time', () => {
    expect(secondsOf(custard, { halfThickness: [0.02], transfer: 12 }, 1)).toBe(0);
  });
});
