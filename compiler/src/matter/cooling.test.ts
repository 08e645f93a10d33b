/** Checks of cooling against Newton's law, published cooling trials and the laws every cooling keeps. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contains } from '../quantities/interval.ts';
import { type Composition, nothing } from './composition.ts';
import {
  type CoolingMass,
  type CoolingMedium,
  coolingMedia,
  coolingTime,
  fastestCooling,
  quickestSeconds,
  surelyWithin,
  temperatureAfter,
  twoStageLimits,
  whyNoCoolingTime,
} from './cooling.ts';

const of = (grams: Partial<Composition>): Composition => ({ ...nothing, ...grams });
const water = (grams: number): Pick<CoolingMass, 'composition' | 'grams' | 'millilitres'> => ({
  composition: of({ water: 1 }),
  grams,
  millilitres: grams,
});
const sauce = of({ water: 78, milkFat: 8, protein: 4, starch: 6, otherSugars: 4 });
const hours = 3600;

describe('published', () => {
  test("Newton's law by hand: 1 kg of stirred water, 80 to 30 °C in air of 20 °C, 20 cm wide, takes 1.5-4.0 h", () => {
    // A = 2 · 0.0314 + 0.628 · 0.0318 = 0.0828 m²; 4180/(h A) · ln 6 = 4521 s at h = 20, 11 303 s at h = 8.
    const result = coolingTime({
      ...water(1000),
      from: { low: 80, high: 80 },
      to: 30,
      medium: 'still air',
      vessel: { diameterMm: 200 },
      stirred: true,
      surroundings: { low: 20, high: 20 },
    })!;
    expect(Math.abs(result.seconds.low / 4521 - 1)).toBeLessThan(0.02);
    expect(Math.abs(result.seconds.high / 11_303 - 1)).toBeLessThan(0.02);
    expect(result.conduction).toBe(false);
  });

  test('Dickerson & Read (FDA, about 1973): 8 US gal of white sauce took 25 h from 40.6 to 13.9 °C in a refrigerator', () => {
    const result = coolingTime({
      composition: sauce,
      grams: 31_000,
      millilitres: 30_283,
      from: { low: 40.6, high: 40.6 },
      to: 13.9,
      medium: 'fridge',
      vessel: { deep: true },
    })!;
    expect(contains(result.seconds, 25 * hours)).toBe(true);
    expect(result.conduction).toBe(true);
  });

  test('Roberts et al. 2013: a 5.1 cm pan left alone in a refrigerator does not meet 2 h and 6 h; in a freezer it can', () => {
    const pan = (medium: CoolingMedium, depthMm = 51) =>
      fastestCooling({ composition: sauce, grams: 5000, millilitres: 4900, medium, vessel: { depthMm }, stirred: false });
    expect(pan('fridge').to21).toBeGreaterThan(twoStageLimits.to21);
    expect(pan('freezer').to21).toBeLessThan(twoStageLimits.to21);
    expect(pan('freezer').to5).toBeLessThan(twoStageLimits.to5);
    expect(pan('fridge', 76).to5).toBeGreaterThan(twoStageLimits.to5);
    // Reference reckoning: 2.5 cm meets both in a still refrigerator.
    expect(pan('fridge', 25).to21).toBeLessThan(twoStageLimits.to21);
    expect(pan('fridge', 25).to5).toBeLessThan(twoStageLimits.to5);
  });

  test('common practice: 650 g of custard from 84 to 35 °C in a 26 cm bowl takes about 40-70 min in the room, minutes in an ice bath', () => {
    const custard = of({ water: 400, milkFat: 70, otherFat: 29, sucrose: 90, otherSugars: 16, protein: 28, ash: 4 });
    const mass = {
      composition: custard,
      grams: 650,
      millilitres: 620,
      from: { low: 83, high: 85 },
      to: 35,
      vessel: { diameterMm: 260 },
    };
    const room = coolingTime({ ...mass, medium: 'still air' })!;
    expect(room.seconds.low).toBeLessThan(40 * 60);
    expect(room.seconds.high).toBeGreaterThan(60 * 60);
    const ice = coolingTime({ ...mass, medium: 'ice bath', stirred: true })!;
    expect(ice.seconds.high).toBeLessThan(room.seconds.high / 3);
    expect(ice.seconds.low).toBeLessThan(5 * 60);
  });
});

describe('what cannot be told', () => {
  const mass = { ...water(500), medium: 'still air' as const };

  test('nothing cools below its surroundings; the reason is given exactly where the time is not', () => {
    const task = { ...mass, from: { low: 80, high: 80 }, to: 10 };
    expect(coolingTime(task)).toBeNull();
    expect(whyNoCoolingTime(task)).toContain('18 °C');
    expect(whyNoCoolingTime({ ...task, to: 25 })).toBeNull();
    expect(fastestCooling(mass).to5).toBe(Number.POSITIVE_INFINITY);
    expect(whyNoCoolingTime({ ...task, to: 25, grams: 0 })).toContain('not known');
  });

  test('a reading the warmest surroundings never reach has no upper end', () => {
    expect(coolingTime({ ...mass, from: { low: 80, high: 80 }, to: 20 })!.seconds.high).toBe(Number.POSITIVE_INFINITY);
  });

  test('what is already there takes no time', () => {
    expect(coolingTime({ ...mass, from: { low: 20, high: 25 }, to: 30 })!.seconds).toEqual({ low: 0, high: 0 });
  });
});

describe('laws', () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const task = fc
    .record({
      medium: fc.constantFrom(...(Object.keys(coolingMedia) as CoolingMedium[])),
      grams: number(50, 5000),
      from: number(30, 95),
      width: number(0, 20),
      to: number(-12, 60),
      depth: fc.option(number(5, 150), { nil: undefined }),
      stirred: fc.option(fc.boolean(), { nil: undefined }),
    })
    .map(({ medium, grams, from, width, to, depth, stirred }) => ({
      composition: sauce,
      grams,
      millilitres: grams / 1.04,
      medium,
      from: { low: from, high: from + width },
      to,
      ...(depth === undefined ? {} : { vessel: { depthMm: depth } }),
      ...(stirred === undefined ? {} : { stirred }),
    }));

  test('the interval is one, and widening the start or the surroundings never narrows it', () => {
    fc.assert(
      fc.property(task, number(0, 5), (t, more) => {
        const result = coolingTime(t);
        fc.pre(result !== null);
        expect(result!.seconds.low).toBeGreaterThanOrEqual(0);
        expect(result!.seconds.low).toBeLessThanOrEqual(result!.seconds.high * (1 + 1e-9));
        const around = coolingMedia[t.medium].celsius;
        for (const wider of [
          coolingTime({ ...t, from: { low: t.from.low - more, high: t.from.high + more } })!,
          coolingTime({ ...t, surroundings: { low: around.low - more, high: around.high + more } })!,
        ]) {
          expect(wider.seconds.low).toBeLessThanOrEqual(result!.seconds.low * (1 + 1e-6) + 1e-3);
          expect(wider.seconds.high).toBeGreaterThanOrEqual(result!.seconds.high * (1 - 1e-6) - 1e-3);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('not knowing whether it is stirred gives an interval that holds both answers', () => {
    fc.assert(
      fc.property(task, (t) => {
        const { stirred: _, ...unknown } = t as typeof t & { stirred?: boolean };
        const either = coolingTime(unknown);
        fc.pre(either !== null);
        for (const stirred of [true, false]) {
          const one = coolingTime({ ...unknown, stirred })!;
          expect(either!.seconds.low).toBeLessThanOrEqual(one.seconds.low);
          expect(either!.seconds.high).toBeGreaterThanOrEqual(one.seconds.high);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('the coarse bound is one, and within a third for a way from 57 to 21 or 5 °C', () => {
    fc.assert(
      fc.property(task, fc.constantFrom(21, 5), (t, to) => {
        const asked = { ...t, from: 57, to, stirred: true };
        const most = surelyWithin(asked);
        fc.pre(most !== null);
        const exact = quickestSeconds(asked)!;
        expect(most).toBeGreaterThanOrEqual(exact);
        if (coolingMedia[t.medium].celsius.low <= to - 3) expect(most! / exact).toBeLessThan(4 / 3);
      }),
      { numRuns: 100 },
    );
  });

  test('temperature and time undo each other, and the temperature lies between start and surroundings', () => {
    fc.assert(
      fc.property(task, number(1, 86_400), (t, seconds) => {
        const after = temperatureAfter({ ...t, seconds: { low: seconds, high: seconds } });
        const around = coolingMedia[t.medium].celsius;
        expect(after.low).toBeLessThanOrEqual(after.high + 1e-3);
        expect(after.low).toBeGreaterThanOrEqual(Math.min(t.from.low, around.low));
        expect(after.high).toBeLessThanOrEqual(Math.max(t.from.high, around.high));
        fc.pre(after.low > around.low + 0.5 && after.low < t.from.low - 0.5);
        expect(Math.abs(coolingTime({ ...t, to: after.low })!.seconds.low / seconds - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 100 },
    );
  });

  test("an unknown mass lies between its own and the surroundings' temperature", () => {
    const task = { ...water(0), medium: 'fridge' as const, from: { low: 80, high: 85 }, seconds: { low: 60, high: 60 } };
    expect(temperatureAfter(task)).toEqual({ low: 1, high: 85 });
  });

  test('what is colder than its surroundings never cools', () => {
    const after = temperatureAfter({
      ...water(100),
      medium: 'still air',
      from: { low: 4, high: 6 },
      seconds: { low: 0, high: 3600 },
    });
    expect(after).toEqual({ low: 4, high: 24 });
  });
});
