/** Checks of gelatin against published equivalences, sheet grades and temperatures; where sources disagree both are shown. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contains, middle } from '../quantities/interval.ts';
import {
  as200,
  endsEnzymes,
  from200,
  gradeOf,
  hydration,
  meltingRange,
  settingRange,
  sheetGrades,
  weakensGelatin,
} from './gelatin.ts';

describe('grades', () => {
  test('Ward & Courts 1977: 60 against 240 bloom is a factor 2.00, 100 against 200 a factor 1.41 (public conversion table)', () => {
    expect(as200(1, 240, 'concentration') / as200(1, 60, 'concentration')).toBeCloseTo(2.0, 2);
    expect(as200(1, 200, 'concentration') / as200(1, 100, 'concentration')).toBeCloseTo(1.41, 2);
  });

  test('a vendor, by strength: 10 g of 240 bloom stand for 12 g of 200', () => {
    expect(as200(10, 240, 'strength')).toBeCloseTo(12, 9);
    expect(as200(10, 240, 'concentration')).toBeCloseTo(10.95, 2);
  });

  test('200 bloom replaced by 160: 1.25 times as much by strength (a vendor), 1.118 times by concentration', () => {
    expect(from200(1, 160, 'strength')).toBeCloseTo(1.25, 3);
    expect(from200(1, 160, 'concentration')).toBeCloseTo(1.118, 3);
  });

  test('sheets follow the law of strength within 17 %, not that of concentration (45 %): the sources disagree, so the author chooses', () => {
    const spread = (law: 'strength' | 'concentration') => {
      const values = sheetGrades.map((grade) => as200(grade.sheet, middle(grade.bloom), law));
      return Math.max(...values) / Math.min(...values) - 1;
    };
    expect(spread('strength')).toBeLessThan(0.17);
    expect(spread('concentration')).toBeGreaterThan(0.44);
  });

  test('a grade is known by the name its sheets are sold under (trade compilation 2008-2014)', () => {
    expect(gradeOf('silver gelatin')?.bloom).toEqual({ low: 160, high: 160 });
    expect(gradeOf('Platinum gelatin')?.sheet).toBe(1.7);
    expect(gradeOf('gelatin')).toBeNull();
  });

  test('the two laws undo themselves and agree at 200 bloom', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        (bloom, grams) => {
          for (const law of ['concentration', 'strength'] as const) {
            expect(from200(as200(grams, bloom, law), bloom, law)).toBeCloseTo(grams, 9);
            expect(as200(grams, 200, law)).toBeCloseTo(grams, 12);
          }
        },
      ),
    );
  });
});

describe('temperatures', () => {
  test('a teaching card: dessert gels set at 20 and melt at 27 °C', () => {
    expect(contains(settingRange(1.8), 20)).toBe(true);
    expect(contains(meltingRange(1.8), 27)).toBe(true);
  });

  test('a retail guide: set at 16-29 °C, melt at 21-34 °C; a maker: melt at 25-35 °C at 6.67 %', () => {
    for (const share of [0.8, 1.8, 6.67]) {
      expect(middle(settingRange(share))).toBeGreaterThan(16);
      expect(middle(settingRange(share))).toBeLessThan(29);
      expect(middle(meltingRange(share))).toBeGreaterThan(21);
      expect(middle(meltingRange(share))).toBeLessThan(34);
    }
    expect(contains({ low: 25, high: 35 }, middle(meltingRange(6.67)))).toBe(true);
  });

  test('more gelatin never sets or melts colder, and a gel melts warmer than it sets', () => {
    const share = fc.double({ min: 0, max: 12, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(settingRange(more).low).toBeGreaterThanOrEqual(settingRange(less).low);
        expect(meltingRange(more).high).toBeGreaterThanOrEqual(meltingRange(less).high);
        expect(middle(meltingRange(a))).toBeGreaterThan(middle(settingRange(a)));
      }),
    );
  });
});

describe('limits', () => {
  test('trade gelatin mass is one part with six of water, within what powder takes up (5-10 times, 5-6 advised)', () => {
    expect(contains(hydration.advised, 6)).toBe(true);
    expect(hydration.most).toBe(10);
    expect(hydration.least).toBeLessThan(hydration.advised.low);
  });

  test('bromelain is gone at about 82 °C: 85 °C ends the enzymes at once, 75 °C only with five minutes, freezing and 60 °C never', () => {
    expect(endsEnzymes(85, 0)).toBe(true);
    expect(endsEnzymes(75, 300)).toBe(true);
    expect(endsEnzymes(75, 60)).toBe(false);
    expect(endsEnzymes(60, 3600)).toBe(false);
    expect(endsEnzymes(-18, 86_400)).toBe(false);
  });

  test('dissolving at 50-60 °C (makers) or adding at a custard of 84 °C does no harm, boiling a minute does', () => {
    expect(weakensGelatin(60, 1200)).toBe(false);
    expect(weakensGelatin(84, 60)).toBe(false);
    expect(weakensGelatin(100, 60)).toBe(true);
  });
});
