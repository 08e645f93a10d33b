/** Factors from yields: counts, moulds, masses, volumes, and the density between them. */
import fc from 'fast-check';
import type { Yield } from 'nappe-grammar';
import { describe, expect, it } from 'vitest';
import { factorFor, type Made, type Scaling } from './factor.ts';
import { parseTarget } from './target.ts';

function wanted(text: string): Yield {
  const parsed = parseTarget(text);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return parsed;
}

/** Something that makes what is written, of so many grams and millilitres. */
const making = (written: string | null, grams = 1000, millilitres = 1250): Made => ({
  written: written === null ? null : wanted(written),
  grams,
  millilitres,
});

function scaling(target: string, made: Made): Scaling {
  const found = factorFor(wanted(target), made);
  if ('problem' in found) throw new Error(found.problem);
  return found;
}

const factor = (target: string, written: string): number => scaling(target, making(written)).factor;

describe('the factor from a yield', () => {
  it('is the ratio of counts for the same thing', () => {
    expect(factor('24 half-spheres of 7 cm', '8 half-spheres of 7 cm')).toBe(3);
    expect(factor('24 glasses', '12 glasses of 100 ml')).toBe(2);
    expect(factor('30', '12 glasses of 100 ml')).toBe(2.5);
    expect(factor('1 macaron', '40 macarons')).toBe(1 / 40);
  });

  // Euclid, Elements XII.18: balls are to one another as the cubes of their diameters.
  it('goes with the cube of a half-sphere’s diameter', () => {
    expect(factor('8 half-spheres of 8 cm', '8 half-spheres of 7 cm')).toBeCloseTo((8 / 7) ** 3, 12);
  });

  // Cylinders: count · diameter² · height; the π/4 cancels.
  it('goes with the volume of rings', () => {
    expect(factor('3 rings of 18 x 4 cm', '2 rings of 16 x 4.5 cm')).toBeCloseTo((3 * 18 ** 2 * 4) / (2 * 16 ** 2 * 4.5), 12);
  });

  // A sphere is two thirds of the cylinder around it, a cone one third (Euclid XII.10; Archimedes, On the Sphere and Cylinder I).
  it('compares different shapes by volume', () => {
    expect(factor('1 sphere of 9 cm', '1 cylinder of 9 x 9 cm')).toBeCloseTo(2 / 3, 12);
    expect(factor('1 cone of 9 x 9 cm', '1 cylinder of 9 x 9 cm')).toBeCloseTo(1 / 3, 12);
    expect(factor('2 frames of 30 x 20 x 4 cm', '1 frame of 40 x 30 x 4 cm')).toBeCloseTo(1, 12);
    expect(factor('8 cubes of 5 cm', '1 l')).toBeCloseTo(1, 12);
    expect(factor('10 bars of 9 x 3 x 2 cm', '540 ml')).toBeCloseTo(1, 12);
  });

  it('reads a glass of 10 cl as one of 100 ml', () => {
    expect(factor('24 glasses of 10 cl', '12 glasses of 100 ml')).toBeCloseTo(2, 12);
    expect(factor('12 glasses of 80 ml', '12 glasses of 100 ml')).toBeCloseTo(0.8, 12);
  });

  it('is the ratio of masses where both are masses', () => {
    expect(factor('2.4 kg', '1.2 kg')).toBe(2);
    expect(factor('24 rings of 110 g', '12 rings of 110 g')).toBe(2);
    expect(factor('12 rings of 55 g', '1.32 kg')).toBe(0.5);
  });

  it('weighs what is computed where a mass is asked of a volume', () => {
    const made = making('12 glasses of 100 ml', 995, 1190);
    expect(scaling('1990 g', made)).toMatchObject({ factor: 2, by: 'mass' });
  });

  it('goes through the density of the finished mixture where a volume is asked of a mass', () => {
    const found = scaling('10 glasses of 125 ml', making('1 kg', 1000, 1250));
    expect(found).toMatchObject({ by: 'density', factor: 1 });
    expect(found.density).toMatchObject({ gramsPerMillilitre: 0.8, grams: 1000, millilitres: 1250 });
    expect(scaling('2.5 l', making(null, 1000, 1250)).factor).toBe(2);
    expect(scaling('2 rings of 16 x 3 cm', making('40 macarons', 1000, 1250)).factor).toBeCloseTo(
      (2 * Math.PI * 64 * 3) / 1250,
      12,
    );
  });

  it('counts lined moulds and says that their size is an estimate', () => {
    expect(scaling('20 lined tarts of 8 x 2 cm', making('10 lined tarts of 8 x 2 cm'))).toMatchObject({
      factor: 2,
      by: 'count',
      lined: false,
    });
    expect(scaling('10 lined tarts of 10 x 2 cm', making('10 lined tarts of 8 x 2 cm'))).toMatchObject({
      by: 'volume',
      lined: true,
    });
  });

  it('says what to ask instead where there is no factor', () => {
    const problem = (target: string, made: Made): string => {
      const found = factorFor(wanted(target), made);
      return 'problem' in found ? found.problem : `factor ${found.factor}`;
    };
    expect(problem('24 rings', making('12 glasses of 100 ml'))).toContain('not in “ring”');
    expect(problem('24 glasses', making('1.2 kg'))).toContain('give the size of one');
    expect(problem('2 l', { written: wanted('40 macarons'), grams: null, millilitres: null })).toContain('mass or a volume');
    expect(problem('9000000 kg', making('1.2 kg'))).toContain('check the number');
    for (const text of [
      '',
      'twelve glasses',
      '1,5 kg',
      '12 glasses of',
      '0 g',
      'when mould',
      '12 glasses when mould',
      '<script>',
    ])
      expect(parseTarget(text), text).toHaveProperty('problem');
  });

  const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });

  it('scales up and back to the formula', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 40, max: 300 }),
        fc.integer({ min: 40, max: 300 }),
        (a, b, d, e) => {
          const [small, large] = [`${a} half-spheres of ${d} mm`, `${b} half-spheres of ${e} mm`];
          expect(factor(large, small) * factor(small, large)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('agrees by mass and by volume through the density', () => {
    fc.assert(
      fc.property(positive, positive, positive, (grams, density, target) => {
        const made: Made = {
          written: { ...wanted('1 kg'), quantity: { ...wanted('1 kg').quantity!, low: grams / 1000, high: grams / 1000 } },
          grams,
          millilitres: grams / density,
        };
        const byVolume = factorFor(
          { ...wanted('1 l'), quantity: { ...wanted('1 l').quantity!, low: target, high: target } },
          made,
        );
        const byMass = factorFor(
          { ...wanted('1 kg'), quantity: { ...wanted('1 kg').quantity!, low: target * density, high: target * density } },
          made,
        );
        if ('problem' in byVolume || 'problem' in byMass) return;
        expect(byVolume.factor / byMass.factor).toBeCloseTo(1, 9);
      }),
    );
  });
});
