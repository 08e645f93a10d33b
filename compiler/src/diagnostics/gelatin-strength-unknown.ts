/** `gelatin-strength-unknown`: a line of gelatin says nothing of its strength. */
import { gradeOf } from '../matter/gelatin.ts';
import { assumedBloom } from '../run/matter-of.ts';
import type { Run } from '../run/trace.ts';
import { lawOf } from './look-gelatin.ts';
import type { Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  for (const { batchOf, lines } of run.blocks) {
    // A taken component says it in its own file.
    if (batchOf) continue;
    for (const { line } of lines) {
      if (line.substance.is !== 'kind' || line.bloom) continue;
      const { traits, name } = line.substance.kind;
      if (!traits.includes('gelatin') && !traits.includes('gelatin mass')) continue;
      if (gradeOf(name)) continue;
      const { end } = line.namePlace;
      report({
        place: line.place,
        numbers: { name: line.label, assumed: assumedBloom, law: lawOf(run) },
        fixes: [
          {
            title: `Say ${assumedBloom} bloom, if the packet does`,
            edits: [{ ...line.namePlace, start: end, end, text: `, ${assumedBloom} bloom` }],
          },
        ],
      });
    }
  }
}

const cream = (gelatin: string): string => `formula Vanilla cream
  400 g  cream, 35 % fat, 4 °C
   40 g  caster sugar
    4 g  ${gelatin}
   24 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat cream, caster sugar to 60 °C
  add gelatin
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinStrengthUnknown: Rule = {
  code: 'gelatin-strength-unknown',
  severities: ['notice'],
  title: 'The gelatin’s strength is not given',
  why: 'Sheets are sold from bronze (about 140 bloom) to platinum (about 250), powder from 150 to 250: the same grams set a jelly or leave it running. Without a figure the formula is reckoned with 200 bloom, and whoever buys another grade gets another dessert.',
  remedy: 'Write the bloom from the packet behind the name: `gelatin, sheet, 200 bloom`.',
  source: 'Grades: trade compilation of 2008–2014. 200 bloom where nothing is said: common practice, no source.',
  examples: {
    bad: cream('gelatin, sheet   // expect: gelatin-strength-unknown'),
    good: cream('gelatin, sheet, 200 bloom'),
  },
  message: (n) => `The bloom of the ${n.name} is not given: it is reckoned as ${n.assumed} bloom (grades compared ${n.law}).`,
  check,
};
