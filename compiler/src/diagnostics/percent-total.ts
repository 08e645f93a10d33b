/** `percent-total`: percentages of the total that do not add up. */
import { formatFigure } from '../quantities/format.ts';
import type { Rule } from './rule.ts';
import { number, quoted, text } from './words.ts';

export const percentTotal: Rule = {
  code: 'percent-total',
  severities: ['error'],
  title: 'The percentages do not add up',
  why: 'Percentages of the total add up to 100. Where lines in grams stand beside them they add up to less, because the grams are the rest. A sum within half a point of 100 is left in peace.',
  remedy: "Correct the percentages, or write `basis NAME` where one line is the 100 % (baker's percentages).",
  source: 'Arithmetic; the half point is common practice, no source.',
  examples: {
    bad: `formula Raspberry sauce // expect: percent-total
  makes 460 g
  88 %  raspberry purée, pasteurised, 4 °C
  15 %  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
    good: `formula Raspberry sauce
  makes 460 g
  88 %  raspberry purée, pasteurised, 4 °C
  12 %  caster sugar
  stir raspberry purée, caster sugar until dissolved
`,
  },
  message(numbers) {
    const sum = formatFigure(number(numbers, 'percent'));
    return numbers.beside === true
      ? `The percentages of ${quoted(text(numbers, 'component'))} come to ${sum} %, which leaves nothing for its lines in grams.`
      : `The percentages of ${quoted(text(numbers, 'component'))} come to ${sum} %, not 100 %.`;
  },
};
