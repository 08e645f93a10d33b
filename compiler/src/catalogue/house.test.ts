/** House ingredients from what their block says. */
import { describe, expect, it } from 'vitest';
import { total } from '../matter/composition.ts';
import { findKind } from './catalogue.ts';
import { houseKind } from './house.ts';
import type { Kind } from './kind.ts';

const made = (facts: Parameters<typeof houseKind>[0]): Kind => {
  const result = houseKind(facts);
  if ('error' in result) throw new Error(result.error);
  return result;
};

describe('a house ingredient', () => {
  it('is its figures', () => {
    const jam = made({
      name: 'plum butter',
      percent: { water: 40, sucrose: 45, otherSugars: 12, fibre: 3 },
      density: 1.3,
      pH: 3.4,
      phase: 'paste',
    });
    expect(jam.composition).toMatchObject({ water: 0.4, sucrose: 0.45, starch: 0 });
    expect(total(jam.composition!)).toBeCloseTo(1, 9);
    expect(jam).toMatchObject({ density: 1.3, pH: 3.4, piece: null, storage: 'ambient', allergens: [] });
  });
  it('takes the rest from what it is like, in its proportions', () => {
    const like = findKind('butter')!;
    const butter = made({ name: 'farm butter', like, percent: { milkFat: 84 }, allergens: ['milk'], stored: 'frozen' });
    expect(butter.composition!.milkFat).toBeCloseTo(0.84, 9);
    expect(butter.composition!.water / butter.composition!.protein).toBeCloseTo(
      like.composition!.water / like.composition!.protein,
      9,
    );
    expect(total(butter.composition!)).toBeCloseTo(1, 9);
    expect(butter).toMatchObject({ traits: ['butter'], allergens: ['milk'], storage: 'frozen', density: like.density });
  });
  it('is wholly what it is like where it says nothing', () => {
    expect(made({ name: 'our flour', like: findKind('plain flour')! }).composition).toBe(findKind('plain flour')!.composition);
  });
  it('is of unknown composition where it says neither', () => {
    expect(made({ name: 'mystery', each: 12, absorbs: 250 })).toMatchObject({ composition: null, piece: 12, absorbs: 2.5 });
  });
  it('brings its allergens beside those of what it is like', () => {
    expect(made({ name: 'nutty', like: findKind('praline paste')!, allergens: ['walnut', 'almond'] }).allergens).toEqual([
      'almond',
      'hazelnut',
      'walnut',
    ]);
  });
  it('allows for the rounding of a packet', () =>
    expect(houseKind({ name: 'x', percent: { water: 60, sucrose: 40.4 } })).not.toHaveProperty('error'));
  it.each([
    [{ percent: { water: 60, sucrose: 45 } }, /105 %/],
    [{ percent: { water: 17 } }, /17 %.*83 %/],
    [{ percent: { water: -1 } }, /between 0 and 100/],
    [{ percent: { water: Number.NaN } }, /between 0 and 100/],
    [{ like: findKind('sunflower oil')!, percent: { otherFat: 80 } }, /80 %/],
  ] as const)('is refused: %j', (facts, message) =>
    expect(houseKind({ name: 'x', ...facts })).toMatchObject({ error: expect.stringMatching(message) }),
  );
});
