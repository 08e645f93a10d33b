/** The walls of the house: which room may import which, read from the imports themselves. Numbers are those of DEVELOPERS.md. */
import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Import, packages, type SourceFile, sourcesOf } from './sources.ts';

const all = packages.flatMap((name) => sourcesOf(`${name}/src`));
const inFolder = (folder: string) => all.filter(({ path }) => path.startsWith(`${folder}/`));

/** `from` as a path in the repository where it is relative, else as it is. */
const target = ({ path }: SourceFile, { from }: Import): string =>
  from.startsWith('.') ? posix.join(posix.dirname(path), from) : from;

/** `file → import` for each import that is not allowed; run-time imports alone unless `types`. */
function broken(files: readonly SourceFile[], isForbidden: (to: string) => boolean, { types = true } = {}): string[] {
  return files.flatMap((file) =>
    file.imports
      .filter((one) => (types || !one.typeOnly) && isForbidden(target(file, one)))
      .map((one) => `${file.path} → ${one.from}`),
  );
}

const isPackage = (name: string, folder: string) => (to: string) =>
  to === name || to.startsWith(`${name}/`) || to.startsWith(`${folder}/`);
const isGrammar = isPackage('nappe-grammar', 'grammar');
const isCompiler = isPackage('nappe', 'compiler');
const isServer = isPackage('nappe-server', 'server');
const isExtension = isPackage('nappe-extension', 'extension');
const isNode = (to: string) => to.startsWith('node:') || builtinModules.includes(to);

test('sources are found, so that no wall holds for want of anything to hold', () => {
  expect(inFolder('grammar/src').length).toBeGreaterThan(3);
  expect(inFolder('compiler/src').length).toBeGreaterThan(30);
  expect(
    inFolder('compiler/src/cli')
      .flatMap(({ imports }) => imports)
      .some(({ from }) => from === 'node:fs'),
  ).toBe(true);
});

describe('invariant 1: imports go one way', () => {
  test('grammar imports nothing of compiler, server and extension', () => {
    expect(broken(inFolder('grammar'), (to) => isCompiler(to) || isServer(to) || isExtension(to))).toEqual([]);
  });
  test('compiler imports nothing of server and extension, and grammar only by its door', () => {
    expect(broken(inFolder('compiler'), (to) => isServer(to) || isExtension(to) || to.startsWith('grammar/'))).toEqual([]);
  });
  test('server imports nothing of extension, and the others only by their doors', () => {
    expect(
      broken(inFolder('server'), (to) => isExtension(to) || to.startsWith('grammar/') || to.startsWith('compiler/')),
    ).toEqual([]);
  });
  test('extension reaches the others only by their doors', () => {
    expect(
      broken(inFolder('extension'), (to) => ['grammar/', 'compiler/', 'server/'].some((folder) => to.startsWith(folder))),
    ).toEqual([]);
  });
});

test('invariant 2: no Node module outside the command line and the entries for Node and the desktop', () => {
  const doors = ['compiler/src/cli/', 'server/src/node', 'extension/src/desktop'];
  const files = all.filter(({ path }) => !doors.some((door) => path.startsWith(door)));
  expect(broken(files, isNode)).toEqual([]);
  const globals = /\b(process\.(env|argv|cwd|stdout|stderr|exit)|__dirname|__filename|Buffer\.(from|alloc))\b/;
  expect(files.filter(({ text }) => globals.test(text)).map(({ path }) => path)).toEqual([]);
});

test('invariant 3: only the command line imports the command line', () => {
  const files = inFolder('compiler/src').filter(({ path }) => !path.startsWith('compiler/src/cli/'));
  expect(broken(files, (to) => to.startsWith('compiler/src/cli/') || to === 'commander' || to === 'ignore')).toEqual([]);
});

test('invariant 4: a physical model never sees the tree, a formula, a run or a diagnostic', () => {
  const rooms = ['resolve', 'run', 'steps', 'diagnostics', 'card', 'scale'].map((room) => `compiler/src/${room}/`);
  expect(broken(inFolder('compiler/src/matter'), (to) => isGrammar(to) || rooms.some((room) => to.startsWith(room)))).toEqual([]);
});

test('invariant 5: a card never decides what is wrong', () => {
  expect(
    broken(inFolder('compiler/src/card'), (to) => to.startsWith('compiler/src/diagnostics/rules/'), { types: false }),
  ).toEqual([]);
});
