/** Checks of the starch table against measured ranges and the trade's rule. */
import { expect, test } from 'vitest';
import { cookedFrom, starches } from './starch.ts';

test('rice by calorimetry, 11 cultivars: onset 56-71, end 69-82 °C (abstract): our range lies among them', () => {
  expect(starches.rice.gelatinisation.low).toBeGreaterThan(56.4);
  expect(starches.rice.gelatinisation.high).toBeLessThan(82);
});

test('a starch counts as cooked only above its gelatinisation and pasting', () => {
  for (const row of Object.values(starches)) {
    expect(cookedFrom(row.class, false)).toBeGreaterThan(row.gelatinisation.high);
    if (row.pasting) expect(cookedFrom(row.class, false)).toBeGreaterThan(row.pasting.high - 1e-9);
  }
});

test('root starches thicken colder than cereal ones (pasting: potato 60-65, corn 75-80, wheat 80-85 °C)', () => {
  expect(starches.potato.pasting!.high).toBeLessThan(starches.corn.pasting!.low);
  expect(cookedFrom('root', false)).toBeLessThan(cookedFrom('cereal', false));
});

test('Figoni, and Lowe: a starch custard with yolk must come near the boil, whatever the starch', () => {
  expect(cookedFrom('root', true)).toBe(88);
  expect(cookedFrom('cereal', true)).toBe(93);
});
