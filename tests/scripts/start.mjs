/** `npm start`: checks the samples, writes the card of each of their formulas to `cards/`, and says where. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const nappe = join(root, 'compiler/dist/nappe.js');
const samples = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.nappe'));

mkdirSync(join(root, 'cards'), { recursive: true });
const failed = [check(), ...samples.flatMap((file) => formulasOf(file).map((formula) => card(file, formula)))].some(
  (status) => status !== 0,
);
process.exitCode = failed ? 1 : 0;

function check() {
  console.log('Checking samples/ …');
  return run('check', ...samples.map((name) => `samples/${name}`), 'samples/course');
}

/** Names after `formula`, one card each. */
function formulasOf(file) {
  const text = readFileSync(join(root, 'samples', file), 'utf8');
  return [...text.matchAll(/^[ \t]*formula[ \t]+(.+?)[ \t]*(?:\/\/.*)?$/gm)].map(([, name]) => name);
}

function card(file, formula) {
  const output = `cards/${formula.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}.html`;
  const status = run('card', `samples/${file}#${formula}`, '-o', output);
  if (status === 0) console.log(output);
  return status;
}

function run(...words) {
  return spawnSync(process.execPath, [nappe, ...words], { cwd: root, stdio: 'inherit' }).status;
}
