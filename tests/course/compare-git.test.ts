/** The comparison where people meet it: in a real git repository, as a diff driver, since a revision, and as a comment. */
import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, nappe, program } from '../cli/nappe.ts';
import { bases, before } from './compare-pairs.ts';

const edited = before
  .replace('110 g                egg yolk', '120 g                egg yolk')
  .replace('  strain\n', '  // through the fine one\n  strain\n');

/** A repository with two commits: one edit in a formula, one in what it takes from; set up as the README says. */
function repository(): string {
  const folder = folderWith({
    '.gitattributes': '*.nappe diff=nappe\n',
    'bavarois.nappe': before,
    'bases.nappe': bases,
  });
  git(folder, 'init', '--quiet', '--initial-branch=main');
  git(folder, 'config', 'diff.nappe.command', `"${process.execPath}" "${program}" compare`);
  commit(folder, 'the first tasting');
  return folder;
}

function commit(folder: string, message: string): void {
  git(folder, 'add', '--all');
  git(folder, '-c', 'user.name=A Cook', '-c', 'user.email=cook@example.org', 'commit', '--quiet', '--message', message);
}

function git(folder: string, ...words: string[]): string {
  const { status, stdout, stderr } = spawnSync('git', words, {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, GIT_CONFIG_NOSYSTEM: '1', GIT_CONFIG_GLOBAL: '/dev/null', GIT_PAGER: 'cat', NO_COLOR: '1' },
  });
  if (status !== 0) throw new Error(`git ${words.join(' ')}: ${stderr}`);
  return stdout;
}

test('git diff says what changed in meaning, in place of lines', () => {
  const folder = repository();
  writeFileSync(join(folder, 'bavarois.nappe'), edited);
  const shown = git(folder, 'diff');
  expect(shown).toBe(['Harbour bavarois: bavarois.nappe', '  custard', '       :17  egg yolk: 110 g → 120 g', ''].join('\n'));
});

test('git diff of what a formula takes, of a new file, of a removed and of a renamed one', () => {
  const folder = repository();
  writeFileSync(
    join(folder, 'bases.nappe'),
    `${bases.replace('80 g  caster', '70 g  caster')}\nprices EUR\n  1.30 per kg caster sugar\n`,
  );
  expect(git(folder, 'diff')).toMatch(/lemon syrup: bases\.nappe\n {2}lemon syrup\n +:3 {2}caster sugar: 80 g → 70 g/);
  expect(git(folder, 'diff')).toMatch(/caster sugar, per kg: added: 1\.30 per kg caster sugar/);
  writeFileSync(join(folder, 'second.nappe'), edited.replace('formula Harbour', 'formula Quay'));
  git(folder, 'add', '--all');
  expect(git(folder, 'diff', '--cached', '--', 'second.nappe')).toMatch(/formula: added: Quay bavarois/);
  rmSync(join(folder, 'bavarois.nappe'));
  expect(git(folder, 'diff', '--', 'bavarois.nappe')).toMatch(/formula: dropped: Harbour bavarois/);
  writeFileSync(join(folder, 'renamed.nappe'), edited);
  git(folder, 'add', '--all');
  expect(git(folder, 'diff', '--cached', '--find-renames', '--diff-filter=R')).toMatch(/egg yolk: 110 g → 120 g/);
});

test('a line that cannot be read does not stop the diff of the other files', () => {
  const folder = repository();
  writeFileSync(join(folder, 'bavarois.nappe'), before.replace('  strain\n', '  strain ((\n'));
  writeFileSync(join(folder, 'bases.nappe'), bases.replace('80 g  caster', '70 g  caster'));
  expect(git(folder, 'diff')).toMatch(/caster sugar: 80 g → 70 g/);
});

test('git log -p --ext-diff tells the story of a formula', () => {
  const folder = repository();
  writeFileSync(join(folder, 'bavarois.nappe'), edited);
  commit(folder, 'more yolk');
  writeFileSync(join(folder, 'bavarois.nappe'), edited.replace('cook to 82-84 °C', 'cook to 83-84 °C'));
  commit(folder, 'a little hotter');
  const log = git(folder, 'log', '-p', '--ext-diff', '--format=%s', '--reverse');
  expect(log).toMatch(/more yolk\n[\s\S]*egg yolk: 110 g → 120 g[\s\S]*a little hotter\n[\s\S]*cook: to 82-84 °C → to 83-84 °C/);
});

test('--rev compares with a revision, with what the formula took then, and in the form of a comment', () => {
  const folder = repository();
  writeFileSync(join(folder, 'bavarois.nappe'), edited);
  writeFileSync(join(folder, 'bases.nappe'), bases.replace('80 g  caster', '70 g  caster'));
  const text = nappe(['compare', '--rev', 'HEAD', 'bavarois.nappe'], { cwd: folder });
  expect(text.status).toBe(0);
  expect(text.out).toContain('Harbour bavarois: bavarois.nappe at HEAD → bavarois.nappe');
  expect(text.out).toMatch(/lemon syrup\n +caster sugar: 80 g → 70 g/);
  const markdown = nappe(['compare', '--rev', 'HEAD', '--to', 'md', 'bavarois.nappe', 'bases.nappe'], { cwd: folder });
  expect(markdown.status).toBe(0);
  expect(markdown.out).toMatch(/^## What changed: Harbour bavarois\n/);
  expect(markdown.out).toMatch(/^## What changed: lemon syrup\n/m);
  expect(markdown.out).toContain('- **egg yolk**: 110 g → 120 g');
});

test('what cannot be compared is said, with status 2 and nothing on standard output', () => {
  const folder = repository();
  for (const words of [
    ['bavarois.nappe'],
    ['--rev', 'nowhere', 'bavarois.nappe'],
    ['--rev', '--output=x', 'bavarois.nappe'],
    ['bavarois.nappe', 'absent.nappe'],
    ['bavarois.nappe#Another', 'bavarois.nappe'],
  ]) {
    const { status, out, err } = nappe(['compare', ...words], { cwd: folder });
    expect({ words, status, out }).toEqual({ words, status: 2, out: '' });
    expect(err).not.toBe('');
    expect(err).not.toMatch(/\n\s+at /);
  }
});
