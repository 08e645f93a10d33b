/** The catalogue as a whole: every row sound, every name found once, the near names near. */
import { connectives, nameKey } from 'nappe-grammar';
import { describe, expect, it } from 'vitest';
import { constituents, fatOf, total } from '../matter/composition.ts';
import { allKinds, families, findKind, nearestKinds } from './catalogue.ts';
import type { Allergen, Trait } from './kind.ts';
import { catalogueTable } from './table.ts';

const kinds = allKinds();
const share = (name: string, constituent: (typeof constituents)[number]) => findKind(name)!.composition![constituent];

describe('every kind', () => {
  it('is one of at least 170', () => expect(kinds.length).toBeGreaterThanOrEqual(170));

  it.each(kinds.map((kind) => [kind.name, kind] as const))('%s is sound', (_, kind) => {
    const { composition } = kind;
    if (composition) {
      expect(Math.abs(total(composition) - 1)).toBeLessThanOrEqual(0.005);
      for (const name of constituents) expect(composition[name], name).toBeGreaterThanOrEqual(-1e-9);
    }
    if (kind.density !== null) expect(kind.density).toSatisfy((density: number) => density > 0.02 && density < 2);
    if (kind.piece !== null) expect(kind.piece).toBeGreaterThan(0);
    if (kind.pH !== null) expect(kind.pH).toSatisfy((pH: number) => pH >= 1 && pH <= 14);
    expect(kind.saturated).toSatisfy((part: number) => part >= 0 && part <= 1);
    expect(kind.salt).toSatisfy((part: number) => part >= 0 && part <= 1);
    // Sodium is a mineral, so no row has more of it than ash; salt is sodium x 2.5.
    if (composition) expect(kind.salt / 2.5).toBeLessThanOrEqual(composition.ash + 0.003);
    expect(kind.source.text).not.toBe('');
    expect(kind.fr).not.toBe('');
    expect(kind.synonyms).not.toContain('');
  });

  it('is found by every name and synonym, each of which means one kind', () => {
    const owner = new Map<string, string>();
    for (const kind of kinds) {
      for (const name of [kind.name, ...kind.synonyms]) {
        expect(owner.get(nameKey(name)), `${name} is both`).toBeUndefined();
        owner.set(nameKey(name), kind.name);
        expect(findKind(name)).toBe(kind);
      }
    }
  });

  it('has a name that stands in an ingredient line without quotes', () => {
    const quoted = kinds
      .map((kind) => kind.name)
      .filter(
        (name) => !/^\p{L}/u.test(name) || name.split(' ').some((word) => (connectives as readonly string[]).includes(word)),
      );
    expect(quoted).toEqual(['cream of tartar']);
  });
});

describe('allergens', () => {
  const bring: readonly (readonly [Trait, Allergen])[] = [
    ['whole egg', 'egg'],
    ['egg yolk', 'egg'],
    ['egg white', 'egg'],
    ['wheat flour', 'wheat'],
    ['wheat flour', 'gluten'],
    ['milk', 'milk'],
    ['cream', 'milk'],
    ['butter', 'milk'],
    ['cultured dairy', 'milk'],
    ['fresh cheese', 'milk'],
  ];
  it.each(bring)('%s brings %s', (trait, allergen) => {
    const silent = kinds.filter((kind) => kind.traits.includes(trait) && !kind.allergens.includes(allergen));
    expect(silent.map((kind) => kind.name)).toEqual([]);
  });

  it('milk fat brings milk, wheat brings gluten', () => {
    const milkless = kinds.filter((kind) => (kind.composition?.milkFat ?? 0) > 0 && !kind.allergens.includes('milk'));
    expect(milkless.map((kind) => kind.name)).toEqual([]);
    const glutenless = kinds.filter((kind) => kind.allergens.includes('wheat') && !kind.allergens.includes('gluten'));
    expect(glutenless.map((kind) => kind.name)).toEqual([]);
  });

  // Regulation (EU) 1169/2011, Annex II: coconut, pine nut and chestnut are not among its nuts; fish gelatin is fish.
  it('follow Annex II', () => {
    for (const name of ['coconut milk', 'pine nut', 'chestnut']) expect(findKind(name)!.allergens).toEqual([]);
    expect(findKind('fish gelatin')!.allergens).toEqual(['fish']);
    for (const name of ['oat flour', 'rye flour', 'malt extract']) expect(findKind(name)!.allergens).toContain('gluten');
    expect(findKind('glucose syrup')!.allergens).toEqual([]);
  });
});

