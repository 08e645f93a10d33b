/** What changed since a revision, by git: for `check --since`. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import type { Workspace } from '../index.ts';
import { UsageError } from './failure.ts';
import { slashed } from './files.ts';
import { workspaceOf } from './formula.ts';
import { git } from './git.ts';
import type { Target } from './targets.ts';

/**
 * The targets that changed since `revision`, and those that take from a changed file, over however many files; in their order.
 * @throws UsageError where there is no git, no repository or no such revision
 */
export function affected(targets: readonly Target[], revision: string): readonly Target[] {
  const changed = changedSince(revision);
  if (changed.size === 0) return [];
  const workspaces = new Map<string, Workspace>();
  return targets.filter((target) => {
    if (changed.has(target.path)) return true;
    const workspace = workspaces.get(target.root) ?? workspaceOf(target);
    workspaces.set(target.root, workspace);
    return workspace.reachable(workspace.unit(slashed(target.path))).some(({ path }) => changed.has(path));
  });
}

/** Real paths of files changed, added or renamed since `revision`, untracked ones included. @throws UsageError */
function changedSince(revision: string, folder: string = process.cwd()): ReadonlySet<string> {
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
