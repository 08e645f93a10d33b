/** The answer of `check` for people: each diagnostic with its line, then the counts; in colour where a terminal shows it. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Style } from '../diagnostics/render-text.ts';
import type { Diagnostic, Severity } from '../diagnostics/rule.ts';
import { type merged, renderText, plain as uncoloured } from '../index.ts';
import { standardInput, type Target } from './targets.ts';
import { hasColour, printable } from './terminal.ts';

export function checkText({ diagnostics, summary }: ReturnType<typeof merged>, targets: readonly Target[]): string {
  const style = hasColour() ? coloured : uncoloured;
  const lines = linesOf(targets);
  const shown = diagnostics.map((diagnostic) => `${renderText(harmless(diagnostic), lines, style)}\n\n`);
  return `${shown.join('')}${counts(summary)}\n`;
}

/** Text of a formula in a message must not command the terminal it is shown on. */
function harmless(diagnostic: Diagnostic): Diagnostic {
  return {
    ...diagnostic,
    file: printable(diagnostic.file),
    message: printable(diagnostic.message),
    related: diagnostic.related.map((one) => ({ ...one, file: printable(one.file), message: printable(one.message) })),
    fixes: diagnostic.fixes.map((fix) => ({ ...fix, title: printable(fix.title) })),
  };
}

/** Lines of the files named, one file at a time: diagnostics come file by file. */
function linesOf(targets: readonly Target[]): (file: string) => readonly string[] | null {
  let last: { readonly file: string; readonly lines: readonly string[] | null } | undefined;
  return (file) => {
    if (last?.file !== file) last = { file, lines: textOf(file)?.split(/\r\n|\n/) ?? null };
    return last.lines;
  };

  function textOf(file: string): string | null {
    if (file === standardInput) return targets.find(({ given }) => given !== undefined)?.given ?? null;
    try {
      return readFileSync(resolve(file), 'utf8').replace(/^\ufeff/, '');
    } catch {
      return null;
    }
  }
}

function counts({ files, errors, warnings, notices, allowed }: ReturnType<typeof merged>['summary']): string {
  const found = [number(errors, 'error'), number(warnings, 'warning'), number(notices, 'notice')].filter((part) => part !== null);
  const where = files === 1 ? '1 file checked' : `${files} files checked`;
  return `${where}: ${found.length > 0 ? found.join(', ') : 'nothing wrong'}${allowed > 0 ? `; ${allowed} allowed` : ''}.`;
}

const number = (count: number, what: string): string | null => (count === 0 ? null : `${count} ${what}${count === 1 ? '' : 's'}`);

const sgr = (code: string) => (text: string) => `\x1b[${code}m${text}\x1b[0m`;
const bySeverity: Record<Severity, (text: string) => string> = { error: sgr('1;31'), warning: sgr('1;33'), notice: sgr('1;36') };

const coloured: Style = { severity: (text, severity) => bySeverity[severity](text), strong: sgr('1'), faint: sgr('2') };
