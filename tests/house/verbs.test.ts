/** Every verb of the vocabulary has its effect on matter, and no effect is of a word that is no verb. */
import { expect, test } from 'vitest';
import { verbEffects } from '../../compiler/src/steps/index.ts';
import { verbs } from '../../grammar/src/index.ts';

/** Verbs of the family `keep track`, which the run itself carries out. */
const tracking = verbs.filter((row) => row.family === 'keep track').map((row) => row.word);

test('the two tables of verbs hold the same words', () => {
  expect([...Object.keys(verbEffects), ...tracking].sort()).toEqual(verbs.map((row) => row.word).sort());
});
