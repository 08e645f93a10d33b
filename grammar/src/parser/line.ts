/** Reads one line: a pure function of its text and of the block it stands in. Never throws. */

import { limits } from '../limits.ts';
import { flagsAt, letter, nameFlags } from '../scanner/characters.ts';
import { findComment } from '../scanner/comments.ts';
import { startsNumber } from '../scanner/numbers.ts';
import { blame, insertFix, replaceFix, shown, skipSpaces } from '../scanner/scan.ts';
import { scanIngredient, scanTimed, scanWords } from '../scanner/scanner.ts';
import { wordEnd } from '../scanner/words.ts';
import type { BadLine, BlockLine, BlockWord, Line, LineContext, Name, Span, Text } from '../tree.ts';
import { blockOf, nameKey } from '../vocabulary/index.ts';
import { buildEquipment, buildFact, buildPrice } from './facts.ts';
import { type FirstWord, firstWordOf, nearBlockWord } from './first-word.ts';
import { buildHeader, freeTextAfter } from './headers.ts';
import { buildIngredient } from './ingredients.ts';
import { readAllow, readNote } from './notes.ts';
import { baseOf, dropParser, type LineReading, refuseGuard, run, startReading } from './reading.ts';
import { buildRequest, buildTake } from './requests.ts';
import { buildStep } from './steps.ts';

/** @param text the line without its line end */
export function parseLine(text: string, context: LineContext): Line {
  const start = skipSpaces(text, 0, text.length);
  if (start >= text.length) return { kind: 'blank', text, span: { start, end: start }, comment: null, problems: [] };
  if (text.length > limits.line)
    return badLine(text, `A line has at most ${limits.line} characters; this one has ${text.length}.`);
  if (text[start] === '|') return readNote(text, start);
  const at = findComment(text, start);
  const comment = at < 0 ? null : commentText(text, at);
  if (comment !== null && at === start) return readAllow(text, comment);
  const end = trimmedEnd(text, start, at < 0 ? text.length : at);
  try {
    return readContent(startReading(text, { start, end }, comment), context);
  } catch (error) {
    // A fault of the program costs this line, not the file.
    dropParser();
    return badLine(text, `Reading this line failed inside the program (${String(error)}); please report it with the line.`);
  }
}

function badLine(text: string, message: string): BadLine {
  const span = { start: 0, end: text.length };
  return { kind: 'bad', text, span, comment: null, problems: [{ code: 'syntax', message, ...span, fixes: [] }] };
}

function commentText(text: string, at: number): Text {
  const end = trimmedEnd(text, at, text.length);
  return { text: text.slice(at + 2, end).trim(), quoted: false, start: at, end };
}

function trimmedEnd(text: string, start: number, end: number): number {
  return start + text.slice(start, end).trimEnd().length;
}

function readContent(reading: LineReading, context: LineContext): Line {
  const { scan, span } = reading;
  const wordSpan = { start: span.start, end: wordEnd(scan.text, span.start, span.end) };
  if (context === 'formula') return readFormulaLine(reading, wordSpan);
  const block = blockOf(scan.text.slice(wordSpan.start, wordSpan.end));
  if (block !== undefined) return readBlock(reading, wordSpan, block);
  const line = contextReaders[context](reading);
  if (line.kind !== 'bad') return line;
  // What cannot be read as a line of this block may be the next block's word with a slip in it.
  const again = startReading(reading.text, span, reading.comment);
  const near = nearBlockWord(again.scan, wordSpan);
  return near?.kind === 'block' ? readBlock(again, wordSpan, near.word) : line;
}

const contextReaders = { ingredient: buildFact, equipment: buildEquipment, prices: buildPrice } as const;

/** A line of a formula, component or assembly: a quantity, or what its first word says. */
function readFormulaLine(reading: LineReading, wordSpan: Span): Line {
  const { scan, span } = reading;
  if (isAmount(reading, wordSpan)) {
    scanIngredient(scan, span.start);
    return buildIngredient(reading);
  }
  if ((flagsAt(scan.text, span.start) & letter) === 0) return unreadable(reading);
  const first = firstWordOf(scan, wordSpan);
  return first === null ? unreadable(reading) : readByWord(reading, wordSpan, first);
}

function isAmount({ scan, span }: LineReading, wordSpan: Span): boolean {
  if (startsNumber(scan, span.start)) return true;
  return wordSpan.end - wordSpan.start === 4 && scan.text.slice(wordSpan.start, wordSpan.end).toLowerCase() === 'some';
}

function readByWord(reading: LineReading, wordSpan: Span, first: FirstWord): Line {
  if (first.kind === 'block') return readBlock(reading, wordSpan, first.word);
  if (first.kind === 'header') {
    const { word } = first.row;
    if (word === 'keeps') scanTimed(reading.scan, wordSpan.end);
    else if (word !== 'by' && word !== 'version') scanWords(reading.scan, wordSpan.end);
    return buildHeader(reading, first.row, wordSpan);
  }
  scanTimed(reading.scan, wordSpan.end);
  return buildStep(reading, first.row, wordSpan);
}

