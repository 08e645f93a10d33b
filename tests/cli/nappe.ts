/** Runs the built `nappe` as its user does, in folders made for the test. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const repository = fileURLToPath(new URL('../..', import.meta.url));
export const program = join(repository, 'compiler/dist/nappe.js');

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Setting {
  readonly cwd?: string;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
}

/** The program's answer; it gets an empty standard input unless the test gives one, and is stopped after a minute. */
export function nappe(words: readonly string[], { cwd = tmpdir(), input = '', env = {} }: Setting = {}): Ran {
  if (!existsSync(program)) throw new Error('npm run build first: the tests of the command line run what users get.');
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [program, ...words], {
    cwd,
    input,
    env: { ...process.env, NO_COLOR: '1', ...env },
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 1 << 28,
  });
  if (error) throw error;
  return { status, out: stdout, err: stderr };
}

/** A folder of its own that holds `files` (a name ending in `/` is a folder); it is gone when the test is over. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'nappe-test-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(name.endsWith('/') ? path : dirname(path), { recursive: true });
    if (!name.endsWith('/')) writeFileSync(path, content);
  }
  return folder;
}

/** Well made: nothing to say about it. */
export const custard = `formula Pouring custard
  makes 570 g
  keeps 2 d at 0-4 °C

  400 g  whole milk, 4 °C
  100 g  egg yolk
   80 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  chill to 4 °C for 3 h
`;

/** `custard` with a fault on line 10: the name of the milk is mistyped. */
export const faultyCustard = custard.replace('temper whole milk', 'temper whole mlik');
