/** The course is true: its formulas check clean, its mistakes raise what it says, and its commands run in the order it has them. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { commands } from '../../compiler/src/cli/table.ts';
import { checkUnit, createWorkspace, type Diagnostic } from '../../compiler/src/index.ts';
import { program, repository } from '../cli/nappe.ts';

const folder = join(repository, 'samples/guide');
const files = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => /\.(md|nappe)$/.test(name))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
);
const lessons = Object.keys(files)
  .filter((name) => /^\d/.test(name))
  .sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10));

interface Fence {
  readonly info: string;
  readonly text: string;
  /** The lesson's text before it, and after it. */
  readonly before: string;
  readonly after: string;
}

/** Fences of three backquotes or tildes, line by line. */
function fencesIn(markdown: string): Fence[] {
  const lines = markdown.split('\n');
  const found: Fence[] = [];
  for (let start = 0; start < lines.length; start += 1) {
    const mark = /^(```|~~~)(.*)$/.exec(lines[start] as string);
    if (!mark) continue;
    const end = lines.indexOf(mark[1] as string, start + 1);
    found.push({
      info: (mark[2] as string).trim(),
      text: `${lines.slice(start + 1, end).join('\n')}\n`,
      before: lines.slice(0, start).join(' ').trimEnd(),
      after: lines.slice(end + 1).join(' '),
    });
    start = end;
  }
  return found;
}

function check(name: string, text: string): readonly Diagnostic[] {
  const workspace = createWorkspace({
    root: '/guide',
    read: (path) => {
      const asked = path === `/guide/${name}` ? text : files[path.slice('/guide/'.length)];
      return asked === undefined ? { refused: 'missing', why: 'is not there' } : { text: asked };
    },
  });
  return checkUnit(workspace, `/guide/${name}`).diagnostics;
}

/** A `diff` fence carried out: lines with a minus leave, lines with a plus take the place of the first that left. */
function mistaken(markdown: string, diff: string): string {
  const lines = diff.trimEnd().split('\n');
  const lost = lines.filter((line) => line.startsWith('-')).map((line) => line.slice(1));
  const gained = lines.filter((line) => line.startsWith('+')).map((line) => line.slice(1));
  const all = markdown.split('\n');
  const at = all.indexOf(lost[0] as string);
  expect(at, `${lost[0]} stands in the lesson`).toBeGreaterThanOrEqual(0);
  return [...all.slice(0, at), ...gained, ...all.slice(at).filter((line) => !lost.includes(line))].join('\n');
}

const answerAfter = (fence: Fence): string => /^\s*Nappe answers `([a-z-]+)`/.exec(fence.after)?.[1] ?? 'no answer named';

test('there are ten lessons, and the index links each', () => {
  expect(lessons.map((name) => Number.parseInt(name, 10))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  for (const name of lessons) expect(files['README.md']).toContain(`](${name})`);
});

test.each(Object.keys(files))('%s checks clean', (name) => {
  expect(check(name, files[name] as string).filter(({ severity }) => severity !== 'notice')).toEqual([]);
});

describe.each(lessons)('%s', (name) => {
  const text = files[name] as string;
  const mistakes = fencesIn(text).filter(({ info }) => info === 'diff' || info.startsWith('text adds '));

  test('asks for a mistake', () => expect(mistakes.length).toBeGreaterThan(0));

  test.each(mistakes.map((fence) => [answerAfter(fence), fence] as const))('has a mistake that raises %s', (code, fence) => {
    const wrong = fence.info === 'diff' ? mistaken(text, fence.text) : `${text}\n\`\`\`nappe\n${fence.text}\`\`\`\n`;
    expect(check(name, text).map((found) => found.code)).not.toContain(code);
    expect(check(name, wrong).map((found) => found.code)).toContain(code);
    if (fence.info !== 'diff') expect(fence.info).toBe(`text adds ${code}`);
  });

  test('has commands to run', () => expect(fencesIn(text).some(({ info }) => info === 'sh')).toBe(true));
});

describe('followed from the first lesson to the last in one folder', () => {
  let kitchen: string;
  let bin: string;
  beforeAll(() => {
    kitchen = mkdtempSync(join(tmpdir(), 'nappe-course-'));
    bin = join(kitchen, '.bin');
    mkdirSync(bin);
    writeFileSync(join(bin, 'nappe'), `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`);
    chmodSync(join(bin, 'nappe'), 0o755);
  });
  afterAll(() => rmSync(kitchen, { recursive: true, force: true }));

  test.each(lessons)('%s', (name) => {
    for (const { info, text, before } of fencesIn(files[name] as string)) {
      const saved = /[`\s]as\s+`([^`]+)`:$/.exec(before)?.[1];
      if (saved) {
        writeFileSync(join(kitchen, saved), text);
        if (files[saved] !== undefined) expect(text.trim(), `${saved} is the file beside the lesson`).toBe(files[saved].trim());
      }
      if (info !== 'sh') continue;
      for (const [, command] of text.matchAll(/^nappe ([a-z-]+)/gm)) expect(commands.map((one) => one.name)).toContain(command);
      const { status, stdout, stderr } = spawnSync('sh', ['-e', '-c', text], {
        cwd: kitchen,
        encoding: 'utf8',
        env: { ...process.env, ...gitless, NO_COLOR: '1', PATH: `${bin}${delimiter}${process.env.PATH}` },
      });
      expect(status, `${text}\n${stdout}\n${stderr}`).toBe(0);
    }
  });
});

/** A git that knows no one's settings, and someone to commit as. */
const gitless = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_SYSTEM: '/dev/null',
  GIT_AUTHOR_NAME: 'A teacher',
  GIT_AUTHOR_EMAIL: 'teacher@example.org',
  GIT_COMMITTER_NAME: 'A teacher',
  GIT_COMMITTER_EMAIL: 'teacher@example.org',
};
