/** Measures of recipes in English, French and German, one row a measure, and what the notation writes for each. */

export interface MeasureRow {
  /** Unit of the notation; `some` has no mass. */
  readonly unit: string;
  /** How many of the unit one is: a metric spoon of 15 ml is 15 of `ml`. */
  readonly factor: number;
  readonly spellings: readonly string[];
}

const row = (unit: string, factor: number, ...spellings: string[]): MeasureRow => ({ unit, factor, spellings });

/**
 * Spellings in lower case, but where upper case tells two apart. English spoons and cups are US customary, as in the notation
 * (NIST Handbook 44, Appendix C: a stick of butter is 8 tablespoons is common practice, no source; a pint is 2 cups, a quart 4);
 * French and German spoons are metric: 15 ml and 5 ml (common practice, no source). A cup in French or German (tasse, verre,
 * Tasse, Becher) has no agreed size and is no row here.
 */
export const measures: readonly MeasureRow[] = [
  row('mg', 1, 'mg', 'milligram', 'milligrams'),
  row('kg', 1, 'kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes', 'kilogramm'),
  row('g', 1, 'g', 'gr', 'gr.', 'g.', 'gram', 'grams', 'gramme', 'grammes', 'gramm'),
  row('g', 500, 'pfund'),
  row('oz', 1, 'oz', 'oz.', 'ounce', 'ounces'),
  row('lb', 1, 'lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds'),
  row('ml', 1, 'ml', 'mls', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc'),
  row('cl', 1, 'cl', 'centilitre', 'centilitres', 'zentiliter'),
  row('dl', 1, 'dl', 'décilitre', 'décilitres', 'deziliter'),
  row('l', 1, 'l', 'litre', 'litres', 'liter', 'liters', 'ltr'),
  row('floz', 1, 'fl oz', 'fl. oz.', 'fl. oz', 'fluid ounce', 'fluid ounces'),
  row('cup', 1, 'cup', 'cups', 'c'),
  row('cup', 2, 'pint', 'pints'),
  row('cup', 4, 'quart', 'quarts', 'qt'),
  row('tbsp', 8, 'stick', 'sticks'),
  row('tbsp', 1, 'tbsp', 'tbsp.', 'tbsps', 'tbs', 'tbs.', 'tablespoon', 'tablespoons', 'T'),
  row('tsp', 1, 'tsp', 'tsp.', 'tsps', 'teaspoon', 'teaspoons', 't'),
  row(
    'ml',
    15,
    'c. à soupe',
    'c. à s.',
    'c à soupe',
    'c à s',
    'càs',
    'cas',
    'cs',
    'c.s.',
    'cuillère à soupe',
    'cuillères à soupe',
    'cuillerée à soupe',
    'cuillerées à soupe',
    'cuill. à soupe',
    'el',
    'esslöffel',
    'essl.',
  ),
  row(
    'ml',
    5,
    'c. à café',
    'c. à c.',
    'c à café',
    'c à c',
    'càc',
    'cac',
    'cc.',
    'c.c.',
    'cuillère à café',
    'cuillères à café',
    'cuillerée à café',
    'cuillerées à café',
    'cuill. à café',
    'tl',
    'teelöffel',
    'teel.',
  ),
  row(
    'pc',
    1,
    'pc',
    'pcs',
    'piece',
    'pieces',
    'leaf',
    'leaves',
    'sheet',
    'sheets',
    'clove',
    'cloves',
    'feuille',
    'feuilles',
    'gousse',
    'gousses',
    'pièce',
    'pièces',
    'blatt',
    'blätter',
    'stück',
    'stk.',
    'stk',
  ),
  row(
    'some',
    1,
    'pinch',
    'pinches',
    'pinch of',
    'dash',
    'dashes',
    'knob',
    'handful',
    'handfuls',
    'splash',
    'drizzle',
    'pincée',
    'pincées',
    'noix',
    'poignée',
    'trait',
    'filet',
    'prise',
    'prisen',
    'msp.',
    'messerspitze',
    'messerspitzen',
    'schuss',
    'spritzer',
    'handvoll',
  ),
];

/** Words that stand for an amount without a number. */
export const vague: readonly string[] = [
  'some',
  'a little',
  'a few',
  'un peu',
  'quelques',
  'etwas',
  'ein wenig',
  'ein paar',
  'einige',
];

/** The measure the text starts with, and how long it is; the longest spelling counts. */
export function measureAt(text: string): { readonly row: MeasureRow; readonly length: number } | null {
  const lower = text.toLowerCase().replaceAll('’', "'");
  let best: { row: MeasureRow; length: number } | null = null;
  for (const one of measures)
    for (const spelling of one.spellings) {
      // T and t are told apart by case alone.
      const starts = spelling.length === 1 && /t/i.test(spelling) ? text.startsWith(spelling) : lower.startsWith(spelling);
      if (starts && spelling.length > (best?.length ?? 0) && !/^[\p{L}\d]/u.test(text.slice(spelling.length)))
        best = { row: one, length: spelling.length };
    }
  return best;
}
