/** `import-missing`: what `take` or a request asks for is not there. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const importMissing: Rule = {
  code: 'import-missing',
  severities: ['error'],
  title: 'It is not there to be taken',
  why: '`take` brings in a component, a one-component formula, a house ingredient, `equipment` or `prices` that the other file itself declares; what that file took from a third one is not passed on. Paths are relative to the file they stand in.',
  remedy:
    'Correct the path or the name; pick the formula with `#` (`"bases.nappe#Pastry cream"`); take it from the file that declares it.',
  source: 'The notation.',
  examples: {
    bad: `take raspberry sauce from "bases-that-were-moved.nappe" // expect: import-missing

formula Sauce in a glass
  400 g  raspberry sauce
  pour raspberry sauce into glass
`,
    good: `component raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved

formula Sauce in a glass
  400 g  raspberry sauce
  pour raspberry sauce into glass
`,
  },
  message(numbers) {
    const name = quoted(text(numbers, 'name'));
    const path = quoted(text(numbers, 'path'));
    switch (text(numbers, 'what')) {
      case 'file':
        return text(numbers, 'reason') === 'missing'
          ? `There is no file ${path}.`
          : `The file ${path} cannot be read: ${text(numbers, 'why')}.`;
      case 'formula':
        return `${path} has no formula ${name}.${didYouMean(numbers)}${known(text(numbers, 'known'), 'It has')}`;
      case 'block':
        return `${path} has no ${text(numbers, 'name')}.`;
      case 'several formulas':
        return `More than one formula of ${path} has ${name}; pick one with \`#\`: ${text(numbers, 'known')}.`;
      case 'several components':
        return `${name} has more than one component; take the ones you need: ${text(numbers, 'known')}.`;
      case 'no formula':
        return `${path} holds no formula.`;
      case 'which formula':
        return `${path} holds several formulas; pick one: ${text(numbers, 'known')}.`;
      case 'yield':
        return text(numbers, 'problem');
      case 'above':
        return `No formula stands above this \`${text(numbers, 'name')}\`; write which file it is of.`;
      default:
        return `${path} declares no ${name}.${didYouMean(numbers)}`;
    }
  },
};

const known = (names: string, lead: string): string => (names === '' ? '' : ` ${lead}: ${names}.`);
