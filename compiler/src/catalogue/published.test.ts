/**
 * The catalogue against published figures: USDA SR28 (abbreviated file, release 28, 2015/16), row by row as printed, and the
 * cup weights that GNU units carries (from The Cake Bible).
 */
import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { fatOf, sugarsOf, total } from '../matter/composition.ts';
import { findKind } from './catalogue.ts';

type Row = readonly [
  kind: string,
  ndb: string,
  water: number,
  protein: number,
  fat: number,
  carbohydrate: number,
  sugars: number | null,
  fibre: number | null,
  ash: number,
];

/** Grams in 100 g as published; null where the file has no value. */
const sr28: readonly Row[] = [
  ['whole milk', '01077', 88.13, 3.15, 3.25, 4.8, 5.05, 0, 0.67],
  ['heavy cream', '01053', 57.81, 2.84, 36.08, 2.74, 2.92, 0, 0.53],
  ['light whipping cream', '01052', 63.5, 2.17, 30.91, 2.96, 2.96, 0, 0.46],
  ['egg yolk', '01125', 52.31, 15.86, 26.54, 3.59, 0.56, 0, 1.71],
  ['egg white', '01124', 87.57, 10.9, 0.17, 0.73, 0.71, 0, 0.63],
  ['whole egg', '01123', 76.15, 12.56, 9.51, 0.72, 0.37, 0, 1.06],
  ['granulated sugar', '19335', 0.02, 0, 0, 99.98, 99.8, 0, 0.01],
  ['butter', '01145', 17.94, 0.85, 81.11, 0.06, 0.06, 0, 0.09],
  ['gelatin', '19177', 13, 85.6, 0.1, 0, 0, 0, 1.3],
  ['semisweet chocolate', '19902', 0.97, 4.88, 31.28, 61.17, 47.9, 7, 1.7],
  ['dark chocolate', '19903', 1.25, 6.12, 38.31, 52.42, 36.71, 8, 1.9],
  ['extra dark chocolate', '19904', 1.37, 7.79, 42.63, 45.9, 23.99, 10.9, 2.32],
  ['milk chocolate', '19120', 1.5, 7.65, 29.66, 59.4, 51.5, 3.4, 1.78],
  ['white chocolate', '19087', 1.3, 5.87, 32.09, 59.24, 59, 0.2, 1.5],
  ['cocoa powder', '19165', 3, 19.6, 13.7, 57.9, 1.75, 37, 5.8],
  ['honey', '19296', 17.1, 0.3, 0, 82.4, 82.12, 0.2, 0.2],
  ['corn syrup', '19350', 22.81, 0, 0.2, 76.79, 76.77, 0, 0.2],
  ['plain flour', '20081', 11.92, 10.33, 0.98, 76.31, 0.27, 2.7, 0.47],
  ['corn starch', '20027', 8.32, 0.26, 0.05, 91.27, 0, 0.9, 0.09],
  ['almond', '12061', 4.41, 21.15, 49.93, 21.55, 4.35, 12.5, 2.97],
  ['hazelnut', '12120', 5.31, 14.95, 60.75, 16.7, 4.34, 9.7, 2.29],
  ['raspberry', '09302', 85.75, 1.2, 0.65, 11.94, 4.42, 6.5, 0.46],
  ['strawberry', '09316', 90.95, 0.67, 0.3, 7.68, 4.89, 2, 0.4],
  ['mango', '09176', 83.46, 0.82, 0.38, 14.98, 13.66, 1.6, 0.36],
  ['passion fruit', '09231', 72.93, 2.2, 0.7, 23.38, 11.2, 10.4, 0.8],
  ['passion fruit juice', '09232', 85.62, 0.39, 0.05, 13.6, 13.4, 0.2, 0.34],
  ['lemon juice', '09152', 92.31, 0.35, 0.24, 6.9, 2.52, 0.3, 0.21],
  ['orange juice', '09206', 88.3, 0.7, 0.2, 10.4, 8.4, 0.2, 0.4],
  ['salt', '02047', 0.2, 0, 0, 0, 0, 0, 99.8],
  ['vanilla extract', '02050', 52.58, 0.06, 0.06, 12.65, 12.65, 0, 0.26],
  ['cream cheese', '01017', 52.62, 6.15, 34.44, 5.52, 3.76, 0, 1.27],
  ['yoghurt', '01116', 87.9, 3.47, 3.25, 4.66, 4.66, 0, 0.72],
  ['raw coconut milk', '12117', 67.62, 2.29, 23.84, 5.54, 3.34, 2.2, 0.72],
  ['coconut milk', '12118', 72.88, 2.02, 21.33, 2.81, null, null, 0.97],
  ['sunflower oil', '04506', 0, 0, 100, 0, 0, 0, 0],
  ['vodka', '14037', 66.6, 0, 0, 0, 0, 0, 0.01],
  ['brewed coffee', '14209', 99.39, 0.12, 0.02, 0, 0, 0, 0.35],
  ['espresso', '14210', 97.8, 0.12, 0.18, 1.67, 0, 0, 0.23],
  ['brewed black tea', '14355', 99.7, 0, 0, 0.3, 0, 0, 0.04],
  ['brewed green tea', '14278', 99.93, 0.22, 0, 0, 0, 0, 0],
  ['olive oil', '04053', 0, 0, 100, 0, 0, 0, 0],
  ['coconut cream', '12115', 53.9, 3.63, 34.68, 6.65, null, 2.2, 1.15],
  ['blanched almond', '12062', 4.51, 21.4, 52.52, 18.67, 4.63, 9.9, 2.91],
  ['roasted hazelnut', '12122', 2.52, 15.03, 62.4, 17.6, 4.89, 9.4, 2.45],
  ['pistachio', '12151', 4.37, 20.16, 45.32, 27.17, 7.66, 10.6, 2.99],
  ['cocoa mass', '19078', 1.34, 14.32, 52.31, 28.42, 0.91, 16.6, 3.6],
  ['dark corn syrup', '19349', 22.01, 0, 0, 77.59, 77.59, 0, 0.4],
  ['high-fructose corn syrup', '19351', 24, 0, 0, 76, 75.65, 0, 0],
  ['maple syrup', '19353', 32.39, 0.04, 0.06, 67.04, 60.46, 0, 0.47],
  ['dried egg white', '01136', 8.54, 82.4, 0.04, 4.47, 0, 0, 4.55],
];

