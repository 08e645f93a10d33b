/** `nappe card`: a scaled card of one formula, to print, to read on a forge, or for programs. */
import { type Command, Option } from 'commander';
import { type Card, cardHtml, cardJson, cardMarkdown, languageFor, languages, makeCard } from '../card/index.ts';
import { checkUnit } from '../index.ts';
import { status, UsageError } from './failure.ts';
import { openFormula, selectionFor, shownPath, values } from './formula.ts';
import { deliver, refuseInputs } from './output.ts';
import { complain } from './terminal.ts';

interface Options {
  readonly for?: string;
  readonly limit?: readonly string[];
  readonly with?: readonly string[];
  readonly to: keyof typeof printers;
  readonly units: 'metric' | 'us' | 'both';
  readonly detail: 'brief' | 'full';
  readonly lang: string;
  readonly wholeEggs?: boolean;
  readonly output?: string;
}

/** One row a format. */
const printers = {
  html: cardHtml,
  md: cardMarkdown,
  json: (card: Card) => `${JSON.stringify(cardJson(card), null, 2)}\n`,
} as const;

export function define(command: Command): void {
  command
    .argument('<file>', 'a formula file, or FILE#Formula name; - is standard input')
    .option('--for <yield>', 'how much to make: "24 glasses", "2.4 kg", "2 rings of 18 x 4.5 cm"')
    .option(
      '--limit <quantity>',
      'as much as this allows: "8 pc egg yolk"; may be given more than once',
      (one, all: string[] = []) => [...all, one],
    )
    .option('--with <values>', 'choice values, such as "cut, raspberry"; the others stay at their first', values)
    .option('--whole-eggs', 'round to whole eggs, everything else following')
    .addOption(
      new Option('--to <format>', 'a page to print, Markdown, or data for programs')
        .choices(Object.keys(printers))
        .default('html'),
    )
    .addOption(
      new Option('--units <units>', 'grams, US cups and spoons, or both side by side')
        .choices(['metric', 'us', 'both'])
        .default('metric'),
    )
    .addOption(
      new Option('--detail <detail>', 'a teaching sheet with notes and reasons, or a bench card of one page')
        .choices(['full', 'brief'])
        .default('full'),
    )
    .addOption(
      new Option('--lang <language>', 'the language of the card').choices(languages.map(({ code }) => code)).default('en'),
    )
    .option('-o, --output <file>', 'write the card to a file instead of standard output')
    .addHelpText('after', '\nA formula with errors still gives a card; its top says so, and the exit status is 1.')
    .action(run);
}

function run(file: string, options: Options): void {
  const opened = openFormula(file);
  const { formula, workspace, unit, shown } = opened;
  refuseInputs(options.output, [opened]);
  const selection = selectionFor(formula, options.with ?? []);
  if (formula.unreadable) {
    complain(`${shown}: a line of this formula cannot be read, so it has no card. nappe check ${shown} says which.`);
    process.exitCode = status.faults;
    return;
  }
  const { diagnostics, allowed } = checkUnit(workspace, unit.path, {
    with: Object.values(selection),
    only: formula,
    fileName: shownPath,
  });
  const card = makeCard(
    { ...opened, selection, diagnostics, allowed },
    {
      ...(options.for !== undefined && { for: options.for }),
      ...(options.limit && { limits: options.limit }),
      wholePieces: options.wholeEggs ?? false,
      language: languageFor(options.lang)?.code ?? 'en',
      units: options.units,
      detail: options.detail,
      date: new Date().toISOString().slice(0, 10),
    },
  );
  if ('problem' in card) throw new UsageError(`${shown}: ${card.problem}`);
  deliver(printers[options.to](card), options.output);
  if (!card.checked) {
    complain(`${shown}: the card is marked as not checked through; nappe check ${shown} says why.`);
    process.exitCode = status.faults;
  }
}
