/** `syntax`: a line that is no notation. */
import type { Rule } from './rule.ts';
import { text } from './words.ts';

export const syntax: Rule = {
  code: 'syntax',
  severities: ['error'],
  title: 'The line is not notation',
  why: 'Each line says one thing: a block word opens a block, a quantity an ingredient line, a verb a step, a header word a header, `|` a note. A line that is none of these, or stops making sense on its way, is not guessed at; the lines around it keep their meaning.',
  remedy:
    'Write what the message says was expected here. Free text goes into a note line (`| …`), a comment (`// …`) or `do "…"`.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  gently does it // expect: syntax
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
    | Gently does it.
`,
  },
  message: (numbers) => text(numbers, 'message') || 'This line is not notation.',
};
