/** What the command line writes: only whole, only by `fmt` over an input, and never where a line cannot be read. */
import { spawn } from 'node:child_process';
import { chmodSync, existsSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { custard, folderWith, nappe, program } from './nappe.ts';

const untidy = custard.replaceAll('  ', ' ').replace('400 g whole milk', '400 g    whole milk');

describe('fmt', () => {
  test('lays a file out, keeps what it means, and then leaves it alone', () => {
    const folder = folderWith({ 'a.nappe': untidy });
    expect(nappe(['fmt', 'a.nappe'], { cwd: folder })).toMatchObject({ status: 0, out: '' });
    const once = readFileSync(join(folder, 'a.nappe'), 'utf8');
    expect(once).not.toBe(untidy);
    const { mtimeMs, ino } = statSync(join(folder, 'a.nappe'));
    nappe(['fmt', 'a.nappe'], { cwd: folder });
    expect(statSync(join(folder, 'a.nappe'))).toMatchObject({ mtimeMs, ino });
    expect(nappe(['fmt', '--check', 'a.nappe'], { cwd: folder })).toMatchObject({ status: 0, out: '' });
  });

  test('--check changes nothing, lists what would change, and exits 1', () => {
    const folder = folderWith({ 'a.nappe': untidy, 'sub/b.nappe': untidy });
    expect(nappe(['fmt', '--check'], { cwd: folder })).toMatchObject({ status: 1, out: 'a.nappe\nsub/b.nappe\n' });
    expect(readFileSync(join(folder, 'a.nappe'), 'utf8')).toBe(untidy);
  });

  test('standard input goes to standard output', () => {
    const folder = folderWith({ 'a.nappe': untidy });
    const { out, status } = nappe(['fmt', '-'], { cwd: folder, input: untidy });
    nappe(['fmt', 'a.nappe'], { cwd: folder });
    expect({ status, out }).toEqual({ status: 0, out: readFileSync(join(folder, 'a.nappe'), 'utf8') });
  });

  test('a file with a line that cannot be read is left as it is, the others are laid out, and the exit is 1', () => {
    const broken = `${untidy}  ??? nonsense here\n`;
    const folder = folderWith({ 'a.nappe': broken, 'b.nappe': untidy });
    const answer = nappe(['fmt'], { cwd: folder });
    expect(answer).toMatchObject({ status: 1, out: '', err: expect.stringMatching(/^nappe: a\.nappe:\d+: left as it is/) });
    expect(readFileSync(join(folder, 'a.nappe'), 'utf8')).toBe(broken);
    expect(readFileSync(join(folder, 'b.nappe'), 'utf8')).not.toBe(untidy);
    expect(nappe(['fmt', '-'], { input: broken, cwd: folder })).toMatchObject({ status: 1, out: '' });
  });

  test('keeps permissions, links and CRLF', () => {
    const folder = folderWith({ 'real.nappe': untidy.replaceAll('\n', '\r\n') });
    chmodSync(join(folder, 'real.nappe'), 0o640);
    symlinkSync('real.nappe', join(folder, 'link.nappe'));
    nappe(['fmt', 'link.nappe'], { cwd: folder });
    expect(lstatSync(join(folder, 'link.nappe')).isSymbolicLink()).toBe(true);
    expect(statSync(join(folder, 'real.nappe')).mode & 0o777).toBe(0o640);
    const text = readFileSync(join(folder, 'real.nappe'), 'utf8');
    expect(text).not.toContain('    whole');
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  });

  test('killed at any moment, every file is the old one or the new one, whole', async () => {
    const old = Array.from({ length: 60 }, (_, index) => untidy.replace('Pouring custard', `Custard ${index}`)).join('');
    const names = Array.from({ length: 40 }, (_, index) => `f${index}.nappe`);
    const folder = folderWith(Object.fromEntries(names.map((name) => [name, old])));
    const laidOut = nappe(['fmt', '-'], { input: old }).out;
    expect(laidOut.length).toBeGreaterThan(1000);
    const seen = { old: 0, new: 0 };
    for (let attempt = 0; attempt < 8; attempt++) {
      for (const name of names) writeFileSync(join(folder, name), old);
      const child = spawn(process.execPath, [program, 'fmt'], { cwd: folder, stdio: 'ignore' });
      const ended = new Promise((resolve) => child.on('close', resolve));
      // Somewhere between the first file and the last: wait for a share of them, then strike.
      await until(() => names.filter((name) => readFileSync(join(folder, name), 'utf8') !== old).length > attempt * 4);
      child.kill('SIGKILL');
      await ended;
      for (const name of names) {
        const text = readFileSync(join(folder, name), 'utf8');
        expect([old, laidOut].includes(text), name).toBe(true);
        seen[text === old ? 'old' : 'new'] += 1;
      }
    }
    expect(seen.new).toBeGreaterThan(0);
    expect(seen.old).toBeGreaterThan(0);
  });

  test('interrupted from the keyboard, it leaves nothing half made and exits 130', async () => {
    const names = Array.from({ length: 200 }, (_, index) => `f${index}.nappe`);
    const folder = folderWith(Object.fromEntries(names.map((name) => [name, untidy.repeat(20)])));
    const child = spawn(process.execPath, [program, 'fmt'], { cwd: folder, stdio: 'ignore' });
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    await until(() => readFileSync(join(folder, 'f0.nappe'), 'utf8') !== untidy.repeat(20));
    child.kill('SIGINT');
    expect(await ended).toBe(130);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('-o', () => {
  test('writes the card, and nothing to standard output', () => {
    const folder = folderWith({ 'a.nappe': custard });
    expect(nappe(['card', 'a.nappe', '-o', 'a.html'], { cwd: folder })).toMatchObject({ status: 0, out: '' });
    expect(readFileSync(join(folder, 'a.html'), 'utf8')).toMatch(/^<!doctype html>/i);
  });

  test.each([
    ['its own input', 'a.nappe', /is an input/],
    ['its own input by another name', './sub/../a.nappe', /is an input/],
    ['a link to its input', 'link.html', /is an input/],
    ['a folder', 'sub', /this is a folder/],
    ['a folder that is not there', 'nowhere/card.html', /nowhere/],
  ])('refuses %s with status 2', (_, output, words) => {
    const folder = folderWith({ 'a.nappe': custard, 'sub/': '' });
    symlinkSync('a.nappe', join(folder, 'link.html'));
    const answer = nappe(['card', 'a.nappe', '-o', output], { cwd: folder });
    expect(answer.err).toMatch(words);
    expect(answer.status).toBe(2);
    expect(readFileSync(join(folder, 'a.nappe'), 'utf8')).toBe(custard);
  });
});

describe('-o of a handout', () => {
  test.each([
    ['itself', 'a.md'],
    ['a formula that it shows', 'fruit.nappe'],
    ['what such a formula takes from', 'base.nappe'],
    ['what it takes from by another name', 'real.nappe'],
    ['a picture', 'bowl.png'],
  ])('refuses %s with status 2, and writes nothing', (_, output) => {
    const base = (name: string) => `component ${name}\n  100 g  water\n`;
    const files = {
      'fruit.nappe':
        'take one from "base.nappe"\ntake two from "link.nappe"\nformula Fruit\n  10 g  one\n  10 g  two\n  mix one, two\n',
      'base.nappe': base('one'),
      'real.nappe': base('two'),
      'bowl.png': Buffer.from('89504e470d0a1a0a', 'hex'),
      'a.md': '# T\n\n![A bowl](bowl.png)\n\n```nappe\ncard "fruit.nappe"\n```\n',
    };
    const folder = folderWith(files);
    symlinkSync('real.nappe', join(folder, 'link.nappe'));
    const answer = nappe(['handout', 'a.md', '-o', output], { cwd: folder });
    expect({ ...answer, err: answer.err.split('\n')[0] }).toEqual({
      status: 2,
      out: '',
      err: `nappe: ${output} is an input of this; name another file to write.`,
    });
    for (const [name, content] of Object.entries(files))
      expect(readFileSync(join(folder, name)), name).toEqual(Buffer.from(content));
  });
});

describe('new', () => {
  test('writes a starter that checks clean and makes a card', () => {
    const folder = folderWith();
    const answer = nappe(['new', 'Tea cream', '--makes', '12 glasses of 100 ml'], { cwd: folder });
    expect(answer.status).toBe(0);
    expect(readFileSync(join(folder, 'tea-cream.nappe'), 'utf8')).toMatch(/^formula Tea cream\n {2}makes 12 glasses of 100 ml\n/);
    expect(nappe(['check', '--strict', '--format', 'json', 'tea-cream.nappe'], { cwd: folder })).toMatchObject({ status: 0 });
    expect(nappe(['fmt', '--check', 'tea-cream.nappe'], { cwd: folder })).toMatchObject({ status: 0 });
    expect(nappe(['card', 'tea-cream.nappe'], { cwd: folder })).toMatchObject({ status: 0 });
  });

  test.each([['1.2 kg'], ['2 rings of 18 x 4.5 cm'], ['1 l'], ['6 glasses of 90 g']])(
    'checks clean where it makes %s',
    (makes) => {
      const folder = folderWith();
      nappe(['new', 'Cream', '--makes', makes], { cwd: folder });
      expect(JSON.parse(nappe(['check', '--format', 'json'], { cwd: folder }).out).diagnostics).toEqual([]);
    },
  );

  test('asks for what is not given, and takes the suggestion for an empty answer', () => {
    const folder = folderWith();
    const answer = nappe(['new'], { cwd: folder, input: 'Lemon cream\n\n' });
    expect(answer.err).toMatch(/What is it called\?.*How much does it make\?/s);
    expect(answer.status).toBe(0);
    expect(readFileSync(join(folder, 'lemon-cream.nappe'), 'utf8')).toContain('makes 8 glasses of 100 ml');
  });

  test('asks again where an answer is no yield', () => {
    const folder = folderWith();
    const answer = nappe(['new', 'Cream'], { cwd: folder, input: 'lots\n1 kg\n' });
    expect(answer.err).toMatch(/"lots"/);
    expect(readFileSync(join(folder, 'cream.nappe'), 'utf8')).toContain('makes 1 kg');
  });

  test('never writes over a file', () => {
    const folder = folderWith({ 'cream.nappe': custard });
    const answer = nappe(['new', 'Cream', '--makes', '1 kg'], { cwd: folder });
    expect(answer).toMatchObject({ status: 2, err: expect.stringContaining('is there already') });
    expect(readFileSync(join(folder, 'cream.nappe'), 'utf8')).toBe(custard);
  });

  test('needs a yield that has a size', () => {
    const folder = folderWith();
    expect(nappe(['new', 'Macarons', '--makes', '40 macarons'], { cwd: folder })).toMatchObject({
      status: 2,
      err: expect.stringContaining('no mass or volume'),
    });
    expect(existsSync(join(folder, 'macarons.nappe'))).toBe(false);
  });
});

async function until(holds: () => boolean): Promise<void> {
  for (let turn = 0; turn < 20_000; turn++) {
    if (holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  throw new Error('it never came');
}
