/** The open documents: their text as the editor has it, kept up to date by ranges. */
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isPosition, type TextUnits, toUtf16 } from './encoding.ts';
import { pathOf } from './uris.ts';

export interface OpenDocument {
  readonly uri: string;
  readonly path: string;
  readonly version: number;
  /** Lone carriage returns are line ends to an editor and to nothing else; here each is a line feed, so that lines count the same. */
  readonly text: string;
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

  constructor(
    readonly uri: string,
    readonly path: string,
    private document: TextDocument,
  ) {}

  get version(): number {
    return this.document.version;
  }

  get text(): string {
    this.normal ??= withLineFeeds(this.document.getText());
    return this.normal;
  }

  apply(change: TextDocumentContentChangeEvent, version: number, units: TextUnits): void {
    const { uri, languageId } = this.document;
    this.normal = null;
    if (!('range' in change)) {
      this.document = TextDocument.create(uri, languageId, version, change.text);
      return;
    }
    const { start, end } = change.range;
    if (!isPosition(start) || !isPosition(end)) throw new RangeError('a change without a range that can be read');
    const lineText = (line: number) =>
      this.document.getText({ start: { line, character: 0 }, end: { line, character: Number.MAX_SAFE_INTEGER } });
    const range = units === 'utf-16' ? change.range : { start: toUtf16(start, lineText), end: toUtf16(end, lineText) };
    const before = this.document.getText();
    if (change.text.includes('\r') || hasLoneReturn(before)) {
      // Returns and line feeds may join or part where the change meets the text: counted anew.
      const text =
        before.slice(0, this.document.offsetAt(range.start)) + change.text + before.slice(this.document.offsetAt(range.end));
      this.document = TextDocument.create(uri, languageId, version, text);
    } else this.document = TextDocument.update(this.document, [{ range, text: change.text }], version);
  }
}

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
