/** `nappe weigh-out`: one list of what to weigh or order for one or several formulas and their bases. */
import { type Command, Option } from 'commander';
import { type WeighOut, weighOut, weighOutCsv, weighOutHtml, weighOutJson, weighOutText } from '../weigh-out/index.ts';
import { openFormula } from './formula.ts';
import { entriesOf, orderArguments, placeOrders } from './orders.ts';
import { deliver, refuseInputs } from './output.ts';

interface Options {
  readonly to: keyof typeof printers;
  readonly output?: string;
}

/** One row a format. */
const printers = {
  text: weighOutText,
  csv: weighOutCsv,
  json: (list: WeighOut) => `${JSON.stringify(weighOutJson(list), null, 2)}\n`,
  html: weighOutHtml,
} as const;

export function define(command: Command): void {
  orderArguments(command)
    .addOption(
      new Option('--to <format>', 'text, a table for spreadsheets, data for programs, or a page to print')
        .choices(Object.keys(printers))
        .default('text'),
    )
    .option('-o, --output <file>', 'write the list to a file instead of standard output')
    .addHelpText('after', '\n--for and --with belong to the file before them: one.nappe --for "24 glasses" two.nappe --with cut')
    .action((_files: readonly string[], options: Options) => run(command, options));
}

function run(command: Command, { to, output }: Options): void {
  const entries = entriesOf(command);
  const opened = entries.map(({ file }) => openFormula(file));
  refuseInputs(output, opened);
  const { orders, unchecked } = placeOrders(entries, opened);
  if (orders.length > 0) deliver(printers[to](weighOut(orders, unchecked)), output);
}
