/** `npm start`: checks the samples, writes the card of each of their formulas to `cards/`, and says where. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const nappe = join(root, 'compiler/dist/nappe.js');
const cards = join(root, 'cards');
/** All but the broken ones, which are there to be caught. */
const samples = readdirSync(join(root, 'samples'), { recursive: true })
  .map((path) => `samples/${path.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.nappe') && !path.startsWith('samples/faulty/'))
  .sort();

console.log('Checking the samples …');
const checked = run('check', ...samples);
mkdirSync(cards, { recursive: true });
const made = samples.flatMap((file) => formulasOf(file).map((formula, _, all) => card(file, formula, all.length > 1)));
console.log(`\n${made.filter((status) => status === 0).length} cards are in ${cards}. Open one in a browser, and print it.`);
process.exitCode = [checked, ...made].every((status) => status === 0) ? 0 : 1;

/** Names after `formula`, one card each. */
function formulasOf(file) {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(/^[ \t]*formula[ \t]+(.+?)[ \t]*(?:\/\/.*)?$/gm)].map(([, name]) => name);
}

/** Named for its file, and for the formula where the file holds several. */
function card(file, formula, isOneOfSeveral) {
  const parts = file
    .replace(/\.nappe$/, '')
    .split('/')
    .slice(1);
  const name = [...parts, ...(isOneOfSeveral ? [formula] : [])].join(' ').toLowerCase();
  const output = `cards/${name.replace(/[^\p{L}\p{N}]+/gu, '-')}.html`;
  const status = run('card', `${file}#${formula}`, '-o', output);
  if (status === 0) console.log(output);
  return status;
}

function run(...words) {
  return spawnSync(process.execPath, [nappe, ...words], { cwd: root, stdio: 'inherit' }).status;
}
