/** Labels: order by mass through all bases, shares where the name asks for them, allergens by region, and nothing claimed. */
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const nappe = (...words: string[]): string =>
  execFileSync('node', [join(root, 'compiler/dist/nappe.js'), ...words], { cwd: root, encoding: 'utf8' });

interface Ingredient {
  readonly name: string;
  readonly grams: number | null;
  readonly percent: number | null;
  readonly allergens: readonly string[];
  readonly strained: boolean;
}

interface LabelData {
  readonly ingredients: readonly Ingredient[];
  readonly contains: readonly { readonly key: string; readonly name: string }[];
}

const label = (...words: string[]): LabelData => JSON.parse(nappe('label', ...words, '--to', 'json')) as LabelData;
const samples = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.nappe') && name !== 'bases.nappe');

describe('the list of ingredients', () => {
  it.each(samples)('%s: what is in the food comes in descending order of mass (Regulation 1169/2011, Art. 18)', (name) => {
    const { ingredients } = label(`samples/${name}`);
    const grams = ingredients.filter(({ strained }) => !strained).map(({ grams: mass }) => mass ?? 0);
    expect(grams.length).toBeGreaterThan(0);
    expect(grams).toEqual([...grams].sort((a, b) => b - a));
  });

  it('gives the share of what a chosen flavour names, and of nothing else (Art. 22)', () => {
    const { ingredients } = label('samples/hojicha-bavarois.nappe', '--with', 'raspberry');
    const named = ingredients.filter(({ percent }) => percent !== null).map(({ name }) => name);
    expect(named).toEqual(['raspberry purée', 'raspberry']);
    const total = ingredients.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
    const purée = ingredients.find(({ name }) => name === 'raspberry purée');
    expect(purée?.percent).toBeCloseTo((100 * (purée?.grams ?? 0)) / total, 1);
  });

  it('sums an ingredient over the formula and the bases it takes', () => {
    const names = label('samples/harbour-entremets.nappe').ingredients.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toContain('plain flour');
  });
});

describe('allergens', () => {
  it('are named beside each ingredient and together', () => {
    const { ingredients, contains } = label('samples/hojicha-bavarois.nappe');
    expect(ingredients.find(({ name }) => name === 'egg yolk')?.allergens).toEqual(['egg']);
    expect(contains.map(({ key }) => key).sort()).toEqual(['egg', 'milk']);
  });

  it('name gluten with its cereal in the European Union and wheat alone in the United States (Annex II; FALCPA)', () => {
    const eu = label('samples/sable-diamonds.nappe').contains.map(({ name }) => name);
    const us = label('samples/sable-diamonds.nappe', '--region', 'us').contains.map(({ name }) => name);
    expect(eu).toContain('gluten (wheat)');
    expect(us).toContain('wheat');
    expect(us.join()).not.toContain('gluten');
  });
});

it('says that the seller answers for it', () => {
  expect(nappe('label', 'samples/panna-cotta.nappe')).toContain('The seller answers for this label');
});
