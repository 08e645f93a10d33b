/** How long to fuzz and with what seed: a moment in `npm test`, two minutes in `npm run fuzz`, hours with NAPPE_FUZZ_SECONDS. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';

const seconds = Number(process.env.NAPPE_FUZZ_SECONDS ?? 0);

export const seed = Number(process.env.NAPPE_SEED ?? Date.now() % 2_147_483_647);
console.info(`fast-check seed ${seed}; to run it again: NAPPE_SEED=${seed}`);

/** Properties share the time. */
const properties = 6;

/** More than a property may take. */
export const patience = { timeout: (60 + seconds) * 1000 };

/** Holds the property on many texts; a text on which it does not hold is kept in `artefacts/`, to be moved to tests/corpus/failures. */
export function holdsOn(texts: fc.Arbitrary<string>, name: string, runs: number, property: (text: string) => void): void {
  const limits =
    seconds > 0
      ? {
          numRuns: Number.MAX_SAFE_INTEGER,
          interruptAfterTimeLimit: (seconds * 1000) / properties,
          markInterruptAsFailure: false,
        }
      : { numRuns: runs };
  const { failed, counterexample, numRuns, errorInstance } = fc.check(fc.property(texts, property), { seed, ...limits });
  console.info(`${name}: ${numRuns} texts`);
  if (!failed) return;
  const text = counterexample?.[0] ?? '';
  const folder = join(import.meta.dirname, '../../artefacts');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${name.replaceAll(/\W+/g, '-')}-${seed}.nappe`);
  writeFileSync(file, text);
  throw new Error(`${name}, seed ${seed}, kept as ${file}:\n${JSON.stringify(text)}\n${String(errorInstance)}`, {
    cause: errorInstance,
  });
}
