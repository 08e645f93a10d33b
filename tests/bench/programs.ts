/** Whole programs: how soon one starts, what memory it takes, and how long many files take beside other checkers. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Figures, median } from './figures.ts';
import { checking } from './in-process.ts';
import { nappeOfLines, repository, typescriptOfLines, yamlOfLines } from './inputs.ts';

const node = process.execPath;
const nappe = join(repository, 'compiler/dist/nappe.js');
const prettier = join(repository, 'node_modules/prettier/bin/prettier.cjs');
const tsc = join(repository, 'node_modules/typescript/bin/tsc');
const nativeTsc = join(repository, 'node_modules/typescript-native/bin/tsc');

const lines = 60;

const starting =
  'of what is over Node’s own start, a quarter is reading the compiled code, a fifth Chevrotain’s analysis of its rules, and the rest code that runs for the first time, uncompiled.';

/** Milliseconds of one run; throws where the program fails otherwise than by finding something. */
function run(words: readonly string[], cwd: string): number {
  const [program = '', ...rest] = words;
  const start = performance.now();
  const { status, stderr, error } = spawnSync(program, rest, { cwd, encoding: 'utf8', maxBuffer: 1e9 });
  const ms = performance.now() - start;
  if (error || status === null || status > 1) throw new Error(`${words.join(' ')}: ${status} ${stderr} ${error ?? ''}`);
  return ms;
}

/** Runs them in turn, so that what else the machine does falls on each alike. */
function inTurn(turns: number, commands: Readonly<Record<string, readonly string[]>>, cwd: string): Map<string, number[]> {
  const samples = new Map(Object.keys(commands).map((name): [string, number[]] => [name, []]));
  for (const words of Object.values(commands)) run(words, cwd);
  for (let turn = 0; turn < turns; turn++)
    for (const [name, words] of Object.entries(commands)) samples.get(name)?.push(run(words, cwd));
  return samples;
}

export function programs(figures: Figures, full: boolean): void {
  const folder = mkdtempSync(join(tmpdir(), 'nappe-bench-'));
  try {
    start(figures, folder);
    many(figures, folder, full);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function start(figures: Figures, folder: string): void {
  writeFileSync(join(folder, 'one.nappe'), nappeOfLines(lines));
  const samples = inTurn(
    21,
    { 'node -e 0': [node, '-e', '0'], 'nappe check, one file of 60 lines': [node, nappe, 'check', 'one.nappe'] },
    folder,
  );
  for (const [name, ms] of samples) figures.put({ name, median: median(ms), unit: 'ms' });
  figures.ratio('nappe check of 60 lines, of node -e 0', 'nappe check, one file of 60 lines', 'node -e 0', 1.6, starting);
  const peak = [1, 2, 3].map(() => peakMemory([nappe, 'check', 'one.nappe'], folder));
  figures.put({ name: 'nappe check, one file of 60 lines: memory', median: median(peak), unit: 'MB' });
  figures.target(
    'memory of nappe check of 60 lines, MB',
    median(peak),
    60,
    'Node itself holds 40 MB; the program’s text and its compiled code are 8 MB, the rest is the young generation before its first collections.',
  );
}

/** The most memory a program of Node held, as it says itself at its end, in MB. */
function peakMemory(words: readonly string[], cwd: string): number {
  const say = 'process.on("exit",()=>process.stderr.write("\\npeak "+process.resourceUsage().maxRSS+"\\n"))';
  const { stderr } = spawnSync(node, ['--import', `data:text/javascript,${encodeURIComponent(say)}`, ...words], {
    cwd,
    encoding: 'utf8',
  });
  return Number(/peak (\d+)/.exec(stderr)?.[1]) / 1000;
}

function many(figures: Figures, folder: string, full: boolean): void {
  write(folder, 'nappe', 1000, () => nappeOfLines(lines), 'nappe');
  write(folder, 'yaml', 1000, () => yamlOfLines(lines), 'yaml');
  write(folder, 'ts', 1000, (i) => typescriptOfLines(lines, i), 'ts');
  const options = {
    compilerOptions: { strict: true, noEmit: true, target: 'es2022', module: 'esnext', types: [] },
    include: ['*.ts'],
  };
  writeFileSync(join(folder, 'ts/tsconfig.json'), JSON.stringify(options));
  const samples = inTurn(
    3,
    {
      'nappe check, 1,000 files of 60 lines': [node, nappe, 'check', 'nappe'],
      'prettier --check, 1,000 files of 60 lines of YAML': [node, prettier, '--check', 'yaml'],
      'tsc --noEmit, TypeScript 7, 1,000 files of 60 lines': [node, nativeTsc, '--noEmit', '-p', 'ts'],
      'tsc --noEmit, TypeScript 5, 1,000 files of 60 lines': [node, tsc, '--noEmit', '-p', 'ts'],
    },
    folder,
  );
  for (const [name, ms] of samples)
    figures.put({ name, median: median(ms), unit: 'ms', perLine: (median(ms) / (1000 * lines)) * 1000 });
  const own = 'nappe check, 1,000 files of 60 lines';
  figures.ratio('1,000 files, of prettier --check', own, 'prettier --check, 1,000 files of 60 lines of YAML', 0.2, checking);
  figures.ratio('1,000 files, of TypeScript 7', own, 'tsc --noEmit, TypeScript 7, 1,000 files of 60 lines', 4, checking);
  if (!full) return;
  write(folder, 'ten', 10_000, () => nappeOfLines(lines), 'nappe');
  const ms = run([node, nappe, 'check', 'ten'], folder);
  figures.put({ name: 'nappe check, 10,000 files of 60 lines', median: ms, unit: 'ms', perLine: ms / (10 * lines) });
  figures.ratio('10,000 files, of 1,000', 'nappe check, 10,000 files of 60 lines', own, 10.5, checking);
}

function write(folder: string, name: string, count: number, text: (index: number) => string, extension: string): void {
  mkdirSync(join(folder, name));
  for (let i = 0; i < count; i++) writeFileSync(join(folder, name, `f${i}.${extension}`), text(i));
  if (readdirSync(join(folder, name)).length !== count) throw new Error(`${name} is not whole`);
}
