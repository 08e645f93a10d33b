/** Where an answer goes: standard output, or whole into a file that is no input of it. */
import { existsSync, realpathSync } from 'node:fs';
import { UsageError } from './failure.ts';
import { slashed } from './files.ts';
import type { Opened } from './formula.ts';
import { print } from './terminal.ts';
import { writeWhole } from './write.ts';

/** @throws UsageError before anything is made: nothing but `fmt` writes over an input, whatever name it goes by; what a formula takes from is one too. */
export function refuseInputs(output: string | undefined, opened: readonly Pick<Opened, 'workspace' | 'unit'>[]): void {
  if (output === undefined || !existsSync(output)) return;
  const written = slashed(realpathSync.native(output));
  for (const { workspace, unit } of opened)
    if (workspace.reachable(unit).some(({ path }) => path === written))
      throw new UsageError(`${output} is an input of this; name another file to write.`);
}

/** @throws Unreadable where the file cannot be written. */
export function deliver(text: string, output: string | undefined): void {
  if (output === undefined) print(text);
  else writeWhole(output, text);
}
