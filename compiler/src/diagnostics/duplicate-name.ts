/** `duplicate-name`: two things of one name in one scope. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const duplicateName: Rule = {
  code: 'duplicate-name',
  severities: ['error'],
  title: 'The name is taken',
  why: 'A step that names one of two things of the same name could mean either, and a cook reading it aloud could too. Two lines may share a name only where no combination of choices has both.',
  remedy:
    'Give the second one a name of its own with `as` (`90 g caster sugar, as yolk sugar`), or put both amounts on one line.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   40 g  caster sugar
   20 g  caster sugar // expect: duplicate-name
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   40 g  caster sugar
   20 g  caster sugar, as last sugar
  stir raspberry purée, caster sugar until dissolved
  add last sugar
`,
  },
  message: (numbers) =>
    numbers.override === true
      ? `${quoted(text(numbers, 'name'))} already has its own value in these parentheses.`
      : `Something else here is already called ${quoted(text(numbers, 'name'))}.`,
};
