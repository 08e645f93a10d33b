/** What a person may hand to the command line, and the answer each gets: an exit status, and words instead of a stack trace. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { custard, faultyCustard, folderWith, nappe, program, type Ran } from './nappe.ts';

const commands = [['check'], ['card'], ['trace'], ['fmt']] as const;

function expectWords({ out, err }: Ran): void {
  expect(out + err).not.toMatch(/\n\s+at .+:\d+:\d+/);
  expect(out + err).not.toMatch(/node:internal|undefined|\[object/);
}

describe.each(commands)('nappe %s refuses with status 2 and a sentence that starts with the path', (...command) => {
  test.each([
    ['a missing file', 'absent.nappe', /absent\.nappe: there is no such file/],
    ['a binary', 'picture.nappe', /picture\.nappe: this is no text but a binary file/],
    ['a file that is not UTF-8', 'latin.nappe', /latin\.nappe: this is not in UTF-8/],
    ['a file in UTF-16', 'windows.nappe', /windows\.nappe: this is saved as UTF-16/],
    ['a file above 5 MB', 'huge.nappe', /huge\.nappe: this is larger than 5 MB/],
    ['a pipe in the file system', 'pipe.nappe', /pipe\.nappe: this is no ordinary file/],
    ['a link that leads nowhere', 'dangling.nappe', /dangling\.nappe: there is no such file/],
    ['a link to itself', 'loop.nappe', /loop\.nappe: this is a link that leads back to itself/],
    ['a name that is too long', `${'x'.repeat(300)}.nappe`, /this name is too long/],
  ])('%s', (_, name, words) => {
    const folder = folderWith({
      'picture.nappe': new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]),
      'latin.nappe': new Uint8Array([...Buffer.from('formula cr'), 0xe8, ...Buffer.from('me\n')]),
      'windows.nappe': Buffer.from('\ufeffformula x\n', 'utf16le'),
      'huge.nappe': '// a line of a very long file\n'.repeat(200_000),
    });
    execFileSync('mkfifo', [join(folder, 'pipe.nappe')]);
    symlinkSync('nowhere.nappe', join(folder, 'dangling.nappe'));
    symlinkSync('loop.nappe', join(folder, 'loop.nappe'));
    const answer = nappe([...command, name], { cwd: folder });
    expect(answer.err).toMatch(words);
    expect(answer.err.trim().split('\n')).toHaveLength(1);
    expect({ status: answer.status, out: answer.out }).toEqual({ status: 2, out: '' });
    expectWords(answer);
  });

  test('a file without permission, for a user whom permissions bind', () => {
    const folder = folderWith({ 'secret.nappe': custard });
    chmodSync(folder, 0o755);
    chmodSync(join(folder, 'secret.nappe'), 0o000);
    const answer = asNobody(folder, [...command, 'secret.nappe']);
    expect(answer.err).toMatch(/^nappe: secret\.nappe: this may not be read: permission denied\.\n$/);
    expect(answer.status).toBe(2);
  });
});

describe('a folder', () => {
  test.each([['card'], ['trace']])('is refused by %s, which takes one file', (command) => {
    const answer = nappe([command, '.'], { cwd: folderWith({ 'a.nappe': custard }) });
    expect(answer.err).toBe('nappe: .: this is a folder; name one file.\n');
    expect(answer.status).toBe(2);
  });

  test('is walked by check', () => {
    const answer = nappe(['check', '--format', 'json', '.'], {
      cwd: folderWith({ 'a.nappe': custard, 'deep/er/b.nappe': custard }),
    });
    expect(JSON.parse(answer.out).summary.files).toBe(2);
    expect(answer.status).toBe(0);
  });
});

describe('what can be read', () => {
  test('an empty file: nothing to say, and no card', () => {
    const folder = folderWith({ 'empty.nappe': '' });
    expect(nappe(['check', 'empty.nappe'], { cwd: folder }).status).toBe(0);
    const card = nappe(['card', 'empty.nappe'], { cwd: folder });
    expect(card.err).toMatch(/empty\.nappe holds no formula/);
    expect(card.status).toBe(2);
  });

  test('a file of one letter: one syntax error in line 1', () => {
    const answer = nappe(['check', '--format', 'json', 'tiny.nappe'], { cwd: folderWith({ 'tiny.nappe': 'x' }) });
    expect(JSON.parse(answer.out).diagnostics).toMatchObject([{ file: 'tiny.nappe', line: 1, column: 1, code: 'syntax' }]);
    expect(answer.status).toBe(1);
  });

  test('5,000 lines: every formula of it is checked', () => {
    const one = faultyCustard.split('\n').length - 1;
    const many = Array.from({ length: Math.ceil(5000 / one) }, (_, index) =>
      faultyCustard.replace('Pouring custard', `Custard ${index}`),
    ).join('');
    const answer = nappe(['check', '--format', 'json', 'long.nappe'], { cwd: folderWith({ 'long.nappe': many }) });
    const { diagnostics } = JSON.parse(answer.out);
    const lines = diagnostics
      .filter(({ code }: { code: string }) => code === 'unknown-name')
      .map(({ line }: { line: number }) => line);
    expect(lines).toEqual(Array.from({ length: Math.ceil(5000 / one) }, (_, index) => index * one + 10));
    expect(answer.status).toBe(1);
  });

  test.each([
    ['CRLF line ends', (text: string) => text.replaceAll('\n', '\r\n')],
    ['a byte order mark', (text: string) => `\ufeff${text}`],
    ['tabs', (text: string) => text.replaceAll('  ', '\t')],
    ['no line end at the end', (text: string) => text.trimEnd()],
  ])('%s: the same diagnostics at the same lines', (_, change) => {
    const folder = folderWith({ 'a.nappe': faultyCustard, 'b.nappe': change(faultyCustard) });
    const places = (file: string) =>
      JSON.parse(nappe(['check', '--format', 'json', file], { cwd: folder }).out).diagnostics.map(
        ({ line, code }: { line: number; code: string }) => `${line} ${code}`,
      );
    expect(places('a.nappe')).toEqual(places('b.nappe'));
    expect(places('a.nappe')).toContain('10 unknown-name');
  });

  test('standard input, named -', () => {
    const answer = nappe(['check', '--format', 'json', '-'], { input: faultyCustard, cwd: folderWith() });
    expect(
      JSON.parse(answer.out).diagnostics.map(({ file, line }: { file: string; line: number }) => ({ file, line })),
    ).toContainEqual({ file: '-', line: 10 });
    expect(answer.status).toBe(1);
  });

  test('standard input takes from files beside it', () => {
    const folder = folderWith({ 'bases.nappe': custard });
    const text = 'take Pouring custard from "bases.nappe"\nformula Cup\n  makes 300 g\n  300 g Pouring custard\n';
    expect(nappe(['check', '-'], { input: text, cwd: folder })).toMatchObject({ status: 0 });
  });

  test('fences of a Markdown file, at the lines of the Markdown', () => {
    const handout = `# Lesson\n\nBefore.\n\n\`\`\`nappe\n${faultyCustard}\`\`\`\n\n\`\`\`js\nnot(ours)\n\`\`\`\n`;
    const answer = nappe(['check', '--format', 'json', 'lesson.md'], { cwd: folderWith({ 'lesson.md': handout }) });
    expect(JSON.parse(answer.out).diagnostics).toContainEqual(
      expect.objectContaining({ file: 'lesson.md', line: 15, code: 'unknown-name' }),
    );
    expect(answer.status).toBe(1);
  });

  test('a file that cannot be read does not hide what is wrong in the others', () => {
    const answer = nappe(['check', '--format', 'json', 'absent.nappe', 'a.nappe'], {
      cwd: folderWith({ 'a.nappe': faultyCustard }),
    });
    expect(JSON.parse(answer.out).summary).toMatchObject({ files: 1 });
    expect(JSON.parse(answer.out).diagnostics.length).toBeGreaterThan(0);
    expect(answer.err).toMatch(/absent\.nappe/);
    expect(answer.status).toBe(2);
  });
});

describe('nothing outside the workspace is read', () => {
  test('a walk refuses a link that leads out, and says so', () => {
    const outside = folderWith({ 'x.nappe': custard });
    const folder = folderWith({ 'package.json': '{}', 'a.nappe': custard });
    symlinkSync(join(outside, 'x.nappe'), join(folder, 'linked.nappe'));
    const answer = nappe(['check', '--format', 'json'], { cwd: folder });
    expect(answer.err).toMatch(/linked\.nappe: this link leads outside/);
    expect(JSON.parse(answer.out).summary.files).toBe(1);
    expect(answer.status).toBe(2);
  });

  test('a take through a link that leads out is outside-workspace', () => {
    const outside = folderWith({ 'x.nappe': custard });
    const folder = folderWith({
      'package.json': '{}',
      'a.nappe': 'take Pouring custard from "linked.nappe"\nformula Cup\n  300 g Pouring custard\n',
    });
    symlinkSync(join(outside, 'x.nappe'), join(folder, 'linked.nappe'));
    const answer = nappe(['check', '--format', 'json', 'a.nappe'], { cwd: folder });
    expect(JSON.parse(answer.out).diagnostics.map(({ code }: { code: string }) => code)).toContain('outside-workspace');
  });

  test('the root is the nearest folder upward with package.json, so that a file may take from a folder above it', () => {
    const folder = folderWith({
      'package.json': '{}',
      'bases.nappe': custard,
      'week/a.nappe': 'take Pouring custard from "../bases.nappe"\nformula Cup\n  makes 300 g\n  300 g Pouring custard\n',
    });
    expect(nappe(['check', 'a.nappe'], { cwd: join(folder, 'week') })).toMatchObject({ status: 0, err: '' });
  });
});

describe('usage', () => {
  test.each([
    [['chek'], /chek is no command.*check/s],
    [['custard.nappe'], /nappe check custard\.nappe/],
    [['check', '--fromat', 'json'], /unknown option '--fromat'/],
    [['check', '--format', 'xml'], /xml.*text, json, sarif, github/s],
    [['card'], /missing required argument 'file'/],
    [['explain', 'fold-to-warm'], /fold-to-warm/],
  ])('%j: status 2 and a hint', (words, hint) => {
    const answer = nappe(words, { cwd: folderWith() });
    expect(answer.err).toMatch(hint);
    expect(answer.status).toBe(2);
    expectWords(answer);
  });

  test.each([['check'], ['card'], ['trace'], ['fmt'], ['explain'], ['new'], ['completion']])(
    '%s --help is on standard output, with status 0',
    (command) => {
      const answer = nappe([command, '--help']);
      expect(answer).toMatchObject({ status: 0, err: '' });
      expect(answer.out).toMatch(new RegExp(`^Usage: nappe ${command} `));
      expect(nappe(['help', command]).out).toBe(answer.out);
    },
  );

  test('--version is the version of the package', () => {
    expect(nappe(['--version'])).toEqual({ status: 0, out: '0.1.0\n', err: '' });
  });

  test('nappe alone says what to do next, in an empty folder and in one with formulas', () => {
    expect(nappe([], { cwd: folderWith() })).toMatchObject({ status: 0, out: expect.stringContaining('nappe new') });
    expect(nappe([], { cwd: folderWith({ 'tart.nappe': custard }) }).out).toContain('nappe card tart.nappe -o card.html');
  });
});

describe('output', () => {
  test('a reader that leaves early ends the program quietly', async () => {
    const folder = folderWith({ 'a.nappe': faultyCustard.repeat(400) });
    const child = spawn('sh', ['-c', `"${process.execPath}" "${program}" check a.nappe | head -1`], { cwd: folder });
    let err = '';
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    await new Promise((resolve) => child.on('close', resolve));
    expect(err).toBe('');
  });

  test('no colour and no progress where nobody looks', () => {
    const answer = nappe(['check', 'a.nappe'], {
      cwd: folderWith({ 'a.nappe': faultyCustard }),
      env: { NO_COLOR: '', TERM: 'xterm-256color' },
    });
    expect(answer.out + answer.err).not.toContain('\x1b');
  });

  test('colour on a terminal, and none there under NO_COLOR', () => {
    const folder = folderWith({ 'a.nappe': faultyCustard });
    const onTerminal = (env: Record<string, string>) =>
      spawnSync('script', ['-qec', `"${process.execPath}" "${program}" check a.nappe`, '/dev/null'], {
        cwd: folder,
        env: { ...process.env, TERM: 'xterm-256color', ...env },
        encoding: 'utf8',
      }).stdout;
    expect(onTerminal({ NO_COLOR: '' })).toContain('\x1b[');
    expect(onTerminal({ NO_COLOR: '1' })).not.toContain('\x1b[');
  });

  test('a formula cannot send commands to a terminal', () => {
    const hostile = custard.replaceAll('whole milk', 'whole \x1b]0;owned\x07milk');
    for (const command of ['check', 'trace']) {
      const answer = nappe([command, '-'], { input: hostile, cwd: folderWith() });
      for (const control of ['\x1b', '\x07']) expect(answer.out + answer.err).not.toContain(control);
    }
  });
});

/** Runs the program as `nobody`; root itself may read everything. */
function asNobody(folder: string, words: readonly string[]): Ran {
  const copy = join(folder, '.program');
  mkdirSync(copy);
  cpSync(dirname(program), copy, { recursive: true });
  writeFileSync(join(copy, 'package.json'), '{ "type": "commonjs" }');
  const isRoot = process.getuid?.() === 0;
  const command = [process.execPath, join(copy, 'nappe.js'), ...words];
  const [first, ...rest] = isRoot ? ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups', ...command] : command;
  const { status, stdout, stderr } = spawnSync(first as string, rest, {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { status, out: stdout, err: stderr };
}
