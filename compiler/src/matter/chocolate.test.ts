/** Checks of chocolate against published tempering windows, polymorphs and a trade ganache. */
import { describe, expect, test } from 'vitest';
import { chocolateWindows, fatShareOfEmulsion, fatVolumeOfEmulsion, ganacheFatShare, polymorphs, seizes } from './chocolate.ts';
import { type Composition, nothing } from './composition.ts';
import { solidCocoaButter } from './melting.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });

describe('windows', () => {
  test.each([
    // [melt, cool, work] in °C: McGee 2004; couverture book; appliance manual; a French-school sheet.
    ['dark', [45, 50], [28, 29], [31, 32]],
    ['dark', [50, 55], [28, 29], [31, 32]],
    ['milk', [40, 45], [27, 28], [30, 31]],
    ['milk', [45, 45], [27, 28], [29, 30]],
    ['white', [40, 40], [24, 25], [27, 28]],
    ['white', [45, 50], [26, 27], [29, 30]],
    ['white', [45, 45], [26, 27], [28, 29]],
  ] as const)('%s covers melt %j, cool %j, work %j', (kind, melt, cool, work) => {
    const windows = chocolateWindows[kind];
    for (const [window, published] of [
      [windows.melt, melt],
      [windows.cool, cool],
      [windows.work, work],
    ] as const) {
      expect(published[0]).toBeGreaterThanOrEqual(window.low);
      expect(published[1]).toBeLessThanOrEqual(window.high);
    }
  });

  test('Wille & Lutton 1966: dark chocolate is worked above form IV and below form V, and melted above form VI', () => {
    const { melt, work } = chocolateWindows.dark;
    expect(work.low).toBeGreaterThan(polymorphs.IV);
    expect(work.high).toBeLessThan(polymorphs.V);
    expect(melt.low).toBeGreaterThan(polymorphs.VI);
    expect(solidCocoaButter(melt.low)).toBe(0);
  });

  test('each kind is melted hottest, cooled coldest, and never melted above its limit', () => {
    for (const { melt, cool, work, hottest } of Object.values(chocolateWindows)) {
      expect(cool.low).toBeLessThan(work.low);
      expect(work.high).toBeLessThan(melt.low);
      expect(melt.high).toBeLessThanOrEqual(hottest);
    }
  });
});

describe('water', () => {
  test('a wet spoon seizes it, cream enough for a ganache does not (common practice)', () => {
    expect(seizes(200, 5)).toBe(true);
    expect(seizes(200, 0.5)).toBe(false);
    expect(seizes(200, 115)).toBe(false);
    expect(seizes(200, 0)).toBe(false);
  });

  test('equal parts of cream (SR28 01053) and dark chocolate (SR28 19904) are an emulsion that holds', () => {
    const ganache = of({ water: 57.81 + 1.37, milkFat: 36.08, cocoaButter: 42.63 });
    const share = fatShareOfEmulsion(ganache)!;
    expect(share).toBeCloseTo(78.71 / 137.89, 3);
    expect(share).toBeGreaterThan(ganacheFatShare.low);
    expect(share).toBeLessThan(ganacheFatShare.high);
    expect(fatShareOfEmulsion(of({ sucrose: 1 }))).toBeNull();
  });

  test('the same fat and water leave less room for fat where more sugar makes the syrup, up to what water dissolves', () => {
    const bitter = fatVolumeOfEmulsion(of({ water: 60, cocoaButter: 140, sucrose: 30 }))!;
    const sweet = fatVolumeOfEmulsion(of({ water: 60, cocoaButter: 140, sucrose: 100 }))!;
    expect(sweet).toBeLessThan(bitter);
    // 67.1 % of sucrose at 20 °C (Mohos 2010, table A2.3): 60 g of water hold 122 g, more stays as grains.
    expect(fatVolumeOfEmulsion(of({ water: 60, cocoaButter: 140, sucrose: 300 }))!).toBeCloseTo(
      fatVolumeOfEmulsion(of({ water: 60, cocoaButter: 140, sucrose: 125 }))!,
      2,
    );
    // Fat at 0.91, syrup of 50 % at 1.230 g/ml (NIST Circular 440, from memory): 109.9 ml in 191.2 ml.
    expect(fatVolumeOfEmulsion(of({ water: 50, cocoaButter: 100, sucrose: 50 }))!).toBeCloseTo(109.9 / 191.2, 2);
    expect(fatVolumeOfEmulsion(of({ sucrose: 0 }))).toBeNull();
  });
});
