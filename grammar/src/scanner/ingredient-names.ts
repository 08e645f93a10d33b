/** Reads the name of an ingredient line: any words up to `,`, `when`, `unless` or the end; says how to write what is no name. */

import type { Span } from '../tree.ts';
import { flagsAt, letter, space } from './characters.ts';
import { readMeasure } from './measures.ts';
import { startsNumber } from './numbers.ts';
import { blame, insertFix, pushToken, replaceFix, type Scan, shown, skipSpaces } from './scan.ts';
import { AsToken, AtToken, CommaToken, UnlessToken, WhenToken } from './tokens.ts';
import { connectiveIn, isQuote, pushName, readQuoted, wordEnd } from './words.ts';

/** Pushes the name at `at` and returns its end; pushes nothing where no name starts there. */
export function readIngredientName(scan: Scan, at: number): number {
  const { text, end } = scan;
  if (at >= end || text[at] === ',' || text[at] === '(') return at;
  if (isQuote(text[at]!)) return readQuoted(scan, at);
  let start = at;
  let runEnd = at;
  let spaced = true;
  let odd: Span | null = null;
  for (;;) {
    const stop = wordEnd(text, start, end);
    if (stop === start) return readOdd(scan, at, runEnd, start);
    const type = connectiveIn(text, start, stop);
    if (type === WhenToken || type === UnlessToken) break;
    if (type === AsToken || type === AtToken) {
      const next = runEnd > at ? readForgottenComma(scan, at, runEnd, spaced, start, stop, type === AsToken) : -1;
      if (next >= 0) return next;
    }
    if (type !== undefined) odd ??= { start, end: stop };
    if (runEnd > at && (start - runEnd !== 1 || text.charCodeAt(runEnd) !== 32)) spaced = false;
    runEnd = stop;
    start = skipSpaces(text, stop, end);
    if (start >= end || text[start] === ',') break;
  }
  if (runEnd === at) return at;
  if (odd !== null) blameWord(scan, at, runEnd, odd);
  else if ((flagsAt(text, at) & letter) === 0) blameDigit(scan, at, runEnd);
  pushName(scan, at, runEnd, spaced);
  return runEnd;
}

/** `milk as base`, `milk at 4 °C`: the comma before an attribute was forgotten; reads on as if it stood there. */
function readForgottenComma(
  scan: Scan,
  at: number,
  runEnd: number,
  spaced: boolean,
  start: number,
  stop: number,
  isAs: boolean,
): number {
  const next = skipSpaces(scan.text, stop, scan.end);
  if (next >= scan.end || (!isAs && !startsNumber(scan, next))) return -1;
  const word = scan.text.slice(start, stop);
  const gap = { start: runEnd, end: isAs ? start : next };
  const message = isAs ? 'A comma stands before `as`.' : 'A comma stands before the temperature, without `at`.';
  blame(scan, { start, end: stop }, message, [replaceFix(isAs ? 'Add the comma' : `Replace ${word} by a comma`, gap, ', ')]);
  pushName(scan, at, runEnd, spaced);
  pushToken(scan, CommaToken, start, start);
  if (!isAs) return readMeasure(scan, next);
  pushToken(scan, AsToken, start, stop);
  return readIngredientName(scan, next);
}

function blameWord(scan: Scan, at: number, end: number, word: Span): void {
  const name = scan.text.slice(at, end);
  const message = `A name that holds the word ${shown(scan.text.slice(word.start, word.end))} stands in quotes: ${shown(`"${name}"`)}.`;
  blame(scan, word, message, [quoteFix(scan, at, end)]);
}

function blameDigit(scan: Scan, at: number, end: number): void {
  const name = scan.text.slice(at, end);
  blame(scan, { start: at, end }, `A name starts with a letter, or stands in quotes: ${shown(`"${name}"`)}.`, [
    quoteFix(scan, at, end),
  ]);
}

