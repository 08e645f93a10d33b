/** The open documents: their text as the editor has it, kept up to date by ranges. */
import { isMarkdown } from 'nappe';
import { type File, limits, parse, reparse, splitLines } from 'nappe-grammar';
import type { Position, Range, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isPosition, type TextUnits, toUtf16 } from './encoding.ts';
import { isBefore } from './ranges.ts';
import { pathOf } from './uris.ts';

export interface OpenDocument {
  readonly uri: string;
  readonly path: string;
  readonly version: number;
  /** Lone carriage returns are line ends to an editor and to nothing else; here each is a line feed, so that lines count the same. */
  readonly text: string;
  /** The text's tree, read again only where it was changed; undefined where that cannot be told by lines (Markdown, lone returns). */
  readonly tree: File | undefined;
}

export class Documents {
  private readonly byPath = new Map<string, Held>();

  constructor(private readonly units: () => TextUnits) {}

  open(uri: string, languageId: string, version: number, text: string): OpenDocument {
    const path = documentPath(uri, languageId);
    const held = new Held(uri, path, TextDocument.create(uri, languageId, version, text));
    this.byPath.set(path, held);
    return held;
  }

  /** Null for a document that is not open. */
  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): OpenDocument | null {
    const held = this.at(uri);
    if (!held) return null;
    for (const change of changes) held.apply(change, version, this.units());
    return held;
  }

  close(uri: string): OpenDocument | null {
    const held = this.at(uri);
    if (held) this.byPath.delete(held.path);
    return held;
  }

  /** By the URI it was opened with, however spelt. */
  get(uri: string): OpenDocument | null {
    return this.at(uri);
  }

  ofPath(path: string): OpenDocument | null {
    return this.byPath.get(path) ?? null;
  }

  all(): readonly OpenDocument[] {
    return [...this.byPath.values()];
  }

  private at(uri: string): Held | null {
    const path = pathOf(uri);
    return this.byPath.get(path) ?? this.byPath.get(`${path}.md`) ?? null;
  }
}

class Held implements OpenDocument {
  private normal: string | null = null;
  private kept: File | undefined;

  constructor(
    readonly uri: string,
    readonly path: string,
    private document: TextDocument,
  ) {
    this.kept = this.wholeTree();
  }

  get version(): number {
    return this.document.version;
  }

  get text(): string {
    this.normal ??= withLineFeeds(this.document.getText());
    return this.normal;
  }

  get tree(): File | undefined {
    return this.kept;
  }

  apply(change: TextDocumentContentChangeEvent, version: number, units: TextUnits): void {
    this.normal = null;
    if (!('range' in change)) {
      this.replace(change.text, version);
      return;
    }
    const [start, end] = this.placesOf(change.range, units);
    const before = this.document;
    if (change.text.includes('\r') || this.kept === undefined) {
      // Returns and line feeds may join or part where the change meets the text: counted anew.
      const text = before.getText();
      this.replace(text.slice(0, before.offsetAt(start)) + change.text + text.slice(before.offsetAt(end)), version);
      return;
    }
    const lines = before.lineCount;
    this.document = TextDocument.update(before, [{ range: { start, end }, text: change.text }], version);
    this.kept = this.treeAfter(this.kept, start.line, end.line + 1, this.document.lineCount - lines);
  }

  private replace(text: string, version: number): void {
    this.document = TextDocument.create(this.document.uri, this.document.languageId, version, text);
    this.kept = this.wholeTree();
  }

  /** The change's ends inside the text, in UTF-16, in order. */
  private placesOf({ start, end }: Range, units: TextUnits): [Position, Position] {
    if (!isPosition(start) || !isPosition(end)) throw new RangeError('a change without a range that can be read');
    const { document } = this;
    const lineText = (line: number) =>
      document.getText({ start: { line, character: 0 }, end: { line, character: Number.MAX_SAFE_INTEGER } });
    const placed = (position: Position) =>
      document.positionAt(document.offsetAt(units === 'utf-16' ? position : toUtf16(position, lineText)));
    const [first, last] = [placed(start), placed(end)];
    return isBefore(last, first) ? [last, first] : [first, last];
  }

  private wholeTree(): File | undefined {
    const text = this.document.getText();
    return text.length > mostCharacters || isMarkdown(this.path) || hasLoneReturn(text) ? undefined : parse(text);
  }

  /** Lines `from` to before `to` were replaced by `grown` lines more (or fewer). */
  private treeAfter(before: File, from: number, to: number, grown: number): File | undefined {
    const { document } = this;
    if (document.lineCount >= limits.lines || before.lines.length !== document.lineCount - grown) return this.wholeTree();
    const last = to + grown - 1;
    const changed = document.getText({
      start: { line: from, character: 0 },
      end: { line: last, character: Number.MAX_SAFE_INTEGER },
    });
    const lines = splitLines(changed).slice(0, last - from + 1);
    return reparse(before, { text: document.getText(), from, to, lines });
  }
}

/** Longer texts the compiler refuses. */
const mostCharacters = 8_000_000;

/** A Markdown document without a file's name is still Markdown to the compiler. */
function documentPath(uri: string, languageId: string): string {
  const path = pathOf(uri);
  return languageId === 'markdown' && !/\.(md|markdown)$/i.test(path) ? `${path}.md` : path;
}

const withLineFeeds = (text: string): string => (hasLoneReturn(text) ? text.replace(/\r(?!\n)/g, '\n') : text);

function hasLoneReturn(text: string): boolean {
  for (let at = text.indexOf('\r'); at >= 0; at = text.indexOf('\r', at + 1)) if (text.charCodeAt(at + 1) !== 10) return true;
  return false;
}
