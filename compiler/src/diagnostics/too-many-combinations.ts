/** `too-many-combinations`: not every combination of choices is checked. */
import { formatNumber } from '../quantities/format.ts';
import type { Rule } from './rule.ts';
import { number } from './words.ts';

export const tooManyCombinations: Rule = {
  code: 'too-many-combinations',
  severities: ['notice'],
  title: 'Not every combination of choices is checked',
  why: 'A formula is run once for each combination of its choices. Above 64 combinations only as many are run as it takes for every pair of values of two choices to occur together; a fault that needs three choices at once may then be missed.',
  remedy: 'Check the combinations you serve by name (`nappe check --with VALUE,…`), or split the formula.',
  source:
    'Common practice of combination testing: most faults need one or two values (Kuhn, Wallace & Gallo 2004, IEEE Transactions on Software Engineering 30, from memory).',
  examples: {
    bad: `formula Raspberry sauce
  choice a: a one, a two, a three // expect: too-many-combinations
  choice b: b one, b two, b three
  choice c: c one, c two, c three
  choice d: d one, d two, d three
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  choice a: a one, a two, a three
  choice b: b one, b two, b three
  choice c: c one, c two, c three
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
  },
  message: (numbers) =>
    `There are ${formatNumber(number(numbers, 'combinations'), 0)} combinations of choices; ${formatNumber(number(numbers, 'checked'), 0)} are checked, ${
      numbers.pairs === true ? 'with every pair of values among them' : 'with every value among them'
    }.`,
};
