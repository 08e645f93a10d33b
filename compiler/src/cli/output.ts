/** Where an answer goes: standard output, or whole into a file that is no input of it. */
import { existsSync, realpathSync } from 'node:fs';
import { UsageError } from './failure.ts';
import type { Opened } from './formula.ts';
import { print } from './terminal.ts';
import { writeWhole } from './write.ts';

/**
 * Nothing but `fmt` writes over an input, whatever name it goes by; what a formula takes from is one too. `more` are paths of other
 * inputs. @throws UsageError
 */
export function refuseInputs(
  output: string | undefined,
  opened: readonly Pick<Opened, 'workspace' | 'unit'>[],
  more: Iterable<string> = [],
): void {
  if (output === undefined || !existsSync(output)) return;
  const written = realpathSync.native(output);
  const taken = opened.flatMap(({ workspace, unit }) => workspace.reachable(unit).map(({ path }) => path));
  if ([...taken, ...more].some((path) => existsSync(path) && realpathSync.native(path) === written))
    throw new UsageError(`${output} is an input of this; name another file to write.`);
}

/** @throws Unreadable where the file cannot be written. */
export function deliver(text: string, output: string | undefined): void {
  if (output === undefined) print(text);
  else writeWhole(output, text);
}
