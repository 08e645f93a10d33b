/** Walking a folder: the files in it that hold notation, in a stable order, less what `.gitignore` leaves out. */
import { type Dirent, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import { display, isWithin, locate, sizeLimit, slashed, Unreadable } from './files.ts';

interface Rules {
  /** The folder its patterns are relative to. */
  readonly folder: string;
  readonly patterns: Ignore;
}

export interface Walked {
  /** Real paths. */
  readonly files: readonly string[];
  readonly failures: readonly Unreadable[];
}

/**
 * Files below `folder` (a real path within `root`) that `wanted` accepts by name. Folders whose name starts with a dot and
 * `node_modules` are left out; linked folders are not followed, and a linked file is taken only where it stays in the root.
 */
export function walk(folder: string, root: string, wanted: (name: string) => boolean): Walked {
  const files: string[] = [];
  const failures: Unreadable[] = [];
  enter(folder, rulesAbove(folder, root, failures), 1);
  return { files, failures };

  function enter(at: string, above: readonly Rules[], depth: number): void {
    if (depth > deepest) {
      failures.push(new Unreadable(display(at), `this folder is more than ${deepest} deep, and is not looked into.`));
      return;
    }
    let entries: Dirent[];
    try {
      entries = readdirSync(at, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    } catch {
      failures.push(new Unreadable(display(at), 'this folder may not be read.'));
      return;
    }
    const rules = entries.some((entry) => entry.name === '.gitignore') ? [...above, ...rulesOf(at, failures)] : above;
    for (const entry of entries) {
      const path = join(at, entry.name);
      if (entry.isDirectory()) {
        if (!entry.name.startsWith('.') && entry.name !== 'node_modules' && !isIgnored(`${path}/`, rules))
          enter(path, rules, depth + 1);
      } else if (wanted(entry.name) && !isIgnored(path, rules)) {
        if (entry.isSymbolicLink()) follow(path);
        else files.push(path);
      }
    }
  }

  function follow(link: string): void {
    try {
      const { path, stats } = locate(link);
      if (stats.isDirectory()) return;
      if (isWithin(root, path)) files.push(path);
      else
        failures.push(
          new Unreadable(display(link), `this link leads outside ${display(root)}, and nothing outside it is read.`, 'outside'),
        );
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      failures.push(new Unreadable(display(link), 'this link leads nowhere.', 'missing'));
    }
  }
}

/** Folders in each other. */
const deepest = 64;

/** The rules that already hold where a walk starts: those of each folder from the root down to it. */
function rulesAbove(folder: string, root: string, failures: Unreadable[]): Rules[] {
  const rules: Rules[] = [];
  for (let at = dirname(folder); isWithin(root, at); at = dirname(at)) {
    rules.unshift(...rulesOf(at, failures));
    if (at === dirname(at)) break;
  }
  return rules;
}

/** In one line of a `.gitignore`: each more may be tried at every folder of a path. */
const mostStars = 3;

/** As in git, a link is no `.gitignore`; nor is a pipe, which would keep whoever reads it waiting. */
function rulesOf(folder: string, failures: Unreadable[]): Rules[] {
  const path = join(folder, '.gitignore');
  try {
    const stats = lstatSync(path);
    if (!stats.isFile() || stats.size > sizeLimit) return [];
    const lines = readFileSync(path, 'utf8').split('\n');
    const good = lines.filter((line) => line.split('**').length - 1 <= mostStars);
    if (good.length < lines.length)
      failures.push(new Unreadable(display(path), `a line with more than ${mostStars} ** is not followed.`));
    return [{ folder, patterns: ignore().add(good) }];
  } catch {
    return [];
  }
}

/** The deepest rule that speaks of a path decides, as in git. */
function isIgnored(path: string, rules: readonly Rules[]): boolean {
  for (let index = rules.length - 1; index >= 0; index--) {
    const { folder, patterns } = rules[index] as Rules;
    const below = slashed(relative(folder, path)) + (path.endsWith('/') ? '/' : '');
    const verdict = patterns.test(below);
    if (verdict.ignored) return true;
    if (verdict.unignored) return false;
  }
  return false;
}
