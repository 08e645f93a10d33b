/** Diagnostics as text for a terminal: place, code, the line with a mark under it, the sentence, where else to look, what to do. */
import { ruleOf } from './registry.ts';
import type { Diagnostic, Severity } from './rule.ts';

/** How parts are set off; plain by default. The terminal's colours are the caller's. */
export interface Style {
  severity(text: string, severity: Severity): string;
  strong(text: string): string;
  faint(text: string): string;
}

export const plain: Style = { severity: (text) => text, strong: (text) => text, faint: (text) => text };

/** A file's text by its name in the diagnostic, line by line; null where it is not at hand. */
export type Lines = (file: string) => readonly string[] | null;

/** Columns a line is shown in; longer lines are cut around the place. */
const widest = 110;

/**
 * file:line:column: severity: sentence [code]
 *    12 |   fold whipped cream into custard
 *       |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
 *       = last heated here: file:9:3
 *       = when serving is cut
 *       = to do: …
 */
export function renderText(diagnostic: Diagnostic, lines: Lines, style: Style = plain): string {
  const { file, line, column, severity, code, message } = diagnostic;
  const head = `${style.strong(`${file}:${line}:${column}`)}: ${style.severity(severity, severity)}: ${message} ${style.faint(`[${code}]`)}`;
  const margin = ' '.repeat(Math.max(5, String(line).length + 1));
  const notes = [...relatedNotes(diagnostic), ...whenNote(diagnostic), ...remedyNotes(diagnostic)];
  return [
    head,
    ...excerpt(diagnostic, lines(file)?.[line - 1], margin, style),
    ...notes.map((note) => `${margin} ${style.faint('=')} ${note}`),
  ].join('\n');
}

function excerpt(
  { line, column, endColumn, severity }: Diagnostic,
  text: string | undefined,
  margin: string,
  style: Style,
): readonly string[] {
  if (text === undefined) return [];
  const number = String(line).padStart(margin.length - 1);
  const from = column - 1 > widest - 20 ? column - 21 : 0;
  const shown = printable(text.slice(from, from + widest));
  const start = Math.max(0, column - 1 - from);
  const length = Math.max(1, Math.min(endColumn - column, widest - start, Math.max(1, text.length - from - start)));
  const pad = ' '.repeat(widthOf(shown.slice(0, start)));
  const mark = '^'.repeat(Math.max(1, widthOf(shown.slice(start, start + length))));
  return [`${style.faint(`${number} |`)} ${shown}`, `${style.faint(`${margin}|`)} ${pad}${style.severity(mark, severity)}`];
}

/** Tabs and control characters as one space each, so that the mark stands under its place and a terminal obeys no formula. */
const printable = (text: string): string =>
  [...text].map((character) => (isControl(character.charCodeAt(0)) ? ' ' : character)).join('');

const isControl = (code: number): boolean =>
  code < 32 ||
  (code >= 127 && code < 160) ||
  code === 0x2028 ||
  code === 0x2029 ||
  (code >= 0x202a && code <= 0x202e) ||
  (code >= 0x2066 && code <= 0x2069);

/** Columns on a terminal: combining marks take none, East Asian wide characters and emoji two. */
function widthOf(text: string): number {
  let width = 0;
  for (const character of text) width += /\p{Mn}|\p{Cf}/u.test(character) ? 0 : isWide(character.codePointAt(0) ?? 0) ? 2 : 1;
  return width;
}

const isWide = (code: number): boolean =>
  (code >= 0x1100 && code <= 0x115f) ||
  (code >= 0x2e80 && code <= 0xa4cf) ||
  (code >= 0xac00 && code <= 0xd7a3) ||
  (code >= 0xf900 && code <= 0xfaff) ||
  (code >= 0xff00 && code <= 0xff60) ||
  (code >= 0x1f300 && code <= 0x1faff);

const relatedNotes = ({ related }: Diagnostic): readonly string[] =>
  related.map(({ file, line, column, message }) => `${message}: ${file}:${line}:${column}`);

function whenNote({ when }: Diagnostic): readonly string[] {
  if (when === undefined) return [];
  const all = when.map((selection) =>
    Object.entries(selection)
      .map(([name, value]) => `${name} is ${value}`)
      .join(' and '),
  );
  return [`when ${all.join(', or when ')}`];
}

function remedyNotes({ code, fixes }: Diagnostic): readonly string[] {
  const remedy = ruleOf(code)?.remedy;
  const titles = fixes.map(({ title }) => title);
  return [
    ...(remedy === undefined ? [] : [`to do: ${remedy}`]),
    ...(titles.length === 0 ? [] : [`fix: ${titles.join('; or ')}`]),
  ];
}
