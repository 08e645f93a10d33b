/** `nappe timeline`: the steps of one or several formulas laid out in time, backwards from when it must be ready. */
import { type Command, Option } from 'commander';
import { clockOf, type Timeline, timeline, timelineHtml, timelineJson, timelineText, tooLong } from '../timeline/index.ts';
import { UsageError } from './failure.ts';
import { openFormula } from './formula.ts';
import { entriesOf, orderArguments, placeOrders } from './orders.ts';
import { deliver, refuseInputs } from './output.ts';

interface Options {
  readonly ready?: string;
  readonly cooks: number;
  readonly to: keyof typeof printers;
  readonly output?: string;
}

/** One row a format. */
const printers = {
  text: timelineText,
  html: timelineHtml,
  json: (plan: Timeline) => `${JSON.stringify(timelineJson(plan), null, 2)}\n`,
} as const;

export function define(command: Command): void {
  orderArguments(command)
    .option('--ready <time>', 'the time of day it must be ready: 18:30; without it, times count backwards from the end')
    .option('--cooks <number>', 'how many cooks there are', cooksOf, 1)
    .addOption(
      new Option('--to <format>', 'text, a page with a chart, or data for programs')
        .choices(Object.keys(printers))
        .default('text'),
    )
    .option('-o, --output <file>', 'write the timeline to a file instead of standard output')
    .addHelpText('after', '\n--for and --with belong to the file before them: one.nappe --for "24 glasses" two.nappe --with cut')
    .action((_files: readonly string[], options: Options) => run(command, options));
}

function run(command: Command, { ready, cooks, to, output }: Options): void {
  if (ready !== undefined && clockOf(ready) === null)
    throw new UsageError(`--ready ${ready}: write a time of day such as 18:30.`);
  const entries = entriesOf(command);
  const opened = entries.map(({ file }) => openFormula(file));
  refuseInputs(output, opened);
  const { orders, unchecked } = placeOrders(entries, opened);
  const problem = tooLong(orders);
  if (problem !== null) throw new UsageError(problem);
  if (orders.length > 0)
    deliver(printers[to](timeline(orders, { ...(ready !== undefined && { ready }), cooks, unchecked })), output);
}

function cooksOf(text: string): number {
  const cooks = Number(text);
  if (!Number.isInteger(cooks) || cooks < 1 || cooks > 99) throw new UsageError(`--cooks ${text}: write a whole number from 1.`);
  return cooks;
}
