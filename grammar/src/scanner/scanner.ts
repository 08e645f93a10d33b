/** Cuts the content of a line into tokens, from left to right, without looking back. */

import type { Reading } from '../tree.ts';
import { unitOf } from '../vocabulary/index.ts';
import { flagsAt, letter, nameFlags } from './characters.ts';
import { readIngredientName } from './ingredient-names.ts';
import { readMeasure } from './measures.ts';
import { startsNumber } from './numbers.ts';
import { blame, pushToken, type Scan, shown, skipSpaces } from './scan.ts';
import * as token from './tokens.ts';
import { isQuote, readQuoted, readWords, wordEnd } from './words.ts';

/** Everything from `at` to the end of the content: steps, headers, requests. */
export function scanWords(scan: Scan, at: number): void {
  let next = skipSpaces(scan.text, at, scan.end);
  while (next < scan.end) next = skipSpaces(scan.text, readToken(scan, next), scan.end);
}

/** The same where `overnight` is a time: steps, and what `keeps` says. */
export function scanTimed(scan: Scan, at: number): void {
  scan.timed = true;
  scanWords(scan, at);
}

/** An ingredient line: quantity, overrides, a name that runs to the next comma or guard, attributes. */
export function scanIngredient(scan: Scan, at: number): void {
  const { text, end } = scan;
  let next = skipSpaces(text, readAmount(scan, at), end);
  if (text[next] === '(') next = readParentheses(scan, next);
  next = readIngredientName(scan, skipSpaces(text, next, end));
  for (;;) {
    next = skipSpaces(text, next, end);
    if (next >= end) return;
    next = text[next] === ',' ? readAttribute(scan, next) : readToken(scan, next);
  }
}

/** A line of `prices`: `5.20 per kg cream`, with the name to the end. */
export function scanPrice(scan: Scan, at: number): void {
  const { text, end } = scan;
  let next = skipSpaces(text, at, end);
  while (next < end) {
    next = skipSpaces(text, readToken(scan, next), end);
    if (scan.tokens.at(-1)?.tokenType !== token.PerToken) continue;
    const stop = wordEnd(text, next, end);
    const row = unitOf(text.slice(next, stop));
    if (row === undefined) continue;
    pushToken(scan, token.UnitToken, next, stop, row);
    next = readIngredientName(scan, skipSpaces(text, stop, end));
  }
}

/** `240 g`, `some`, `1 pc each`. */
function readAmount(scan: Scan, at: number): number {
  const { text, end } = scan;
  let next = readMeasure(scan, at);
  if (next < 0) {
    next = wordEnd(text, at, end);
    const some = { kind: 'quantity', low: 0, high: 0, ranged: false, unit: 'some', unitWritten: true, each: false };
    pushToken(scan, token.QuantityToken, at, next, { ...some, start: at, end: next });
  }
  const from = skipSpaces(text, next, end);
  const stop = wordEnd(text, from, end);
  if (stop - from !== 4 || text.slice(from, stop).toLowerCase() !== 'each') return next;
  const amount = scan.tokens[scan.tokens.length - 1]!;
  amount.payload = { ...amount.payload, each: true, end: stop };
  amount.endOffset = stop;
  return stop;
}

function readParentheses(scan: Scan, at: number): number {
  let next = at;
  while (next < scan.end) {
    next = skipSpaces(scan.text, readToken(scan, next), scan.end);
    if (scan.tokens[scan.tokens.length - 1]!.tokenType === token.CloseToken) break;
  }
  return next;
}

/** `, is KIND`, `, as NAME`: names in an ingredient line hold words that start with a digit; other attributes are plain tokens. */
function readAttribute(scan: Scan, comma: number): number {
  const { text, end } = scan;
  pushToken(scan, token.CommaToken, comma, comma + 1);
  const at = skipSpaces(text, comma + 1, end);
  const stop = wordEnd(text, at, end);
  const word = stop - at === 2 ? text.slice(at, stop).toLowerCase() : '';
  if (word === 'ph') pushToken(scan, token.AcidityToken, at, stop);
  else if (word === 'is' || word === 'as') {
    pushToken(scan, word === 'is' ? token.IsToken : token.AsToken, at, stop);
    return readIngredientName(scan, skipSpaces(text, stop, end));
  } else return at;
  return stop;
}

/** Pushes the token at `at` and returns where it ends. */
function readToken(scan: Scan, at: number): number {
  const { text } = scan;
  if ((flagsAt(text, at) & letter) !== 0) {
    const next = readWords(scan, at);
    return isLimit(scan) ? readLimit(scan, next) : next;
  }
  const character = text[at]!;
  const mark = marks[character];
  if (mark !== undefined) {
    pushToken(scan, mark, at, at + 1);
    return at + 1;
  }
  if (isQuote(character)) return readQuoted(scan, at);
  const measured = readMeasure(scan, at);
  return measured >= 0 ? measured : readStray(scan, at);
}

const marks: Readonly<Record<string, typeof token.CommaToken>> = {
  ',': token.CommaToken,
  ':': token.ColonToken,
  '(': token.OpenToken,
  ')': token.CloseToken,
};

function isLimit(scan: Scan): boolean {
  const last = scan.tokens[scan.tokens.length - 1]!.tokenType;
  return last === below || last === above;
}

const below = token.connectiveToken('below');
const above = token.connectiveToken('above');

/** `below 4 °C`, `above 80 °C`: one reading that is open at one end. */
function readLimit(scan: Scan, at: number): number {
  const from = skipSpaces(scan.text, at, scan.end);
  if (!startsNumber(scan, from)) return at;
  const word = scan.tokens.pop()!;
  const next = readMeasure(scan, from);
  const measure = scan.tokens[scan.tokens.length - 1]!;
  const start = word.startOffset;
  measure.startOffset = start;
  const isBelow = word.tokenType === below;
  if (measure.tokenType !== token.TemperatureToken) {
    const message = `${isBelow ? '`below`' : '`above`'} goes with a temperature, as in \`below 4 °C\`, not with ${shown(scan.text.slice(from, next))}.`;
    blame(scan, { start, end: next }, message);
    return next;
  }
  const reading = measure.payload as Reading;
  const open = isBelow ? { low: Number.NEGATIVE_INFINITY } : { high: Number.POSITIVE_INFINITY };
  measure.payload = { ...reading, ...open, start };
  return next;
}

/** Characters the notation has no use for, up to the next space, name or mark. */
function readStray(scan: Scan, at: number): number {
  const { end } = scan;
  let next = at + 1;
  while (next < end && isStray(scan, next)) next++;
  pushToken(scan, token.StrayToken, at, next);
  return next;
}

function isStray(scan: Scan, at: number): boolean {
  const character = scan.text[at]!;
  if (character in marks || isQuote(character) || startsNumber(scan, at)) return false;
  return (flagsAt(scan.text, at) & nameFlags) === 0 && skipSpaces(scan.text, at, at + 1) === at;
}
