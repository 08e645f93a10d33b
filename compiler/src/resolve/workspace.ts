/** The workspace: files parsed and resolved when first asked for, and again only where they or what they take from changed. */
import { type File, parse, reparse, splitLines } from 'nappe-grammar';
import { type FileMemo, newMemo, resolveFile } from './file.ts';
import { fencesOf, isMarkdown } from './markdown.ts';
import type { Files, Formula, Place, Unit } from './model.ts';
import { locate } from './paths.ts';
import type { Outline, Outlines } from './requests.ts';
import type { Exports, Library } from './takes.ts';

/** A file that cannot be had, and why in words. */
export interface Refused {
  readonly refused: 'missing' | 'outside' | 'unreadable';
  readonly why: string;
}

export interface Workspace {
  readonly files: Files;
  /**
   * The file resolved. What did not change since the last time is the identical object: the unit, its formulas, their components.
   * A file that cannot be read gives a unit without anything in it; `source` says why.
   */
  unit(path: string): Unit;
  /** The parsed text (of a Markdown file: of its fences), or why there is none. */
  source(path: string): Source | Refused;
  /** Says that a file's text may have changed (all files where no path is given): it is read again when next asked for. */
  changed(path?: string): void;
  /** Lets go of what is kept of a file; asked for again, it is read and resolved anew. */
  forget(path: string): void;
  /** Where a place stands: the file, and the line from 0. Null for a place this workspace did not make or that is gone. */
  locate(place: Place, from: Unit): Position | null;
  /** The unit and those it takes from, over however many files. */
  reachable(unit: Unit): readonly Unit[];
  /** File-level components as formulas of one component each, so that they can be run by themselves. */
  bases(path: string): readonly Formula[];
  /** Keys of names that the file's `take` lines should have brought and could not. */
  missing(path: string): ReadonlySet<string>;
}

/** The text as read, and what it parses to; a line's number is its index in `file.lines`, in Markdown too. */
export interface Source {
  readonly text: string;
  readonly file: File;
}

export interface Position {
  readonly path: string;
  /** From 0. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** Larger files are refused: a formula of a thousand pages is none. */
const largest = 8_000_000;

/** Files in a row, each taken from by the one before. */
const mostInARow = 50;

export interface WorkspaceOptions {
  /** Give or take of a written reading, K; 1 where nobody says otherwise. */
  readonly thermometer?: number;
}

export function createWorkspace(files: Files, { thermometer = 1 }: WorkspaceOptions = {}): Workspace {
  return new FileWorkspace(files, thermometer);
}

type Read = Extract<ReturnType<Files['read']>, { readonly text: string }>;

interface Entry {
  /** Null: to be read again. */
  text: Read | Refused | null;
  parsed: { readonly text: string; readonly file: File } | null;
  /** Made from `parsed.file` when first asked for. */
  outline: Outline | null;
  takes: readonly string[] | null;
  resolved: Resolution | null;
  readonly memo: FileMemo;
}

interface Resolution {
  readonly of: File;
  readonly exports: Exports;
  /** Whether each thing asked of other files would still be answered the same. */
  readonly holds: readonly (() => boolean)[];
  /** Revision in which that was last known. */
  verified: number;
}

class FileWorkspace implements Workspace, Library, Outlines {
  private readonly entries = new Map<string, Entry>();
  private readonly reaches = new Map<string, ReadonlySet<string>>();
  private readonly deep = new Map<string, boolean>();
  private revision = 1;
  /** What the file being resolved asked of others. */
  private asked: (() => boolean)[] = [];

  constructor(
    readonly files: Files,
    readonly thermometer: number,
  ) {}

  get root(): string {
    return this.files.root;
  }

  unit(path: string): Unit {
    const exports = this.resolution(path);
    return 'refused' in exports ? emptyUnit(path) : exports.unit;
  }

  source(path: string): Source | Refused {
    const entry = this.entry(path);
    entry.text ??= this.read(path);
    if ('refused' in entry.text) return entry.text;
    const { text, tree } = entry.text;
    if (entry.parsed?.text !== text) {
      const file = tree ?? parsed(isMarkdown(path) ? fencesOf(text) : text, entry.parsed?.file);
      entry.parsed = { text, file };
      entry.outline = null;
      entry.takes = null;
    }
    return entry.parsed;
  }

  changed(path?: string): void {
    this.revision += 1;
    this.reaches.clear();
    this.deep.clear();
    for (const entry of path === undefined ? this.entries.values() : [this.entries.get(path)]) if (entry) entry.text = null;
  }

  forget(path: string): void {
    this.entries.delete(path);
    this.reaches.delete(path);
    this.deep.delete(path);
  }

  locate(place: Place, from: Unit): Position | null {
    for (const unit of this.reachable(from)) {
      const first = unit.blockLines.get(place.block);
      if (first !== undefined) return { path: unit.path, line: first + place.line, start: place.start, end: place.end };
    }
    return null;
  }

  reachable(unit: Unit): readonly Unit[] {
    const found = new Map<string, Unit>([[unit.path, unit]]);
    for (const one of found.values()) for (const path of one.imports) if (!found.has(path)) found.set(path, this.unit(path));
    return [...found.values()];
  }

  bases(path: string): readonly Formula[] {
    const exports = this.resolution(path);
    return 'refused' in exports ? [] : exports.bases;
  }

  missing(path: string): ReadonlySet<string> {
    const exports = this.resolution(path);
    return 'refused' in exports ? new Set() : exports.missing;
  }

