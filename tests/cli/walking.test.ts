/** Which files a folder's check is about: `.gitignore`, hidden folders, `--since`, and many files at once. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { custard, faultyCustard, folderWith, nappe } from './nappe.ts';

/** Files with something wrong in them, in the order of the answer. */
function checked(folder: string, ...words: string[]): string[] {
  const { diagnostics } = JSON.parse(nappe(['check', '--format', 'json', ...words], { cwd: folder }).out);
  return [...new Set<string>(diagnostics.map(({ file }: { file: string }) => file))];
}

function git(folder: string, ...words: string[]): string {
  const identity = [
    '-c',
    'user.name=Test',
    '-c',
    'user.email=test@example.org',
    '-c',
    'init.defaultBranch=main',
    '-c',
    'commit.gpgsign=false',
  ];
  return execFileSync('git', [...identity, ...words], { cwd: folder, encoding: 'utf8' });
}

describe('a folder is walked', () => {
  const tree = Object.fromEntries(
    [
      'a.nappe',
      'notes.txt',
      'sub/b.nappe',
      'sub/drafts/c.nappe',
      'sub/drafts/keep.nappe',
      'old/d.nappe',
      'old/sub/e.nappe',
      'x.old.nappe',
      'node_modules/f.nappe',
      '.hidden/g.nappe',
      '.git/h.nappe',
      'lesson.md',
    ].map((name) => [name, name.endsWith('.md') ? `\`\`\`nappe\n${faultyCustard}\`\`\`\n` : faultyCustard]),
  );

  test('by name, in a stable order, without hidden folders and node_modules', () => {
    expect(checked(folderWith(tree))).toEqual([
      'a.nappe',
      'lesson.md',
      'old/d.nappe',
      'old/sub/e.nappe',
      'sub/b.nappe',
      'sub/drafts/c.nappe',
      'sub/drafts/keep.nappe',
      'x.old.nappe',
    ]);
  });

  test('less what .gitignore leaves out, in the folder, above it and below it; named files are always checked', () => {
    const folder = folderWith({
      ...tree,
      '.gitignore': '/old/\n*.old.nappe\n',
      'sub/.gitignore': 'drafts/*\n!drafts/keep.nappe\n',
    });
    expect(checked(folder)).toEqual(['a.nappe', 'lesson.md', 'sub/b.nappe', 'sub/drafts/keep.nappe']);
    expect(checked(folder, 'sub')).toEqual(['sub/b.nappe', 'sub/drafts/keep.nappe']);
    expect(checked(folder, 'old/d.nappe', 'x.old.nappe')).toEqual(['old/d.nappe', 'x.old.nappe']);
  });

  test('as git itself would', () => {
    const folder = folderWith({ ...tree, '.git/h.nappe': '', '.gitignore': 'old\nsub/dr*\n!a.nappe\n/lesson.md\n' });
    git(folder, 'init', '-q');
    const known = git(folder, 'ls-files', '--others', '--exclude-standard').split('\n');
    expect(checked(folder)).toEqual(
      known.filter((name) => /\.(nappe|md)$/.test(name) && !/^(node_modules|\.hidden)/.test(name)).sort(),
    );
  });

  test('a folder without formulas: nothing wrong, and a hint', () => {
    expect(nappe(['check'], { cwd: folderWith() })).toMatchObject({
      status: 0,
      err: expect.stringMatching(/no formula.*nappe new/s),
    });
  });
});

describe('check --since', () => {
  test('looks at what changed, what is new, and what takes from them', () => {
    const taker = 'take Pouring custard from "bases.nappe"\nformula Cup\n  makes 300 g\n  300 g Pouring custrad\n  mix nothing\n';
    const folder = folderWith({ 'old.nappe': faultyCustard, 'bases.nappe': custard, 'taker.nappe': taker });
    git(folder, 'init', '-q');
    git(folder, 'add', '.');
    git(folder, 'commit', '-q', '-m', 'first');
    expect(checked(folder, '--since', 'HEAD')).toEqual([]);
    writeFileSync(join(folder, 'new.nappe'), faultyCustard);
    expect(checked(folder, '--since', 'HEAD')).toEqual(['new.nappe']);
    writeFileSync(join(folder, 'bases.nappe'), custard.replace('80 g', '85 g'));
    expect(checked(folder, '--since', 'HEAD')).toEqual(['new.nappe', 'taker.nappe']);
    git(folder, 'add', '.');
    git(folder, 'commit', '-q', '-m', 'second');
    expect(checked(folder, '--since', 'HEAD')).toEqual([]);
    expect(checked(folder, '--since', 'HEAD~1')).toEqual(['new.nappe', 'taker.nappe']);
  });

  test.each([['nowhere'], ['--output=/tmp/x'], ['HEAD; echo']])('%s is no revision', (revision) => {
    const folder = folderWith({ 'a.nappe': custard });
    git(folder, 'init', '-q');
    expect(nappe(['check', `--since=${revision}`], { cwd: folder })).toMatchObject({
      status: 2,
      err: expect.stringContaining('no such revision'),
    });
  });

  test('outside git is a usage error', () => {
    const folder = folderWith({ 'a.nappe': custard });
    expect(nappe(['check', '--since', 'HEAD'], { cwd: folder, env: { GIT_CEILING_DIRECTORIES: folder } })).toMatchObject({
      status: 2,
    });
  });
});
