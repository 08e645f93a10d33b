/**
 * Files on disk: what the compiler may read, and clear words where it may not.
 *
 * The workspace root is the nearest folder upward from a file that holds `.git` or `package.json`; without one, the folder
 * the command was started in where the file is inside it, else the file's own folder. Links are resolved first.
 */
import { isUtf8 } from 'node:buffer';
import { closeSync, existsSync, fstatSync, openSync, readSync, realpathSync, type Stats, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import type { Files } from '../resolve/model.ts';

/** Bytes; a formula of 5,000 lines is about 0.2 MB. */
export const sizeLimit = 5_000_000;

/** A file, folder or standard input that cannot be used; its message starts with the path and is for a cook. */
export class Unreadable extends Error {
  readonly why: string;
  readonly reason: 'missing' | 'outside' | 'unreadable';

  constructor(path: string, why: string, reason: 'missing' | 'outside' | 'unreadable' = 'unreadable') {
    super(`${path}: ${why}`);
    this.why = why;
    this.reason = reason;
  }
}

/** Reads below `root` and nowhere else; `given` are texts that stand for files, such as standard input. */
export function filesOnDisk(root: string, given: ReadonlyMap<string, string> = new Map()): Files {
  return {
    root: slashed(root),
    read(path) {
      const text = given.get(path);
      if (text !== undefined) return { text };
      try {
        return { text: readText(realPathWithin(root, path)) };
      } catch (error) {
        if (error instanceof Unreadable) return { refused: error.reason, why: error.why };
        throw error;
      }
    },
  };
}

/** The folder that nothing read for `path` may lie outside of; `path` is a real path to a file or a folder. */
export function rootOf(path: string, isFolder: boolean, cwd: string = realpathSync.native(process.cwd())): string {
  const folder = isFolder ? path : dirname(path);
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, '.git')) || existsSync(join(at, 'package.json'))) return at;
    if (at === dirname(at)) break;
  }
  return isWithin(cwd, folder) ? cwd : folder;
}

/** A path's real place and what is there. @throws Unreadable where there is nothing, or no permission to see it. */
export function locate(path: string): { readonly path: string; readonly stats: Stats } {
  try {
    const real = realpathSync.native(resolve(path));
    return { path: real, stats: statSync(real) };
  } catch (error) {
    throw refusal(error, path, path);
  }
}

/** The text of one regular file in UTF-8. @throws Unreadable */
export function readText(path: string): string {
  const shown = display(path);
  let file: number;
  try {
    const stats = statSync(path);
    if (stats.isDirectory()) throw new Unreadable(shown, 'this is a folder; name one file.');
    if (!stats.isFile()) throw new Unreadable(shown, 'this is no ordinary file; to read from a pipe, give - as the file.');
    if (stats.size > sizeLimit) throw tooLarge(shown);
    file = openSync(path, 'r');
  } catch (error) {
    throw refusal(error, path, shown);
  }
  try {
    return decode(readAtMost(file, fstatSync(file).size), shown);
  } catch (error) {
    throw refusal(error, path, shown);
  } finally {
    closeSync(file);
  }
}

/** All of standard input, to its end. @throws Unreadable where it is too large or no text. */
export function readStandardInput(): string {
  return decode(readAtMost(0, 0), 'standard input');
}

/** As people name it from where they stand: relative to the current folder, with `/`. */
export function display(path: string): string {
  const shown = relative(process.cwd(), path);
  return slashed(shown === '' ? '.' : shown);
}

export const slashed = (path: string): string => (sep === '/' ? path : path.replaceAll(sep, '/'));

export function isWithin(root: string, path: string): boolean {
  return path === root || path.startsWith(root.endsWith(sep) ? root : root + sep);
}

/** @throws Unreadable `outside` where the path, or what a link on it leads to, is not below the root. */
export function realPathWithin(root: string, path: string): string {
  const outside = () =>
    new Unreadable(display(path), `this is outside ${display(root)}, and nothing outside it is read.`, 'outside');
  const absolute = resolve(root, path);
  if (!isWithin(root, absolute)) throw outside();
  const real = locate(absolute).path;
  if (!isWithin(root, real)) throw outside();
  return real;
}

/** Chunks until the end, since the size of a pipe or of a file still growing says nothing. */
function readAtMost(file: number, expected: number): Uint8Array {
  const chunks: Buffer[] = [];
  let total = 0;
  while (total <= sizeLimit) {
    const chunk = Buffer.allocUnsafe(Math.min(sizeLimit, Math.max(expected - total, 65_536)) + 1);
    const count = readChunk(file, chunk);
    if (count === 0) break;
    chunks.push(chunk.subarray(0, count));
    total += count;
  }
  return chunks.length === 1 ? (chunks[0] as Buffer) : Buffer.concat(chunks);
}

function readChunk(file: number, chunk: Buffer): number {
  for (;;) {
    try {
      return readSync(file, chunk, 0, chunk.length, null);
    } catch (error) {
      if (codeOf(error) === 'EOF') return 0;
      // A terminal or a pipe that does not block has nothing yet.
      if (codeOf(error) !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

function decode(bytes: Uint8Array, shown: string): string {
  if (bytes.length > sizeLimit) throw tooLarge(shown);
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    throw new Unreadable(shown, 'this is saved as UTF-16; save it as UTF-8.');
  }
  if (bytes.includes(0)) throw new Unreadable(shown, 'this is no text but a binary file; a formula is plain text in UTF-8.');
  if (!isUtf8(bytes)) throw new Unreadable(shown, 'this is not in UTF-8; save it as UTF-8.');
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('utf8');
}

const tooLarge = (shown: string): Unreadable => new Unreadable(shown, 'this is larger than 5 MB, the most that is read.');

/** What the system refuses, in words; what it did not say is a fault of the program, and stays one. */
function refusal(error: unknown, path: string, shown: string): unknown {
  const code = codeOf(error);
  if (error instanceof Unreadable || code === undefined) return error;
  return new Unreadable(shown, whyNot(code, path), code === 'ENOENT' || code === 'ENOTDIR' ? 'missing' : 'unreadable');
}

function whyNot(code: string, path: string): string {
  if (code === 'ENOENT')
    return existsSync(`${path}.nappe`) ? `there is no such file; ${path}.nappe is there.` : 'there is no such file.';
  if (code === 'ENOTDIR') return 'there is no such file.';
  if (code === 'EACCES' || code === 'EPERM') return 'this may not be read: permission denied.';
  if (code === 'ELOOP') return 'this is a link that leads back to itself.';
  if (code === 'ENAMETOOLONG') return 'this name is too long.';
  return `this could not be read (${code}).`;
}

const codeOf = (error: unknown): string | undefined => (error as NodeJS.ErrnoException).code;