describe('names', () => {
  it.each([
    ['Whole  Milk', 'whole milk'],
    ['EGGS', 'whole egg'],
    ['creme fraiche', 'crème fraîche'],
    ['confectioners’ sugar', 'icing sugar'],
    ['cornflour', 'corn starch'],
    ['heavy whipping cream', 'heavy cream'],
    ['raspberry puree', 'raspberry purée'],
    ['leaf gelatine', 'gelatin'],
    ['nonfat milk', 'skimmed milk'],
  ])('%s is %s', (written, name) => expect(findKind(written)?.name).toBe(name));

  it.each(['', ' ', 'milks', 'unicorn tears', '\u0000', 'x'.repeat(10_000)])('%j is nothing', (name) =>
    expect(findKind(name)).toBeNull(),
  );

  it.each([
    ['gelatne', 'gelatine'],
    ['hole milk', 'whole milk'],
    ['dark choclate', 'dark chocolate'],
    ['rasberry purée', 'raspberry purée'],
    ['cornflor', 'cornflour'],
    ['organic whole milk', 'whole milk'],
  ])('%s is nearest to %s', (written, name) => expect(nearestKinds(written)[0]).toBe(name));

  it('gives no more than asked, one a kind, and nothing where nothing is near', () => {
    const near = nearestKinds('crem', 5);
    expect(near.length).toBeLessThanOrEqual(5);
    expect(new Set(near.map((name) => findKind(name))).size).toBe(near.length);
    expect(nearestKinds('zzzzqqqq')).toEqual([]);
    expect(nearestKinds('x'.repeat(10_000))).toEqual([]);
    expect(nearestKinds('')).toEqual([]);
  });
});

describe('kinds that are easily mistaken', () => {
  it('icing sugar holds starch, granulated sugar none', () => {
    expect(share('icing sugar', 'starch')).toBeGreaterThan(0.01);
    expect(share('granulated sugar', 'starch')).toBe(0);
  });
  it('glucose syrup is mostly dextrins, the corn syrup of SR28 nearly all sugar', () => {
    expect(share('glucose syrup', 'otherSugars')).toBeLessThan(0.4);
    expect(share('corn syrup', 'otherSugars')).toBeGreaterThan(0.75);
  });
  it('juice of citrus holds no starch, though its carbohydrate is more than its sugar', () => {
    for (const name of ['lemon juice', 'lime juice', 'orange juice', 'raspberry purée']) expect(share(name, 'starch')).toBe(0);
  });
  it('gelatin mass is one part in seven', () => {
    expect(share('gelatin mass', 'protein')).toBeCloseTo(0.856 / 7, 6);
    expect(share('gelatin mass', 'water')).toBeCloseTo((6 + 0.13) / 7, 6);
  });
  it('a clarified butter and an oil are fat', () => {
    for (const name of ['clarified butter', 'sunflower oil', 'cocoa butter'])
      expect(fatOf(findKind(name)!.composition!)).toBeGreaterThan(0.99);
  });
});

describe('the table', () => {
  it('has a row a kind, each with its source', () => {
    const rows = catalogueTable();
    expect(rows.map((row) => row.name)).toEqual(kinds.map((kind) => kind.name));
    expect(rows.every((row) => row.source !== '')).toBe(true);
    expect(new Set(rows.map((row) => row.family)).size).toBe(families.length);
    expect(rows.find((row) => row.name === 'whole milk')).toMatchObject({ density: '1.03 g/ml', source: 'USDA SR28 01077' });
    expect(rows[0]!.composition).toContain('milk fat 3.3');
  });
});
