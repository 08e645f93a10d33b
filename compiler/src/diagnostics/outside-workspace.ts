/** `outside-workspace`: a path that leads out of the workspace. */
import type { Rule } from './rule.ts';
import { quoted, text } from './words.ts';

export const outsideWorkspace: Rule = {
  code: 'outside-workspace',
  severities: ['error'],
  title: 'The path leads out of the workspace',
  why: 'A formula reads only files of the folder it is worked on in. A path that leaves it would mean something else on the next machine, and would let a formula from elsewhere read what is none of its business.',
  remedy: 'Copy the file into the workspace and write its path relative to this file, or open a folder that holds both.',
  source: 'The notation.',
  examples: {
    bad: `take raspberry sauce from "../../elsewhere/bases.nappe" // expect: outside-workspace

formula Sauce in a glass
  400 g  raspberry sauce
  pour raspberry sauce into glass
`,
    good: `formula Sauce in a glass
  400 g  raspberry purée, pasteurised, 4 °C
  pour raspberry purée into glass
`,
  },
  message: (numbers) => `${quoted(text(numbers, 'path'))} is not read: ${text(numbers, 'why')}.`,
};
