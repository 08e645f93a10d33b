/** The documents say what is true: every path, command, option and script they name exists, and their formulas check clean. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { commands } from '../../compiler/src/cli/table.ts';
import { rules } from '../../compiler/src/index.ts';
import { allergenWords, blocks, media, peaks, shapes, tools, units, vessels } from '../../grammar/src/index.ts';
import { nappe } from '../cli/nappe.ts';
import { filesBelow, root } from './sources.ts';

/** At the root, each package's words to its reader, and the course with its reference. */
const documents = [
  ...readdirSync(root).filter((name) => name.endsWith('.md')),
  ...['compiler', 'server', 'extension'].map((name) => `${name}/README.md`).filter((name) => existsSync(join(root, name))),
  ...filesBelow(join(root, 'samples'))
    .map((path) => relative(root, path).replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.md')),
];
/** A path may be written from the root, or from the document. */
const isThere = (document: string, path: string) =>
  existsSync(join(root, path)) || existsSync(join(root, dirname(document), path));
/** Words with a hyphen that are of the notation. */
const vocabulary = [
  ...blocks.map((row) => row.word),
  ...allergenWords,
  ...[...media, ...tools, ...vessels].flatMap((row) => [row.word, ...row.also]),
  ...shapes.map((row) => row.word),
  ...peaks.map((row) => row.word),
  ...units.flatMap((row) => [row.word, ...row.spellings]),
] as readonly string[];
const scripts = Object.keys(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).scripts);

/** Code spans, and the lines of code blocks that are commands, of a document. */
function codeOf(markdown: string): string[] {
  const spans = [...markdown.replace(/^```[\s\S]*?^```/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, span]) => span as string);
  const lines = markdown.split('\n').filter((line) => /^( {4}|- run: |\s+- run: )/.test(line));
  return [...spans, ...lines.map((line) => line.replace(/^\s*(- run: )?/, '').replace(/\s+#.*$/, ''))];
}

/** `npx nappe check --strict` → its words after the program's name. */
function commandsIn(code: string): string[][] {
  return code
    .split(/&&|\|/)
    .map((part) => part.trim().split(/\s+/))
    .map((words) => (words[0] === 'npx' ? words.slice(1) : words))
    .filter((words) => words[0] === 'nappe' && words.length > 1 && words[1] !== 'COMMAND' && words[1] !== '…')
    .map((words) => words.slice(1));
}

async function optionsOf(name: string): Promise<readonly string[] | null> {
  const entry = commands.find((one) => one.name === name);
  if (!entry) return null;
  const command = new Command(name);
  (await entry.load()).define(command);
  return [...command.options.flatMap(({ long, short }) => [long, short]), '--help', '-h'].filter((flag) => flag !== undefined);
}

describe.each(documents)('%s', (name) => {
  const code = codeOf(readFileSync(join(root, name), 'utf8'));

  test('names only paths that exist', () => {
    const looksLikePath = /^(?!\d+\/\d+$)[\w.-]+(\/[\w.<>-]+)+\/?$|^\.?[\w-]+\.(md|ts|mjs|json|nappe|ya?ml)$/;
    const made = /^(cards|dist|artefacts)\b|\/dist\b|^custard\.nappe$|^card\.html$|[<>]|^package\.json$/;
    // What a lesson has its reader save, and make from that.
    const own = name.startsWith('samples/guide/') ? /^[\w-]+\.(nappe|md|html)$/ : /^$/;
    const absent = code.filter((span) => looksLikePath.test(span) && !made.test(span) && !own.test(span) && !isThere(name, span));
    expect(absent).toEqual([]);
  });

  test('links only to files that exist', () => {
    const links = [...readFileSync(join(root, name), 'utf8').matchAll(/\]\((?!https?:|#)([^)#\s]+)/g)].map(
      ([, link]) => link as string,
    );
    expect(links.filter((link) => !existsSync(join(root, dirname(name), link)))).toEqual([]);
  });

  test('names only commands and options that the program has', async () => {
    const wrong: string[] = [];
    for (const words of code.flatMap(commandsIn)) {
      const options = await optionsOf(words[0] as string);
      const unknown = words
        .slice(1)
        .filter((word) => /^--?[a-z]/.test(word) && !(options ?? []).includes(word.split('=')[0] as string));
      if (!options || unknown.length > 0) wrong.push(`nappe ${words.join(' ')}`);
    }
    expect(wrong).toEqual([]);
  });

  test('names only diagnostic codes that exist', () => {
    const known = new Set(rules.map((rule) => rule.code));
    // A code span of words joined by hyphens that is no code: a program, a command, a word of the notation, a file's option.
    const others = new Set([...commands.map((one) => one.name), ...vocabulary, 'nappe-server', 'nappe-check', 'nappe-fmt']);
    const text = readFileSync(join(root, name), 'utf8');
    // What the worked examples of DEVELOPERS.md add is not there yet.
    const added = [...text.matchAll(/^```ts \S+\/([\w-]+)\.ts$/gm)].map(([, file]) => file as string);
    const spans = code.filter((span) => /^[a-z]+(-[a-z]+)+$/.test(span));
    expect(spans.filter((span) => !known.has(span) && !others.has(span) && !added.includes(span))).toEqual([]);
    const allowed = [...text.matchAll(/\/\/ allow ([a-z-]+)/g)].map(([, one]) => one as string);
    expect(allowed.filter((one) => !known.has(one))).toEqual([]);
  });

  test('names only npm scripts that exist', () => {
    const named = code.flatMap((span) =>
      [...span.matchAll(/\bnpm (?:run ([\w:-]+)|(start|test)\b)/g)].map(([, run, own]) => run ?? (own as string)),
    );
    expect(named.filter((script) => !scripts.includes(script))).toEqual([]);
  });

  test('shows formulas that check clean', () => {
    const { status, out } = nappe(['check', '--strict', '--format', 'json', name], { cwd: root });
    // A notice is a caution a lesson may well have.
    const diagnostics: readonly { severity: string }[] = JSON.parse(out).diagnostics;
    expect(diagnostics.filter(({ severity }) => severity !== 'notice')).toEqual([]);
    expect(status).toBe(0);
  });
});

test('every command of the program is in the README', () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  expect(commands.filter(({ name, hidden }) => !hidden && !readme.includes(`\`nappe ${name}`)).map(({ name }) => name)).toEqual(
    [],
  );
});

test('every invariant of DEVELOPERS.md names a test that is there', () => {
  const developers = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const invariants = [...developers.matchAll(/^(\d+)\. \*\*.+$/gm)];
  expect(invariants.map(([, number]) => Number(number))).toEqual(invariants.map((_, index) => index + 1));
  expect(invariants.length).toBeGreaterThan(5);
  const tests = filesBelow(root)
    .filter((path) => path.endsWith('.test.ts'))
    .map((path) => readFileSync(path, 'utf8'));
  for (const [line] of invariants) {
    const named = /\(test: `([^`]+)`/.exec(line)?.[1];
    expect(named, line).toBeDefined();
    expect(existsSync(join(root, named as string)), named).toBe(true);
  }
  expect(tests.length).toBeGreaterThan(5);
});
