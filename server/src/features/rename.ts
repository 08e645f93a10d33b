/** Rename across files: every place that names a thing gets the new name, unless the new name would mean something else anywhere. */
import { findKind } from 'nappe';
import { contextAt, type File, type Line, nameKey, parse, parseLine } from 'nappe-grammar';
import type { Position, Range, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { grouped } from '../grouped.ts';
import { type Occurrence, occurrencesOf, type Pointed, pointedAt } from '../names/occurrences.ts';
import { thingOf } from '../names/symbols.ts';
import type { NamedThing } from '../names/things.ts';
import { usesIn } from '../names/uses.ts';
import { type Analysis, type Project, withFiles } from '../project.ts';
import { rangeOn, within } from '../ranges.ts';
import { baseName } from '../uris.ts';

/** Why a name cannot be changed, in one sentence for a cook. */
export interface Refusal {
  readonly refusal: string;
}

export function prepareRename(analysis: Analysis, position: Position): { range: Range; placeholder: string } | Refusal {
  const { line, character } = within(analysis, position);
  const pointed = pointedAt(analysis, line, character);
  if (!pointed) return { refusal: 'Put the cursor on a name: an ingredient, a component, a result, a choice or a formula.' };
  if (!pointed.thing) return { refusal: whyNothing(pointed) };
  return { range: rangeOn(line, pointed.use.name), placeholder: pointed.use.name.text };
}

export function rename(analysis: Analysis, position: Position, written: string): WorkspaceEdit | Refusal {
  const { line, character } = within(analysis, position);
  const pointed = pointedAt(analysis, line, character);
  if (!pointed?.thing) {
    const found = prepareRename(analysis, position);
    return 'refusal' in found ? found : { refusal: 'There is nothing to rename here.' };
  }
  const name = written.trim().replace(/\s+/g, ' ');
  const unfit = whyUnfit(name);
  if (unfit) return { refusal: unfit };
  const { project } = analysis;
  const { thing } = pointed;
  const occurrences = occurrencesOf(project, thing);
  const edits = editsFor(project, occurrences, name);
  if ('refusal' in edits) return edits;
  const clash = clashAfter(project, thing, occurrences, edits.byPath, nameKey(name));
  if (clash) return { refusal: clash };
  return { changes: Object.fromEntries([...edits.byPath].map(([path, changes]) => [project.uriOf(path), changes])) };
}

function whyNothing({ use: { use, name } }: Pointed): string {
  if (use === 'label')
    return 'The steps call this line by the name after “as”: rename that one, or write another ingredient here.';
  if (use === 'kind' || findKind(name.key)) return `“${name.text}” is a name of the catalogue and stays as it is.`;
  if (use === 'party' || use === 'vessel') return `“${name.text}” is a vessel that every kitchen has, and stays as it is.`;
  return `Nothing that can be renamed is called “${name.text}”.`;
}

function whyUnfit(name: string): string | null {
  if (name === '') return 'A name holds at least one letter.';
  if (/["\n\r|]/.test(name) || name.includes('//')) return 'A name holds no quotation marks, bars or double slashes.';
  return nameKey(name) === '' ? 'A name holds at least one letter.' : null;
}

/** One text edit a place; several lines of several files. */
function editsFor(
  project: Project,
  occurrences: readonly Occurrence[],
  name: string,
): { readonly byPath: ReadonlyMap<string, TextEdit[]> } | Refusal {
  const byPath = new Map<string, TextEdit[]>();
  const byLine = grouped(occurrences, ({ path, line }) => `${path}\n${line}`);
  for (const onLine of byLine.values()) {
    const [first] = onLine;
    const file = first && project.fileAt(first.path);
    if (!file) continue;
    const edits = lineEdits(file, first.line, onLine, name);
    if (!edits) return { refusal: whyNotWritten(file, first, name) };
    byPath.set(first.path, [...(byPath.get(first.path) ?? []), ...edits]);
  }
  return { byPath };
}

function whyNotWritten(file: File, { path, line }: Occurrence, name: string): string {
  const stands = usesIn(file.lines[line] as Line).some((use) => use.name.key === nameKey(name));
  const place = `line ${line + 1} of ${baseName(path)}`;
  return stands ? `“${name}” already stands in ${place}.` : `“${name}” cannot be written as a name in ${place}.`;
}

/** Unquoted where the line still reads the same so, else in quotes; null where neither can be. */
function lineEdits(file: File, number: number, onLine: readonly Occurrence[], name: string): TextEdit[] | null {
  const line = file.lines[number];
  if (!line) return null;
  for (const quoted of onLine.some(({ name: old }) => old.quoted) ? [true] : [false, true]) {
    const text = quoted ? `"${name}"` : name;
    const edits = onLine.flatMap(({ name: old, use }) => [
      { range: rangeOn(number, old), newText: text },
      ...(use.use === 'line' ? keepKind(number, old, name) : []),
    ]);
    const after = parseLine(applied(line.text, edits), contextAt(file, number));
    const expected = usesIn(line).map((use) => (onLine.some((one) => one.use === use) ? nameKey(name) : use.name.key));
    const found = usesIn(after).filter(({ name: one, use }) => !(use === 'kind' && !expected.includes(one.key)));
    const same = expected.every((key, i) => found[i]?.name.key === key) && after.kind === line.kind;
    if (same && after.problems.length <= line.problems.length) return edits;
  }
  return null;
}

/** A line that is found in the catalogue by its own name keeps what it is when the name changes. */
function keepKind(number: number, old: Occurrence['name'], name: string): TextEdit[] {
  const kind = findKind(old.key);
  if (!kind || findKind(nameKey(name))?.name === kind.name) return [];
  return [
    { range: rangeOn(number, { start: old.end, end: old.end }), newText: `, is ${old.quoted ? `"${old.text}"` : old.text}` },
  ];
}

function applied(text: string, edits: readonly TextEdit[]): string {
  return [...edits]
    .sort((a, b) => b.range.start.character - a.range.start.character || b.range.end.character - a.range.end.character)
    .reduce((line, { range, newText }) => line.slice(0, range.start.character) + newText + line.slice(range.end.character), text);
}

/** The files as they would be: every place that then names the thing must be one that was changed, and the other way round. */
function clashAfter(
  project: Project,
  thing: NamedThing,
  occurrences: readonly Occurrence[],
  byPath: ReadonlyMap<string, TextEdit[]>,
  key: string,
): string | null {
  const changed = new Map([...byPath].map(([path, edits]) => [path, fileAfter(project, path, edits)] as const));
  const future = withFiles(project, changed);
  const [first] = occurrences;
  const line = first && future.fileAt(first.path)?.lines[first.line];
  const use = line && usesIn(line).find(({ name, use: what }) => name.key === key && what === first.use.use);
  const then = first && use ? thingOf(future, first.path, first.line, use) : null;
  if (!then || then.kind !== thing.kind) return `“${key}” already means something else here.`;
  const before = countByLine(occurrences);
  const after = countByLine(occurrencesOf(future, then));
  for (const [place, count] of after)
    if (count > (before.get(place) ?? 0)) return `“${key}” already stands in ${shownPlace(place)}.`;
  for (const [place, count] of before)
    if (count > (after.get(place) ?? 0)) return `In ${shownPlace(place)} “${key}” already means something else.`;
  return null;
}

function fileAfter(project: Project, path: string, edits: readonly TextEdit[]): File {
  const lines = (project.fileAt(path)?.lines ?? []).map(({ text }) => text);
  for (const [number, onLine] of grouped(edits, ({ range }) => range.start.line))
    lines[number] = applied(lines[number] ?? '', onLine);
  return parse(lines.join('\n'));
}

const countByLine = (occurrences: readonly Occurrence[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { path, line } of occurrences) counts.set(`${path}\n${line}`, (counts.get(`${path}\n${line}`) ?? 0) + 1);
  return counts;
};

function shownPlace(place: string): string {
  const [path = '', line = '0'] = place.split('\n');
  return `line ${Number(line) + 1} of ${baseName(path)}`;
}
