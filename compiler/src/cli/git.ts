/** Git, as a child process: what it prints, or null where it says no. */
import { spawnSync } from 'node:child_process';
import { UsageError } from './failure.ts';

/** @throws UsageError where git is not installed. */
export function git(folder: string, ...words: readonly string[]): string | null {
  const { status, stdout, error } = spawnSync('git', words, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  if (error && (error as NodeJS.ErrnoException).code === 'ENOENT')
    throw new UsageError('This needs git, which is not installed.');
  return status === 0 ? stdout : null;
}
