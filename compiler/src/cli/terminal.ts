/** Standard output and error: text goes out whole, a reader that leaves early ends the program quietly. */
import { fstatSync, writeSync } from 'node:fs';

/** Straight to the descriptor: opening Node's streams would cost a short command a twentieth of its time. */
export function print(text: string): void {
  writeAll(1, text);
}

/** Progress and failures; `nappe: ` is put before every line of its own. */
export function complain(message: string): void {
  writeAll(2, `nappe: ${message}\n`);
}

export function isTerminal(descriptor: 0 | 1 | 2): boolean {
  try {
    return fstatSync(descriptor).isCharacterDevice() && process.env.TERM !== undefined;
  } catch {
    return false;
  }
}

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
