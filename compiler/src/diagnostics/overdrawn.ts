/** `overdrawn`: uses add up to more than is weighed. */
import type { Rule } from './rule.ts';
import { grams, quoted, text } from './words.ts';

export const overdrawn: Rule = {
  code: 'overdrawn',
  severities: ['error'],
  title: 'More is used than is weighed',
  why: 'The grams that steps take from an ingredient line or a component cannot add up to more than it holds.',
  remedy: 'Weigh more of it, or take less; `rest of NAME` takes whatever is left.',
  source: 'Arithmetic.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir 450 g of raspberry purée, caster sugar until dissolved // expect: overdrawn
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir 400 g of raspberry purée, caster sugar until dissolved
`,
  },
  message: (numbers) =>
    `${quoted(text(numbers, 'name'))}: ${grams(numbers, 'weighed')} is there, ${grams(numbers, 'taken')} is taken in all, ${grams(numbers, 'over')} too much.`,
};
