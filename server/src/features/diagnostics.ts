/** Diagnostics in the protocol's shape: ranges, related places, the link to the explanation, a tag for what is not needed. */
import type { Diagnostic as Found } from 'nappe';
import { type Diagnostic, type DiagnosticRelatedInformation, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver';
import type { Analysis } from '../project.ts';
import { explanationUri } from '../protocol.ts';
import { rangeOn } from '../ranges.ts';
import { folderOf, relativePath } from '../uris.ts';

/** What a client can show beside message and place. */
export interface DiagnosticAbilities {
  readonly related: boolean;
  readonly links: boolean;
  readonly tags: boolean;
}

export const everything: DiagnosticAbilities = { related: true, links: true, tags: true };

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  notice: DiagnosticSeverity.Information,
} as const;

export function diagnostics(analysis: Analysis, can: DiagnosticAbilities = everything): Diagnostic[] {
  const { severities } = analysis.settings;
  return analysis.checked.diagnostics.flatMap((found) => {
    const severity = severities[found.code] ?? found.severity;
    return severity === 'off' ? [] : [shown(analysis, { ...found, severity }, can)];
  });
}

/** A finding in a base that this file takes is shown where it is taken; the base's own line is a related place. */
function shown(analysis: Analysis, found: Found, can: DiagnosticAbilities): Diagnostic {
  const { path } = analysis;
  const isOwn = found.file === path;
  const at = isOwn ? ownRange(found) : takenRange(analysis, found);
  const message = `${found.message}${isOwn ? '' : ` (in ${relativePath(folderOf(path), found.file)}, line ${found.line})`}${whenWords(found)}`;
  const related = relatedPlaces(analysis, found, isOwn);
  return {
    range: at,
    severity: severities[found.severity],
    code: found.code,
    source: 'nappe',
    message,
    ...(can.links && { codeDescription: { href: explanationUri(found.code) } }),
    ...(can.tags && unneeded.has(found.code) && { tags: [DiagnosticTag.Unnecessary] }),
    ...(can.related && related.length > 0 && { relatedInformation: related }),
  };
}

const unneeded: ReadonlySet<string> = new Set(['unused-ingredient', 'unused-allow']);

const ownRange = ({ line, column, endLine, endColumn }: Found): Diagnostic['range'] => ({
  start: { line: line - 1, character: column - 1 },
  end: { line: endLine - 1, character: endColumn - 1 },
});

/** The last place in this file on the way to the base, else the line that takes it. */
function takenRange({ path, file, project, unit }: Analysis, found: Found): Diagnostic['range'] {
  const taker = found.related.findLast((place) => place.file === path);
  if (taker) return lineRange(file, taker.line - 1, taker.column - 1);
  const line = file.lines.findIndex((one) => {
    if (one.kind !== 'take' || !one.from) return false;
    return unit.imports.includes(found.file) && found.file.endsWith(one.from.path.replace(/^(\.\.?\/)+/, ''));
  });
  const first = Math.max(0, line >= 0 ? line : file.lines.findIndex(({ kind }) => kind === 'take'));
  return lineRange(project.fileAt(path) ?? file, first, file.lines[first]?.span.start ?? 0);
}

const lineRange = (file: Analysis['file'], line: number, start: number): Diagnostic['range'] =>
  rangeOn(line, { start, end: Math.max(start, file.lines[line]?.span.end ?? start) });

function relatedPlaces({ project, path }: Analysis, found: Found, isOwn: boolean): DiagnosticRelatedInformation[] {
  const places = found.related.flatMap(({ file, line, column, message }) => {
    const tree = project.fileAt(file);
    return tree ? [{ location: { uri: project.uriOf(file), range: lineRange(tree, line - 1, column - 1) }, message }] : [];
  });
  return isOwn || found.file === path
    ? places
    : [{ location: { uri: project.uriOf(found.file), range: ownRange(found) }, message: 'it happens here' }, ...places];
}

/** The choices it holds under. */
function whenWords({ when }: Found): string {
  if (!when || when.length === 0) return '';
  const all = when.slice(0, mostWhen).map((selection) =>
    Object.entries(selection)
      .map(([name, value]) => `${name} is ${value}`)
      .join(' and '),
  );
  return ` (When ${all.join(', or ')}${when.length > mostWhen ? ', and others' : ''}.)`;
}

const mostWhen = 4;
