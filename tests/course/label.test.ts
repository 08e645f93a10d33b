/** Labels: order by mass through all bases, shares where the name asks for them, allergens by region, and nothing claimed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Declared, labelHtml, labelJson, labelOf, labelText, type Region } from '../../compiler/src/label/index.ts';
import { order, samples, type Wanted } from './support.ts';

const label = (source: Parameters<typeof order>[0], region: Region = 'eu', wanted: Wanted = {}) =>
  labelOf(order(source, wanted), { region, made: '2025-11-25' });

const massOf = ({ grams }: Declared): number => grams ?? 0;
const names = (list: readonly Declared[]): string[] => list.map(({ name }) => name);

describe('the list of ingredients', () => {
  // Regulation (EU) 1169/2011, Art. 18(1); 21 CFR 101.4(a)(1).
  it.each(samples)('%s comes in descending order of mass, and weighs what is made', (name) => {
    for (const region of ['eu', 'us'] as const) {
      const { ingredients, netGrams } = label(name, region);
      const grams = ingredients.map(massOf);
      expect(grams).toEqual([...grams].sort((a, b) => b - a));
      expect(new Set(names(ingredients)).size).toBe(ingredients.length);
      const sum = grams.reduce((total, one) => total + one, 0);
      // Steam that came from milk and fruit, and not from added water, is all that may be over.
      expect(sum).toBeGreaterThan((netGrams ?? 0) - 1);
      expect(sum).toBeLessThan((netGrams ?? 0) * 1.12);
    }
  });

  it('follows from mass whatever is weighed', () => {
    const kinds = ['whole milk', 'caster sugar', 'icing sugar', 'egg yolk', 'butter', 'plain flour', 'dark chocolate', 'water'];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...kinds), fc.integer({ min: 1, max: 900 })), { minLength: 1, maxLength: 12 }),
        (lines) => {
          const text = `formula Mixture\n${lines.map(([kind, grams], index) => `  ${grams} g  ${kind}, as part ${'abcdefghijkl'[index]}\n`).join('')}`;
          const { ingredients } = label({ text });
          const wanted = new Map<string, number>();
          for (const [kind, grams] of lines) {
            const name =
              { 'whole milk': 'milk', 'caster sugar': 'sugar', 'icing sugar': 'sugar', 'plain flour': 'wheat flour' }[kind] ??
              kind;
            wanted.set(name, (wanted.get(name) ?? 0) + grams);
          }
          expect(Object.fromEntries(ingredients.map((one) => [one.name, Math.round(massOf(one))]))).toEqual(
            Object.fromEntries(wanted),
          );
          const masses = ingredients.map(massOf);
          expect(masses).toEqual([...masses].sort((a, b) => b - a));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('sums an ingredient over the formula and the bases it takes', () => {
    const { ingredients } = label('samples/harbour-entremets.nappe');
    expect(names(ingredients).filter((name) => name === 'sugar')).toHaveLength(1);
    expect(names(ingredients)).toContain('wheat flour');
    expect(names(ingredients).indexOf('cream')).toBe(0);
  });

  it('takes what boils off from added water, and forgets water that is gone (Annex VII, part A, 1)', () => {
    const syrup = (losing: string) =>
      label({
        text: `formula Syrup\n  200 g  water\n  300 g  caster sugar\n  boil water, caster sugar for 2 min losing ${losing} %\n`,
      });
    expect(massOf(syrup('10').ingredients.find(({ name }) => name === 'water')!)).toBeCloseTo(150, 0);
    const milk = label({
      text: 'formula Milk\n  20 g  water\n  300 g  whole milk\n  boil water, whole milk for 20 min losing 40 %\n',
    });
    expect(names(milk.ingredients)).toEqual(['milk']);
  });

  it('names steeped things last, without a mass', () => {
    const { ingredients } = label('samples/panna-cotta.nappe');
    expect(ingredients.at(-1)).toMatchObject({ name: 'vanilla pod', strained: true, grams: 0 });
    expect(labelText(label('samples/panna-cotta.nappe'))).toContain('steeped or in traces: vanilla pod');
  });

  it('says which ingredients have a list of their own', () => {
    const mirror = label('samples/mirror-glaze.nappe');
    expect(names(mirror.ingredients.filter(({ compound }) => compound))).toEqual([
      'white chocolate',
      'condensed milk',
      'food colour',
    ]);
    expect(labelText(mirror)).toContain('white chocolate (MILK, SOYA, list on its packet)');
  });
});

describe('shares beside names (Regulation (EU) 1169/2011, Art. 22)', () => {
  const quantified = (source: Parameters<typeof order>[0], region: Region = 'eu', values: string[] = []) =>
    label(source, region, { with: values }).ingredients.flatMap(({ name, percent }) =>
      percent === null ? [] : [[name, percent] as const],
    );

  it('stand where the name of the food promises the ingredient, and are of what is made', () => {
    const [[name, percent] = ['', 0]] = quantified('samples/blackcurrant-mousse.nappe');
    expect(name).toBe('blackcurrant purée');
    const { ingredients, netGrams } = label('samples/blackcurrant-mousse.nappe');
    expect(percent).toBeCloseTo((100 * massOf(ingredients[0]!)) / (netGrams ?? 1), 0);
  });

  it('stand where a choice promises it', () => {
    expect(quantified('samples/hojicha-bavarois.nappe', 'eu', ['raspberry']).map(([name]) => name)).toEqual([
      'raspberry purée',
      'raspberry',
    ]);
    expect(quantified('samples/hojicha-bavarois.nappe', 'eu', ['tea'])).toEqual([]);
  });

  it('leave out the dish’s own word, and flavour in small amounts (Annex VIII, 1(a)(iii))', () => {
    expect(quantified('samples/pastry-cream.nappe')).toEqual([]);
    expect(quantified('samples/course/lesson-1-custard.nappe')).toEqual([]);
  });

  it('are not asked for in the United States', () => {
    expect(quantified('samples/blackcurrant-mousse.nappe', 'us')).toEqual([]);
  });
});

describe('allergens', () => {
  const contains = (source: Parameters<typeof order>[0], region: Region = 'eu') =>
    label(source, region).contains.map(({ name }) => name);

  it('are set off beside each ingredient and named together (Art. 21(1))', () => {
    const text = labelText(label('samples/hojicha-bavarois.nappe'));
    expect(text).toContain('cream (MILK), MILK, EGG yolk');
    expect(text).toContain('Contains: milk, egg.');
    expect(labelHtml(label('samples/hojicha-bavarois.nappe'))).toContain('<strong>egg</strong>');
  });

  // Annex II, point 1: cereals by name; FALCPA names wheat alone.
  it('name gluten with its cereal in the European Union and wheat alone in the United States', () => {
    expect(contains('samples/sable-diamonds.nappe')).toContain('gluten (wheat)');
    expect(contains('samples/sable-diamonds.nappe', 'us')).toEqual(['milk', 'wheat']);
    const oats = { text: 'formula Crumble\n  100 g  oat flour\n  50 g  rye flour\n' };
    expect(contains(oats)).toEqual(['gluten (oats)', 'gluten (rye)']);
    expect(contains(oats, 'us')).toEqual([]);
  });

  // FDA, Questions and Answers Regarding Food Allergens, edition 5 (January 2025): pine nuts are tree nuts, coconut is none.
  it('follow each region’s list of nuts', () => {
    const nuts = { text: 'formula Nuts\n  50 g  pine nut\n  50 g  desiccated coconut\n  50 g  almond\n  20 g  hazelnut\n' };
    expect(contains(nuts)).toEqual(['almonds', 'hazelnuts']);
    expect(labelText(label(nuts, 'us'))).toContain('Contains: tree nuts (pine nuts, almonds, hazelnuts).');
  });

  it('say what is not known', () => {
    const text = { text: 'formula Odd\n  100 g  cream, 35 % fat\n  20 g  quince blossom dust\n' };
    expect(label(text).unknown).toEqual(['quince blossom dust']);
    expect(labelText(label(text))).toContain('Not known for: quince blossom dust');
  });
});

describe('what stands below', () => {
  it('is quantity, storage and the last day', () => {
    const found = label('samples/blackcurrant-mousse.nappe');
    expect(found).toMatchObject({ made: '2025-11-25', lastDay: '2025-11-27', perishable: true });
    expect(labelText(found)).toContain('Use by: 2025-11-27');
    expect(found.netQuantity).toMatch(/g each$/u);
  });

  it('is the table of the region', () => {
    expect(labelText(label('samples/panna-cotta.nappe'))).toMatch(/Energy +\d+ kJ \/ \d+ kcal/u);
    expect(labelText(label('samples/panna-cotta.nappe', 'us'))).toMatch(/Calories +\d+/u);
  });

  it('says that the seller answers for it, and what is still to be filled in', () => {
    for (const region of ['eu', 'us'] as const) {
      const text = labelText(label('samples/panna-cotta.nappe', region));
      expect(text).toContain('The seller answers for this label');
      expect(text).toContain('name and address of the business');
      expect(text).toContain('not a food-safety plan');
    }
  });

  it('is data of one shape', () => {
    expect(labelJson(label('samples/panna-cotta.nappe'))).toMatchObject({
      version: 1,
      region: 'eu',
      contains: [{ key: 'milk', name: 'milk' }],
      ingredients: expect.arrayContaining([expect.objectContaining({ name: 'cream', percent: null, strained: false })]),
    });
  });
});
