/** Marks in example files: which code a line must raise (`// expect: CODE`, or `// expect-above: CODE` on the next line). For tests. */

import type { Severity } from './rule.ts';

export interface Expected {
  /** From 1. */
  readonly line: number;
  readonly code: string;
  /** Where the mark names one. */
  readonly severity: Severity | null;
  /** Only in the combinations that hold this value. */
  readonly when: string | null;
}

/** `// expect: [SEVERITY] CODE [when VALUE], …` at the end of a line, or alone below it as `// expect-above: …`. */
export function expectedIn(text: string): readonly Expected[] {
  const expected: Expected[] = [];
  let content = 0;
  text.split('\n').forEach((line, index) => {
    const written = line.trimEnd();
    const mark = /\/\/ expect(-above)?: /.exec(written);
    if (!mark) {
      if (line.trim() !== '') content = index + 1;
      return;
    }
    if (mark[1] === undefined) content = index + 1;
    for (const part of written.slice(mark.index + mark[0].length).split(',')) {
      const [what = '', value = null] = part.trim().split(' when ');
      const words = what.trim().split(' ');
      const severity = severities.find((word) => word === words[0]) ?? null;
      const code = words.at(-1) ?? '';
      if (code !== '') expected.push({ line: content, code, severity, when: value });
    }
  });
  return expected;
}

const severities: readonly Severity[] = ['error', 'warning', 'notice'];
