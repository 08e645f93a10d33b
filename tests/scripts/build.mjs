/**
 * The build: one bundled, minified file a program, with a launcher that keeps V8's compiled code between starts.
 *
 * A bundle is one file in CommonJS although the source is all ES modules: Node starts it about 6 ms sooner, and one script can
 * have one code cache. `import()` in the source stays lazy: what a command does not import is neither compiled nor run.
 */
import { deepStrictEqual } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Programs of Node: `warm` is what is run once, with what on its standard input, so that a user's first start is a quick one. */
const programs = [
  { entry: 'compiler/src/cli/main.ts', folder: 'compiler/dist', name: 'nappe', warm: ['check', '-'], input: sample },
  { entry: 'server/src/node.ts', folder: 'server/dist', name: 'nappe-server', warm: ['--stdio'], input: session },
];

function sample() {
  return readFileSync(join(root, 'samples/pastry-cream.nappe'), 'utf8');
}

/** The shortest session in which an editor opens a file and sees what is wrong with it (Language Server Protocol 3.17). */
function session() {
  const textDocument = { uri: 'file:///sample.nappe', languageId: 'nappe', version: 1, text: sample() };
  const capabilities = { textDocument: { diagnostic: {} } };
  const messages = [
    { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities } },
    { method: 'initialized', params: {} },
    { method: 'textDocument/didOpen', params: { textDocument } },
    { id: 2, method: 'textDocument/diagnostic', params: { textDocument: { uri: textDocument.uri } } },
    { id: 3, method: 'shutdown' },
    { method: 'exit' },
  ];
  return messages
    .map((message) => JSON.stringify({ jsonrpc: '2.0', ...message }))
    .map((body) => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`)
    .join('');
}

const nodeModules = builtinModules.flatMap((name) => [name, `node:${name}`]);

/**
 * Bundles of the editor's extension: for its desktop, for its browser, the server, and the script of the card's page. The server is one
 * file for both hosts, so that it is carried once: what is of Node in it is loaded there only.
 */
const extensionBundles = [
  { entry: 'extension/src/desktop.ts', name: 'desktop.cjs', platform: 'node', external: ['vscode'] },
  { entry: 'extension/src/browser.ts', name: 'browser.cjs', platform: 'browser', external: ['vscode'] },
  { entry: 'extension/src/server.ts', name: 'server.cjs', platform: 'browser', external: nodeModules },
  { entry: 'extension/src/card/page.ts', name: 'card-page.js', platform: 'browser' },
];

/**
 * The catalogue's families as JSON: their rows are made by functions from published analyses, and to make them anew at every start
 * would take a tenth of a short command's time.
 */
const frozenCatalogue = {
  name: 'frozen-catalogue',
  setup(on) {
    on.onLoad({ filter: /compiler[\\/]src[\\/]catalogue[\\/]\w+\.ts$/ }, async ({ path }) => {
      if (!/export const \w+: readonly Kind\[\] =/.test(readFileSync(path, 'utf8'))) return undefined;
      const { outputFiles } = await build({
        entryPoints: [path],
        bundle: true,
        write: false,
        format: 'esm',
        logLevel: 'warning',
      });
      const family = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
      const rows = Object.entries(family).map(([name, kinds]) => {
        const json = JSON.stringify(kinds);
        deepStrictEqual(JSON.parse(json), kinds);
        return `export const ${name} = JSON.parse(${JSON.stringify(json)});`;
      });
      return { contents: rows.join('\n'), loader: 'js' };
    });
  },
};

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

for (const program of programs) if (existsSync(join(root, program.entry))) await buildProgram(program);
await buildExtension();

/** Beside the old one until it is whole, so that a build that fails leaves a program that runs. */
async function buildProgram({ entry, folder, name, warm, input }) {
  const { text: bundle, inputs } = await bundled(entry, 'node');
  const hash = createHash('sha256').update(bundle).digest('hex').slice(0, 12);
  const main = `${name}.program.js`;
  const { text: launcher } = await bundled('compiler/src/cli/launch.ts', 'node', {
    PROGRAM: JSON.stringify(main),
    BUILD: JSON.stringify(hash),
  });
  const aside = join(root, `node_modules/.nappe-build/${name}.${process.pid}`);
  mkdirSync(aside, { recursive: true });
  // The packages are of ES modules; their bundles are not.
  writeFileSync(join(aside, 'package.json'), '{ "type": "commonjs" }\n');
  writeFileSync(join(aside, 'LICENSES.txt'), licencesOf(inputs));
  writeFileSync(join(aside, main), asFunction(bundle));
  writeFileSync(join(aside, `${name}.js`), `#!/usr/bin/env node\n${launcher}`, { mode: 0o755 });
  const out = join(root, folder);
  rmSync(out, { recursive: true, force: true });
  renameSync(aside, out);
  warmUp(join(out, `${name}.js`), warm, input());
  console.log(`${folder}/${name}.js  ${Math.round(bundle.length / 1000)} kB`);
}

/** What the launcher compiles and calls; it reads bytes as characters, and in regular expressions esbuild leaves letters as they are. */
function asFunction(bundle) {
  const ascii = bundle.replace(/[^\p{ASCII}]/gu, (letter) => {
    if (letter.length > 1) throw new Error(`${letter} stands unescaped in a regular expression`);
    return `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
  return `(function(require,__filename){${ascii}\n})`;
}

function warmUp(start, words, input) {
  const { status, stderr } = spawnSync(process.execPath, [start, ...words], { input, cwd: join(root, 'samples') });
  if (status === null || status > 1) throw new Error(`${start} does not run: ${stderr}`);
}

async function buildExtension() {
  const out = join(root, 'extension/dist');
  const aside = join(root, `node_modules/.nappe-build/extension.${process.pid}`);
  const libraries = [];
  mkdirSync(aside, { recursive: true });
  for (const { entry, name, platform, external } of extensionBundles) {
    const { text, inputs } = await bundled(entry, platform, {}, external);
    writeFileSync(join(aside, name), text);
    libraries.push(...inputs);
    console.log(`extension/dist/${name}  ${Math.round(text.length / 1000)} kB`);
  }
  writeFileSync(join(aside, 'LICENSES.txt'), licencesOf(libraries));
  cpSync(join(root, 'extension/src/card/page.css'), join(aside, 'card-page.css'));
  rmSync(out, { recursive: true, force: true });
  renameSync(aside, out);
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
    // A web extension and its server run in workers: packages that draw on a page's document have another file for those.
    conditions: platform === 'browser' ? ['worker', ...(external === nodeModules ? ['node'] : [])] : [],
    target: platform === 'node' ? 'node20' : 'es2022',
    // Licences are kept whole in LICENSES.txt beside the bundle.
    legalComments: 'none',
    metafile: true,
    define,
    external,
    plugins: [frozenCatalogue, ...(platform === 'node' ? [withoutChildProcess] : [])],
    logLevel: 'warning',
  });
  return { text: result.outputFiles[0].text, inputs: Object.keys(result.metafile.inputs) };
}

/** Name, version, licence and its text for each library that is in a bundle. */
function licencesOf(inputs) {
  const folders = new Set(inputs.flatMap((path) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []));
  const entries = [...folders].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    const file = readdirSync(join(root, folder)).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file ? readFileSync(join(root, folder, file), 'utf8').trim() : 'No licence text is packed with it.';
    return `== ${name} ${version} (${license})\n\n${text}\n`;
  });
  return `Libraries in this program, each under its own licence.\n\n${entries.sort().join('\n')}`;
}
