/** Diagnostics as workflow commands, which a forge's CI shows beside the changed lines (`--format github`). */
import type { Diagnostic } from '../diagnostics/rule.ts';

/** One line a diagnostic: `::error file=a.nappe,line=12,col=3,endColumn=40,title=fold-too-warm::message`. */
export function annotations(diagnostics: readonly Diagnostic[]): string {
  return diagnostics.map((diagnostic) => `${annotation(diagnostic)}\n`).join('');
}

function annotation({ file, line, column, endLine, endColumn, severity, code, message }: Diagnostic): string {
  const properties = Object.entries({ file, line, endLine, col: column, endColumn, title: code });
  return `::${severity} ${properties.map(([name, value]) => `${name}=${property(String(value))}`).join(',')}::${data(message)}`;
}

const data = (text: string): string => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');

const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
