/** `npm run docs`: bundles what makes the reference pages and runs it; see tests/docs/pages.ts. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const outfile = join(root, 'node_modules/.nappe-build/docs.mjs');

await build({
  absWorkingDir: root,
  entryPoints: ['tests/docs/write.ts'],
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  outfile,
  banner: { js: `import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);` },
  logLevel: 'warning',
});
process.exitCode = spawnSync(process.execPath, [outfile], { cwd: root, stdio: 'inherit' }).status ?? 1;
