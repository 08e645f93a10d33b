/** Numbers as a card prints them: metric, US customary, or both, in a language's number format. */

import { withoutZeros } from '../quantities/format.ts';
import type { Interval } from '../quantities/interval.ts';
import { scaleGrams } from '../scale/rounding.ts';
import type { Degrees, Language } from './languages/language.ts';
import { usMass, usVolume } from './us.ts';

export type Units = 'metric' | 'us' | 'both';

export interface Measures {
  readonly units: Units;
  number(value: number, digits?: number): string;
  /** As a scale shows it: `480 g`; in US units `1 lb 0.9 oz`. */
  mass(grams: number): string;
  /** A computed mass, to three figures: `about` is the reader's to add. */
  roughMass(grams: number): string;
  volume(millilitres: number): string;
  /** Cups and spoons, where the density in g/ml is known; null else. */
  cups(grams: number, density: number | null): string | null;
  temperature(celsius: Interval): string;
  readonly degrees: Degrees;
  duration(seconds: Interval): string;
  length(millimetres: Interval): string;
  /** Lengths of a mould joined by ×. */
  dimensions(millimetres: readonly number[]): string;
  percent(value: number, digits?: number): string;
}

export function measuresFor(language: Language, units: Units): Measures {
  const number = (value: number, digits = 2): string => formatNumber(value, digits, language.decimal);
  const dual = (metric: string, us: string): string => (units === 'metric' ? metric : units === 'us' ? us : `${metric} / ${us}`);
  const span = (low: number, high: number, digits: number): string => {
    const [a, b] = [number(low, digits), number(high, digits)];
    return a === b ? a : low < 0 || high < 0 ? `${a}…${b}` : `${a}–${b}`;
  };
  const reading = (x: Interval): string => {
    const one = (unit: string, convert: (celsius: number) => number, digits: number): string => {
      if (x.low === Number.NEGATIVE_INFINITY) return language.below(`${number(convert(x.high), digits)} ${unit}`);
      if (x.high === Number.POSITIVE_INFINITY) return language.above(`${number(convert(x.low), digits)} ${unit}`);
      return `${span(convert(x.low), convert(x.high), digits)} ${unit}`;
    };
    return dual(
      one('°C', roundedCelsius, 1),
      one('°F', (c) => (c * 9) / 5 + 32, 0),
    );
  };
  const lengths = (values: readonly number[], joiner: string): string => {
    const metric = values.every((mm) => mm < 10)
      ? `${values.map((mm) => number(mm, 1)).join(joiner)} mm`
      : `${values.map((mm) => number(mm / 10, 2)).join(joiner)} cm`;
    return dual(metric, `${values.map((mm) => number(mm / 25.4, mm < 25.4 ? 2 : 1)).join(joiner)} in`);
  };
  return {
    units,
    number,
    mass: (grams) => dual(`${number(scaleGrams(grams))} g`, usMass(grams, language, number)),
    roughMass: (grams) => {
      const rough = grams >= 10 ? Math.round(Number(grams.toPrecision(3))) : Number(grams.toPrecision(2));
      return dual(rough >= 1000 ? `${number(rough / 1000)} kg` : `${number(rough)} g`, usMass(rough, language, number));
    },
    volume: (millilitres) => {
      const rough = Number(millilitres.toPrecision(3));
      return dual(
        rough >= 1000 ? `${number(rough / 1000, 2)} l` : `${number(rough, 1)} ml`,
        usVolume(millilitres, language, number),
      );
    },
    cups: (grams, density) => (density === null || density <= 0 ? null : usVolume(grams / density, language, number)),
    temperature: reading,
    degrees: (low, high = low) => reading({ low, high }),
    duration: (seconds) => duration(seconds, language, number),
    length: (x) => (x.low === x.high ? lengths([x.low], '') : lengths([x.low, x.high], '–')),
    dimensions: (values) => lengths(values, ' × '),
    percent: (value, digits = 1) => `${number(value, digits)} %`,
  };
}

/** What a formula writes in half degrees stays; what was converted from °F is given to the degree, finer than a kitchen's thermometer. */
const roundedCelsius = (celsius: number): number =>
  Math.abs(celsius * 2 - Math.round(celsius * 2)) < 1e-6 ? celsius : Math.round(celsius);

/** Thin spaces between thousands from 10 000 on (ISO 80000-1, 7.3.1), no trailing zeros. */
function formatNumber(value: number, digits: number, decimal: '.' | ','): string {
  const fixed = Math.abs(value).toFixed(digits);
  const [whole = '0', part] = withoutZeros(fixed).split('.');
  const grouped = whole.length < 5 ? whole : byThrees(whole).join('\u202f');
  const body = part === undefined ? grouped : `${grouped}${decimal}${part}`;
  return value < 0 && Number(fixed) !== 0 ? `−${body}` : body;
}

/** `12345` → `12`, `345`. */
function byThrees(digits: string): readonly string[] {
  const groups: string[] = [];
  for (let end = digits.length; end > 0; end -= 3) groups.unshift(digits.slice(Math.max(0, end - 3), end));
  return groups;
}

function duration(x: Interval, language: Language, number: (value: number, digits?: number) => string): string {
  if (x.low === 8 * 3600 && x.high === 14 * 3600) return language.overnight(`8–14 ${language.units.h}`);
  if (x.low === x.high) return oneDuration(x.low, language, number);
  const [low, high] = [divisorOf(x.low), divisorOf(x.high)];
  if (low !== high) return `${oneDuration(x.low, language, number)}–${oneDuration(x.high, language, number)}`;
  const figure = `${number(x.low / low, 1)}–${number(x.high / low, 1)}`;
  return low === 86_400 ? language.days(figure, false) : `${figure} ${unitOf(low, language)}`;
}

function oneDuration(seconds: number, language: Language, number: (value: number, digits?: number) => string): string {
  const divisor = divisorOf(seconds);
  const { h, min } = language.units;
  if (divisor === 3600 && seconds % 3600 !== 0) {
    const minutes = Math.round(seconds / 60);
    return minutes % 60 === 0 ? `${minutes / 60} ${h}` : `${Math.floor(minutes / 60)} ${h} ${minutes % 60} ${min}`;
  }
  const figure = number(seconds / divisor, divisor === 60 ? 1 : 0);
  return divisor === 86_400 ? language.days(figure, figure === '1') : `${figure} ${unitOf(divisor, language)}`;
}

/** Whole days are said in days from two on: `24 h` is a day's rest, `2 days` is keeping. */
const divisorOf = (seconds: number): 1 | 60 | 3600 | 86_400 =>
  seconds >= 36 * 3600 && seconds % 86_400 === 0 ? 86_400 : seconds < 60 ? 1 : seconds < 3600 ? 60 : 3600;

const unitOf = (divisor: 1 | 60 | 3600, { units }: Language): string =>
  divisor === 1 ? units.s : divisor === 60 ? units.min : units.h;