/** Sugars and syrups, whose carbohydrate is sugar although the analysis found a little less. */
const allSugar = ['granulated sugar', 'corn syrup', 'high-fructose corn syrup', 'maple syrup'];

describe('USDA SR28', () => {
  it('is held by at least 38 rows', () => expect(sr28.length).toBeGreaterThanOrEqual(38));

  it.each(sr28)('%s is %s', (name, ndb, water, protein, fat, carbohydrate, sugars, fibre, ash) => {
    const kind = findKind(name)!;
    const c = kind.composition!;
    expect(kind.source.text).toContain(`USDA SR28 ${ndb}`);
    expect(c.water * 100).toBeCloseTo(water, 6);
    expect(c.protein * 100).toBeCloseTo(protein, 6);
    expect(fatOf(c) * 100).toBeCloseTo(fat, 6);
    expect(c.ash * 100).toBeCloseTo(ash, 6);
    expect((sugarsOf(c) + c.starch + c.fibre) * 100).toBeCloseTo(carbohydrate, 6);
    if (sugars !== null) {
      // Analysed sugars can exceed the carbohydrate by difference (whole milk, heavy cream): they are cut to it.
      const counted = allSugar.includes(name) ? carbohydrate : Math.min(sugars, carbohydrate);
      expect(sugarsOf(c) * 100).toBeCloseTo(counted, 6);
      expect(Math.abs(sugarsOf(c) * 100 - sugars)).toBeLessThanOrEqual(name === 'maple syrup' ? 6.6 : 0.36);
    }
    if (fibre !== null) expect(c.fibre * 100).toBeGreaterThanOrEqual(Math.min(fibre, carbohydrate - sugarsOf(c) * 100) - 1e-9);
  });

  it('has no column for ethanol: what is missing to 100 is alcohol in spirits and vanilla extract', () => {
    expect(findKind('rum')!.composition!.alcohol * 100).toBeCloseTo(33.39, 2);
    expect(findKind('vanilla extract')!.composition!.alcohol * 100).toBeCloseTo(34.39, 2);
    expect(findKind('sunflower oil')!.composition!.alcohol).toBe(0);
  });

  it('gives flour and starch their starch, where its analysis stops at carbohydrate', () => {
    expect(findKind('plain flour')!.composition!.starch * 100).toBeCloseTo(76.31 - 0.27 - 2.7, 6);
    expect(findKind('corn starch')!.composition!.starch * 100).toBeCloseTo(91.27 - 0.9, 6);
  });

  // SR28, weights of one piece without shell: 01123 whole large 50 g, 01124 white 33 g, 01125 yolk 17 g.
  it('weighs a large egg and its parts', () => {
    expect([findKind('egg')!.piece, findKind('egg white')!.piece, findKind('egg yolk')!.piece]).toEqual([50, 33, 17]);
  });

  // SR28 sodium, mg in 100 g: 01077 43, 01001 714, 01145 11, 02047 38758; salt is sodium x 2.5.
  it.each([
    ['whole milk', 43],
    ['salted butter', 714],
    ['butter', 11],
    ['salt', 38_758],
  ])('holds the salt of %s', (name, sodium) => expect(findKind(name)!.salt).toBeCloseTo((sodium * 2.5) / 1e5, 9));

  // SR28 saturated fatty acids over fat, g in 100 g: 01145 50.489 of 81.11, 01125 9.551 of 26.54, 01053 23.032 of 36.08, 12120 4.464 of 60.75.
  it.each([
    ['butter', 50.489 / 81.11],
    ['egg yolk', 9.551 / 26.54],
    ['heavy cream', 23.032 / 36.08],
    ['hazelnut', 4.464 / 60.75],
  ])('holds the saturated share of %s', (name, share) => expect(findKind(name)!.saturated).toBeCloseTo(share, 2));
});

