/** `unknown-choice`: a value that no choice declares. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const unknownChoice: Rule = {
  code: 'unknown-choice',
  severities: ['error'],
  title: 'No choice has this value',
  why: '`when`, `unless` and the values in parentheses name values that a `choice` header declares. A value nobody declares is never in force, so the line or amount would silently never count. The parentheses behind one quantity hold values of one choice.',
  remedy: 'Write the value as the `choice` header has it, or declare it there.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  choice serving: glass, jar
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  pour into glass   when glas // expect: unknown-choice
`,
    good: `formula Raspberry sauce
  choice serving: glass, jar
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  pour into glass   when glass
  pour into jar     when jar
`,
  },
  message(numbers) {
    const value = quoted(text(numbers, 'value'));
    if (text(numbers, 'expected') !== '')
      return `${value} is a value of ${quoted(text(numbers, 'choice'))}; these parentheses hold values of ${quoted(text(numbers, 'expected'))}.`;
    const declared = text(numbers, 'declared');
    return declared === ''
      ? `${value} is no value of a choice: none is declared here.`
      : `${value} is no value of a choice here.${didYouMean(numbers)} There are: ${declared}.`;
  },
};
