/** The program in its surroundings: completion in three shells, and the hooks that run before a commit. */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { custard, faultyCustard, folderWith, nappe, program, repository } from './nappe.ts';

/** Tools that `.ci/run` installs; elsewhere a test needs them there. */
const has = (tool: string) => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;

describe('completion', () => {
  const scriptOf = (shell: string) => nappe(['completion', shell]).out;
  const sorted = (text: string) => text.trim().split(/\s+/).sort();

  test('bash completes commands, options, their values, and files', () => {
    const folder = folderWith({ 'completion.bash': scriptOf('bash'), 'tart.nappe': custard });
    const complete = (...words: string[]) => {
      const script = `source completion.bash; COMP_WORDS=(${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length - 1}; _nappe; printf '%s\\n' "\${COMPREPLY[@]}"`;
      return sorted(execFileSync('bash', ['--norc', '-c', script], { cwd: folder, encoding: 'utf8' }));
    };
    expect(complete('nappe', 'c')).toEqual(['card', 'check', 'compare', 'completion']);
    expect(complete('nappe', 'check', '--s')).toEqual(['--since', '--strict']);
    expect(complete('nappe', 'check', '--format', '')).toEqual(['github', 'json', 'sarif', 'text']);
    expect(complete('nappe', 'check', 'ta')).toEqual(['tart.nappe']);
    expect(complete('nappe', 'completion', '')).toContain('fish');
  });

  test.runIf(has('zsh'))('zsh accepts its script', () => {
    const folder = folderWith({ 'completion.zsh': scriptOf('zsh') });
    const load = 'autoload -U compinit; compinit -D -u; source completion.zsh; print $_comps[nappe]';
    expect(execFileSync('zsh', ['-f', '-c', load], { cwd: folder, encoding: 'utf8' }).trim()).toBe('_nappe');
  });

  test.runIf(has('fish'))('fish completes commands, options and their values', () => {
    const folder = folderWith({ 'completion.fish': scriptOf('fish') });
    const complete = (line: string) =>
      sorted(
        execFileSync('fish', ['--no-config', '-c', `source completion.fish; complete -C '${line}'`], {
          cwd: folder,
          encoding: 'utf8',
          env: { ...process.env, HOME: folder },
        }).replace(/\t.*/g, ''),
      );
    expect(complete('nappe c')).toEqual(['card', 'check', 'compare', 'completion']);
    expect(complete('nappe check --format ')).toEqual(['github', 'json', 'sarif', 'text']);
    expect(complete('nappe check --s')).toEqual(['--since', '--strict']);
  });
});

describe('.pre-commit-hooks.yaml', () => {
  const hooks = parse(readFileSync(join(repository, '.pre-commit-hooks.yaml'), 'utf8')) as {
    id: string;
    entry: string;
    files: string;
  }[];

  test('its commands are commands of the program, its files are formulas', () => {
    expect(hooks.map(({ id }) => id)).toEqual(['nappe-check', 'nappe-fmt']);
    for (const { entry } of hooks) expect(nappe([entry.split(' ').at(-1) as string, '--help']).status).toBe(0);
    expect(hooks.map(({ files }) => ['a/b.nappe', 'b.md', 'b.nappe.txt'].map((name) => new RegExp(files).test(name)))).toEqual([
      [true, true, false],
      [true, false, false],
    ]);
  });

  test.runIf(has('pre-commit'))('stop a commit with a fault, and let a good one through', () => {
    const shelf = folderWith();
    const git = (folder: string, ...words: string[]) =>
      spawnSync('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.org', '-c', 'init.defaultBranch=main', ...words], {
        cwd: folder,
        encoding: 'utf8',
        env: { ...process.env, PRE_COMMIT_HOME: join(shelf, 'cache') },
      });
    const source = join(shelf, 'nappe');
    mkdirSync(source);
    cpSync(join(repository, '.pre-commit-hooks.yaml'), join(source, '.pre-commit-hooks.yaml'));
    git(source, 'init', '-q');
    git(source, 'add', '.');
    git(source, 'commit', '-q', '-m', 'hooks');
    const revision = git(source, 'rev-parse', 'HEAD').stdout.trim();
    const folder = join(shelf, 'formulas');
    mkdirSync(join(folder, 'node_modules/.bin'), { recursive: true });
    symlinkSync(program, join(folder, 'node_modules/.bin/nappe'));
    writeFileSync(join(folder, '.gitignore'), 'node_modules\n');
    writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
    writeFileSync(
      join(folder, '.pre-commit-config.yaml'),
      `repos:\n  - repo: ${source}\n    rev: ${revision}\n    hooks: [{ id: nappe-check }, { id: nappe-fmt }]\n`,
    );
    git(folder, 'init', '-q');
    expect(
      spawnSync('pre-commit', ['install'], { cwd: folder, env: { ...process.env, PRE_COMMIT_HOME: join(shelf, 'cache') } })
        .status,
    ).toBe(0);
    writeFileSync(join(folder, 'a.nappe'), faultyCustard);
    git(folder, 'add', '.');
    const stopped = git(folder, 'commit', '-m', 'faulty');
    expect(stopped.status).not.toBe(0);
    expect(stopped.stdout + stopped.stderr).toContain('unknown-name');
    nappe(['fmt', '-'], { input: custard });
    writeFileSync(join(folder, 'a.nappe'), nappe(['fmt', '-'], { input: custard }).out);
    git(folder, 'add', '.');
    expect(git(folder, 'commit', '-m', 'good').status).toBe(0);
  });
});
