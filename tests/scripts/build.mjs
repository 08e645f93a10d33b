/**
 * The build: one bundled, minified file a program, with a launcher that keeps V8's compiled code between starts.
 *
 * A bundle is one file in CommonJS although the source is all ES modules: Node starts it about 6 ms sooner, and one script can
 * have one code cache. `import()` in the source stays lazy: what a command does not import is neither compiled nor run.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Programs of Node: `warm` is what is run once, so that the first start of a user is a quick one. */
const programs = [
  { entry: 'compiler/src/cli/main.ts', folder: 'compiler/dist', name: 'nappe', warm: ['check', '-'] },
  { entry: 'server/src/node.ts', folder: 'server/dist', name: 'nappe-server', warm: null },
];

/** Bundles of the editor's extension, for its desktop and its browser. */
const extensionBundles = [
  { entry: 'extension/src/desktop.ts', outfile: 'extension/dist/desktop.js', platform: 'node' },
  { entry: 'extension/src/browser.ts', outfile: 'extension/dist/browser.js', platform: 'browser' },
  { entry: 'extension/src/browser-server.ts', outfile: 'extension/dist/browser-server.js', platform: 'browser' },
];

for (const program of programs) if (existsSync(join(root, program.entry))) await buildProgram(program);
for (const bundle of extensionBundles) if (existsSync(join(root, bundle.entry))) await buildForExtension(bundle);

async function buildProgram({ entry, folder, name, warm }) {
  const out = join(root, folder);
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  // The packages are of ES modules; their bundles are not.
  writeFileSync(join(out, 'package.json'), '{ "type": "commonjs" }\n');
  const bundle = await bundled(entry, 'node');
  const hash = createHash('sha256').update(bundle).digest('hex').slice(0, 12);
  const main = `${name}.program.js`;
  writeFileSync(join(out, main), bundle);
  const launcher = await bundled('compiler/src/cli/launch.ts', 'node', {
    PROGRAM: JSON.stringify(main),
    BUILD: JSON.stringify(hash),
  });
  const start = join(out, `${name}.js`);
  writeFileSync(start, `#!/usr/bin/env node\n${launcher}`);
  chmodSync(start, 0o755);
  if (warm) warmUp(start, warm);
  console.log(`${folder}/${name}.js  ${Math.round(bundle.length / 1000)} kB`);
}

function warmUp(start, words) {
  const sample = readFileSync(join(root, 'samples/pastry-cream.nappe'));
  const { status, stderr } = spawnSync(process.execPath, [start, ...words], { input: sample, cwd: join(root, 'samples') });
  if (status !== 0) throw new Error(`${start} does not run: ${stderr}`);
}

async function buildForExtension({ entry, outfile, platform }) {
  mkdirSync(dirname(join(root, outfile)), { recursive: true });
  const text = await bundled(entry, platform, {}, ['vscode']);
  writeFileSync(join(root, outfile), text);
  console.log(`${outfile}  ${Math.round(text.length / 1000)} kB`);
}

async function bundled(entry, platform, define = {}, external = []) {
  const result = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    format: platform === 'node' || external.length > 0 ? 'cjs' : 'iife',
    platform,
    target: platform === 'node' ? 'node20' : 'es2022',
    legalComments: 'none',
    define,
    external,
    plugins: platform === 'node' ? [withoutChildProcess] : [],
    logLevel: 'warning',
  });
  return result.outputFiles[0].text;
}

/** commander loads `child_process` for commands that are programs of their own; there are none, and it costs 3 ms a start. */
const withoutChildProcess = {
  name: 'without-child-process',
  setup(on) {
    on.onResolve({ filter: /^(node:)?child_process$/ }, ({ importer }) =>
      /[\\/]commander[\\/]/.test(importer) ? { path: 'child_process', namespace: 'absent' } : undefined,
    );
    on.onLoad({ filter: /.*/, namespace: 'absent' }, () => ({ contents: 'module.exports = {};' }));
  },
};
