/** How names are compared, and the singular of a noun the vocabulary knows. */

import { shapes, vessels } from './places.ts';

/** The key by which names are compared: folded case, single spaces, NFKC, one kind of apostrophe and hyphen. */
export function nameKey(text: string): string {
  return isPlain(text) ? text : fold(text);
}

/** Already its own key: lower-case ASCII with single spaces inside. */
function isPlain(text: string): boolean {
  let before = 32;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code > 122 || code < 32 || (code >= 65 && code <= 90) || (code === 32 && before === 32)) return false;
    before = code;
  }
  return before !== 32 || text.length === 0;
}

function fold(text: string): string {
  // Upper case first: it folds letters that have one capital between them (ß and ss, the two small sigmas).
  const folded = text.normalize('NFKC').toUpperCase().toLowerCase().normalize('NFKC');
  return folded
    .replace(/[\u2018\u2019\u02bc]/g, "'")
    .replace(/[\u2010\u2011]/g, '-')
    .split(/\s/)
    .filter((word) => word !== '')
    .join(' ');
}

const irregular: Readonly<Record<string, string>> = { molds: 'mould', mold: 'mould' };

/** The singular key of a noun whose last word is a vessel, a shape or `piece`; any other noun's key as it is. */
export function singularNoun(text: string): string {
  const key = nameKey(text);
  const cut = key.lastIndexOf(' ') + 1;
  return key.slice(0, cut) + singularWord(key.slice(cut));
}

function singularWord(word: string): string {
  const known = knownNouns();
  if (known.has(word)) return word;
  for (const ending of ['s', 'es']) {
    const stem = word.slice(0, -ending.length);
    if (word.endsWith(ending) && known.has(stem)) return irregular[stem] ?? stem;
  }
  return irregular[word] ?? word;
}

let nouns: Set<string> | undefined;

function knownNouns(): Set<string> {
  nouns ??= new Set([
    'piece',
    'portion',
    'serving',
    ...shapes.map((row) => row.word),
    ...vessels.flatMap((row) => [row.word, ...row.also]).map((noun) => noun.slice(noun.lastIndexOf(' ') + 1)),
  ]);
  return nouns;
}
