/** The files of the machine: read below a root and nowhere else, links followed first; listed without blocking for long. */
import { isUtf8 } from 'node:buffer';
import { type Dirent, existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Host, ListOptions, ReadResult } from './host.ts';

/** Bytes; as for the command line. */
const sizeLimit = 5_000_000;

export const nodeHost: Host = { read, list, rootOf };

function read(root: string, path: string): ReadResult {
  try {
    const real = realpathSync.native(path);
    const realRoot = realRootOf(root);
    if (!real.startsWith(realRoot.endsWith('/') ? realRoot : `${realRoot}/`))
      return { refused: 'outside', why: 'a link leads out of the workspace' };
    const stats = statSync(real);
    if (!stats.isFile()) return { refused: 'unreadable', why: 'this is no ordinary file' };
    if (stats.size > sizeLimit) return { refused: 'unreadable', why: 'this is larger than 5 MB, the most that is read' };
    const bytes = readFileSync(real);
    if (bytes.includes(0) || !isUtf8(bytes)) return { refused: 'unreadable', why: 'this is no text in UTF-8' };
    return { text: bytes.toString('utf8') };
  } catch (error) {
    return missing.has((error as NodeJS.ErrnoException).code ?? '')
      ? { refused: 'missing', why: 'there is no such file' }
      : { refused: 'unreadable', why: 'this may not be read' };
  }
}

const missing: ReadonlySet<string> = new Set(['ENOENT', 'ENOTDIR', 'ENAMETOOLONG', 'ELOOP', 'ERR_INVALID_ARG_VALUE']);

const realRoots = new Map<string, string>();

function realRootOf(root: string): string {
  let real = realRoots.get(root);
  if (real === undefined) {
    real = realpathSync.native(root).replaceAll('\\', '/');
    realRoots.set(root, real);
  }
  return real;
}

async function list(root: string, { limit, depth, isCancelled }: ListOptions): Promise<readonly string[]> {
  const found: string[] = [];
  const open: { folder: string; level: number }[] = [{ folder: root, level: 1 }];
  let visited = 0;
  for (let next = open.shift(); next !== undefined; next = open.shift()) {
    if (isCancelled() || found.length >= limit || visited >= mostFolders) break;
    visited += 1;
    for (const entry of await entriesOf(next.folder)) {
      const path = `${next.folder === '/' ? '' : next.folder}/${entry.name}`;
      if (entry.isDirectory()) {
        if (next.level < depth && !entry.name.startsWith('.') && entry.name !== 'node_modules')
          open.push({ folder: path, level: next.level + 1 });
      } else if (/\.(nappe|md|markdown)$/i.test(entry.name) && found.length < limit) found.push(path);
    }
  }
  return found;
}

/** A folder tree of more is walked no further. */
const mostFolders = 20_000;

/** In order of name, so that every start finds the same; nothing where a folder may not be read. */
async function entriesOf(folder: string): Promise<readonly Dirent[]> {
  try {
    return (await readdir(folder, { withFileTypes: true })).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return [];
  }
}

/** The nearest folder upward that holds `.git` or `package.json`, else the file's own, as for the command line. */
function rootOf(path: string): string {
  const own = dirname(path);
  for (let at = own; ; at = dirname(at)) {
    if (existsSync(join(at, '.git')) || existsSync(join(at, 'package.json'))) return at.replaceAll('\\', '/');
    if (at === dirname(at)) return own.replaceAll('\\', '/');
  }
}
