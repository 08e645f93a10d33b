/** `unknown-unit`: a word after a number that is no unit. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const unknownUnit: Rule = {
  code: 'unknown-unit',
  severities: ['error'],
  title: 'This is no unit',
  why: 'A pinch, a knob or a sachet is a different mass in every kitchen. Units are mg, g, kg, oz, lb, ml, cl, dl, l, tsp, tbsp, cup, floz and pc; `some` stands for what is not weighed.',
  remedy:
    'Weigh it and write grams; write `some` where it does not matter; say how it is prepared in quotes behind the name (`3 pc egg, "large"`).',
  source: 'The notation.',
  examples: {
    bad: `formula Vanilla milk
  500 g     whole milk, 4 °C
  2 sticks  vanilla pod // expect: unknown-unit
  infuse vanilla pod in whole milk for 12 h
  strain
`,
    good: `formula Vanilla milk
  500 g  whole milk, 4 °C
  2 pc   vanilla pod, "whole sticks"
  infuse vanilla pod in whole milk for 12 h
  strain
`,
  },
  message: (numbers) =>
    `${quoted(text(numbers, 'word'))} is no unit, so the amount of ${quoted(text(numbers, 'name'))} is not known.${didYouMean(numbers)}`,
};
