/** Endings: the exit statuses, and the errors that are no fault of the program. */

/** Nothing wrong at `error` (with `--strict`: `warning`) / something was / usage, or a file that cannot be read. */
export const status = { clean: 0, faults: 1, usage: 2 } as const;

/** The command was asked for something that cannot be; the message says what and how to ask instead. */
export class UsageError extends Error {}

/** A fault of the program itself, in words that say what to send. */
export function report(error: unknown, about: string, version: string): string {
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return [
    `${about}: the program itself failed here. This is a fault in Nappe, not in your formula.`,
    'Please report it with the file and these lines:',
    `  nappe ${version}, Node ${process.version}, ${process.platform} ${process.arch}`,
    ...trace
      .split('\n')
      .slice(0, 12)
      .map((line) => `  ${line.trim()}`),
  ].join('\n');
}
