/** The file references of a line: what `take` and requests name. */
import type { FileReference, Line } from 'nappe-grammar';

export function referencesIn(line: Line): readonly FileReference[] {
  if (line.kind === 'take') return line.from ? [line.from] : none;
  return line.kind === 'request' ? line.entries.flatMap(({ reference }) => reference ?? []) : none;
}

const none: readonly FileReference[] = [];