/** A character that no name holds, at `odd`: a parenthesis, a temperature without its comma, or something to quote. */
function readOdd(scan: Scan, at: number, runEnd: number, odd: number): number {
  const { text } = scan;
  if (text[odd] === '(' && runEnd > at) return readParenthesis(scan, at, runEnd, odd);
  const number = trailingNumber(scan, at, runEnd);
  if (number > at && '°º˚℃℉'.includes(text[odd]!)) {
    const before = trimmedEnd(text, at, number);
    blame(scan, { start: number, end: odd + 1 }, 'A comma stands before the temperature.', [
      replaceFix('Add the comma', { start: before, end: number }, ', '),
    ]);
    pushName(scan, at, before, false);
    pushToken(scan, CommaToken, number, number);
    return readMeasure(scan, number);
  }
  const size = text.codePointAt(odd)! > 0xffff ? 2 : 1;
  const end = partEnd(scan, odd);
  if (runEnd === at && text.charCodeAt(odd) < 128) {
    blame(
      scan,
      { start: odd, end },
      `After the quantity the name of an ingredient was expected, not ${shown(text.slice(odd, end))}.`,
    );
    return odd;
  }
  const message = `${shown(text.slice(odd, odd + size))} cannot stand in a name without quotes: ${shown(`"${text.slice(at, end).split('"').join('')}"`)}.`;
  blame(scan, { start: odd, end: odd + size }, message, [quoteFix(scan, at, end)]);
  pushName(scan, at, end, false);
  return end;
}

/** `cream (raspberry 60 g)`: overrides after the name; `milk (whole)`: a preparation in parentheses. */
function readParenthesis(scan: Scan, at: number, runEnd: number, open: number): number {
  const { text } = scan;
  const close = text.indexOf(')', open);
  const stop = close < 0 || close >= scan.end ? scan.end : close + 1;
  const inside = text.slice(open + 1, close < 0 || close >= scan.end ? scan.end : close).trim();
  const span = { start: open, end: stop };
  if ([...inside].some((character) => character >= '0' && character <= '9')) {
    blame(scan, span, 'Values for other choices stand right after the quantity, before the name.', [
      {
        title: 'Move it after the quantity',
        edits: [
          { start: at, end: at, text: `${text.slice(open, stop)} ` },
          { start: runEnd, end: stop, text: '' },
        ],
      },
    ]);
  } else {
    const quoted = `, "${inside.split('"').join('')}"`;
    blame(scan, span, `What is done to an ingredient stands after a comma, in quotes: ${shown(quoted)}.`, [
      replaceFix('Write it in quotes', { start: runEnd, end: stop }, quoted),
    ]);
  }
  pushName(scan, at, runEnd, false);
  return stop;
}

function quoteFix(scan: Scan, start: number, end: number): ReturnType<typeof replaceFix> {
  const inside = scan.text.slice(start, end).split('"').join('');
  return inside.length === end - start
    ? { title: 'Put the name in quotes', edits: [...insertFix('', start, '"').edits, ...insertFix('', end, '"').edits] }
    : replaceFix('Put the name in quotes', { start, end }, `"${inside}"`);
}

/** Where the number that ends a run of words starts; `at` where there is none. */
function trailingNumber(scan: Scan, at: number, runEnd: number): number {
  let start = runEnd;
  while (start > at && (flagsAt(scan.text, start - 1) & space) === 0) start--;
  return startsNumber(scan, start) ? start : at;
}

function trimmedEnd(text: string, at: number, end: number): number {
  let stop = end;
  while (stop > at && (flagsAt(text, stop - 1) & space) !== 0) stop--;
  return stop;
}

/** The end of the part of the line that `at` lies in: before the next comma or guard, without trailing space. */
function partEnd(scan: Scan, at: number): number {
  let next = at;
  while (next < scan.end && scan.text[next] !== ',') {
    const stop = wordEnd(scan.text, next, scan.end);
    const type = connectiveIn(scan.text, next, stop);
    const startsWord = next === 0 || (flagsAt(scan.text, next - 1) & space) !== 0;
    if (startsWord && (type === WhenToken || type === UnlessToken)) break;
    next = Math.max(stop, next + 1);
  }
  return trimmedEnd(scan.text, at + 1, next);
}
