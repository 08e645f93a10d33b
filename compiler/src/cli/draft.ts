/** `nappe draft`: turns a recipe in plain text, Markdown or a page's data into notation to go on from. */
import { existsSync } from 'node:fs';
import type { Command } from 'commander';
import { type Draft, draftOf, type Found, foundInData, foundInPage, foundInText } from '../draft/index.ts';
import { UsageError } from './failure.ts';
import { readText } from './files.ts';
import { shownPath } from './formula.ts';
import { targetOf } from './targets.ts';
import { complain, print, printable } from './terminal.ts';
import { writeWhole } from './write.ts';

interface Options {
  readonly output?: string;
}

export function define(command: Command): void {
  command
    .argument('<file>', 'plain text, Markdown, a saved page or JSON with a schema.org Recipe; - is standard input')
    .option('-o, --output <file>', 'write the draft to a file, which must not be there yet, instead of standard output')
    .addHelpText(
      'after',
      '\nNothing is invented: a sentence that is not fully understood stays as it is, as a step do "…". What was not understood\nis listed on standard error. Read the draft, then run nappe check on it.',
    )
    .action(run);
}

function run(file: string, { output }: Options): void {
  const target = targetOf(file);
  const shown = shownPath(target.path);
  const found = foundIn(target.given ?? readText(target.path), shown);
  if (found.parts.every(({ ingredients, prose }) => ingredients.length + prose.length === 0))
    throw new UsageError(`${shown}: no ingredients and no method are found in it.`);
  if (output !== undefined && existsSync(output)) throw new UsageError(`${output} is there already; nothing was written.`);
  const draft = draftOf(found);
  if (output === undefined) print(draft.text);
  else writeWhole(output, draft.text);
  for (const line of listed(draft, shown)) complain(printable(line));
}

/** By what the file holds, not by what it is called. */
function foundIn(text: string, shown: string): Found {
  const start = text.replace(/^\ufeff/, '').trimStart();
  const isData = start.startsWith('{') || start.startsWith('[');
  const isPage = start.startsWith('<');
  if (!isData && !isPage) return foundInText(text);
  const found = isData ? foundInData(start) : foundInPage(text);
  if (!found) throw new UsageError(`${shown}: there is no schema.org Recipe in it (JSON-LD); save its text and try with that.`);
  return found;
}

const listed = ({ open }: Draft, shown: string): string[] =>
  open.map(({ line, message }) => `${shown}${line === null ? '' : `:${line}`}: ${message}`);
