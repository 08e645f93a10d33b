/** Many files at once: the same answer as one by one, in the same order, and a file that ends a worker ends nothing else. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { custard, faultyCustard, folderWith, nappe, program } from './nappe.ts';

const count = 1200;

/** Every third is faulty, and every file takes from one base. */
const files = Object.fromEntries(
  Array.from({ length: count }, (_, index) => {
    const text = (index % 3 === 0 ? faultyCustard : custard).replace('Pouring custard', `Custard ${index}`);
    return [`f${String(index).padStart(4, '0')}.nappe`, `take base from "shared/base.nappe"\n${text}`];
  }),
);
const shared = { 'shared/base.nappe': 'component base\n  100 g  caster sugar\n' };

describe(`${count} files`, () => {
  test('are answered in order, each as if alone', () => {
    const folder = folderWith({ ...files, ...shared });
    const answer = nappe(['check', '--format', 'json'], { cwd: folder });
    const { diagnostics, summary } = JSON.parse(answer.out);
    expect(answer).toMatchObject({ status: 1, err: '' });
    expect(summary.files).toBe(count + 1);
    const named = diagnostics.map(({ file }: { file: string }) => file);
    expect(named).toEqual([...named].sort());
    const alone = JSON.parse(nappe(['check', '--format', 'json', 'f0600.nappe'], { cwd: folder }).out).diagnostics;
    expect(alone.length).toBeGreaterThan(0);
    expect(diagnostics.filter(({ file }: { file: string }) => file === 'f0600.nappe')).toEqual(alone);
    expect(new Set(named).size).toBe(count / 3);
  });

  test('one that cannot be read is named, and the others are checked', () => {
    const folder = folderWith({ ...files, ...shared, 'f0100.nappe': new Uint8Array([0, 1, 2]) });
    const answer = nappe(['check', '--format', 'json'], { cwd: folder });
    expect(answer.err).toBe('nappe: f0100.nappe: this is no text but a binary file; a formula is plain text in UTF-8.\n');
    expect(JSON.parse(answer.out).summary.files).toBe(count);
    expect(answer.status).toBe(2);
  });

  test('a fault of the program on one file is reported with what to send, and costs no other file its answer', () => {
    const folder = folderWith({ ...files, ...shared });
    const answer = broken(folder, 'throw new Error("broken on purpose")');
    expect(answer.err).toMatch(/f0300\.nappe: the program itself failed here.*report it.*nappe 0\.1\.0.*broken on purpose/s);
    expect(answer.err.match(/failed here/g)).toHaveLength(1);
    expect(JSON.parse(answer.out).summary.files).toBe(count);
    expect(answer.status).toBe(2);
  });

  test('a file that ends its worker is reported, and costs no other file its answer', () => {
    const folder = folderWith({ ...files, ...shared });
    const answer = broken(folder, 'process.exit(7)');
    expect(answer.err).toMatch(/f0300\.nappe: the program itself failed here.*a worker ended with status 7/s);
    expect(JSON.parse(answer.out).summary.files).toBe(count);
    expect(answer.status).toBe(2);
  });
});

/** Runs a copy of the program that does `what` when it is about to check the 301st file. */
function broken(folder: string, what: string) {
  const copy = folderWith({ 'package.json': '{ "type": "commonjs" }' });
  const text = readFileSync(join(dirname(program), 'nappe.program.js'), 'latin1');
  const hook = `const read=require("fs").readFileSync,open=require("fs").openSync;require("fs").openSync=function(path,...rest){if(String(path).endsWith("f0300.nappe")){${what}}return open.call(this,path,...rest)};`;
  writeFileSync(
    join(copy, 'nappe.program.js'),
    text.replace('(function(require,__filename){', `(function(require,__filename){${hook}`),
    'latin1',
  );
  writeFileSync(join(copy, 'nappe.js'), readFileSync(program));
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(copy, 'nappe.js'), 'check', '--format', 'json'], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { status, out: stdout, err: stderr };
}
