/** Ways out of a workspace, as a file may write them, and a workspace with a secret beside it to be taken out. */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { custard, folderWith } from '../cli/nappe.ts';

/** Stands in every secret file; no answer may hold it. */
export const secret = 'hush-hush-hazelnut';

/** A PNG by its first bytes; what would stand in a page of it. */
const picture = Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), Buffer.from(secret.repeat(3))]);
export const secretPicture = picture.toString('base64');

export interface Ground {
  /** Holds the secrets and the workspace. */
  readonly outer: string;
  /** The workspace. */
  readonly root: string;
}

/** `outer/secret.*` and `outer/work/`; with `open` the workspace is the whole of it, and the secrets are no secrets. */
export function ground(open = false): Ground {
  const text = custard.replace('formula Pouring custard', `formula ${secret}\n  | ${secret}`);
  const outer = folderWith({
    'secret.nappe': `${text}\ncomponent base\n  100 g  water\n  | ${secret}\n  do "${secret}"\n`,
    'secret.md': `# ${secret}\n\n\`\`\`nappe\n${text}\`\`\`\n`,
    'secret.png': picture,
    'work/own.nappe': custard,
    [open ? 'package.json' : 'work/package.json']: '{}',
    'work/sub/': '',
  });
  const root = join(outer, 'work');
  for (const ending of ['nappe', 'md', 'png']) {
    symlinkSync(`../secret.${ending}`, join(root, `link.${ending}`));
    symlinkSync(`link.${ending}`, join(root, `link-to-link.${ending}`));
    symlinkSync(join(outer, `secret.${ending}`), join(root, `absolute-link.${ending}`));
  }
  symlinkSync('..', join(root, 'linked'));
  mkdirSync(join(outer, 'work-beside'));
  writeFileSync(join(outer, 'work-beside/secret.nappe'), text);
  return { outer, root };
}

/** A way out: what it is called, and how a file called `name` in `outer` is written. */
export type Attack = readonly [kind: string, write: (name: string, outer: string) => string];

const encoded = (text: string): string => [...text].map((c) => `%${c.charCodeAt(0).toString(16).padStart(2, '0')}`).join('');
const again = (text: string): string => text.replaceAll('%', '%25');

export const attacks: readonly Attack[] = [
  ['up', (name) => `../${name}`],
  ['up from a folder', (name) => `sub/../../${name}`],
  ['up from a folder that is not there', (name) => `absent/../../${name}`],
  ['up with a full stop', (name) => `./.././${name}`],
  ['up with slashes', (name) => `..//${name}`],
  ['up and in again', (name, outer) => `../${basename(outer)}/../${name}`],
  ['a folder that begins alike', () => '../work-beside/secret.nappe'],
  ['up two thousand times', (name, outer) => `${'../'.repeat(2000)}${outer.slice(1)}/${name}`],
  ['an absolute path', (name, outer) => `${outer}/${name}`],
  ['an absolute path with two slashes', (name, outer) => `/${outer}/${name}`],
  ['the process’s own folder', (name) => `/proc/self/cwd/../${name}`],
  ['a home folder', (name) => `~/${name}`],
  ['a link to a file', (name) => name.replace('secret', 'link')],
  ['a link to a link', (name) => name.replace('secret', 'link-to-link')],
  ['an absolute link', (name) => name.replace('secret', 'absolute-link')],
  ['a link to a folder', (name) => `linked/${name}`],
  ['a link to a folder, and in again', (name) => `linked/work/linked/${name}`],
  ['a link in capitals', (name) => name.replace('secret', 'LINK').toUpperCase()],
  ['capitals', (name) => `../${name.toUpperCase()}`],
  ['a drive', (name) => `C:\\${name}`],
  ['a drive with a slash', (name) => `c:/${name}`],
  ['a drive without any', (name) => `C:${name}`],
  ['a drive of a long path', (name) => `\\\\?\\C:\\${name}`],
  ['a share', (name) => `\\\\host\\share\\${name}`],
  ['a share with slashes', (name) => `//host/share/${name}`],
  ['a device', () => '\\\\.\\pipe\\x.nappe'],
  ['file:', (name, outer) => `file://${outer}/${name}`],
  ['FILE:', (name, outer) => `FILE:${outer}/${name}`],
  ['http:', (name) => `http://127.0.0.1/${name}`],
  ['https:', (name) => `https://example.org/${name}`],
  ['data:', () => 'data:text/plain,component base'],
  ['javascript:', () => 'javascript:alert(1)'],
  ['an editor’s scheme', (name, outer) => `vscode-file:${outer}/${name}`],
  ['backslashes', (name) => `..\\${name}`],
  ['both slashes', (name) => `..\\/..\\/${name}`],
  ['encoded', (name) => `%2e%2e%2f${name}`],
  ['encoded in capitals', (name) => `%2E%2E%2F${name}`],
  ['an encoded slash', (name) => `..%2f${name}`],
  ['encoded full stops', (name) => `%2e%2e/${name}`],
  ['an encoded backslash', (name) => `..%5c${name}`],
  ['encoded twice', (name) => `%252e%252e%252f${name}`],
  ['encoded four times', (name) => `${again(again(again('%2e%2e%2f')))}${name}`],
  ['encoded five times', (name) => `${again(again(again(again('%2e%2e%2f'))))}${name}`],
  ['encoded whole', (name) => encoded(`../${name}`)],
  ['an encoded absolute path', (name, outer) => encoded(`${outer}/${name}`)],
  ['an encoded link', (name) => encoded(name.replace('secret', 'link'))],
  ['overlong UTF-8', (name) => `%c0%ae%c0%ae%c0%af${name}`],
  ['wide letters', (name) => `．．／${name}`],
  ['a leader of two dots', (name) => `‥/${name}`],
  ['a space before', (name) => ` ../${name}`],
  ['spaces within', (name) => `.. /${name}`],
  ['a parameter', (name) => `..;/${name}`],
  ['three dots', (name) => `.../${name}`],
  ['four dots and two slashes', (name) => `....//${name}`],
  ['an encoded zero', (name) => `../${name}%00.nappe`],
  ['an encoded zero at a link', (name) => `${name.replace('secret', 'link')}%00`],
  ['a control character', (name) => `../\u0007${name}`],
  ['an encoded line feed', (name) => `..%0a/${name}`],
  ['a query', (name) => `../${name}?x=own.nappe`],
  ['a name of 300 letters', (name) => `../${'x'.repeat(300)}${name}`],
  ['a path of 3,500 letters', (name) => `${'sub/'.repeat(500)}${'../'.repeat(501)}${name}`],
];