  exportsOf(path: string): Exports | Refused {
    const exports = this.resolution(path);
    this.asked.push(() => sameAnswer(this.resolution(path), exports));
    return exports;
  }

  outlineOf(path: string): Outline | Refused {
    const outline = this.outline(path);
    this.asked.push(() => sameAnswer(this.outline(path), outline));
    return outline;
  }

  leadsBack(from: string, to: string): boolean {
    const leads = this.reachedFrom(to).has(from);
    this.asked.push(() => this.reachedFrom(to).has(from) === leads);
    return leads;
  }

  tooDeep(path: string): string | null {
    const deep = this.isDeep(path);
    this.asked.push(() => this.isDeep(path) === deep);
    return deep
      ? `from here on more than ${mostInARow} files take from each other in a row, and ${mostInARow} are the most`
      : null;
  }

  private resolution(path: string): Exports | Refused {
    const source = this.source(path);
    if ('refused' in source) return source;
    const entry = this.entry(path);
    const { resolved } = entry;
    if (resolved?.of === source.file && resolved.verified === this.revision) return resolved.exports;
    const outer = this.asked;
    this.asked = [];
    try {
      if (resolved?.of === source.file && resolved.holds.every((still) => still())) {
        resolved.verified = this.revision;
        return resolved.exports;
      }
      this.asked = [];
      const exports = resolveFile(path, source.file, this, entry.memo);
      entry.resolved = { of: source.file, exports, holds: this.asked, verified: this.revision };
      return exports;
    } finally {
      this.asked = outer;
    }
  }

  private outline(path: string): Outline | Refused {
    const source = this.source(path);
    if ('refused' in source) return source;
    const entry = this.entry(path);
    entry.outline ??= outlineIn(source.file);
    return entry.outline;
  }

  /** The files that `path` takes from, over as many files as may stand in a row; itself only where it takes from itself. */
  private reachedFrom(path: string): ReadonlySet<string> {
    const known = this.reaches.get(path);
    if (known) return known;
    const reached = new Set<string>();
    let row = [path];
    for (let length = 1; length <= mostInARow && row.length > 0; length++) {
      row = [...new Set(row.flatMap((one) => this.takesOf(one)))].filter((target) => !reached.has(target));
      for (const target of row) reached.add(target);
    }
    this.reaches.set(path, reached);
    return reached;
  }

  /** Whether a file before this one would make a row that is too long; rings are no rows, and are found as such. */
  private isDeep(path: string): boolean {
    const known = this.deep.get(path);
    if (known !== undefined) return known;
    let row: ReadonlySet<string> = new Set([path]);
    for (let length = 2; length <= mostInARow && row.size > 0; length++)
      row = new Set(
        [...row].flatMap((from) => this.takesOf(from).filter((to) => to !== from && !this.reachedFrom(to).has(from))),
      );
    this.deep.set(path, row.size > 0);
    return row.size > 0;
  }

  private takesOf(path: string): readonly string[] {
    const source = this.source(path);
    if ('refused' in source) return [];
    const entry = this.entry(path);
    entry.takes ??= takesIn(source.file, path, this.root);
    return entry.takes;
  }

  private read(path: string): Read | Refused {
    const read = this.files.read(path);
    if ('text' in read && read.text.length > largest)
      return { refused: 'unreadable', why: 'it is longer than eight million characters' };
    return read;
  }

  private entry(path: string): Entry {
    const known = this.entries.get(path);
    if (known) return known;
    const entry: Entry = { text: null, parsed: null, outline: null, takes: null, resolved: null, memo: newMemo() };
    this.entries.set(path, entry);
    return entry;
  }
}

/** Only the lines between the first and the last that differ are read again. */
function parsed(text: string, previous: File | undefined): File {
  if (previous === undefined) return parse(text);
  const lines = splitLines(text);
  const before = previous.lines;
  let from = 0;
  while (from < lines.length && from < before.length && lines[from] === before[from]?.text) from++;
  let same = 0;
  while (
    same < lines.length - from &&
    same < before.length - from &&
    lines[lines.length - 1 - same] === before[before.length - 1 - same]?.text
  )
    same++;
  return reparse(previous, { text, from, to: before.length - same, lines: lines.slice(from, lines.length - same) });
}

/** Objects are compared by identity, refusals by what they say. */
const sameAnswer = (a: object, b: object): boolean => a === b || ('refused' in a && 'refused' in b && a.refused === b.refused);

function takesIn(file: File, path: string, root: string): readonly string[] {
  const paths = new Set<string>();
  for (const line of file.lines) {
    if (line.kind !== 'take' || line.from === null) continue;
    const located = locate(line.from.path, path, root);
    if ('path' in located) paths.add(located.path);
  }
  return [...paths];
}

function outlineIn(file: File): Outline {
  const formulas: { name: string; choices: { name: string; values: readonly string[] }[] }[] = [];
  for (const { heading, lines } of file.blocks) {
    if (heading?.word !== 'formula') continue;
    const choices = lines.flatMap((line) =>
      line.kind === 'header' && line.word === 'choice'
        ? [{ name: line.name.text, values: line.values.map(({ text }) => text) }]
        : [],
    );
    formulas.push({ name: heading.name?.text ?? '', choices });
  }
  return { formulas };
}

const emptyUnit = (path: string): Unit => ({
  path,
  formulas: [],
  components: [],
  houseKinds: new Map(),
  requests: [],
  findings: [],
  blockLines: new Map(),
  allows: [],
  imports: [],
});
