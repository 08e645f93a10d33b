/** `npm run fuzz`: two minutes of random texts, or NAPPE_FUZZ_SECONDS of them. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const env = { NAPPE_FUZZ_SECONDS: '120', ...process.env };
process.exitCode =
  spawnSync('npx', ['vitest', 'run', 'tests/fuzz', '--disable-console-intercept'], { cwd: root, env, stdio: 'inherit' }).status ??
  1;
