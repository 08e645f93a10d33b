/** What comes from others is pinned to the letter by the lock file, is what is installed, and is free in each bundle. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../house/sources.ts';

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly link?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
}

const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'));

describe.each(['package-lock.json', 'tests/editor/package-lock.json'])('%s', (path) => {
  const packages: Readonly<Record<string, Locked>> = read(path).packages;
  const others = Object.entries(packages).filter(([name, { link }]) => /(?:^|\/)node_modules\//.test(name) && link !== true);

  test('pins every library to one version with its checksum', () => {
    expect(others.length).toBeGreaterThan(50);
    const loose = others.filter(
      ([, { version, integrity }]) => !/^\d+\.\d+\.\d+/.test(version ?? '') || !/^sha512-/.test(integrity ?? ''),
    );
    expect(loose.map(([name]) => name)).toEqual([]);
  });

  test('brings none from an address or a folder instead of the registry', () => {
    const direct = Object.entries(packages).filter(([name]) => !name.includes('node_modules/'));
    const ranges = direct.flatMap(([, one]) => Object.entries({ ...one.dependencies, ...one.devDependencies }));
    expect(ranges.filter(([, range]) => !/^(?:npm:[\w-]+@)?[\^~]?\d+(?:\.\d+){1,2}(?:-[\w.]+)?$/.test(range))).toEqual([]);
  });
});

test('what is installed is what the lock file says', () => {
  const packages: Readonly<Record<string, Locked>> = read('package-lock.json').packages;
  for (const [folder, own] of Object.entries(packages)) {
    if (folder.includes('node_modules/')) continue;
    for (const name of Object.keys({ ...own.dependencies, ...own.devDependencies })) {
      const nested = `${folder}/node_modules/${name}`;
      const place = packages[nested] ? nested : `node_modules/${name}`;
      if (packages[place]?.link !== true) expect(read(`${place}/package.json`).version, name).toBe(packages[place]?.version);
    }
  }
});

/** Licences that ask for no more than to be named. */
const free = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'BlueOak-1.0.0'];

test.each(['compiler', 'server', 'extension'])(
  'the bundle of %s lists few libraries, each with a free licence and its text',
  (name) => {
    const text = readFileSync(join(root, name, 'dist/LICENSES.txt'), 'utf8');
    const libraries = [...text.matchAll(/^== (\S+) (\S+) \((.+)\)$/gm)];
    expect(libraries.length).toBeGreaterThan(1);
    expect(libraries.length).toBeLessThan(130);
    expect(libraries.filter(([, , , licence = '']) => !free.includes(licence)).map(([line]) => line)).toEqual([]);
    const locked: Readonly<Record<string, Locked>> = read('package-lock.json').packages;
    for (const [, library = '', version] of libraries)
      expect(
        Object.entries(locked).some(([path, one]) => path.endsWith(`node_modules/${library}`) && one.version === version),
        library,
      ).toBe(true);
  },
);
