/** `range-reversed`: the larger end of a range stands first. */
import type { Rule } from './rule.ts';
import { text } from './words.ts';

export const rangeReversed: Rule = {
  code: 'range-reversed',
  severities: ['error'],
  title: 'The range runs backwards',
  why: 'A range is read from its lower to its upper end. Written the other way round it is as often a slip of a digit as of the order, so it is not turned silently. Ranges below zero are read either way.',
  remedy: 'Write the lower end first.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  heat raspberry purée, caster sugar to 65-60 °C // expect: range-reversed
  cool in ice bath to 4 °C for 20 min
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  heat raspberry purée, caster sugar to 60-65 °C
  cool in ice bath to 4 °C for 20 min
`,
  },
  message: (numbers) => text(numbers, 'message') || 'The larger end of this range stands first.',
};
