/** `used-before-made`: a step needs matter that is not there yet. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const usedBeforeMade: Rule = {
  code: 'used-before-made',
  severities: ['error'],
  title: 'It is not there yet',
  why: 'Steps run from top to bottom. A step without a name acts on what the step above left; at the start of a block nothing has been left yet. Components are made in the order they are needed, so none may need itself.',
  remedy: 'Name what the step acts on, say what it goes into (`into NAME`), or move the step below the one that makes it.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir until smooth // expect: used-before-made
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
  stir until smooth
`,
  },
  message(numbers) {
    const name = text(numbers, 'name');
    if (numbers.circle === true) return `${quoted(name)} draws on this block, so this block cannot draw on it.`;
    if (numbers.itself === true) return `${quoted(name)} cannot be put into itself; say what it goes into.`;
    if (name !== '') return `${quoted(name)} is not there yet at this step.`;
    const into = text(numbers, 'into');
    const coat = text(numbers, 'coat');
    if (coat !== '') {
      const how = into === '' ? '' : `, as in \`${text(numbers, 'verb')} ${into} with ${coat}\``;
      return `A step without a name works on what the step above left, and that is the ${quoted(coat)} itself. Name what it goes on${how}.`;
    }
    return `Nothing has been made in this block yet for this step to act on.${into === '' ? '' : ` Did you mean to put it into ${quoted(into)}?`}`;
  },
};
