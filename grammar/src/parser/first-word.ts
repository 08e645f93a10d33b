/** Decides by its first word what a line is; a word nearly right is reported once and read as what it is near to. */

import { flagsAt, numberFlags } from '../scanner/characters.ts';
import { blame, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { BlockWord, Span } from '../tree.ts';
import {
  blockOf,
  blocks,
  connectives,
  type HeaderRow,
  headerOf,
  headers,
  nearestWithin,
  type VerbRow,
  verbMeant,
  verbOf,
  verbs,
} from '../vocabulary/index.ts';

export type FirstWord =
  | { readonly kind: 'block'; readonly word: BlockWord }
  | { readonly kind: 'header'; readonly row: HeaderRow }
  | { readonly kind: 'verb'; readonly row: VerbRow };

/** What a line of a formula is by its first word; null where the word is near to nothing. */
export function firstWordOf(scan: Scan, wordSpan: Span): FirstWord | null {
  const word = scan.text.slice(wordSpan.start, wordSpan.end);
  return exact(word) ?? meantHeader(scan, wordSpan, word) ?? meant(scan, wordSpan, word) ?? near(scan, wordSpan, word);
}

function exact(word: string): FirstWord | null {
  const verb = verbOf(word);
  if (verb !== undefined) return { kind: 'verb', row: verb };
  const block = blockOf(word);
  if (block !== undefined) return { kind: 'block', word: block };
  const header = headerOf(word);
  return header === undefined ? null : { kind: 'header', row: header };
}

/** Words cooks use for a header that a number follows; without one they may be verbs. */
const headersMeant: ReadonlyMap<string, string> = new Map([
  ['make', 'makes'],
  ['yield', 'makes'],
  ['yields', 'makes'],
  ['keep', 'keeps'],
]);

function meantHeader(scan: Scan, wordSpan: Span, word: string): FirstWord | null {
  const header = headersMeant.get(word.toLowerCase());
  let at = wordSpan.end;
  while (scan.text[at] === ' ' || scan.text[at] === '\t') at += 1;
  if (header === undefined || (flagsAt(scan.text, at) & numberFlags) === 0) return null;
  return headerRead(scan, wordSpan, word, header);
}

function headerRead(scan: Scan, wordSpan: Span, word: string, header: string): FirstWord | null {
  blame(scan, wordSpan, `${shown(word)} was read as \`${header}\`.`, [replaceFix(`Write ${header}`, wordSpan, header)]);
  return exact(header);
}

/** A word cooks use for a verb. */
function meant(scan: Scan, wordSpan: Span, word: string): FirstWord | null {
  const row = verbMeant(word);
  if (row === undefined) return null;
  blameVerb(scan, wordSpan, word, row.word);
  return { kind: 'verb', row };
}

function near(scan: Scan, wordSpan: Span, word: string): FirstWord | null {
  // `And`, `At`: the start of a sentence, not a slip.
  if (word.length < 3 || connectives.some((each) => each === word.toLowerCase())) return null;
  const limit = Math.max(1, Math.floor(word.length / 3));
  const other = nearestWithin(word, otherWords, limit);
  const block = nearBlock(scan, word);
  // A block word changes how the lines below are read, so of equals the long one is taken for it.
  const blockWins =
    block !== null &&
    (other === null || block.distance < other.distance || (block.distance === other.distance && block.word.length > 5));
  if (blockWins) return blockRead(scan, wordSpan, word, block.word);
  if (other === null) return null;
  const found = exact(other.word);
  if (found?.kind === 'header') return headerRead(scan, wordSpan, word, other.word);
  blameVerb(scan, wordSpan, word, other.word);
  return found;
}

/** The block word within two letters of a first word that is none, for the blocks in which a line is no step. */
export function nearBlockWord(scan: Scan, wordSpan: Span): FirstWord | null {
  const word = scan.text.slice(wordSpan.start, wordSpan.end);
  const block = nearBlock(scan, word);
  return block === null ? null : blockRead(scan, wordSpan, word, block.word);
}

/** Two slips make a short word out of nearly anything, so `take` and `card` are then read only where a file follows. */
function nearBlock(scan: Scan, word: string): { readonly word: string; readonly distance: number } | null {
  if (word.length < 3) return null;
  const limit = scan.text.includes('"') ? 2 : null;
  const candidates = limit === null ? longBlocks : blockWords;
  const found = nearestWithin(word, candidates, 2);
  if (limit !== null || found !== null) return found;
  return nearestWithin(word, shortBlocks, 1);
}

function blockRead(scan: Scan, wordSpan: Span, word: string, block: string): FirstWord {
  blame(scan, wordSpan, `${shown(word)} was read as \`${block}\`.`, [replaceFix(`Write ${block}`, wordSpan, block)]);
  return { kind: 'block', word: blockOf(block)! };
}

function blameVerb(scan: Scan, wordSpan: Span, word: string, verb: string): void {
  blame(scan, wordSpan, `${shown(word)} is not a verb of this notation; write \`${verb}\`.`, [
    replaceFix(`Write ${verb}`, wordSpan, verb),
  ]);
}

const blockWords: readonly string[] = blocks.map((row) => row.word);
const longBlocks = blockWords.filter((word) => word.length > 5);
const shortBlocks = blockWords.filter((word) => word.length <= 5);
const otherWords: readonly string[] = [...verbs.map((row) => row.word), ...headers.map((row) => row.word)];