describe('GNU units', () => {
  /** The program must be there: a check that quietly does not run is none. */
  const units = (from: string, to: string) => Number(execFileSync('units', ['--terse', from, to], { encoding: 'utf8' }));

  /* Left out on purpose: its clarified butter (0.815), cocoa butter (1.08) and shortening (0.81) are of whipped or packed goods, and
   * its brown sugars are packed, ours spooned. */
  it.each([
    ['butter', 'butter', 0.02],
    ['granulated sugar', 'sugar', 0.02],
    ['caster sugar', 'sugar', 0.02],
    ['honey', 'honey', 0.02],
    ['whole milk', 'milk', 0.02],
    ['heavy cream', 'heavycream', 0.02],
    ['sour cream', 'sourcream', 0.03],
    ['sunflower oil', 'oil', 0.03],
    ['corn syrup', 'cornsyrup', 0.02],
    ['molasses', 'molasses', 0.05],
    ['corn starch', 'cornstarch', 0.03],
    ['plain flour', 'flour_spooned', 0.03],
    ['strong flour', 'breadflour_spooned', 0.03],
    ['cake flour', 'cakeflour_spooned', 0.03],
    ['cocoa powder', 'cocoa_spooned', 0.03],
    ['alkalised cocoa powder', 'dutchcocoa_spooned', 0.03],
    ['icing sugar', 'powdered_sugar', 0.03],
    ['salt', 'salt', 0.02],
    ['baking powder', 'baking_powder', 0.03],
    ['whole egg', 'egg / eggvolume', 0.05],
    ['egg white', 'eggwhite / eggwhitevolume', 0.05],
    ['egg yolk', 'eggyolk / eggyolkvolume', 0.05],
  ])('weighs a cup of %s as its %s does', (name, unit, tolerance) => {
    const published = units(unit, 'g/ml');
    expect(Math.abs(findKind(name)!.density! / published - 1)).toBeLessThanOrEqual(tolerance);
  });

  it('agrees on the whole egg and its yolk, within the spread of large eggs', () => {
    expect(findKind('whole egg')!.piece).toBe(units('egg', 'g'));
    expect(Math.abs(findKind('egg yolk')!.piece! - units('eggyolk', 'g'))).toBeLessThanOrEqual(2);
    expect(Math.abs(findKind('egg white')!.piece! - units('eggwhite', 'g'))).toBeLessThanOrEqual(3);
  });
});

// Codex CXS 212-1999 (from memory): dextrose monohydrate, loss on drying at most 10 %; Regulation (EC) 1308/2013: butter at least 80 % fat and at most 16 % water.
it('holds the legal composition of what has one', () => {
  expect(findKind('dextrose')!.composition!.water).toBeLessThanOrEqual(0.1);
  for (const name of ['butter', 'salted butter', 'dry butter'])
    expect(fatOf(findKind(name)!.composition!)).toBeGreaterThanOrEqual(0.8);
  // UK Food Labelling Regulations 1996: single cream 18 %, double 48 %, clotted 55 % fat at least.
  expect(fatOf(findKind('single cream')!.composition!)).toBeGreaterThanOrEqual(0.18);
  expect(fatOf(findKind('double cream')!.composition!)).toBeGreaterThanOrEqual(0.48 - 1e-9);
  expect(fatOf(findKind('clotted cream')!.composition!)).toBeGreaterThanOrEqual(0.55);
  expect(total(findKind('clotted cream')!.composition!)).toBeCloseTo(1, 2);
});
