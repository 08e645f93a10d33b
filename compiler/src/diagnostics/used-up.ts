/** `used-up`: a step needs matter that went elsewhere. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const usedUp: Rule = {
  code: 'used-up',
  severities: ['error'],
  title: 'It is used up',
  why: 'Matter is used once. What was combined with other things no longer exists by itself; its name goes with it, unless the step put the others into it (`into NAME`).',
  remedy: 'Name the mixture it went into, keep a part back (`reserve 40 g of NAME as NAME`), or weigh it on two lines.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  add caster sugar // expect: used-up
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, half of caster sugar until dissolved
  add rest of caster sugar
`,
  },
  message(numbers) {
    const gone = `Nothing is left of ${quoted(text(numbers, 'name'))} at this step`;
    if (typeof numbers.now !== 'string') return `${gone}.`;
    return numbers.now === ''
      ? `${gone}: it is in a mixture that has no name. Give it one where it is mixed, with \`as\`.`
      : `${gone}: it is in the ${quoted(numbers.now)} now.`;
  },
};
