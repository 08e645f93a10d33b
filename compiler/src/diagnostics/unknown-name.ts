/** `unknown-name`: a step names what nothing declares. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const unknownName: Rule = {
  code: 'unknown-name',
  severities: ['error'],
  title: 'Nothing here has this name',
  why: 'A step acts on ingredient lines of its block, on what an earlier step named with `as`, or on a component. Names are compared whole, without regard to capitals and spaces; no plural is guessed.',
  remedy: 'Write the name as the ingredient line or `as` has it, weigh the ingredient, or take the component from its file.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  add lemon juice // expect: unknown-name
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
    8 g  lemon juice
  stir raspberry purée, caster sugar until dissolved
  add lemon juice
`,
  },
  message: (numbers) =>
    numbers.guarded === true
      ? `${quoted(text(numbers, 'name'))} is weighed only in other choices, so it is not there for this step.`
      : `Nothing here is called ${quoted(text(numbers, 'name'))}.${didYouMean(numbers)}`,
};
