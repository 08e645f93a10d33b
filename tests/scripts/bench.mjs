/** `npm run bench`: bundles the bench beside what it measures and runs it; see tests/bench/main.ts. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const outfile = join(root, 'node_modules/.nappe-build/bench.mjs');

await build({
  absWorkingDir: root,
  entryPoints: ['tests/bench/main.ts'],
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  outfile,
  // Peers are measured as they are packed; what asks where it stands is told the source's place.
  external: ['prettier', 'yaml', 'esbuild', 'tinybench'],
  define: { 'import.meta.url': JSON.stringify(new URL('../bench/main.ts', import.meta.url).href) },
  banner: { js: `import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);` },
  logLevel: 'warning',
});
process.exitCode = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: 'inherit' }).status ?? 1;
