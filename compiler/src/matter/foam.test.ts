/** Checks of foams against cup weights, published overrun and densities. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contains, middle } from '../quantities/interval.ts';
import { foamDensity, foamVolume, gasAfterFolding, gasVolume, overrunAt, overrunOfGas, overrunOfWeights } from './foam.ts';

describe('published figures', () => {
  test('USDA SR28 01053: 238 g a cup fluid, 120 g whipped: 98 %, a medium to stiff peak', () => {
    const whipped = overrunOfWeights(238, 120);
    expect(whipped).toBeCloseTo(98, 0);
    expect(contains(overrunAt('cream', 'medium', 'stiff'), whipped)).toBe(true);
  });

  test('Gisslen: cream at most doubles; Bruhn & Bruhn 1988: 141 % is the most an unaided cream gave', () => {
    expect(contains(overrunAt('cream', 'medium'), 100)).toBe(true);
    expect(overrunAt('cream', 'stiff').high).toBeLessThanOrEqual(141);
  });

  test("Goff's worked example: mix of 1.09 kg/l, product of 560 g/l: 94.6 %", () => {
    expect(overrunOfWeights(1090, 560)).toBeCloseTo(94.6, 1);
    expect(foamDensity(1.09, { low: 94.6, high: 94.6 }).low).toBeCloseTo(0.56, 3);
  });

  test('Migoya: 50 % overrun is 33 % of air by volume', () => {
    const fifty = { low: 50, high: 50 };
    expect(gasVolume(100, fifty).low / foamVolume(100, fifty).low).toBeCloseTo(0.33, 2);
  });

  test('Friberg: egg white to eight times its volume', () => {
    expect(contains(overrunAt('french white', 'stiff'), 700)).toBe(true);
  });

  test('French meringue 0.15-0.25 g/ml, Italian 0.25-0.35 g/ml (from memory): both within what a mix of 1.25 g/ml gives', () => {
    const french = foamDensity(1.25, overrunAt('french white', 'stiff'));
    const italian = foamDensity(1.25, overrunAt('italian white', 'stiff'));
    for (const d of [0.15, 0.25]) expect(contains(french, d)).toBe(true);
    for (const d of [0.25, 0.35]) expect(contains(italian, d)).toBe(true);
  });
});

describe('laws', () => {
  test('a firmer peak never holds less air, up to stiff', () => {
    for (const kind of ['cream', 'french white', 'swiss white', 'italian white'] as const) {
      const middles = (['soft', 'medium', 'stiff'] as const).map((stage) => middle(overrunAt(kind, stage)));
      expect(middles).toEqual([...middles].sort((a, b) => a - b));
    }
  });

  test('gas is bookkept: overrun to gas to overrun changes nothing, folding only loses', () => {
    const overrun = fc.tuple(fc.double({ min: 0, max: 700, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }));
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), overrun, (mix, [low, width]) => {
        const range = { low, high: low + width };
        const gas = gasVolume(mix, range);
        expect(foamVolume(mix, range).low).toBeCloseTo(mix + gas.low, 6);
        expect(overrunOfGas(gas, mix).low).toBeCloseTo(low, 6);
        expect(overrunOfGas(gas, mix).high).toBeCloseTo(low + width, 6);
        const folded = gasAfterFolding('cream', gas);
        expect(folded.low).toBeLessThanOrEqual(gas.low);
        expect(folded.high).toBeLessThanOrEqual(gas.high);
        expect(folded.low).toBeLessThanOrEqual(folded.high);
      }),
    );
  });

  test('a span of stages covers both of them', () => {
    const span = overrunAt('cream', 'soft', 'medium');
    for (const stage of ['soft', 'medium'] as const) {
      expect(span.low).toBeLessThanOrEqual(overrunAt('cream', stage).low);
      expect(span.high).toBeGreaterThanOrEqual(overrunAt('cream', stage).high);
    }
  });
});
