/** The words that open a header line of a formula, one row a word. */

import type { HeaderLine } from '../tree.ts';

export type HeaderWord = HeaderLine['word'];

export interface HeaderRow {
  readonly word: HeaderWord;
  readonly meaning: string;
  readonly example: string;
  /** May end in `when` or `unless`. */
  readonly guarded: boolean;
  /** Also stands in a component. */
  readonly inComponent: boolean;
  readonly template: string;
  /** Where the value is one of a few words. */
  readonly values?: readonly string[];
}

export const headers: readonly HeaderRow[] = [
  {
    word: 'by',
    meaning: 'Who wrote the formula; free text to the end of the line.',
    example: 'by Harbour Road evening school',
    guarded: false,
    inComponent: false,
    template: 'by <name>',
  },
  {
    word: 'version',
    meaning: 'Which edition of the formula this is.',
    example: 'version 4',
    guarded: false,
    inComponent: false,
    template: 'version <1>',
  },
  {
    word: 'makes',
    meaning: 'The yield: a mass, a volume, or a number of pieces and their size.',
    example: 'makes 12 glasses of 100 ml',
    guarded: true,
    inComponent: false,
    template: 'makes <12 glasses> of <100 ml>',
  },
  {
    word: 'choice',
    meaning: 'A choice the formula leaves open; the first value is the default.',
    example: 'choice serving: glass, mould, cut',
    guarded: false,
    inComponent: false,
    template: 'choice <name>: <first>, <second>',
  },
  {
    word: 'served',
    meaning: 'The temperature at which it is served.',
    example: 'served at 4-6 °C',
    guarded: true,
    inComponent: false,
    template: 'served at <4-6 °C>',
  },
  {
    word: 'keeps',
    meaning: 'How long it keeps, and at what temperature.',
    example: 'keeps 2 d at 0-4 °C',
    guarded: true,
    inComponent: false,
    template: 'keeps <2 d> at <0-4 °C>',
  },
  {
    word: 'free',
    meaning: 'Allergens that are not in it; the checker holds the formula to that.',
    example: 'free from nuts',
    guarded: false,
    inComponent: false,
    template: 'free from <nuts>',
  },
  {
    word: 'gelatin',
    meaning: 'How gelatin grades are compared: by concentration (the default) or by strength.',
    example: 'gelatin by strength',
    guarded: false,
    inComponent: false,
    template: 'gelatin by <concentration|strength>',
    values: ['concentration', 'strength'],
  },
  {
    word: 'tagged',
    meaning: 'Free words about the formula; the checker knows children, pregnant and hospital.',
    example: 'tagged children',
    guarded: false,
    inComponent: false,
    template: 'tagged <children>',
    values: ['children', 'pregnant', 'hospital'],
  },
  {
    word: 'basis',
    meaning: 'What 100 % is: the total (the default), or one ingredient line.',
    example: 'basis total',
    guarded: false,
    inComponent: true,
    template: 'basis <total>',
  },
  {
    word: 'loss',
    meaning: 'What is lost between weighing and serving, in per cent.',
    example: 'loss 5 %',
    guarded: true,
    inComponent: true,
    template: 'loss <5> %',
  },
];
