/** Positions in UTF-8 and UTF-16: everything inside counts UTF-16 code units, a client may count bytes. */
import type { Position } from 'vscode-languageserver';

/** How the client counts characters; agreed at the start. */
export type TextUnits = 'utf-8' | 'utf-16';

export const isPosition = (value: unknown): value is Position =>
  typeof value === 'object' &&
  value !== null &&
  'line' in value &&
  'character' in value &&
  Number.isInteger(value.line) &&
  Number.isInteger(value.character);

/** A client's position in bytes as one in UTF-16 code units; inside a character it means that character's start. */
export function toUtf16(position: Position, lineText: (line: number) => string): Position {
  const text = lineText(position.line);
  let bytes = 0;
  let at = 0;
  while (at < text.length) {
    const code = text.codePointAt(at) ?? 0;
    bytes += bytesOf(code);
    if (bytes > position.character) break;
    at += code > 0xffff ? 2 : 1;
  }
  return { line: position.line, character: at };
}

/** A position in UTF-16 code units as one in bytes. */
export const toUtf8 = (position: Position, lineText: (line: number) => string): Position => ({
  line: position.line,
  character: byteLength(lineText(position.line), position.character),
});

/** Bytes of the first `end` code units. */
export function byteLength(text: string, end = text.length): number {
  let bytes = 0;
  for (let at = 0; at < end && at < text.length; ) {
    const code = text.codePointAt(at) ?? 0;
    bytes += bytesOf(code);
    at += code > 0xffff ? 2 : 1;
  }
  return bytes;
}

const bytesOf = (code: number): number => (code < 0x80 ? 1 : code < 0x800 ? 2 : code > 0xffff ? 4 : 3);

/** The lines of the document a URI names; empty text where there is none. */
export type LineTexts = (uri: string) => (line: number) => string;

/**
 * An answer with every position in it counted in bytes. A position belongs to the document whose URI stands nearest around it
 * (`uri`, `targetUri`, `textDocument.uri`, the keys of `changes`), else to `uri`.
 */
export function inBytes<T>(answer: T, uri: string, lines: LineTexts): T {
  return walked(answer, uri, lines) as T;
}

function walked(value: unknown, uri: string, lines: LineTexts): unknown {
  if (Array.isArray(value)) return typeof value[0] === 'number' ? value : value.map((item) => walked(item, uri, lines));
  if (typeof value !== 'object' || value === null) return value;
  if (isPosition(value)) return { ...value, ...toUtf8(value, lines(uri)) };
  const own = ownUri(value) ?? uri;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => {
      if (key === 'data') return [key, inner];
      if (key === 'changes' && typeof inner === 'object' && inner !== null)
        return [key, Object.fromEntries(Object.entries(inner).map(([file, edits]) => [file, walked(edits, file, lines)]))];
      // A link's origin lies in the document asked about, its target elsewhere.
      return [key, walked(inner, key === 'originSelectionRange' ? uri : own, lines)];
    }),
  );
}

function ownUri(value: object): string | undefined {
  const { uri, targetUri, textDocument } = value as { uri?: unknown; targetUri?: unknown; textDocument?: { uri?: unknown } };
  for (const one of [targetUri, uri, textDocument?.uri]) if (typeof one === 'string') return one;
  return undefined;
}
