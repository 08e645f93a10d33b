/** `unused-ingredient`: nothing of a line, or of a component, is ever used. */
import type { Rule } from './rule.ts';
import { grams, number, quoted, text } from './words.ts';

export const unusedIngredient: Rule = {
  code: 'unused-ingredient',
  severities: ['warning'],
  title: 'It is never used',
  why: 'An ingredient that no step uses is bought and weighed for nothing, or a step is missing. It still counts for allergens and cost, so it is better said than left.',
  remedy: 'Use it in a step, or take the line out.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
    8 g  lemon juice // expect: unused-ingredient
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
    8 g  lemon juice
  stir raspberry purée, caster sugar, lemon juice until dissolved
`,
  },
  message: (numbers) =>
    number(numbers, 'weighed') > 0
      ? `${quoted(text(numbers, 'name'))} is ${numbers.component === true ? 'made' : 'weighed'} (${grams(numbers, 'weighed')}) but never used.`
      : `${quoted(text(numbers, 'name'))} is never used.`,
};
