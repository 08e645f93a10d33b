/** The sizes of files and folders: one past the most is refused in a sentence, and the most is read. See the table in DEVELOPERS.md. */
import { execFileSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nodeHost } from '../../server/src/node-files.ts';
import { custard, faultyCustard, folderWith, nappe } from '../cli/nappe.ts';

const most = 5_000_000;

/** Formula and comments, so many bytes in all. */
function ofSize(bytes: number): string {
  const line = `// ${'a'.repeat(96)}\n`;
  const room = bytes - Buffer.byteLength(faultyCustard) - 3;
  const rest = room % line.length;
  return `${faultyCustard}${line.repeat((room - rest) / line.length)}// ${'b'.repeat(rest)}`;
}

describe('a file of 5 MB is read, and one a byte longer is not', () => {
  const files = { 'in.nappe': ofSize(most), 'out.nappe': ofSize(most + 1) };
  const refusal = 'this is larger than 5 MB, the most that is read';

  test('by the command line', () => {
    const folder = folderWith(files);
    expect(nappe(['check', 'in.nappe'], { cwd: folder })).toMatchObject({ status: 1, err: '' });
    expect(nappe(['check', 'out.nappe'], { cwd: folder })).toEqual({
      status: 2,
      out: '',
      err: `nappe: out.nappe: ${refusal}.\n`,
    });
  });

  test('from standard input', () => {
    const folder = folderWith();
    expect(nappe(['fmt', '-', '--check'], { cwd: folder, input: files['in.nappe'] })).toMatchObject({ status: 1, err: '' });
    expect(nappe(['check', '-'], { cwd: folder, input: files['out.nappe'] })).toEqual({
      status: 2,
      out: '',
      err: `nappe: standard input: ${refusal}.\n`,
    });
  });

  test('by what takes from it', () => {
    const folder = folderWith({
      ...files,
      'taker.nappe': 'take Pouring custard from "out.nappe"\nformula A\n  10 g  Pouring custard\n',
    });
    const { diagnostics } = JSON.parse(nappe(['check', '--format', 'json', 'taker.nappe'], { cwd: folder }).out);
    expect(diagnostics[0]).toMatchObject({
      line: 1,
      code: 'import-missing',
      message: expect.stringContaining('larger than 5 MB'),
    });
  });

  test('by the server', () => {
    const folder = folderWith(files);
    expect(nodeHost.read(folder, join(folder, 'in.nappe'))).toHaveProperty('text');
    expect(nodeHost.read(folder, join(folder, 'out.nappe'))).toEqual({ refused: 'unreadable', why: refusal });
  });

  test('as a picture', () => {
    const png = (bytes: number) => Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), Buffer.alloc(bytes - 8)]);
    const folder = folderWith({
      'in.png': png(most),
      'out.png': png(most + 1),
      'a.md': '# T\n\n![in](in.png)\n\n![out](out.png)\n',
    });
    const answer = nappe(['handout', 'a.md'], { cwd: folder });
    expect(answer.err).toBe('nappe: a.md:5: The picture “out.png” is not in the page: it is larger than 5 MB.\n');
    expect(answer.out.match(/<img src="data:image\/png/g)).toHaveLength(1);
  });
});

test('folders 64 deep are looked into, and one deeper is named', () => {
  const deep = (folders: number) => `${Array.from({ length: folders }, (_, i) => `f${i}`).join('/')}/a.nappe`;
  const at = (folders: number) => nappe(['check', '--format', 'json'], { cwd: folderWith({ [deep(folders)]: faultyCustard }) });
  const inside = at(63);
  expect({ files: JSON.parse(inside.out).summary.files, err: inside.err }).toEqual({ files: 1, err: '' });
  const outside = at(64);
  expect(outside.err).toMatch(/^nappe: f0\/.*f63: this folder is more than 64 deep, and is not looked into\.\n$/);
  expect({ files: JSON.parse(outside.out).summary.files, status: outside.status }).toEqual({ files: 0, status: 2 });
});

test('a server lists no more files than it is asked for, in order of name', async () => {
  const folder = folderWith({ 'b.nappe': '', 'a.md': '', 'sub/c.nappe': '', 'd.txt': '' });
  const listed = (limit: number, depth: number) => nodeHost.list(folder, { limit, depth, isCancelled: () => false });
  expect(await listed(9, 9)).toEqual(['a.md', 'b.nappe', 'sub/c.nappe'].map((name) => join(folder, name)));
  expect(await listed(2, 9)).toEqual(['a.md', 'b.nappe'].map((name) => join(folder, name)));
  expect(await listed(9, 1)).toEqual(['a.md', 'b.nappe'].map((name) => join(folder, name)));
});

describe('a .gitignore', () => {
  const checked = (folder: string) => {
    const { out, err, status } = nappe(['check', '--format', 'json'], { cwd: folder });
    return { files: JSON.parse(out).summary.files, err, status };
  };

  test('is followed up to three ** in a line', () => {
    const files = { 'a/b/c/x.nappe': custard, 'kept.nappe': custard };
    expect(checked(folderWith({ ...files, '.gitignore': '**/a/**/c/**\n' }))).toEqual({ files: 1, err: '', status: 0 });
    expect(checked(folderWith({ ...files, '.gitignore': '**/a/**/b/**/c/**\n' }))).toEqual({
      files: 2,
      err: 'nappe: .gitignore: a line with more than 3 ** is not followed.\n',
      status: 2,
    });
  });

  test('that is a pipe is none, and nobody waits for it', () => {
    const folder = folderWith({ 'a.nappe': custard });
    execFileSync('mkfifo', [join(folder, '.gitignore')]);
    expect(checked(folder)).toEqual({ files: 1, err: '', status: 0 });
  });

  test('that is a link is none, as for git', () => {
    const folder = folderWith({ 'a.nappe': custard, 'rules.txt': '*.nappe\n' });
    symlinkSync('rules.txt', join(folder, '.gitignore'));
    expect(checked(folder)).toEqual({ files: 1, err: '', status: 0 });
  });
});
