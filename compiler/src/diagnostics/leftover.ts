/** `leftover`: part of what is weighed is never used. */
import type { Rule } from './rule.ts';
import { grams, number, quoted, text } from './words.ts';

export const leftover: Rule = {
  code: 'leftover',
  severities: ['warning'],
  title: 'Something is left over',
  why: 'What is weighed and never used is waste, or a step that was forgotten. Remainders under 2 g or 2 % of the line are left in peace, and so is what was strained out, drained or used for dusting and greasing.',
  remedy: 'Weigh less, use the rest (`rest of NAME`), or say that it goes: `discard NAME`.',
  source: 'Common practice, no source, for the 2 g and 2 %.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar // expect: leftover
  stir raspberry purée, 40 g of caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, 59 g of caster sugar until dissolved
`,
  },
  message: (numbers) =>
    numbers.made === true && number(numbers, 'left') >= 0.98 * number(numbers, 'weighed')
      ? `No step takes up the ${grams(numbers, 'left')} of ${quoted(text(numbers, 'name'))} that this one leaves.`
      : `${grams(numbers, 'left')} of ${quoted(text(numbers, 'name'))} is never used (${grams(numbers, 'weighed')} is there).`,
};
