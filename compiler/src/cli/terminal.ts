/** Standard output and error: text goes out whole, a reader that leaves early ends the program quietly. */
import { fstatSync, writeSync } from 'node:fs';

/** Straight to the descriptor: opening Node's streams would cost a short command a twentieth of its time. */
export function print(text: string): void {
  writeAll(1, text);
}

/** Progress and failures, each under the program's name. */
export function complain(message: string): void {
  writeAll(2, `nappe: ${printable(message)}\n`);
}

/** Asks the kernel first: to load what knows terminals takes a short command longer than all else it writes. */
export function isTerminal(descriptor: 0 | 1 | 2): boolean {
  try {
    if (!fstatSync(descriptor).isCharacterDevice()) return false;
  } catch {
    return false;
  }
  return (descriptor === 0 ? process.stdin : descriptor === 1 ? process.stdout : process.stderr).isTTY === true;
}

/** Without control characters other than line feeds, and without marks that turn the reading order around. */
export const printable = (text: string): string => text.replace(/[^\P{C}\n]|[\u2028\u2029]/gu, ' ');

/** Colour only for people: on a terminal that can, and never under `NO_COLOR` (no-color.org: set and not empty). */
export function hasColour(): boolean {
  return !process.env.NO_COLOR && process.env.TERM !== 'dumb' && isTerminal(1);
}

function writeAll(descriptor: 1 | 2, text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(descriptor, bytes, at);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === 'EPIPE' || code === 'EBADF') process.exit();
      if (code !== 'EAGAIN') throw error;
      // The reader is behind: wait rather than lose the rest.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    }
  }
}
