/** `nappe compare`: what changed in meaning between two files, or between a revision in git and the file as it is. */
import { relative } from 'node:path';
import { type Command, Option } from 'commander';
import { comparableOf, comparisonHtml, comparisonJson, comparisonMarkdown, comparisonText } from '../compare/index.ts';
import { createWorkspace } from '../resolve/workspace.ts';
import { status, UsageError } from './failure.ts';
import { display, filesOnDisk, readText, slashed, Unreadable } from './files.ts';
import { shownPath, workspaceOf } from './formula.ts';
import { git } from './git.ts';
import { targetOf } from './targets.ts';
import { complain, print } from './terminal.ts';

interface Options {
  readonly rev?: string;
  readonly to: 'text' | 'md' | 'html' | 'json';
}

type Side = Parameters<typeof comparableOf>[0];

export function define(command: Command): void {
  command
    .argument('<files...>', 'OLD NEW, or with --rev one FILE; FILE#Formula name picks a formula')
    .option('--rev <revision>', 'compare the file with what it was at this revision in git')
    .addOption(
      new Option('--to <format>', 'text, Markdown, a page, or data for programs')
        .choices(['text', 'md', 'html', 'json'])
        .default('text'),
    )
    .addHelpText(
      'after',
      '\nSpacing, comments, notes and the order of ingredient lines mean nothing and are not compared.\nGit may call it as a diff driver with its seven arguments.',
    )
    .action(run);
}

function run(files: readonly string[], options: Options): void {
  const [old, next] = sidesOf(files, options);
  for (const side of [old, next]) {
    const source = side.workspace.source(side.path);
    if ('refused' in source) throw new Unreadable(side.file, source.why);
  }
  const { comparisons, added, dropped } = comparableOf(old, next);
  const unreadable = [old, next].filter(({ workspace, path }) =>
    workspace.unit(path).formulas.some((formula) => formula.unreadable),
  );
  if (comparisons.length === 0 && added.length + dropped.length === 0)
    throw new UsageError(`${old.file} and ${next.file} hold no formulas to compare.`);
  if (options.to === 'json') print(`${JSON.stringify(comparisonJson(comparisons), null, 2)}\n`);
  else if (options.to === 'html') print(comparisonHtml(comparisons));
  else
    print(
      comparisons
        .map((one) => (options.to === 'md' ? comparisonMarkdown(one) : comparisonText(one)))
        .join(options.to === 'md' ? '\n' : ''),
    );
  for (const name of added) complain(`${name} is new in ${next.file}.`);
  for (const name of dropped) complain(`${name} is no longer in ${next.file}.`);
  for (const { file } of unreadable) {
    complain(`${file}: a line cannot be read and was not compared; nappe check ${file} says which.`);
    process.exitCode = status.faults;
  }
}

/** @throws UsageError, Unreadable */
function sidesOf(files: readonly string[], { rev }: Options): readonly [Side, Side] {
  const [first, second] = files;
  if (rev !== undefined) {
    if (first === undefined || files.length !== 1) throw new UsageError('With --rev, name one file.');
    return [atRevision(rev, first), asItIs(first)];
  }
  // Git's external diff: path, old file, old hash, old mode, new file, new hash, new mode.
  if (files.length === 7) return [standingFor(files[0]!, files[1]!), standingFor(files[0]!, files[4]!)];
  if (first === undefined || second === undefined || files.length !== 2)
    throw new UsageError('Name two files, or one with --rev.');
  return [asItIs(first), asItIs(second)];
}

function asItIs(named: string): Side {
  const [file, formula] = split(named);
  const target = targetOf(file);
  return { workspace: workspaceOf(target), path: slashed(target.path), file: shownPath(target.path), formula };
}

/** The text of one of git's temporary files in the place of the file it stands for, so that what it takes is found. */
function standingFor(path: string, temporary: string): Side {
  const empty = temporary === '/dev/null';
  const target = empty ? null : targetOf(temporary);
  const here = slashed(`${process.cwd()}/${path}`);
  const workspace = createWorkspace(filesOnDisk(process.cwd(), new Map([[here, target ? readText(target.path) : '']])));
  return { workspace, path: here, file: path };
}

/** The file and all it takes from, as they were. */
function atRevision(revision: string, named: string): Side {
  const [file, formula] = split(named);
  const target = targetOf(file);
  const top = git(target.root, 'rev-parse', '--show-toplevel')?.trim();
  if (top === undefined) throw new UsageError('--rev needs a file that is under git.');
  const commit = git(top, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`)?.trim();
  if (commit === undefined) throw new UsageError(`--rev ${revision}: git knows no such revision here.`);
  const workspace = createWorkspace({
    root: slashed(target.root),
    read(path) {
      const text = git(top, 'show', `${commit}:${slashed(relative(top, path))}`);
      return text === null ? { refused: 'missing', why: `it was not there at ${revision}` } : { text };
    },
  });
  return { workspace, path: slashed(target.path), file: `${display(target.path)} at ${revision}`, formula };
}

function split(named: string): readonly [string, string | null] {
  const mark = named.indexOf('#');
  return mark < 0 ? [named, null] : [named.slice(0, mark), named.slice(mark + 1)];
}
