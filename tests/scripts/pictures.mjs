/** `npm run pictures`: installs the editor where it is not, and takes the pictures of the README in it. */
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

await import('../editor/install.mjs');
const root = fileURLToPath(new URL('../..', import.meta.url));
// Beside its source, so that it finds the repository as its source does.
const outfile = `${root}tests/editor/pictures.${process.pid}.mjs`;
try {
  const options = { bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'warning' };
  await build({ absWorkingDir: root, entryPoints: ['tests/editor/pictures.ts'], outfile, ...options });
  await import(outfile);
} finally {
  rmSync(outfile, { force: true });
}
