/**
 * Whatever is written is written whole: every command that writes a file is killed before each step of it, and in the middle of the text.
 * `tests/cli/writing.test.ts` kills `fmt` at moments of chance too.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { custard, folderWith, nappe, program } from '../cli/nappe.ts';

/** Ends the process before the step that STEP counts to, of those that have to do with the file written aside. */
const hook = `
const fs = require('node:fs');
const mine = new Set();
let step = 0;
const die = () => { process.kill(process.pid, 'SIGKILL'); Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0); };
const due = () => ++step === Number(process.env.STEP);
for (const name of ['openSync', 'writeFileSync', 'writeSync', 'fchownSync', 'fchmodSync', 'fsyncSync', 'closeSync', 'renameSync']) {
  const real = fs[name];
  fs[name] = function (...words) {
    const [first, second] = words;
    if (!mine.has(first) && !String(first).endsWith('.part')) return real.apply(this, words);
    if (due()) {
      if (name === 'writeFileSync') real.call(this, first, second.slice(0, second.length / 2));
      die();
    }
    const result = real.apply(this, words);
    if (name === 'openSync') mine.add(result);
    return result;
  };
}
`;

const untidy = custard.replaceAll('  ', ' ').replace('400 g whole milk', '400 g    whole milk');
const text = 'Tea cream\n\nServes 4\n\n400 g cream\n\nWhip the cream.\n';
const files = {
  'a.nappe': custard,
  'untidy.nappe': untidy,
  'a.md': `# A\n\n\`\`\`nappe\n${custard}\`\`\`\n`,
  'a.txt': text,
};

/** The command, and the file it writes; those that never write over a file have no old one. */
const writers: readonly (readonly [string, readonly string[], string, boolean])[] = [
  ['fmt', ['fmt', 'untidy.nappe'], 'untidy.nappe', true],
  ['card', ['card', 'a.nappe', '-o', 'out.html'], 'out.html', true],
  ['handout', ['handout', 'a.md', '-o', 'out.html'], 'out.html', true],
  ['weigh-out', ['weigh-out', 'a.nappe', '-o', 'out.txt'], 'out.txt', true],
  ['timeline', ['timeline', 'a.nappe', '-o', 'out.txt'], 'out.txt', true],
  ['label', ['label', 'a.nappe', '--made', '2025-11-25', '-o', 'out.txt'], 'out.txt', true],
  ['draft', ['draft', 'a.txt', '-o', 'out.nappe'], 'out.nappe', false],
  ['new', ['new', 'Tea', '--makes', '1 kg', '-o', 'out.nappe'], 'out.nappe', false],
];

describe.each(writers)('%s', (_, words, output, writesOver) => {
  test('killed at any step leaves the old file or the new one, whole', () => {
    const folder = folderWith({ ...files, 'hook/hook.cjs': hook });
    const path = join(folder, output);
    const old = output in files ? files[output as keyof typeof files] : writesOver ? 'what was there before' : null;
    const set = () => {
      for (const name of readdirSync(folder)) if (name.endsWith('.part')) rmSync(join(folder, name));
      rmSync(path, { force: true });
      if (old === null) return;
      writeFileSync(path, old);
      chmodSync(path, 0o640);
    };
    const found = () => (existsSync(path) ? readFileSync(path, 'utf8') : null);
    set();
    expect(nappe(words, { cwd: folder })).toMatchObject({ status: 0, err: expect.not.stringContaining('failed') });
    const made = found();
    expect(made).not.toBe(old);

    const seen: (string | null)[] = [];
    for (let step = 1; ; step++) {
      set();
      const { signal } = spawnSync(process.execPath, ['--require', join(folder, 'hook/hook.cjs'), program, ...words], {
        cwd: folder,
        env: { ...process.env, NO_COLOR: '1', STEP: String(step) },
      });
      const left = found();
      expect([old, made], `step ${step}`).toContain(left);
      if (old !== null) expect(statSync(path).mode & 0o777, `step ${step}`).toBe(0o640);
      seen.push(left);
      // What lies aside is hidden, and nobody takes it for a formula.
      const strange = readdirSync(folder).filter((name) => ![...Object.keys(files), 'hook', output].includes(name));
      for (const name of strange) expect(name, `step ${step}`).toMatch(/^\..+\.[0-9a-f]{12}\.part$/);
      if (signal === null) break;
    }
    expect(seen.length).toBeGreaterThan(4);
    expect(seen.slice(0, -1).every((left) => left === old)).toBe(true);
    expect(seen.at(-1)).toBe(made);
  });
});