function readBlock(reading: LineReading, wordSpan: Span, word: BlockWord): Line {
  if (word === 'formula') return readFormula(reading, wordSpan);
  scanWords(reading.scan, wordSpan.end);
  switch (word) {
    case 'take':
      return buildTake(reading);
    case 'card':
    case 'weigh-out':
    case 'timeline':
    case 'compare':
      return buildRequest(reading, word);
    default:
      return readNamed(reading, wordSpan, word);
  }
}

/** The text after `formula` is free. */
function readFormula(reading: LineReading, wordSpan: Span): BlockLine {
  const text = freeTextAfter(reading.scan, wordSpan, reading.span.end);
  const name = text === null ? null : freeName(text);
  if (name === null) blame(reading.scan, wordSpan, 'A formula has a name: `formula Hojicha bavarois`.');
  else if (name.text.length > limits.name)
    blame(reading.scan, name, `A name has at most ${limits.name} characters; this one has ${name.text.length}.`);
  return { kind: 'block', ...baseOf(reading), word: 'formula', wordSpan, name, guard: null };
}

function freeName({ text, start, end }: Text): Name | null {
  const inside = text.slice(1, -1);
  const quoted = text.length > 2 && text.startsWith('"') && text.endsWith('"') && !inside.includes('"');
  const bare = (quoted ? inside : text).trim();
  return bare === '' ? null : { text: bare, key: nameKey(bare), quoted, start, end };
}

function readNamed(reading: LineReading, wordSpan: Span, word: Exclude<BlockLine['word'], 'formula'>): BlockLine {
  const { scan } = reading;
  const rest = { start: wordSpan.end, end: reading.span.end };
  const alone = word === 'assembly' || word === 'equipment';
  if (alone) {
    if (scan.tokens.length > 0) {
      blame(scan, { start: scan.tokens[0]!.startOffset, end: rest.end }, `\`${word}\` stands alone on its line.`, [
        replaceFix('Remove it', rest, ''),
      ]);
    }
    return { kind: 'block', ...baseOf(reading), word, wordSpan, name: null, guard: null };
  }
  const { name, guard } = scan.tokens.length === 0 ? { name: null, guard: null } : run(reading, 'nameLine');
  if (name === null) blame(scan, wordSpan, blockNeeds[word]);
  if (word !== 'component') refuseGuard(reading, guard, `\`${word}\``);
  return { kind: 'block', ...baseOf(reading), word, wordSpan, name, guard: word === 'component' ? guard : null };
}

const blockNeeds = {
  component: 'A component has a name: `component custard`.',
  ingredient: 'A house ingredient has a name: `ingredient house praline`.',
  prices: 'Prices say their currency: `prices EUR`.',
} as const;

/** A line that starts with nothing known; what was probably meant is proposed. */
function unreadable(reading: LineReading): Line {
  const { scan, span } = reading;
  const bullet = bulletEnd(reading);
  if (bullet > span.start) {
    const problem = { start: span.start, end: bullet };
    blame(scan, problem, 'A line starts with its quantity or its verb, without a bullet or a number.', [
      replaceFix('Remove it', problem, ''),
    ]);
    return readAfter(reading, bullet);
  }
  const heading = headingText(reading);
  const word = shown(scan.text.slice(span.start, Math.max(wordEnd(scan.text, span.start, span.end), span.start + 1)));
  if (heading !== null) {
    const fix = replaceFix(`Write component ${heading}`, span, `component ${heading}`);
    blame(scan, span, `A part of a formula is opened by \`component\`: \`component ${heading}\`.`, [fix]);
  }
  blame(
    scan,
    span,
    `A line starts with a quantity, a verb, a header or a block word; ${word} is none of them. Text that belongs to no step stands after \`|\`.`,
    [insertFix('Make it a note', span.start, '| ')],
  );
  return { kind: 'bad', ...baseOf(reading) };
}

/** Reads the rest of a line whose bullet has been blamed. */
function readAfter(reading: LineReading, start: number): Line {
  const line = readContent({ ...reading, span: { start, end: reading.span.end } }, 'formula');
  return { ...line, span: reading.span };
}

/** Where the content after a list bullet starts; the line's start where there is none. */
function bulletEnd({ scan, span }: LineReading): number {
  if (!'-*•·–—'.includes(scan.text[span.start]!)) return span.start;
  const next = skipSpaces(scan.text, span.start + 1, span.end);
  return next > span.start + 1 && next < span.end && (flagsAt(scan.text, next) & nameFlags) !== 0 ? next : span.start;
}

/** `Custard:` as a heading. */
function headingText({ scan, span }: LineReading): string | null {
  const text = scan.text.slice(span.start, span.end);
  if (!text.endsWith(':')) return null;
  const name = text.slice(0, -1).trim();
  const plain = wordEnd(name.split(' ').join(''), 0, name.length);
  return name !== '' && name.length < 60 && plain === name.split(' ').join('').length ? name.toLowerCase() : null;
}
