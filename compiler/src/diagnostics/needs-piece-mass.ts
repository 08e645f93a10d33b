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
    bad: `ingredient quay biscuit
  like plain flour
  phase solid

formula Biscuits and sauce
  400 g  raspberry purée, pasteurised, 4 °C
  12 pc  quay biscuit // expect: needs-piece-mass
  pour raspberry purée into dish
  garnish with quay biscuit
`,
    good: `ingredient quay biscuit
  like plain flour
  phase solid
  each 9 g

formula Biscuits and sauce
  400 g  raspberry purée, pasteurised, 4 °C
  12 pc  quay biscuit
  pour raspberry purée into dish
  garnish with quay biscuit
`,
  },
  message: (numbers) =>
    `What one piece of ${quoted(text(numbers, 'name'))} weighs is not known, so the pieces cannot become grams.`,
};
