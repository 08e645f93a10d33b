/** Builds `take` lines and requests: `card`, `weigh-out`, `timeline`, `compare`. */

import { blame, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { BadLine, FileReference, Name, RequestEntry, RequestLine, Span, TakeLine } from '../tree.ts';
import { nameKey } from '../vocabulary/index.ts';
import type { RawEntry } from './drafts.ts';
import { baseOf, type LineReading, run } from './reading.ts';
import { buildYield } from './yields.ts';

export function buildTake(reading: LineReading): TakeLine | BadLine {
  const { scan, span } = reading;
  const found = scan.problem;
  const { taken, second } = run(reading, 'takeLine');
  if (found === null && second !== null && !second.quoted) {
    scan.problem = null;
    blamePath(scan, { start: second.start, end: span.end });
  }
  if (taken.length === 0) {
    blame(scan, span, 'A `take` line is written like `take custard from "bases.nappe"`.');
    return { kind: 'bad', ...baseOf(reading) };
  }
  const from = second === null ? null : reference(scan, second);
  if (from === null) blame(scan, span, 'A `take` line ends in the file, such as `from "bases.nappe"`.');
  return { kind: 'take', ...baseOf(reading), items: [...taken], from };
}

export function buildRequest(reading: LineReading, word: RequestLine['word']): RequestLine | BadLine {
  if (word === 'compare') return buildCompare(reading);
  const { scan } = reading;
  const draft = run(reading, 'requestLine');
  const entries = draft.entries.map((raw) => buildEntry(scan, raw));
  const clock = draft.clock?.kind === 'clock' ? draft.clock : null;
  if (clock !== null && word !== 'timeline')
    blame(scan, clock, `\`ready\` and a time of day go with \`timeline\`, not with \`${word}\`.`);
  const ready = clock === null ? null : { text: clock.text, quoted: false, start: clock.start, end: clock.end };
  return { kind: 'request', ...baseOf(reading), word, entries, ready };
}

function buildCompare(reading: LineReading): RequestLine | BadLine {
  const { scan, span } = reading;
  const { name, second } = run(reading, 'compareLine');
  if (name === null || second === null) {
    blame(scan, span, 'A `compare` line is written like `compare "old.nappe" with "new.nappe"`.');
    return { kind: 'bad', ...baseOf(reading) };
  }
  const entries = [name, second].map((each): RequestEntry => {
    return { reference: reference(scan, each), yield: null, choices: [], start: each.start, end: each.end };
  });
  return { kind: 'request', ...baseOf(reading), word: 'compare', entries, ready: null };
}

function buildEntry(scan: Scan, raw: RawEntry): RequestEntry {
  // An entry without words, as in `card` alone, stands at the line's end.
  const empty = raw.path === null && raw.yield === null && raw.values.length === 0;
  const span = empty ? { start: scan.end, end: scan.end } : { start: raw.start, end: raw.end };
  const made = raw.yield === null ? null : buildYield(scan, raw.yield, false);
  const path = raw.path === null ? null : reference(scan, raw.path);
  return { reference: path, yield: made, choices: raw.values, ...span };
}

/** `"path#formula"`; a path without quotes is asked to have them. */
function reference(scan: Scan, name: Name): FileReference {
  const { start, end, text } = name;
  if (!name.quoted) blamePath(scan, name);
  const hash = text.indexOf('#');
  if (hash < 0) return { path: text, formula: null, start, end };
  return { path: text.slice(0, hash), formula: text.slice(hash + 1).trim(), start, end };
}

/** A path without its quotes. */
function blamePath(scan: Scan, span: Span): void {
  const written = scan.text.slice(span.start, span.end).split('"').join('');
  const path = nameKey(written).includes('.nappe') ? written : `${written}.nappe`;
  blame(scan, span, `A file stands in quotes: ${shown(`"${path}"`)}.`, [replaceFix('Put it in quotes', span, `"${path}"`)]);
}
