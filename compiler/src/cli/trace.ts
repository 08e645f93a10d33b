/** `nappe trace`: the state of the matter after every step, under one combination of choices. */
import { type Command, Option } from 'commander';
import { checkUnit, runFormula, traceJson } from '../index.ts';
import { status, UsageError } from './failure.ts';
import { openFormula, selectionFor, values } from './formula.ts';
import { complain, print } from './terminal.ts';
import { traceText } from './trace-text.ts';

interface Options {
  readonly format: 'text' | 'json';
  readonly with?: readonly string[];
}

export function define(command: Command): void {
  command
    .argument('<file>', 'a formula file, or FILE#Formula name; - is standard input')
    .option('--with <values>', 'choice values, such as "cut, raspberry"; the others stay at their first', values)
    .addOption(new Option('--format <format>', 'a table to read, or data for programs').choices(['text', 'json']).default('text'))
    .addHelpText('after', '\nRanges are what the formula allows; ? is what cannot be known.')
    .action(run);
}

function run(file: string, options: Options): void {
  const { formula, positions, shown, workspace, unit } = openFormula(file);
  if (formula.unreadable) {
    complain(`${shown}: a line of this formula cannot be read, so it has no trace. nappe check ${shown} says which.`);
    process.exitCode = status.faults;
    return;
  }
  const selection = selectionFor(formula, options.with ?? []);
  const trace = traceJson(runFormula(formula, selection), positions);
  if (options.format === 'json') print(`${JSON.stringify(trace, null, 2)}\n`);
  else if (trace.steps.length === 0) throw new UsageError(`${shown}: ${formula.name} has no steps to trace.`);
  else print(traceText(trace));
  const { summary } = checkUnit(workspace, unit.path, { with: Object.values(selection), only: formula });
  if (summary.errors === 0) return;
  complain(`${shown}: something is wrong in this formula; nappe check ${shown} says what.`);
  process.exitCode = status.faults;
}
