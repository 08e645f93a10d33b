/** What each character may be part of; ASCII by table, everything else by Unicode property and remembered. */

export const letter = 1;
export const digit = 2;
/** `-`, `'` and `%`, which stand inside names. */
export const joiner = 4;
export const space = 8;
/** A single-character fraction such as ½. */
export const fraction = 16;

/** What a word of a name is made of. */
export const nameFlags = letter | digit | joiner;
/** What a number starts with. */
export const numberFlags = digit | fraction;

const ascii = new Uint8Array(128);
for (const code of [9, 11, 12, 13, 32]) ascii[code] = space;
for (let code = 48; code <= 57; code++) ascii[code] = digit;
for (let code = 65; code <= 90; code++) ascii[code] = ascii[code + 32] = letter;
for (const character of "-'%") ascii[character.charCodeAt(0)] = joiner;

const fractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** The flags of the character at `at`, which must lie inside `text`. */
export function flagsAt(text: string, at: number): number {
  const code = text.charCodeAt(at);
  return code < 128 ? ascii[code]! : wideFlags(text, at, code);
}

export function fractionValue(character: string): number | undefined {
  return fractions[character];
}

const wide = new Map<number, number>();
const letters = /[\p{L}\p{M}\p{Nd}]/u;

function wideFlags(text: string, at: number, code: number): number {
  if (code >= 0xd800 && code <= 0xdfff) return surrogateFlags(text, at, code);
  let flags = wide.get(code);
  if (flags === undefined) {
    flags = classify(String.fromCharCode(code));
    wide.set(code, flags);
  }
  return flags;
}

function classify(character: string): number {
  if (character in fractions) return fraction;
  if (character.trim() === '' || character === '\u0085') return space;
  // Typographic apostrophes and hyphens stand for the plain ones.
  if ('\u2019\u02bc\u2010\u2011'.includes(character)) return joiner;
  return letters.test(character) ? letter : 0;
}

/** Either half of a pair says what the whole character is. */
function surrogateFlags(text: string, at: number, code: number): number {
  const pair = code < 0xdc00 ? text.codePointAt(at)! : at > 0 ? text.codePointAt(at - 1)! : code;
  return pair > 0xffff && letters.test(String.fromCodePoint(pair)) ? letter : 0;
}
