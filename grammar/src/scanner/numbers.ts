/** Reads one number: `12`, `1.5`, `1/2`, `1 1/2`, `½`, `1½`, with a sign; refuses `1,5` with the way to write it. */

import { limits } from '../limits.ts';
import type { NumberNode } from '../tree.ts';
import { digit, flagsAt, fractionValue, numberFlags } from './characters.ts';
import { blame, replaceFix, type Scan, shown, skipSpaces } from './scan.ts';

/** The number that starts at `at`, or null where none does. */
export function readNumber(scan: Scan, at: number): NumberNode | null {
  const sign = signAt(scan, at);
  const from = sign === 0 ? at : at + 1;
  const unsigned = readUnsigned(scan, from);
  if (unsigned === null) return null;
  return { value: sign < 0 ? -unsigned.value : unsigned.value, start: at, end: unsigned.end };
}

/** Whether a number starts at `at`: a digit, a fraction, a decimal point or a sign before one of them. */
export function startsNumber(scan: Scan, at: number): boolean {
  if (at >= scan.end) return false;
  if ((flagsAt(scan.text, at) & numberFlags) !== 0) return true;
  if (scan.text.charCodeAt(at) === 46) return isDigit(scan, at + 1);
  return signAt(scan, at) !== 0;
}

/** A hyphen, a dash or a minus sign. */
export function isDash(code: number): boolean {
  return code === 45 || code === 0x2212 || (code >= 0x2010 && code <= 0x2015);
}

function signAt(scan: Scan, at: number): number {
  const code = scan.text.charCodeAt(at);
  if (code !== 43 && !isDash(code)) return 0;
  const next = at + 1;
  const follows = next < scan.end && ((flagsAt(scan.text, next) & numberFlags) !== 0 || scan.text.charCodeAt(next) === 46);
  if (!follows) return 0;
  return code === 43 ? 1 : -1;
}

function readUnsigned(scan: Scan, from: number): NumberNode | null {
  const { text } = scan;
  const end = digitsEnd(scan, from);
  if (end === from) return readBare(scan, from);
  const next = end < scan.end ? text.charCodeAt(end) : 0;
  if (next === 46 && isDigit(scan, end + 1)) return withPoint(scan, from, digitsEnd(scan, end + 1));
  if (next === 44 && isDigit(scan, end + 1)) return decimalComma(scan, from, end);
  if (isSlash(next) && isDigit(scan, end + 1)) return quotient(scan, from, end);
  const whole = decimal(scan, from, end);
  return next === 32 || next > 127 ? withFraction(scan, whole) : whole;
}

/** `½` or `.5`. */
function readBare(scan: Scan, from: number): NumberNode | null {
  if (from >= scan.end) return null;
  const value = fractionValue(scan.text[from]!);
  if (value !== undefined) return { value, start: from, end: from + 1 };
  if (scan.text.charCodeAt(from) !== 46 || !isDigit(scan, from + 1)) return null;
  return decimal(scan, from, digitsEnd(scan, from + 1));
}

function decimal(scan: Scan, start: number, end: number): NumberNode {
  if (end - start > limits.digits) {
    blame(scan, { start, end }, `This number has more than ${limits.digits} digits; write it in a larger unit.`);
    return { value: 0, start, end };
  }
  return { value: Number(scan.text.slice(start, end)), start, end };
}

/** `1.5`; and `1.500,25`, which is refused. */
function withPoint(scan: Scan, start: number, end: number): NumberNode {
  if (end >= scan.end || scan.text.charCodeAt(end) !== 44 || !isDigit(scan, end + 1)) return decimal(scan, start, end);
  const stop = digitsEnd(scan, end + 1);
  const span = { start, end: stop };
  const plain = `${scan.text.slice(start, end).replace('.', '')}.${scan.text.slice(end + 1, stop)}`;
  if (plain.length > limits.digits) return decimal(scan, start, stop);
  blame(scan, span, `A number is written with one point and no comma: \`${plain}\`.`, [
    replaceFix(`Write ${plain}`, span, plain),
  ]);
  return { value: Number(plain), ...span };
}

