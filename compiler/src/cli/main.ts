/** The `nappe` program: finds the command in the table, loads that one alone, and turns every ending into an exit status. */
import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { report, status, UsageError } from './failure.ts';
import { Unreadable } from './files.ts';
import { commands } from './table.ts';
import { complain, print } from './terminal.ts';

async function main(words: readonly string[]): Promise<void> {
  try {
    await (await program(words)).parseAsync(words, { from: 'user' });
  } catch (error) {
    process.exitCode = conclude(error);
  }
  // All output is written by now: to wait for Node to find that nothing is left to do takes longer than to say so.
  process.exit();
}

/** Only the command asked for is loaded; for help, and where none fits, the table alone is enough. */
async function program(words: readonly string[]): Promise<Command> {
  const wanted = words[0] === 'help' ? words[1] : words[0];
  const root = new Command('nappe')
    .description('A plain-text notation for pastry formulas: checks them, and makes cards from them.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'explain the program, or the command before it')
    .helpCommand('help [command]', 'explain a command')
    .configureOutput({ writeOut: print, writeErr: (text) => complain(text.replace(/^error: /, '').trimEnd()) })
    .exitOverride()
    .argument('[command]')
    .allowExcessArguments()
    .usage('[command] [options]')
    .action(async (word?: string) => {
      if (word !== undefined) throw new UsageError(await unknownCommand(word));
      print((await import('./welcome.ts')).welcome());
    });
  for (const entry of commands) {
    const command = root.command(entry.name, { hidden: entry.hidden ?? false });
    command.summary(entry.summary).description(sentence(entry.summary));
    if (entry.name === wanted) (await entry.load()).define(command);
  }
  return root;
}

function conclude(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? status.clean : status.usage;
  if (error instanceof UsageError || error instanceof Unreadable) complain(error.message);
  else complain(report(error, 'nappe', version));
  return status.usage;
}

async function unknownCommand(word: string): Promise<string> {
  if (/[./\\]/.test(word)) return `${word} is no command. To check a file: nappe check ${word}`;
  const names = commands.filter(({ hidden }) => !hidden).map(({ name }) => name);
  const { nearestNames } = await import('../resolve/nearest.ts');
  const near = nearestNames(
    word,
    names.map((name) => ({ key: name, text: name })),
  );
  return near.length > 0
    ? `${word} is no command. Did you mean nappe ${near.join(' or nappe ')}?`
    : `${word} is no command. The commands are: ${names.join(', ')}.`;
}

const sentence = (summary: string): string => `${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`;

void main(process.argv.slice(2));
