/** `nappe check`: what is wrong, or likely to go wrong, in formulas and in the fences of handouts. */
import { type Command, Option } from 'commander';
import { version } from '../../package.json';
import { checkJson, isMarkdown, merged } from '../index.ts';
import { type CheckSettings, type FileResult, fileChecker } from './check-file.ts';
import { checkText } from './check-text.ts';
import { status, UsageError } from './failure.ts';
import { values } from './formula.ts';
import { progressOf } from './progress.ts';
import { isFormula, named, type Target, targetsOf } from './targets.ts';
import { complain, print } from './terminal.ts';

interface Options {
  readonly format: (typeof formats)[number];
  readonly with?: readonly string[];
  readonly strict?: boolean;
  readonly since?: string;
}

const formats = ['text', 'json', 'sarif', 'github'] as const;

/** From so many files on, starting workers costs less than it saves. */
const many = 150;

export function define(command: Command): void {
  command
    .argument('[paths...]', 'formula files, Markdown with nappe fences, folders, or - for standard input', ['.'])
    .addOption(
      new Option('--format <format>', 'text to read, or data for programs, code scanners or a forge')
        .choices(formats)
        .default('text'),
    )
    .option(
      '--with <values>',
      'look only at these choice values, such as "cut, raspberry"; otherwise at every combination',
      values,
    )
    .option('--strict', 'let warnings fail too')
    .option('--since <revision>', 'look only at files that changed since a git revision, and at those that take from them')
    .addHelpText('after', '\nExit status: 0 nothing wrong, 1 something is, 2 a file could not be read.')
    .action(run);
}

async function run(paths: readonly string[], options: Options): Promise<void> {
  const found = await targetsOf(paths, (name) => isFormula(name) || isMarkdown(name));
  const targets =
    options.since === undefined ? found.targets : await (await import('./since.ts')).affected(found.targets, options.since);
  const settings: CheckSettings = { with: options.with ?? [], version };
  const results = await checkAll(targets, settings);
  const read = results.filter((result) => result.read);
  refuseUnknown(settings.with, read);
  const failures = [...found.failures.map(({ message }) => message), ...results.flatMap((result) => result.failures)];
  const answer = merged(read);
  for (const failure of failures) complain(failure);
  if (targets.length === 0 && failures.length === 0) complain(nothingToCheck(paths, options.since));
  if (options.format === 'json') print(`${JSON.stringify(checkJson(answer), null, 2)}\n`);
  else if (options.format === 'sarif') print(await asSarif(answer, failures));
  else if (options.format === 'github') print((await import('./annotations.ts')).annotations(answer.diagnostics));
  else if (read.length > 0) print(checkText(answer, targets));
  const { errors, warnings } = answer.summary;
  if (failures.length > 0) process.exitCode = status.usage;
  else if (errors > 0 || (options.strict && warnings > 0)) process.exitCode = status.faults;
}

async function checkAll(targets: readonly Target[], settings: CheckSettings): Promise<readonly FileResult[]> {
  if (targets.length < many) return targets.map(fileChecker(settings));
  const progress = progressOf(targets.length, 'files checked');
  try {
    return await (await import('./pool.ts')).checkInWorkers(targets, settings, progress.at);
  } finally {
    progress.end();
  }
}

/** A value no formula offers is mistyped: to check everything but it would look like a pass. */
function refuseUnknown(wanted: readonly string[], results: readonly FileResult[]): void {
  const unknown = wanted.filter((value) => !results.some(({ offered }) => offered.includes(value)));
  if (unknown.length > 0 && results.length > 0)
    throw new UsageError(`no formula here offers the choice value ${unknown.join(', ')}.`);
}

async function asSarif(answer: ReturnType<typeof merged>, failures: readonly string[]): Promise<string> {
  const [{ sarif }, { rules }] = await Promise.all([import('./sarif.ts'), import('../diagnostics/registry.ts')]);
  return `${JSON.stringify(sarif({ ...answer, version, failures, rules }), null, 2)}\n`;
}

function nothingToCheck(paths: readonly string[], since: string | undefined): string {
  if (since !== undefined) return `no formula changed since ${since}.`;
  return `no formula in ${named(paths)}. To begin with one that works: nappe new`;
}
