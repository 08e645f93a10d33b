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
    bad: `formula Raspberry sauce
  400 g    raspberry purée, pasteurised, 4 °C
  1 pinch  caster sugar // expect: unknown-unit
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
  some   caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
  },
  message: (numbers) =>
    `${quoted(text(numbers, 'word'))} is no unit, so the amount of ${quoted(text(numbers, 'name'))} is not known.${didYouMean(numbers)}`,
};
