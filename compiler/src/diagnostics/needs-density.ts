/** `needs-density`: a volume that cannot become grams. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const needsDensity: Rule = {
  code: 'needs-density',
  severities: ['error'],
  title: 'This volume cannot become grams',
  why: 'A cup of flour weighs half a cup of honey. A volume becomes grams through the density of the ingredient as it is measured out; composition alone does not give that of a powder, and a wrong guess would be wrong in every figure after it.',
  remedy: 'Weigh it and write grams, or give the density in an `ingredient` block (`density 0.55 g/ml`).',
  source: 'Physics: mass = volume × density.',
  examples: {
    bad: `formula Raspberry sauce
  400 g   raspberry purée, pasteurised, 4 °C
  20 ml   harbour sugar // expect: needs-density
  stir raspberry purée, harbour sugar until dissolved

ingredient harbour sugar
  sucrose 100 %
  phase crystal
`,
    good: `formula Raspberry sauce
  400 g   raspberry purée, pasteurised, 4 °C
  20 ml   harbour sugar
  stir raspberry purée, harbour sugar until dissolved

ingredient harbour sugar
  sucrose 100 %
  phase crystal
  density 0.85 g/ml
`,
  },
  message: (numbers) =>
    numbers.component === true
      ? `${quoted(text(numbers, 'name'))} is a component; what a volume of it weighs is not known beforehand. Write grams.`
      : `The density of ${quoted(text(numbers, 'name'))} is not known, so ${text(numbers, 'unit')} cannot become grams.`,
};
