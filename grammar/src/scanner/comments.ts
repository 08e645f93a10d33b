/** Finds where a line's comment starts: `//` at its start or after a space, outside quotes. */

import { flagsAt, space } from './characters.ts';
import { closingQuote, isQuote } from './words.ts';

/** The place of the comment's `//`, or -1. */
export function findComment(text: string, start: number): number {
  if (text.indexOf('//', start) < 0) return -1;
  // A quote that is never closed quotes nothing; asking again for the same one would cost the line's length each time.
  let unclosed = '';
  for (let at = start; at < text.length - 1; at++) {
    const character = text[at]!;
    if (character === '/' && text[at + 1] === '/' && (at === start || (flagsAt(text, at - 1) & space) !== 0)) return at;
    if (!isQuote(character) || unclosed.includes(character)) continue;
    const close = closingQuote(text, at, text.length);
    if (close > at) at = close;
    else unclosed += character;
  }
  return -1;
}
