/** `nappe label`: the declaration a seller needs, for the European Union or the United States. */
import { type Command, Option } from 'commander';
import { makeCard } from '../card/index.ts';
import { checkUnit, runFormula } from '../index.ts';
import { type Label, labelHtml, labelJson, labelOf, labelText, type Region } from '../label/index.ts';
import { status, UsageError } from './failure.ts';
import { openFormula, selectionFor, shownPath, values } from './formula.ts';
import { deliver, refuseInputs } from './output.ts';
import { complain } from './terminal.ts';

interface Options {
  readonly region: Region;
  readonly to: keyof typeof printers;
  readonly with?: readonly string[];
  readonly output?: string;
}

/** One row a format. */
const printers = {
  text: labelText,
  html: labelHtml,
  json: (label: Label) => `${JSON.stringify(labelJson(label), null, 2)}\n`,
} as const;

export function define(command: Command): void {
  command
    .argument('<file>', 'a formula file, or FILE#Formula name; - is standard input')
    .option('--with <values>', 'choice values, such as "cut, raspberry"; the others stay at their first', values)
    .addOption(new Option('--region <region>', 'whose rules').choices(['eu', 'us']).default('eu'))
    .addOption(new Option('--to <format>', 'text, a page, or data for programs').choices(Object.keys(printers)).default('text'))
    .option('-o, --output <file>', 'write the label to a file instead of standard output')
    .addHelpText('after', '\nThe seller answers for the label; the program only computes what the formula says.')
    .action(run);
}

function run(file: string, options: Options): void {
  const opened = openFormula(file);
  const { formula, workspace, unit, shown } = opened;
  refuseInputs(options.output, [opened]);
  const selection = selectionFor(formula, options.with ?? []);
  if (formula.unreadable) {
    complain(`${shown}: a line of this formula cannot be read, so it has no label. nappe check ${shown} says which.`);
    process.exitCode = status.faults;
    return;
  }
  const { diagnostics, allowed } = checkUnit(workspace, unit.path, {
    with: Object.values(selection),
    only: formula,
    fileName: shownPath,
  });
  const today = new Date().toISOString().slice(0, 10);
  const card = makeCard(
    { ...opened, selection, diagnostics, allowed },
    { date: today, units: options.region === 'us' ? 'us' : 'metric' },
  );
  if ('problem' in card) throw new UsageError(`${shown}: ${card.problem}`);
  deliver(printers[options.to](labelOf(runFormula(formula, selection), card, options.region, today)), options.output);
  if (card.checked) return;
  complain(`${shown}: the formula has errors, so the label may be wrong; nappe check ${shown} says why.`);
  process.exitCode = status.faults;
}
