/** Path arithmetic for `take` and `card`: a written path beside the file that names it, and whether it stays inside the workspace. */

export type Located = { readonly path: string } | { readonly outside: string };

/**
 * The absolute path a written one means, or why it leaves the workspace. Nothing is asked of the file system: what a path would
 * mean after decoding, with either slash, decides. Absolute paths, drive letters and URL schemes are refused even where they would
 * lead inside, because they mean something else on the next machine.
 */
export function locate(written: string, from: string, root: string): Located {
  for (const form of decodedForms(written)) {
    const outside = leaves(form, from, root);
    if (outside) return { outside };
  }
  return { path: join(folderOf(from), written) };
}

function leaves(written: string, from: string, root: string): string | null {
  if (hasControl(written)) return 'the path holds a control character';
  const plain = written.replaceAll('\\', '/').trim();
  if (plain.startsWith('/')) return 'the path is absolute; write it relative to this file';
  if (/^[A-Za-z]:/.test(plain)) return 'the path names a drive; write it relative to this file';
  if (/^[A-Za-z][A-Za-z0-9+.-]*:/.test(plain)) return 'the path is an address, not a file of this workspace';
  if (plain.startsWith('~')) return 'the path starts at a home folder; write it relative to this file';
  return isInside(join(folderOf(from), plain), root) ? null : 'the path leads out of the workspace';
}

/** The path as written and as it would read after one, two, … rounds of percent-decoding. */
function decodedForms(written: string): readonly string[] {
  const forms = [written];
  for (let round = 0; round < 4; round++) {
    const last = forms.at(-1) ?? '';
    const decoded = last.replace(/%([0-9a-fA-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
    if (decoded === last) break;
    forms.push(decoded);
  }
  return forms;
}

const hasControl = (text: string): boolean =>
  [...text].some((character) => character.charCodeAt(0) < 32 || character.charCodeAt(0) === 127);

/** Whether a normal absolute path is the root or below it. */
export function isInside(path: string, root: string): boolean {
  const base = root.endsWith('/') ? root : `${root}/`;
  return path !== root && path.startsWith(base);
}

export const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/'));

export const fileNameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** Joins and normalises; `..` above the top stays at the top, which `isInside` then refuses. */
function join(folder: string, written: string): string {
  const parts: string[] = folder.split('/');
  const top = parts.length > 0 && parts[0] === '' ? 1 : 0;
  let climbedOut = false;
  for (const part of written.replaceAll('\\', '/').split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.length > top) parts.pop();
    else climbedOut = true;
  }
  return climbedOut ? '' : parts.join('/');
}

/** How a path reads seen from a folder, for messages: inside it relative, else whole. */
export function shown(path: string, root: string): string {
  return isInside(path, root) ? path.slice(root.endsWith('/') ? root.length : root.length + 1) : path;
}
