/** `unused-allow`: an `allow` comment that does nothing. */
import type { Rule } from './rule.ts';
import { didYouMean, quoted, text } from './words.ts';

export const unusedAllow: Rule = {
  code: 'unused-allow',
  severities: ['notice'],
  title: 'This `allow` does nothing',
  why: 'An `allow` is a promise about one line: that a warning is known there and why it is accepted. Without a reason, for a code that does not exist, or where nothing is hidden any more, it would only mislead the next reader. `syntax` cannot be allowed, because nothing can be known of a line that cannot be read.',
  remedy: 'Give the reason after a colon, correct the code, move it to the line above the one it means, or take it out.',
  source: 'The notation.',
  examples: {
    bad: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
   60 g  caster sugar
  // allow leftover
  // expect-above: unused-allow
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  400 g  raspberry purée, pasteurised, 4 °C
  // allow leftover: the rest dusts the plates
   60 g  caster sugar
  stir raspberry purée, 40 g of caster sugar until dissolved
`,
  },
  message(numbers) {
    const code = quoted(text(numbers, 'name'));
    switch (text(numbers, 'problem')) {
      case 'no reason':
        return 'This `allow` gives no reason, so it allows nothing; write one after a colon.';
      case 'unknown code':
        return `There is no diagnostic ${code}.${didYouMean(numbers)}`;
      case 'syntax':
        return '`syntax` cannot be allowed.';
      default:
        return `${code} is not raised on the next line, so there is nothing to allow.`;
    }
  },
};
