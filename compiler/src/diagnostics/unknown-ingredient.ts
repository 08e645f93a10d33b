/** `unknown-ingredient`: nothing is known of what a line weighs out. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const unknownIngredient: Rule = {
  code: 'unknown-ingredient',
  severities: ['notice'],
  title: 'This ingredient is in no catalogue',
  why: 'Without its composition nothing can be said of its fat, sugar, water or allergens. Everything that does not need them is still checked, and the card counts it as not known.',
  remedy: 'Say what it is like (`is KIND`), or describe it in an `ingredient` block. Brand names belong there too.',
  source: 'The catalogue.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   20 g  saltmarsh cordial // expect: unknown-ingredient
  stir raspberry purée, saltmarsh cordial until smooth
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   20 g  saltmarsh cordial, is caster sugar
  stir raspberry purée, saltmarsh cordial until smooth
`,
  },
  message: (numbers) =>
    text(numbers, 'kind') === ''
      ? `No catalogue knows ${quoted(text(numbers, 'name'))}, so what is in it is not known.${didYouMean(numbers)}`
      : `No catalogue knows ${quoted(text(numbers, 'kind'))}, so what is in ${quoted(text(numbers, 'name'))} is not known.${didYouMean(numbers)}`,
};
