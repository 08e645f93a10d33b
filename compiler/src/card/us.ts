/** US customary measures: cups and spoons by volume, ounces and pounds by mass (NIST Handbook 44, App. C). */
import { gramsPer, millilitresPer } from '../quantities/units.ts';
import type { Language } from './languages/language.ts';

type NumberFormat = (value: number, digits?: number) => string;

/** `0.35 oz`, `9.6 oz`, `1 lb 0.9 oz`: to a hundredth below one ounce, a tenth above. */
export function usMass(grams: number, language: Language, number: NumberFormat): string {
  const { oz, lb } = language.units;
  const ounces = grams / gramsPer.oz;
  if (ounces < 1) return `${number(ounces, 2)} ${oz}`;
  const tenths = Math.round(ounces * 10);
  if (tenths < 160) return `${number(tenths / 10, 1)} ${oz}`;
  const pounds = Math.floor(tenths / 160);
  const rest = tenths - pounds * 160;
  return rest === 0 ? `${number(pounds, 0)} ${lb}` : `${number(pounds, 0)} ${lb} ${number(rest / 10, 1)} ${oz}`;
}

/**
 * The nearest measure a cook can take with a set of cups and spoons: `1 2/3 cup`, `2 cup + 1 tbsp`, `1 1/2 tsp`. Off by at most
 * half a tablespoon from a quarter cup up, half a quarter teaspoon below.
 */
export function usVolume(millilitres: number, language: Language, number: NumberFormat): string {
  const { tsp, tbsp, cup } = language.units;
  if (millilitres < millilitresPer.tsp / 8) return `< 1/8 ${tsp}`;
  if (millilitres < millilitresPer.tbsp * 0.98)
    return `${mixed(nearest(millilitres / millilitresPer.tsp, spoonFractions), number)} ${tsp}`;
  if (millilitres < (millilitresPer.cup / 4) * 0.97) {
    const half = nearest(millilitres / millilitresPer.tbsp, [0, 0.5, 1]);
    return `${mixed(half, number)} ${tbsp}`;
  }
  const cups = millilitres / millilitresPer.cup;
  const plain = nearest(cups, cupFractions);
  if (Math.abs(plain - cups) / cups <= 0.02) return `${mixed(plain, number)} ${cup}`;
  const below = floor(cups, cupFractions);
  const spoons = Math.round(((cups - below) * millilitresPer.cup) / millilitresPer.tbsp);
  return spoons === 0 ? `${mixed(below, number)} ${cup}` : `${mixed(below, number)} ${cup} + ${number(spoons, 0)} ${tbsp}`;
}

const spoonFractions: readonly number[] = [0, 1 / 8, 1 / 4, 1 / 2, 3 / 4, 1];
const cupFractions: readonly number[] = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1];

function nearest(value: number, fractions: readonly number[]): number {
  const whole = Math.floor(value);
  const rest = value - whole;
  return whole + fractions.reduce((best, fraction) => (Math.abs(fraction - rest) < Math.abs(best - rest) ? fraction : best));
}

function floor(value: number, fractions: readonly number[]): number {
  const whole = Math.floor(value);
  return whole + Math.max(...fractions.filter((fraction) => fraction <= value - whole + 1e-9));
}

function mixed(value: number, number: NumberFormat): string {
  const whole = Math.floor(value + 1e-9);
  const rest = value - whole;
  for (const [over, under] of [
    [1, 8],
    [1, 4],
    [1, 3],
    [1, 2],
    [2, 3],
    [3, 4],
  ] as const) {
    if (Math.abs(over / under - rest) < 1e-6) return whole === 0 ? `${over}/${under}` : `${number(whole, 0)} ${over}/${under}`;
  }
  return number(whole, 0);
}