function quotient(scan: Scan, start: number, slash: number): NumberNode {
  const end = digitsEnd(scan, slash + 1);
  const over = decimal(scan, start, slash).value;
  const under = decimal(scan, slash + 1, end).value;
  if (under !== 0) return { value: over / under, start, end };
  blame(scan, { start, end }, `Nothing can be divided by zero: ${shown(scan.text.slice(start, end))} is no number.`);
  return { value: over, start, end };
}

/** `1½`, `1 ½`, `1 1/2`; and `1 000`, which is refused. */
function withFraction(scan: Scan, whole: NumberNode): NumberNode {
  const at = skipSpaces(scan.text, whole.end, scan.end);
  if (at >= scan.end) return whole;
  const single = fractionValue(scan.text[at]!);
  if (single !== undefined) return { value: whole.value + single, start: whole.start, end: at + 1 };
  if (at === whole.end || !isDigit(scan, at)) return whole;
  const end = digitsEnd(scan, at);
  if (end < scan.end && isSlash(scan.text.charCodeAt(end)) && isDigit(scan, end + 1)) {
    const part = quotient(scan, at, end);
    return { value: whole.value + part.value, start: whole.start, end: part.end };
  }
  return end - at === 3 && whole.end - whole.start <= 3 ? grouped(scan, whole.start, end) : whole;
}

function grouped(scan: Scan, start: number, end: number): NumberNode {
  const written = scan.text.slice(start, end);
  const joined = [...written].filter((character) => character >= '0' && character <= '9').join('');
  blame(scan, { start, end }, `Write the number without a space: \`${joined}\`.`, [
    replaceFix(`Write ${joined}`, { start, end }, joined),
  ]);
  return { value: Number(joined), start, end };
}

/** `1,5` is refused with `1.5`; before exactly three digits it may also be a thousand, so both are offered. */
function decimalComma(scan: Scan, start: number, comma: number): NumberNode {
  let end = digitsEnd(scan, comma + 1);
  const groups = [scan.text.slice(start, comma), scan.text.slice(comma + 1, end)];
  while (end < scan.end && scan.text.charCodeAt(end) === 44 && isDigit(scan, end + 1)) {
    const next = digitsEnd(scan, end + 1);
    groups.push(scan.text.slice(end + 1, next));
    end = next;
  }
  const span = { start, end };
  const whole = groups.join('');
  const point = `${groups[0]}.${groups.slice(1).join('')}`;
  const written = shown(scan.text.slice(start, end));
  if (whole.length > limits.digits) return decimal(scan, start, end);
  if (groups.length > 2) {
    blame(scan, span, `Write the number without commas: \`${whole}\`.`, [replaceFix(`Write ${whole}`, span, whole)]);
    return { value: Number(whole), start, end };
  }
  const decimalFix = replaceFix(`Write ${point}`, span, point);
  if (groups[1]!.length !== 3)
    blame(scan, span, `A decimal is written with a point here: \`${point}\`, not ${written}.`, [decimalFix]);
  else {
    const message = `${written} can be read as ${Number(point)} or as ${Number(whole)}: write \`${point}\` or \`${whole}\`.`;
    blame(scan, span, message, [decimalFix, replaceFix(`Write ${whole}`, span, whole)]);
  }
  return { value: Number(point), start, end };
}

function digitsEnd(scan: Scan, from: number): number {
  let at = from;
  while (at < scan.end) {
    const code = scan.text.charCodeAt(at);
    if (code < 48 || code > 57) break;
    at++;
  }
  return at;
}

function isDigit(scan: Scan, at: number): boolean {
  return at < scan.end && (flagsAt(scan.text, at) & digit) !== 0;
}

function isSlash(code: number): boolean {
  return code === 47 || code === 0x2044;
}
