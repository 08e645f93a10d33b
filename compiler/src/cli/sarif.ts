/** Diagnostics as a SARIF 2.1.0 log (OASIS Static Analysis Results Interchange Format). */
import type * as Sarif from 'sarif';
import type { Diagnostic, FileEdit, Rule, Severity } from '../diagnostics/rule.ts';

export interface SarifInput {
  readonly version: string;
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly { readonly file: string; readonly line: number; readonly code: string; readonly reason: string }[];
  /** What could not be read or failed; the log then says that the run was not whole. */
  readonly failures: readonly string[];
  readonly rules: readonly Rule[];
}

const levels: Record<Severity, Sarif.Result.level> = { error: 'error', warning: 'warning', notice: 'note' };

/** Files are relative to the folder the command ran in (`%SRCROOT%`); columns are UTF-16 code units. */
export function sarif({ version, diagnostics, allowed, failures, rules }: SarifInput): Sarif.Log {
  const codes = [...new Set([...diagnostics, ...allowed].map(({ code }) => code))].sort();
  const used = codes.flatMap((code) => rules.filter((rule) => rule.code === code));
  const indexOf = (code: string) => used.findIndex((rule) => rule.code === code);
  return {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Nappe', version, rules: used.map(descriptor) } },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: failures.length === 0,
            toolExecutionNotifications: failures.map((text) => ({ level: 'error', message: { text } })),
          },
        ],
        results: [
          ...diagnostics.map((diagnostic) => result(diagnostic, indexOf)),
          ...allowed.map((one) => suppressed(one, indexOf)),
        ],
      },
    ],
  };
}

function descriptor(rule: Rule): Sarif.ReportingDescriptor {
  return {
    id: rule.code,
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.why },
    help: { text: `${rule.remedy}\n\nSource: ${rule.source}` },
    defaultConfiguration: { level: levels[rule.severities[0]] },
  };
}

function result(diagnostic: Diagnostic, indexOf: (code: string) => number): Sarif.Result {
  const { code, severity, message, related, fixes } = diagnostic;
  return {
    ruleId: code,
    ruleIndex: indexOf(code),
    level: levels[severity],
    message: { text: message },
    locations: [{ physicalLocation: { artifactLocation: artifact(diagnostic.file), region: region(diagnostic) } }],
    ...(related.length > 0 && {
      relatedLocations: related.map((place, index) => ({
        id: index + 1,
        message: { text: place.message },
        physicalLocation: {
          artifactLocation: artifact(place.file),
          region: { startLine: place.line, startColumn: place.column },
        },
      })),
    }),
    ...(fixes.length > 0 && {
      fixes: fixes.map(({ title, edits }) => ({ description: { text: title }, artifactChanges: changes(edits) })),
    }),
  };
}

function suppressed(
  { file, line, code, reason }: SarifInput['allowed'][number],
  indexOf: (code: string) => number,
): Sarif.Result {
  return {
    ruleId: code,
    ruleIndex: indexOf(code),
    message: { text: `Allowed here: ${reason}` },
    locations: [{ physicalLocation: { artifactLocation: artifact(file), region: { startLine: line } } }],
    suppressions: [{ kind: 'inSource', justification: reason }],
  };
}

function changes(edits: readonly FileEdit[]): Sarif.ArtifactChange[] {
  const files = [...new Set(edits.map(({ file }) => file))];
  return files.map((file) => ({
    artifactLocation: artifact(file),
    replacements: edits
      .filter((edit) => edit.file === file)
      .map((edit) => ({ deletedRegion: region(edit), insertedContent: { text: edit.text } })),
  }));
}

const artifact = (file: string): Sarif.ArtifactLocation => ({
  uri: file.split('/').map(encodeURIComponent).join('/'),
  uriBaseId: '%SRCROOT%',
});

const region = (place: Omit<FileEdit, 'text'>): Sarif.Region => ({
  startLine: place.line,
  startColumn: place.column,
  endLine: place.endLine,
  endColumn: place.endColumn,
});
