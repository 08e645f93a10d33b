/** `wrong-clause`: a clause that the verb does not take, or takes once. */
import type { Rule } from './rule.ts';
import { text } from './words.ts';

export const wrongClause: Rule = {
  code: 'wrong-clause',
  severities: ['error'],
  title: 'The verb does not take this clause',
  why: 'A clause means something only with the verbs it belongs to: `to 4 °C` ends a cooling, but nothing about straining. Each clause stands once, because two readings for one step leave open which holds.',
  remedy:
    'Leave the clause out, write it with the step it belongs to, or use the verb the message names (`add butter` for `whisk in butter`).',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  strain at 20 °C // expect: wrong-clause
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  strain with sieve
`,
  },
  message: (numbers) => text(numbers, 'message') || 'This step does not take this clause.',
};
