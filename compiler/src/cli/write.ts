/** Writing a file whole or not at all: aside in the same folder, then renamed over the old one. */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { display, locate, Unreadable } from './files.ts';

/**
 * Whoever reads `path` meanwhile, and whatever ends this process, finds the old text or the new one. Permissions and owner
 * stay, a link stays a link, and what is no ordinary file (a pipe, `/dev/stdout`) is written to as it is. @throws Unreadable
 */
export function writeWhole(path: string, text: string): void {
  try {
    const old = statsOf(path);
    if (old?.isDirectory()) throw new Unreadable(display(path), 'this is a folder; name a file to write.');
    if (old && !old.isFile()) writeFileSync(path, text);
    else replace(old ? locate(path).path : path, text, old);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (error instanceof Unreadable || code === undefined) throw error;
    throw new Unreadable(display(path), `this could not be written (${code}); nothing was changed.`);
  }
}

function replace(path: string, text: string, old: Stats | null): void {
  const aside = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);
  const file = openSync(aside, 'wx', 0o666);
  try {
    try {
      writeFileSync(file, text);
      if (old) keepRights(file, old);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(aside, path);
  } catch (error) {
    rmSync(aside, { force: true });
    throw error;
  }
}

function keepRights(file: number, old: Stats): void {
  try {
    fchownSync(file, old.uid, old.gid);
  } catch {
    // Only the owner's own group or an administrator may; the writer then owns the file, like an editor that saves it.
  }
  fchmodSync(file, old.mode & 0o7777);
}

function statsOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
