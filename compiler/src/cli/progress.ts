/** A line of progress on standard error: only for people at a terminal, and only for work longer than a second. */
import { isTerminal } from './terminal.ts';

export interface Progress {
  /** `done` of the total are finished. */
  at(done: number): void;
  /** Takes the line away. */
  end(): void;
}

const patience = 1000;
const redrawn = 100;

export function progressOf(total: number, what: string): Progress {
  if (!isTerminal(2)) return { at() {}, end() {} };
  const begun = performance.now();
  let shownAt = 0;
  return {
    at(done) {
      const now = performance.now();
      if (now - begun < patience || now - shownAt < redrawn) return;
      shownAt = now;
      process.stderr.write(`\r${done} of ${total} ${what}\x1b[K`);
    },
    end() {
      if (shownAt > 0) process.stderr.write('\r\x1b[K');
      shownAt = 0;
    },
  };
}
