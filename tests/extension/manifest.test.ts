/** The extension's manifest and files beside it say what the notation and the server say; its shell is thin, its package small. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { rules } from 'nappe';
import { languages } from 'nappe/card';
import { parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { defaults, settingsFrom } from '../../server/src/settings.ts';
import { root, sourcesOf } from '../house/sources.ts';

const read = (path: string): string => readFileSync(join(root, 'extension', path), 'utf8');
const { contributes, main, browser, activationEvents } = JSON.parse(read('package.json'));

describe('settings', () => {
  const properties: Record<string, { default: unknown; enum?: string[]; propertyNames?: { enum: string[] } }> =
    contributes.configuration.properties;

  test('offer every language a card has, and every code', () => {
    expect(properties['nappe.card.language']?.enum).toEqual(languages.map(({ code }) => code));
    expect(properties['nappe.severities']?.propertyNames?.enum).toEqual(rules.map(({ code }) => code).sort());
  });

  test('are those the server reads, with the defaults the server has', () => {
    const nested: Record<string, unknown> = {};
    for (const [name, { default: value }] of Object.entries(properties)) {
      const path = name.split('.').slice(1);
      let at = nested;
      for (const part of path.slice(0, -1)) {
        at[part] ??= {};
        at = at[part] as Record<string, unknown>;
      }
      at[path.at(-1) as string] = value;
    }
    expect(nested).toEqual(defaults);
    expect(settingsFrom(nested)).toEqual(defaults);
  });
});

test('commands that menus and the walkthrough name are there, and each is registered', () => {
  const known = contributes.commands.map(({ command }: { command: string }) => command);
  const registered = [...read('src/extend.ts').matchAll(/register\('(\w+)'/g)].map(([, name]) => `nappe.${name}`);
  expect([...registered].sort()).toEqual([...known].sort());
  const named = [
    ...JSON.stringify([contributes.menus, contributes.keybindings, contributes.walkthroughs]).matchAll(/nappe\.[a-z]\w+/g),
  ];
  expect(named.map(([name]) => name).filter((name) => !known.includes(name) && name !== 'nappe.cardOpen')).toEqual([]);
});

test('opening a formula starts it, and nothing else does', () => {
  expect(activationEvents).toEqual(['onLanguage:nappe', 'onWebviewPanel:nappe.card']);
  expect(contributes.languages[0].configuration).toBe('./language-configuration.json');
});

test('snippets are whole: filled in as they stand, they can be read', () => {
  const snippets: Record<string, { prefix: string; body: string[] }> = JSON.parse(read('snippets.json'));
  const filled = (body: string[]) =>
    body
      .join('\n')
      .replace(/\$\{\d+:([^}]*)\}/g, '$1')
      .replace(/\$0/g, '');
  expect(Object.keys(snippets).length).toBeGreaterThan(3);
  for (const [name, { prefix, body }] of Object.entries(snippets)) {
    const above = ['formula', 'component', 'take'].includes(prefix) ? '' : 'formula X\n  makes 1 kg\n';
    const problems = parse(above + filled(body)).lines.flatMap((line) => ('problems' in line ? line.problems : []));
    expect(problems, name).toEqual([]);
  }
});

test('the words a name is made of are words to the editor, accents and all', () => {
  const { pattern, flags } = JSON.parse(read('language-configuration.json')).wordPattern;
  expect('purée crème-fraîche 82.5'.match(new RegExp(pattern, `${flags}g`))).toEqual(['purée', 'crème-fraîche', '82.5']);
});

test('every file of the shell is at most 150 lines long', () => {
  const long = sourcesOf('extension/src').filter(({ text }) => text.trimEnd().split('\n').length > 150);
  expect(long.map(({ path }) => path)).toEqual([]);
});

describe('the package', () => {
  const vsix = join(root, 'extension/nappe.vsix');
  const entries = () => {
    if (!existsSync(vsix)) throw new Error('the extension is not packaged: npm run package');
    // unzip -l without unzip: the central directory of a ZIP archive (APPNOTE.TXT 6.3.10, 4.3.12).
    const bytes = readFileSync(vsix);
    const found: { name: string; size: number }[] = [];
    for (let at = bytes.indexOf('PK\x01\x02'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 46)) {
      const length = bytes.readUInt16LE(at + 28);
      found.push({ name: bytes.subarray(at + 46, at + 46 + length).toString(), size: bytes.readUInt32LE(at + 24) });
    }
    return found;
  };

  test('takes less than 3 MB installed', () => {
    expect(entries().reduce((sum, { size }) => sum + size, 0)).toBeLessThan(3_000_000);
  });

  test('holds its programs, words, licence and nothing of the source', () => {
    const names = entries().map(({ name }) => name);
    for (const file of [
      main,
      browser,
      './dist/server.cjs',
      './dist/LICENSES.txt',
      './LICENSE.txt',
      './readme.md',
      './changelog.md',
    ])
      expect(names).toContain(`extension/${(file as string).slice(2)}`);
    expect(names.filter((name) => /\.ts$|node_modules|\/src\//.test(name))).toEqual([]);
  });

  test('asks nobody anything: no telemetry, no download', () => {
    for (const name of ['desktop.cjs', 'browser.cjs', 'server.cjs', 'card-page.js'])
      expect(readFileSync(join(root, 'extension/dist', name), 'utf8'), name).not.toMatch(
        /\bXMLHttpRequest\b|https?\.(?:get|request)\(/,
      );
  });

  test('its server answers as a program, too', () => {
    expect(execFileSync(process.execPath, [join(root, 'extension/dist/server.cjs'), '--version'], { encoding: 'utf8' })).toBe(
      '0.1.0\n',
    );
  });
});
