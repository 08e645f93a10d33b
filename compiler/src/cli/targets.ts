/** From the paths a command was given to the files it is about. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { display, locate, readStandardInput, rootOf, Unreadable } from './files.ts';

export interface Target {
  /** Real and absolute; for standard input a name of its own in the current folder. */
  readonly path: string;
  /** The workspace root it is read in. */
  readonly root: string;
  /** The text, where it does not come from the file itself. */
  readonly given?: string;
}

export interface Targets {
  readonly targets: readonly Target[];
  readonly failures: readonly Unreadable[];
}

/** What stands for standard input on the command line, and in answers. */
export const standardInput = '-';

export const isFormula = (name: string): boolean => name.endsWith('.nappe');

/** Paths as a sentence names them. */
export const named = (paths: readonly string[]): string => paths.map((path) => (path === '.' ? 'this folder' : path)).join(', ');

/** Folders are walked for names that `wanted` accepts, files are taken as they are named; each file once, in the order given. */
export async function targetsOf(paths: readonly string[], wanted: (name: string) => boolean): Promise<Targets> {
  const targets = new Map<string, Target>();
  const failures: Unreadable[] = [];
  const put = (target: Target) => {
    if (!targets.has(target.path)) targets.set(target.path, target);
  };
  for (const path of paths) {
    try {
      if (path === standardInput) put(fromStandardInput());
      else await fromPath(path);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      failures.push(error);
    }
  }
  return { targets: [...targets.values()], failures };

  async function fromPath(named: string): Promise<void> {
    const { path, stats } = locate(named);
    const root = rootOf(path, stats.isDirectory());
    if (!stats.isDirectory()) return put({ path, root });
    const walked = (await import('./walk.ts')).walk(path, root, wanted);
    for (const file of walked.files) put({ path: file, root });
    failures.push(...walked.failures);
  }
}

/** The one file of a command that takes one. @throws Unreadable */
export function targetOf(path: string): Target {
  if (path === standardInput) return fromStandardInput();
  const located = locate(path);
  if (located.stats.isDirectory()) throw new Unreadable(display(located.path), 'this is a folder; name one file.');
  return { path: located.path, root: rootOf(located.path, false) };
}

function fromStandardInput(): Target {
  const folder = realpathSync.native(process.cwd());
  return { path: join(folder, standardInput), root: rootOf(folder, true), given: readStandardInput() };
}
