/** `needs-mass`: percentages with nothing that sets the size. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const needsMass: Rule = {
  code: 'needs-mass',
  severities: ['error'],
  title: 'Nothing says how much there is',
  why: 'Percentages are shares of something. Where no line of the component is in grams, its size comes from the line that uses it (`200 g NAME`) or from a `makes` that gives a mass, a volume or a mould; with `each`, from a `makes` that counts pieces.',
  remedy: 'Write what it makes (`makes 1.2 kg`), one line in grams, or the grams taken where it is used.',
  source: 'Arithmetic.',
  examples: {
    bad: `formula Raspberry sauce // expect: needs-mass
  88 %  raspberry purée, pasteurised, 4 °C
  12 %  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  makes 460 g
  88 %  raspberry purée, pasteurised, 4 °C
  12 %  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
  },
  message: (numbers) =>
    numbers.each === true
      ? 'This is weighed for each piece, but no `makes` counts pieces.'
      : `${quoted(text(numbers, 'name'))} is all percentages, and nothing says how much of it there is.`,
};
