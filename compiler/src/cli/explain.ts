/** `nappe explain`: a diagnostic's meaning, cause, remedy and source; without a code, all of them in a line each. */
import type { Command } from 'commander';
import { codeIndex, explainText, nearestCodes } from '../index.ts';
import { UsageError } from './failure.ts';
import { print } from './terminal.ts';

export function define(command: Command): void {
  command.argument('[code]', 'the word in brackets at the end of a diagnostic, such as fold-too-warm').action(run);
}

function run(code?: string): void {
  if (code === undefined) {
    print(index());
    return;
  }
  const text = explainText(code.replace(/^\[|\]$/g, '').toLowerCase());
  if (text === null) throw new UsageError(unknown(code));
  print(`${text}\n`);
}

function index(): string {
  const rows = codeIndex();
  const widest = Math.max(...rows.map(({ code }) => code.length));
  return `${rows.map(({ code, safety, title }) => `${(code + (safety ? ' †' : '')).padEnd(widest + 2)} ${title}`).join('\n')}\n\n† a safety code: where it is allowed, the card says so.\n`;
}

function unknown(code: string): string {
  const near = nearestCodes(code);
  const hint = near.length > 0 ? `Did you mean ${near.join(' or ')}?` : 'nappe explain lists them all.';
  return `${code} is no diagnostic. ${hint}`;
}
