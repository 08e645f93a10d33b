/** The steps of "How to add" in DEVELOPERS.md are carried out on a copy of the source, which must compile and do what they promise. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { repository } from '../cli/nappe.ts';

/** Below the repository's packages, so that the copy finds the same libraries. */
const copy = join(repository, 'node_modules/.nappe-build', `adding-${process.pid}`);
const program = join(copy, 'nappe.cjs');
const text = readFileSync(join(repository, 'DEVELOPERS.md'), 'utf8');

/** A fence that names a file: `diff PATH` for lines that go in or out, `ts PATH` for a new file. */
const steps = [...text.matchAll(/^```(diff|ts) (\S+)\n([\s\S]*?)^```$/gm)].map(([, kind, path, body]) => ({
  kind: kind as 'diff' | 'ts',
  path: path as string,
  body: body as string,
}));

/** Lines with a space or a minus must stand there, next to each other; those with a minus leave, those with a plus stay. */
function edited(before: string, diff: string): string {
  const lines = diff.trimEnd().split('\n');
  const found = lines.filter((line) => !line.startsWith('+')).map((line) => line.slice(1));
  const left = lines.filter((line) => !line.startsWith('-')).map((line) => line.slice(1));
  const at = `\n${before}`.split(`\n${found.join('\n')}\n`);
  if (at.length !== 2) throw new Error(`stands there ${at.length - 1} times:\n${found.join('\n')}`);
  return at.join(`\n${left.join('\n')}\n`).slice(1);
}

beforeAll(async () => {
  mkdirSync(copy, { recursive: true });
  for (const name of ['grammar', 'compiler']) {
    cpSync(join(repository, name, 'src'), join(copy, name, 'src'), { recursive: true });
    cpSync(join(repository, name, 'package.json'), join(copy, name, 'package.json'));
  }
  mkdirSync(join(copy, 'node_modules'));
  symlinkSync(join(copy, 'grammar'), join(copy, 'node_modules/nappe-grammar'), 'dir');
  for (const { kind, path, body } of steps)
    writeFileSync(join(copy, path), kind === 'ts' ? body : edited(readFileSync(join(copy, path), 'utf8'), body));
  await build({
    absWorkingDir: copy,
    entryPoints: ['compiler/src/cli/main.ts'],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    outfile: program,
    logLevel: 'silent',
  });
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

const run = (words: readonly string[], input: string) =>
  spawnSync(process.execPath, [program, ...words], { input, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } });

const formula = `formula Acorn cream
  makes 300 g
  300 g  whole milk, 4 °C
    9 g  acorn coffee
  scald whole milk to 82-85 °C
  infuse acorn coffee in whole milk for 5 min
  chill to 4 °C for 3 h
`;

test('every place a step names exists, or is made by a step', () => {
  expect(steps.length).toBeGreaterThan(10);
  for (const { kind, path } of steps) expect(() => readFileSync(join(kind === 'ts' ? copy : repository, path))).not.toThrow();
});

test('the copy has the types it says', () => {
  const settings = JSON.parse(readFileSync(join(repository, 'tsconfig.json'), 'utf8'));
  writeFileSync(
    join(copy, 'tsconfig.json'),
    JSON.stringify({ ...settings, include: steps.map(({ path }) => path), exclude: [], files: ['compiler/src/index.ts'] }),
  );
  const tsc = join(repository, 'node_modules/typescript/bin/tsc');
  expect(spawnSync(process.execPath, [tsc, '-p', copy], { cwd: copy, encoding: 'utf8' }).stdout).toBe('');
}, 180_000);

describe('what was added is there', () => {
  test('a verb and an ingredient: read, known, and its temperature followed', () => {
    const { codes } = checked(formula);
    expect(codes).toEqual([]);
    expect(checked(formula.replace('82-85 °C', '95 °C').replace('scald', 'scold')).codes).toContain('syntax');
    const traced = JSON.parse(run(['trace', '-', '--format', 'json'], formula).stdout);
    expect(traced.steps[0]).toMatchObject({ verb: 'scald', celsius: [82, 85] });
    expect(traced.ingredients[1]).toMatchObject({ kind: 'acorn coffee' });
  });

  test('a diagnostic: raised by its bad example where that says so, silent on its good one, and explained', () => {
    const source = steps.find(({ path }) => path.endsWith('fold-endless.ts'))?.body ?? '';
    const [bad, good] = [...source.matchAll(/(?:bad|good): `([^`]+)`/g)].map(([, example]) => example as string);
    const place = (bad ?? '').split('\n').findIndex((line) => line.includes('expect:')) + 1;
    expect(checked(bad ?? '')).toEqual({ codes: ['fold-endless'], lines: [place] });
    expect(checked(good ?? '').codes).toEqual([]);
    expect(run(['explain', 'fold-endless'], '').stdout).toContain('More additions than a foam stands');
  });

  test('a model: its test passes', () => {
    const vitest = join(repository, 'node_modules/vitest/vitest.mjs');
    writeFileSync(
      join(copy, 'vitest.config.mjs'),
      "export default { test: { include: ['compiler/src/matter/soda.test.ts'] } };\n",
    );
    const { status, stdout, stderr } = spawnSync(process.execPath, [vitest, 'run', '--root', copy], {
      cwd: copy,
      encoding: 'utf8',
    });
    expect(status, stdout + stderr).toBe(0);
    expect(stdout).toMatch(/1 passed/);
  });

  test('a language and a card format', () => {
    expect(run(['card', '-', '--lang', 'it', '--to', 'md'], formula).stdout).toContain('Allergeni');
    expect(run(['card', '-', '--to', 'tsv'], formula).stdout).toMatch(/^\d+\t.*milk\n9\tacorn coffee\n$/);
  });
});

function checked(input: string): { readonly codes: readonly string[]; readonly lines: readonly number[] } {
  const { diagnostics } = JSON.parse(run(['check', '-', '--format', 'json'], input).stdout) as {
    diagnostics: readonly { code: string; line: number }[];
  };
  return { codes: diagnostics.map(({ code }) => code), lines: diagnostics.map(({ line }) => line) };
}
