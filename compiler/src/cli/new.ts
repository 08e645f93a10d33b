/** `nappe new`: a starter formula that checks clean, under a name and a yield that are asked for. */
import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import type { Command } from 'commander';
import { parse } from 'nappe-grammar';
import { UsageError } from './failure.ts';
import { isTerminal, print } from './terminal.ts';
import { writeWhole } from './write.ts';

interface Options {
  readonly makes?: string;
  readonly output?: string;
}

const defaults = { name: 'First panna cotta', makes: '8 glasses of 100 ml' };

export function define(command: Command): void {
  command
    .argument('[name]', 'what the formula is called')
    .option('--makes <yield>', 'how much it makes, such as "8 glasses of 100 ml" or "1.2 kg"')
    .option('-o, --output <file>', 'the file to write; it must not be there yet')
    .addHelpText('after', '\nWhat is not given is asked for; without a terminal, an empty answer takes the suggestion.')
    .action(run);
}

async function run(name: string | undefined, options: Options): Promise<void> {
  const ask = name === undefined || options.makes === undefined ? questioner() : null;
  const title = name ?? (await ask?.('What is it called?', defaults.name, problemOfName)) ?? defaults.name;
  const makes = options.makes ?? (await ask?.('How much does it make?', defaults.makes, problemOfYield)) ?? defaults.makes;
  ask?.close();
  const problem = problemOfName(title) ?? problemOfYield(makes);
  if (problem) throw new UsageError(problem);
  const file = options.output ?? `${fileName(title)}.nappe`;
  if (existsSync(file)) throw new UsageError(`${file} is there already; nothing was written.`);
  writeWhole(file, starter(title, makes));
  print(`${file} is written. Next:\n\n    nappe check ${file}\n    nappe card ${file} -o ${file.replace(/\.nappe$/, '')}.html\n`);
}

/** A panna cotta by percentages: whatever the yield, its ingredients add up to it. */
export function starter(name: string, makes: string): string {
  const { noun } = yieldOf(makes);
  return `formula ${name}
  makes ${makes}
  served at 4-6 °C
  keeps 2 d at 0-4 °C
  | Change any line, save, and run: nappe check

   40 %  whole milk, 4 °C
   43 %  cream, 35 % fat, 4 °C
   10 %  caster sugar
  0.9 %  gelatin, sheet, 200 bloom
  6.1 %  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat whole milk, cream, caster sugar to 60-65 °C until dissolved
  add gelatin until dissolved
  cool to 20-25 °C in ice bath
  pour into ${noun ?? 'dish'}
  chill to 4 °C for 6 h
`;
}

function problemOfName(name: string): string | null {
  if (name.trim() === '') return 'a formula needs a name.';
  return /[\r\n]|\/\//.test(name) ? 'a name is one line, without //.' : null;
}

function problemOfYield(makes: string): string | null {
  const { problems } = yieldOf(makes);
  if (problems.length > 0 || /[\r\n]/.test(makes))
    return `"${makes}" is no yield; write one such as "8 glasses of 100 ml" or "1.2 kg".`;
  return isSized(makes) ? null : `"${makes}" has no mass or volume; write one such as "8 glasses of 100 ml" or "1.2 kg".`;
}

function isSized(makes: string): boolean {
  const { line } = yieldOf(makes);
  return (
    line?.kind === 'header' && line.word === 'makes' && (line.yield.quantity ?? line.yield.size ?? line.yield.lengths) !== null
  );
}

function yieldOf(makes: string) {
  const line = parse(`formula x\n  makes ${makes}\n`).lines[1];
  const noun = line?.kind === 'header' && line.word === 'makes' ? line.yield.noun?.text : undefined;
  return { line, noun, problems: line?.problems ?? [] };
}

/** Asks on standard error, so that what is printed stays what was made; at the end of the answers, suggestions are taken. */
function questioner() {
  const lines = createInterface({ input: process.stdin, output: process.stderr, terminal: isTerminal(0) });
  const answers = lines[Symbol.asyncIterator]();
  const ask = async (question: string, suggestion: string, problemOf: (answer: string) => string | null): Promise<string> => {
    for (;;) {
      process.stderr.write(`${question} [${suggestion}] `);
      const next = await answers.next();
      if (next.done) return suggestion;
      const answer = next.value.trim() || suggestion;
      const problem = problemOf(answer);
      if (problem === null) return answer;
      process.stderr.write(`${problem}\n`);
    }
  };
  return Object.assign(ask, { close: () => lines.close() });
}

/** `Hojicha bavarois` → `hojicha-bavarois`; letters of any script stay. */
function fileName(title: string): string {
  const words = title
    .normalize('NFKC')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu);
  return words?.join('-').slice(0, 80) ?? 'formula';
}
