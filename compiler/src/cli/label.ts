/** `nappe label`: the declaration a seller needs: ingredients, allergens, nutrition, storage, date. */
import { type Command, Option } from 'commander';
import { type Label, labelHtml, labelJson, labelOf, labelText, type Region } from '../label/index.ts';
import { UsageError } from './failure.ts';
import { openFormula, values } from './formula.ts';
import { placeOrders } from './orders.ts';
import { deliver, refuseInputs } from './output.ts';

interface Options {
  readonly region: Region;
  readonly with?: readonly string[];
  readonly made?: string;
  readonly to: keyof typeof printers;
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
    .addOption(new Option('--region <region>', 'whose rules it follows').choices(['eu', 'us']).default('eu'))
    .option('--with <values>', 'choice values, such as "cut, raspberry"; the others stay at their first', values)
    .option('--made <date>', 'the day it is made, as 2025-11-25; today where it is not given')
    .addOption(
      new Option('--to <format>', 'text, a page to print, or data for programs').choices(Object.keys(printers)).default('text'),
    )
    .option('-o, --output <file>', 'write the label to a file instead of standard output')
    .addHelpText('after', '\nA draft: who sells the food answers for its label.')
    .action(run);
}

function run(file: string, { region, with: chosen = [], made, to, output }: Options): void {
  if (made !== undefined && !isDate(made)) throw new UsageError(`--made ${made}: write a date such as 2025-11-25.`);
  const opened = openFormula(file);
  refuseInputs(output, [opened]);
  const { orders, unchecked } = placeOrders([{ file, with: chosen }], [opened]);
  const day = made ?? new Date().toISOString().slice(0, 10);
  for (const order of orders)
    deliver(printers[to](labelOf(order, { region, made: day, checked: !unchecked.has(order) })), output);
}

const isDate = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/u.test(text) && !Number.isNaN(Date.parse(text)) && new Date(text).toISOString().startsWith(text);
