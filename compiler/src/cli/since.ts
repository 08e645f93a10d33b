/** What changed since a revision, by git: for `check --since`. */
import { spawnSync } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { UsageError } from './failure.ts';

/** Real paths of files changed, added or renamed since `revision`, untracked ones included. @throws UsageError */
export function changedSince(revision: string, folder: string = process.cwd()): ReadonlySet<string> {
  const top = git(folder, 'rev-parse', '--show-toplevel');
  if (top === null) throw new UsageError('--since needs a folder that is under git.');
  const commit = git(folder, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`);
  if (commit === null) throw new UsageError(`--since ${revision}: git knows no such revision here.`);
  const root = realpathSync.native(top.trim());
  const names = [
    git(root, 'diff', '--name-only', '--no-ext-diff', '--diff-filter=d', '-z', commit.trim(), '--'),
    git(root, 'ls-files', '--others', '--exclude-standard', '-z'),
  ].flatMap((listed) => (listed ?? '').split('\0').filter((name) => name !== ''));
  return new Set(names.map((name) => join(root, name)));
}

function git(folder: string, ...words: readonly string[]): string | null {
  const { status, stdout, error } = spawnSync('git', words, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  if (error && (error as NodeJS.ErrnoException).code === 'ENOENT')
    throw new UsageError('--since needs git, which is not installed.');
  return status === 0 ? stdout : null;
}
