/** Units and all their spellings, one row a unit; a unit word after a number is always its unit, in any case. */

import type { LengthUnit, MassUnit, VolumeUnit } from '../tree.ts';

export type UnitKind = 'mass' | 'volume' | 'piece' | 'percent' | 'temperature' | 'duration' | 'length' | 'brix' | 'bloom';
export type UnitWord = MassUnit | VolumeUnit | LengthUnit | 'pc' | '%' | '°C' | '°F' | 's' | 'min' | 'h' | 'd' | 'brix' | 'bloom';

export interface UnitRow {
  /** As the formatter writes it. */
  readonly word: UnitWord;
  readonly kind: UnitKind;
  /** In grams, millilitres, millimetres or seconds; 1 where the kind has one unit only, 0 for temperatures. */
  readonly factor: number;
  readonly meaning: string;
  /** Other spellings, in lower case. */
  readonly spellings: readonly string[];
}

/**
 * Avoirdupois pound and ounce: International Yard and Pound Agreement 1959 (exact).
 * US customary volumes: NIST Handbook 44, Appendix C (the US gallon is exactly 231 cubic inches).
 */
export const units: readonly UnitRow[] = [
  unit('mg', 'mass', 0.001, 'milligram', 'milligram', 'milligrams', 'mgs'),
  unit('g', 'mass', 1, 'gram', 'gram', 'grams', 'gramme', 'grammes', 'gr', 'grs', 'gm', 'gms', 'gs'),
  unit('kg', 'mass', 1000, 'kilogram', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'),
  unit('oz', 'mass', 28.349523125, 'avoirdupois ounce', 'ozs', 'ounce', 'ounces'),
  unit('lb', 'mass', 453.59237, 'avoirdupois pound', 'lbs', 'pound', 'pounds'),
  unit('ml', 'volume', 1, 'millilitre', 'mls', 'milliliter', 'milliliters', 'millilitre', 'millilitres', 'cc'),
  unit('cl', 'volume', 10, 'centilitre', 'cls', 'centiliter', 'centiliters', 'centilitre', 'centilitres'),
  unit('dl', 'volume', 100, 'decilitre', 'dls', 'deciliter', 'deciliters', 'decilitre', 'decilitres'),
  unit('l', 'volume', 1000, 'litre', 'lt', 'ltr', 'ltrs', 'liter', 'liters', 'litre', 'litres'),
  unit('tsp', 'volume', 4.92892159375, 'US teaspoon', 'tsps', 'teaspoon', 'teaspoons'),
  unit('tbsp', 'volume', 14.78676478125, 'US tablespoon', 'tbsps', 'tbs', 'tblsp', 'tablespoon', 'tablespoons'),
  unit('cup', 'volume', 236.5882365, 'US cup', 'cups'),
  unit(
    'floz',
    'volume',
    29.5735295625,
    'US fluid ounce',
    'fl oz',
    'fl. oz',
    'fluid ounce',
    'fluid ounces',
    'fl ounce',
    'fl ounces',
    'flozs',
  ),
  unit('pc', 'piece', 1, 'piece', 'pcs', 'pce', 'pces', 'piece', 'pieces'),
  unit('%', 'percent', 1, 'per cent', 'percent', 'pct'),
  unit(
    '°C',
    'temperature',
    0,
    'degree Celsius',
    'c',
    'ºc',
    '℃',
    'degc',
    'deg c',
    'degree c',
    'degrees c',
    'celsius',
    'deg celsius',
    'degree celsius',
    'degrees celsius',
    'centigrade',
    'degrees centigrade',
  ),
  unit(
    '°F',
    'temperature',
    0,
    'degree Fahrenheit',
    'f',
    'ºf',
    '℉',
    'degf',
    'deg f',
    'degree f',
    'degrees f',
    'fahrenheit',
    'deg fahrenheit',
    'degree fahrenheit',
    'degrees fahrenheit',
  ),
  unit('s', 'duration', 1, 'second', 'sec', 'secs', 'second', 'seconds'),
  unit('min', 'duration', 60, 'minute', 'mins', 'minute', 'minutes', 'mn'),
  unit('h', 'duration', 3600, 'hour', 'hr', 'hrs', 'hour', 'hours'),
  unit('d', 'duration', 86400, 'day', 'day', 'days'),
  unit('mm', 'length', 1, 'millimetre', 'millimeter', 'millimeters', 'millimetre', 'millimetres'),
  unit('cm', 'length', 10, 'centimetre', 'cms', 'centimeter', 'centimeters', 'centimetre', 'centimetres'),
  unit('m', 'length', 1000, 'metre', 'meter', 'meters', 'metre', 'metres'),
  unit('brix', 'brix', 1, 'degree Brix', '°brix', '°bx', 'bx', 'degrees brix', 'degree brix', 'deg brix'),
  unit('bloom', 'bloom', 1, 'bloom, the strength of gelatin', '°bloom', 'degrees bloom'),
];

/** `overnight` as a range of seconds: 8 to 14 hours. */
export const overnight = { low: 8 * 3600, high: 14 * 3600 } as const;

function unit(word: UnitWord, kind: UnitKind, factor: number, meaning: string, ...spellings: string[]): UnitRow {
  return { word, kind, factor, meaning, spellings };
}
