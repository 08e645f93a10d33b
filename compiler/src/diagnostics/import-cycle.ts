/** `import-cycle`: files that take from each other in a circle. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const importCycle: Rule = {
  code: 'import-cycle',
  severities: ['error'],
  title: 'Files take from each other in a circle',
  why: 'What one file takes from another must be known before it. Where each waits for the other neither can be worked out.',
  remedy: 'Move what both need into a third file and let both take it from there.',
  source: 'The notation.',
  examples: {
    bad: `take sauce as base sauce from "example.nappe" // expect: import-cycle

component sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
    good: `component sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
  },
  message(numbers) {
    if (numbers.self === true) return 'This file cannot take from itself; what it declares is there already.';
    const name = text(numbers, 'name');
    if (name !== '') return `${quoted(name)} draws, over others, on what this line belongs to.`;
    return `${quoted(text(numbers, 'path'))} takes, directly or over other files, from this file.`;
  },
};
