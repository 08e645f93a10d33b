/** Text as a card may show it: no control characters, and no marks that could turn a line's reading order around. */

/**
 * Removes control characters and the bidirectional marks, embeddings, overrides and isolates (Unicode UAX 9): a name that
 * carries them could make `18 g` read as `g 81`. Right-to-left letters themselves stay.
 */
export function plain(text: string): string {
  let out = '';
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (isControl(code) || isBidiMark(code)) {
      if (code === 0x09 || code === 0x0a || code === 0x0d) out += ' ';
      continue;
    }
    out += character;
  }
  return out;
}

/** As `plain`, but line feeds stay: for Markdown notes. */
export const plainLines = (text: string): string =>
  text
    .split(/\r\n|\r|\n/)
    .map(plain)
    .join('\n');

const isControl = (code: number): boolean =>
  code < 0x20 || (code >= 0x7f && code <= 0x9f) || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff;

const isBidiMark = (code: number): boolean =>
  code === 0x061c ||
  code === 0x200e ||
  code === 0x200f ||
  (code >= 0x202a && code <= 0x202e) ||
  (code >= 0x2066 && code <= 0x2069) ||
  code === 0x2028 ||
  code === 0x2029;
