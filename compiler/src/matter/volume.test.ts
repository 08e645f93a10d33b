/** Checks of volumes against GNU units' solids and cup weights. */
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, nothing } from './composition.ts';
import { mixtureMillilitres, type Shape, shapeMillilitres, shapes } from './volume.ts';

const units = (have: string, want: string): number => Number(execFileSync('units', ['-t', have, want], { encoding: 'utf8' }));
const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

describe('shapes', () => {
  test.each([
    // GNU units knows spherevolume(radius); the others are its arithmetic.
    ['sphere', [60], 'spherevolume(30 mm)'],
    ['half-sphere', [60], 'spherevolume(30 mm) / 2'],
    ['ring', [160, 30], 'circlearea(80 mm) 30 mm'],
    ['cylinder', [180, 45], 'circlearea(90 mm) 45 mm'],
    ['tart', [80, 20], 'circlearea(40 mm) 20 mm'],
    ['cone', [60, 90], 'circlearea(30 mm) 90 mm / 3'],
    ['frame', [600, 400, 10], '600 mm 400 mm 10 mm'],
    ['tray', [300, 200, 30], '300 mm 200 mm 30 mm'],
    ['bar', [90, 30, 25], '90 mm 30 mm 25 mm'],
    ['cube', [50], '(50 mm)^3'],
  ] as const)('%s %j', (shape, millimetres, formula) => {
    expect(shapeMillilitres(shape, millimetres)).toBeCloseTo(units(formula, 'ml'), 4);
  });

  test('a wrong number of lengths has no volume', () => {
    for (const shape of Object.keys(shapes) as Shape[]) expect(shapeMillilitres(shape, [1, 2, 3, 4])).toBeNull();
    expect(shapeMillilitres('ring', [160])).toBeNull();
  });

  test('twice the lengths hold eight times as much', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(shapes) as Shape[])),
        fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 1, max: 600, noNaN: true }))),
        (shape, all) => {
          const lengths = all.slice(0, shapes[shape].length);
          const doubled = lengths.map((x) => 2 * x);
          expect(shapeMillilitres(shape, doubled)! / shapeMillilitres(shape, lengths)!).toBeCloseTo(8, 9);
        },
      ),
    );
  });
});

describe('mixtures', () => {
  test('a litre of water weighs 998 g at 20 °C and fills 4.0-4.5 % more at 100 °C (CRC Handbook: 0.9984, 0.9584 g/ml)', () => {
    const { low } = mixtureMillilitres(of({ water: 998.2 }), { low: 20, high: 20 }, { low: 0, high: 0 });
    const hot = mixtureMillilitres(of({ water: 998.2 }), { low: 100, high: 100 }, { low: 0, high: 0 });
    expect(Math.abs(low - 1000)).toBeLessThan(5);
    expect(hot.low / low).toBeGreaterThan(1.035);
    expect(hot.low / low).toBeLessThan(1.05);
  });

  test('USDA SR28 01053: a cup of whipped heavy cream, 98 % overrun, weighs 120 g, within 3 %', () => {
    const cream = of({ water: 57.81 * 1.2, protein: 2.84 * 1.2, milkFat: 36.08 * 1.2, otherSugars: 2.74 * 1.2, ash: 0.53 * 1.2 });
    const { low } = mixtureMillilitres(cream, { low: 5, high: 5 }, { low: 98, high: 98 });
    expect(Math.abs(low / units('uscup', 'ml') - 1)).toBeLessThan(0.03);
  });

  test('widening temperature or overrun never narrows the volume', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(1, 500),
        number(1, 500),
        number(5, 60),
        number(0, 30),
        number(0, 100),
        (water, fat, t, width, overrun) => {
          const c = of({ water, milkFat: fat });
          const narrow = mixtureMillilitres(c, { low: t, high: t }, { low: overrun, high: overrun });
          const wide = mixtureMillilitres(c, { low: t - width / 6, high: t + width }, { low: overrun / 2, high: overrun + 1 });
          expect(wide.low).toBeLessThanOrEqual(narrow.low + 1e-9);
          expect(wide.high).toBeGreaterThanOrEqual(narrow.high - 1e-9);
        },
      ),
    );
  });

  test('nothing fills nothing', () => {
    expect(mixtureMillilitres(nothing, { low: 0, high: 90 }, { low: 0, high: 90 })).toEqual({ low: 0, high: 0 });
  });
});
