/** Checked files as `nappe check --format json` writes them (version 1). */
import { type Allowed, type Checked, type Summary, summaryOf } from './check.ts';
import type { Diagnostic } from './rule.ts';

export interface CheckJson {
  readonly version: 1;
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly { readonly file: string; readonly line: number; readonly code: string; readonly reason: string }[];
  readonly summary: Summary;
}

/** Several files' answers as one. What a taken file raises from more than one taker is told once. */
export function merged(files: readonly Checked[]): Pick<Checked, 'diagnostics' | 'allowed' | 'summary' | 'faults'> {
  const diagnostics = unique(files.flatMap((checked) => checked.diagnostics));
  const allowed = unique(files.flatMap((checked) => checked.allowed));
  const summary = summaryOf(diagnostics, allowed, files.length);
  return { diagnostics, allowed, summary, faults: files.flatMap((checked) => checked.faults) };
}

export function checkJson({ diagnostics, allowed, summary }: Pick<Checked, 'diagnostics' | 'allowed' | 'summary'>): CheckJson {
  return {
    version: 1,
    diagnostics: diagnostics.map((one) => ({
      file: one.file,
      line: one.line,
      column: one.column,
      endLine: one.endLine,
      endColumn: one.endColumn,
      severity: one.severity,
      code: one.code,
      message: one.message,
      numbers: one.numbers,
      ...(one.when && { when: one.when }),
      fixes: one.fixes,
      related: one.related,
    })),
    allowed: allowed.map(({ file, line, code, reason }: Allowed) => ({ file, line, code, reason })),
    summary,
  };
}

function unique<T extends Diagnostic | Allowed>(items: readonly T[]): readonly T[] {
  const seen = new Map<string, T>();
  for (const item of items) {
    const column = 'column' in item ? item.column : 0;
    const key = `${item.file}:${item.line}:${column}:${item.code}:${item.message}`;
    if (!seen.has(key)) seen.set(key, item);
  }
  return [...seen.values()];
}
