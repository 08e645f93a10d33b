/** US measures against NIST Handbook 44 and the household weights of USDA SR28. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findKind } from '../catalogue/index.ts';
import { english } from './languages/en.ts';
import { measuresFor } from './measures.ts';

const us = measuresFor(english, 'us');
const metric = measuresFor(english, 'metric');
const both = measuresFor(english, 'both');

describe('US measures', () => {
  // NIST Handbook 44, appendix C: 1 cup = 236.588 ml = 16 tbsp = 48 tsp; 1 lb = 453.592 g = 16 oz.
  it('come in cups and spoons a cook has', () => {
    expect([4.93, 2.46, 14.79, 29.57, 59.15, 118.3, 157.7, 236.6, 354.9, 473.2].map(us.volume)).toEqual([
      '1 tsp',
      '1/2 tsp',
      '1 tbsp',
      '2 tbsp',
      '1/4 cup',
      '1/2 cup',
      '2/3 cup',
      '1 cup',
      '1 1/2 cup',
      '2 cup',
    ]);
    expect(us.volume(236.588 + 2 * 14.787)).toBe('1 cup + 2 tbsp');
  });

  it('come in ounces, and pounds from sixteen on', () => {
    expect([2.83, 14.17, 28.35, 453.59, 480, 907.18].map(us.mass)).toEqual([
      '0.1 oz',
      '0.5 oz',
      '1 oz',
      '1 lb',
      '1 lb 0.9 oz',
      '2 lb',
    ]);
  });

  // USDA SR28 weights of one cup: milk 01077 244 g, cream 01053 238 g, granulated sugar 19335 200 g, butter 01001 227 g, honey 19296 339 g.
  it('read a cup of the usual things as a cup, give or take two tablespoons', () => {
    for (const [name, grams] of [
      ['whole milk', 244],
      ['cream', 238],
      ['caster sugar', 200],
      ['butter', 227],
      ['honey', 339],
    ] as const) {
      const kind = findKind(name);
      expect(kind?.density, name).not.toBeNull();
      expect(us.cups(grams, kind?.density ?? null), name).toMatch(/^(1|3\/4) cup( \+ [12] tbsp)?$/);
    }
    expect(us.cups(100, null)).toBeNull();
  });

  it('are within half a tablespoon from a quarter cup up', () => {
    fc.assert(
      fc.property(fc.double({ min: 58, max: 3000, noNaN: true }), (millilitres) => {
        const off = Math.abs(readBack(us.volume(millilitres)) - millilitres);
        expect(off).toBeLessThanOrEqual(Math.max(14.787 / 2 + 0.01, 0.03 * millilitres));
      }),
    );
  });

  it('stand beside metric ones on request', () => {
    expect(metric.temperature({ low: 82, high: 84 })).toBe('82–84 °C');
    // 165 °F is 73.9 °C; half degrees are somebody's own.
    expect([metric.degrees(73.889), metric.degrees(31.5), metric.degrees(68.333)]).toEqual(['74 °C', '31.5 °C', '68 °C']);
    expect(us.temperature({ low: 82, high: 84 })).toBe('180–183 °F');
    expect(both.temperature({ low: 82, high: 84 })).toBe('82–84 °C / 180–183 °F');
    expect(us.temperature({ low: Number.NEGATIVE_INFINITY, high: 5 })).toBe('below 41 °F');
    expect(both.mass(480)).toBe('480 g / 1 lb 0.9 oz');
  });
});

describe('metric measures', () => {
  it('write durations, lengths and large numbers as a person would', () => {
    const of = (low: number, high = low): string => metric.duration({ low, high });
    expect([of(45), of(600), of(5400), of(14_400), of(600, 720), of(172_800), of(86_400), of(28_800, 50_400)]).toEqual([
      '45 s',
      '10 min',
      '1 h 30 min',
      '4 h',
      '10–12 min',
      '2 days',
      '24 h',
      'overnight (8–14 h)',
    ]);
    expect([metric.length({ low: 3, high: 3 }), metric.dimensions([160, 45]), metric.mass(12_345.4), metric.mass(8.64)]).toEqual([
      '3 mm',
      '16 × 4.5 cm',
      '12\u202f345 g',
      '8.6 g',
    ]);
    expect(metric.temperature({ low: -20, high: -18 })).toBe('−20…−18 °C');
  });
});

/** Millilitres of a measure as printed. */
function readBack(measure: string): number {
  const per: Record<string, number> = { tsp: 4.92892159375, tbsp: 14.78676478125, cup: 236.5882365 };
  return measure.split(' + ').reduce((sum, part) => {
    const words = part.split(' ');
    const unit = per[words[words.length - 1] ?? ''] ?? Number.NaN;
    const amount = words.slice(0, -1).reduce((total, word) => {
      const [over = '0', under = '1'] = word.split('/');
      return total + Number(over) / Number(under);
    }, 0);
    return sum + amount * unit;
  }, 0);
}
