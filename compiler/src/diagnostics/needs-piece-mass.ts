/** `needs-piece-mass`: pieces that cannot become grams. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const needsPieceMass: Rule = {
  code: 'needs-piece-mass',
  severities: ['error'],
  title: 'What a piece weighs is not known',
  why: 'Every figure after the ingredient line rests on grams. A number without a unit means pieces, and pieces become grams only where the catalogue or an `ingredient` block says what one weighs.',
  remedy: 'Weigh it and write grams, or say what one weighs in an `ingredient` block (`each 18 g`).',
  source: 'The notation.',
  examples: {
    bad: `ingredient sugar heart
  sucrose 100 %
  phase solid

formula Hearts and sauce
  400 g  raspberry purée, pasteurised, 4 °C
  12 pc  sugar heart // expect: needs-piece-mass
  pour raspberry purée into dish
  garnish with sugar heart
`,
    good: `ingredient sugar heart
  sucrose 100 %
  phase solid
  each 9 g

formula Hearts and sauce
  400 g  raspberry purée, pasteurised, 4 °C
  12 pc  sugar heart
  pour raspberry purée into dish
  garnish with sugar heart
`,
  },
  message: (numbers) =>
    `What one piece of ${quoted(text(numbers, 'name'))} weighs is not known, so the pieces cannot become grams.`,
};
