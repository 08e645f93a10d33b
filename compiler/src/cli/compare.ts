/** `nappe compare`: what changed in meaning between two files, or between a revision in git and the file as it is. */
import { relative } from 'node:path';
import { type Command, Option } from 'commander';
import { nameKey } from 'nappe-grammar';
import {
  type Comparison,
  comparableOf,
  comparisonHtml,
  comparisonJson,
  comparisonMarkdown,
  comparisonText,
} from '../compare/index.ts';
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
    .argument('<files...>', 'OLD NEW, or FILEs with --rev; FILE#Formula name picks a formula')
    .option('--rev <revision>', 'compare each file with what it was at this revision in git')
    .addOption(
      new Option('--to <format>', 'text, Markdown, a page, or data for programs')
        .choices(['text', 'md', 'html', 'json'])
        .default('text'),
    )
    .addHelpText(
      'after',
      '\nSpacing, comments, notes and the order of ingredient lines mean nothing and are not compared.\nGit may call it as a diff driver: *.nappe diff=nappe in .gitattributes, and\n  git config diff.nappe.command "npx nappe compare"',
    )
    .action(run);
}

function run(files: readonly string[], options: Options): void {
  const told: Comparison[] = [];
  for (const [old, next] of sidesOf(files, options)) {
    for (const side of [old, next]) {
      const source = side.workspace.source(side.path);
      if ('refused' in source) throw new Unreadable(side.file, source.why);
    }
    const { comparisons, added, dropped } = comparableOf(old, next);
    told.push(...comparisons, ...added.map((name) => whole(old, next, name, 'new')));
    told.push(...dropped.map((name) => whole(old, next, name, 'old')));
    for (const { workspace, path, file } of [old, next]) {
      if (!workspace.unit(path).formulas.some((formula) => formula.unreadable)) continue;
      complain(`${file}: a line cannot be read and was not compared; nappe check ${file} says which.`);
      process.exitCode = status.faults;
    }
  }
  if (told.length === 0 && !isDriver(files)) throw new UsageError(`${files.join(' and ')}: no formulas to compare.`);
  print(printers[options.to](told));
  // Git stops the whole diff where its driver says that something is wrong.
  if (isDriver(files)) process.exitCode = status.clean;
}

const printers: Record<Options['to'], (told: readonly Comparison[]) => string> = {
  text: (told) => told.map(comparisonText).join(''),
  md: (told) => told.map((one) => comparisonMarkdown(one)).join('\n'),
  html: comparisonHtml,
  json: (told) => `${JSON.stringify(comparisonJson(told), null, 2)}\n`,
};

/** A formula that only one side has. */
const whole = (old: Side, next: Side, name: string, has: 'old' | 'new'): Comparison => ({
  old: old.file,
  new: next.file,
  formula: name,
  changes: [
    {
      kind: 'step',
      component: name,
      name: 'formula',
      old: has === 'old' ? name : null,
      new: has === 'new' ? name : null,
      oldLine: null,
      newLine: null,
    },
  ],
});

/** Git's external diff: path, old file, old hash, old mode, new file, new hash, new mode, and for a rename new path and score. */
const isDriver = (files: readonly string[]): boolean => files.length === 7 || files.length === 9;

/** @throws UsageError, Unreadable */
function sidesOf(files: readonly string[], { rev }: Options): readonly (readonly [Side, Side])[] {
  const [first, second] = files;
  if (rev !== undefined) return files.map((file) => [atRevision(rev, file), asItIs(file)] as const);
  if (isDriver(files)) {
    const [path, old, , , next, , , renamed] = files as readonly [
      string,
      string,
      string,
      string,
      string,
      string,
      string,
      string?,
    ];
    return [[standingFor(path, old), standingFor(renamed ?? path, next)]];
  }
  if (first === undefined || second === undefined || files.length !== 2)
    throw new UsageError('Name two files, or with --rev those to compare with what they were.');
  return [[asItIs(first), asItIs(second)]];
}

function asItIs(named: string): Side {
  const [file, formula] = split(named);
  const target = targetOf(file);
  const workspace = workspaceOf(target);
  const path = slashed(target.path);
  const held = [...workspace.unit(path).formulas, ...workspace.bases(path)].map(({ name }) => name);
  if (formula !== null && !held.some((name) => nameKey(name) === nameKey(formula)))
    throw new UsageError(`${file} holds no formula ${formula}${held.length > 0 ? `; it holds ${held.join(', ')}` : ''}.`);
  return { workspace, path, file: shownPath(target.path), formula };
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
  const here = slashed(target.path);
  const workspace = createWorkspace({
    root: slashed(target.root),
    read(path) {
      const text = git(top, 'show', `${commit}:${slashed(relative(top, path))}`);
      if (text !== null) return { text };
      // A file that is new since then had no formulas.
      return path === here ? { text: '' } : { refused: 'missing', why: `it was not there at ${revision}` };
    },
  });
  return {
    workspace,
    path: here,
    file: `${display(target.path)} at ${/^[0-9a-f]{40,64}$/.test(revision) ? revision.slice(0, 10) : revision}`,
    formula,
  };
}

function split(named: string): readonly [string, string | null] {
  const mark = named.indexOf('#');
  return mark < 0 ? [named, null] : [named.slice(0, mark), named.slice(mark + 1)];
}
