/** `nappe fmt`: the canonical layout, written over a file only whole, and never where a line cannot be read. */
import { setImmediate as breathe } from 'node:timers/promises';
import type { Command } from 'commander';
import { format, parse } from 'nappe-grammar';
import { status } from './failure.ts';
import { display, readText, Unreadable } from './files.ts';
import { isFormula, named, standardInput, type Target, targetsOf } from './targets.ts';
import { complain, print } from './terminal.ts';
import { writeWhole } from './write.ts';

type Outcome = 'same' | 'changed' | 'unreadable line' | 'failed';

export function define(command: Command): void {
  command
    .argument('[paths...]', 'formula files, folders, or - for standard input (which goes to standard output)', ['.'])
    .option('--check', 'change nothing; list the files whose layout would change, and exit 1 if there are any')
    .addHelpText('after', '\nA file with a line that cannot be read is left as it is. Comments stay where they are.')
    .action(run);
}

async function run(paths: readonly string[], options: { readonly check?: boolean }): Promise<void> {
  // Between two files an interruption is safe: what is written is written whole.
  process.once('SIGINT', () => process.exit(130));
  const { targets, failures } = await targetsOf(paths, isFormula);
  for (const failure of failures) complain(failure.message);
  const outcomes: Outcome[] = [];
  for (const target of targets) {
    outcomes.push(layOut(target, options.check ?? false));
    await breathe();
  }
  if (failures.length > 0 || outcomes.includes('failed')) process.exitCode = status.usage;
  else if (outcomes.includes('unreadable line') || (options.check && outcomes.includes('changed')))
    process.exitCode = status.faults;
  if (targets.length === 0 && failures.length === 0) complain(`no .nappe file in ${named(paths)}.`);
}

function layOut(target: Target, onlyCheck: boolean): Outcome {
  const shown = target.given === undefined ? display(target.path) : standardInput;
  try {
    if (target.given === undefined && !isFormula(target.path)) throw new Unreadable(shown, 'fmt lays out .nappe files only.');
    const text = target.given ?? readText(target.path);
    const file = parse(text);
    const bad = file.lines.findIndex(({ problems }) => problems.some(({ code }) => code === 'syntax'));
    if (bad >= 0) {
      complain(`${shown}:${bad + 1}: left as it is, because this line cannot be read. nappe check says more.`);
      return 'unreadable line';
    }
    const laidOut = format(file);
    if (target.given !== undefined && !onlyCheck) print(laidOut);
    if (laidOut === text) return 'same';
    if (onlyCheck) print(`${shown}\n`);
    else if (target.given === undefined) writeWhole(target.path, laidOut);
    return 'changed';
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    complain(error.message);
    return 'failed';
  }
}
