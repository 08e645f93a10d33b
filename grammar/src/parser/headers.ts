/** Builds header lines, one function a word. */

import { blame, insertFix, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { BadLine, Duration, HeaderLine, Name, Numbers, Reading, Span, Text } from '../tree.ts';
import { allergens, allergenWords, type HeaderRow, type HeaderWord, nearest } from '../vocabulary/index.ts';
import type { Draft, Measured } from './drafts.ts';
import { blameKind, blameShare, numbersOf, refuseOverrides } from './measured.ts';
import { baseOf, type LineReading, type LineRule, refuseGuard, run } from './reading.ts';
import { buildYield } from './yields.ts';

type Value = HeaderLine extends infer One
  ? One extends HeaderLine
    ? Omit<One, keyof BadLine | 'wordSpan' | 'guard'>
    : never
  : never;

export function buildHeader(reading: LineReading, row: HeaderRow, wordSpan: Span): HeaderLine | BadLine {
  const { word } = row;
  const draft = word === 'by' || word === 'version' ? null : run(reading, rules[word]);
  for (const measured of draft === null ? [] : [draft.measured, ...draft.more.map((each) => each.measured)])
    refuseOverrides(reading.scan, measured);
  const value = draft === null ? freeText(reading, word as 'by' | 'version', wordSpan) : build(reading.scan, word, draft);
  if (draft !== null && !row.guarded) refuseGuard(reading, draft.guard, `\`${word}\``);
  const guard = row.guarded ? (draft?.guard ?? null) : null;
  if (value !== null) return { kind: 'header', ...baseOf(reading), wordSpan, guard, ...value } as HeaderLine;
  blame(reading.scan, reading.span, `A \`${word}\` line is written like \`${row.example}\`.`);
  return { kind: 'bad', ...baseOf(reading) };
}

const rules: Readonly<Record<Exclude<HeaderWord, 'by' | 'version'>, LineRule>> = {
  makes: 'makesLine',
  choice: 'choiceLine',
  served: 'servedLine',
  keeps: 'keepsLine',
  free: 'freeLine',
  gelatin: 'gelatinLine',
  tagged: 'namesLine',
  basis: 'nameLine',
  loss: 'measureLine',
};

function build(scan: Scan, word: HeaderWord, draft: Draft): Value | null {
  switch (word) {
    case 'makes': {
      const made = draft.yield === null ? null : buildYield(scan, draft.yield, false);
      return made === null ? null : { word, yield: made };
    }
    case 'choice':
      return choice(scan, draft);
    case 'served': {
      const at = draft.measured === null ? null : reading(scan, draft.measured);
      return at === null ? null : { word, at };
    }
    case 'keeps':
      return keeps(scan, draft);
    case 'free': {
      for (const name of draft.names) checkAllergen(scan, name);
      return draft.names.length === 0 ? null : { word, allergens: draft.names };
    }
    case 'gelatin':
      return gelatin(scan, draft.name);
    case 'tagged':
      return draft.names.length === 0 ? null : { word, tags: draft.names };
    case 'basis':
      return draft.name === null ? null : { word, name: draft.name.key === 'total' && !draft.name.quoted ? null : draft.name };
    case 'loss': {
      const percent = draft.measured === null ? null : percentOf(scan, draft.measured);
      return percent === null ? null : { word, percent };
    }
    default:
      return null;
  }
}

function freeText({ scan, span }: LineReading, word: 'by' | 'version', wordSpan: Span): Value | null {
  const text = freeTextAfter(scan, wordSpan, span.end);
  if (text === null) return null;
  return { word, value: text };
}

/** The text to the end of the content, or null where there is none. */
export function freeTextAfter(scan: Scan, wordSpan: Span, end: number): Text | null {
  const rest = scan.text.slice(wordSpan.end, end);
  const start = end - rest.trimStart().length;
  if (start >= end) return null;
  if (start === wordSpan.end) {
    blame(scan, { start, end }, `A space stands after ${shown(scan.text.slice(wordSpan.start, start))}.`, [
      insertFix('Add the space', start, ' '),
    ]);
  }
  return { text: scan.text.slice(start, end), quoted: false, start, end };
}

function choice(scan: Scan, draft: Draft): Value | null {
  const { name, names } = draft;
  if (name === null || names.length === 0) return null;
  const twice = names.find((value, index) => names.findIndex((other) => other.key === value.key) !== index);
  if (twice !== undefined) blame(scan, twice, `The value ${shown(twice.text)} stands twice in this choice.`);
  return { word: 'choice', name, values: names };
}

function reading(scan: Scan, measured: Measured): Reading | null {
  if (measured.base.kind === 'temperature') return measured.base;
  blameKind(scan, measured, 'a temperature such as 4-6 °C', ['°C', '°F']);
  return null;
}

function keeps(scan: Scan, draft: Draft): Value | null {
  const [cold] = draft.more;
  const time = keepingTime(scan, draft);
  if (time === null) return null;
  return { word: 'keeps', for: time, at: cold === undefined ? null : reading(scan, cold.measured) };
}

function keepingTime(scan: Scan, { measured }: Draft): Duration | null {
  if (measured === null) return null;
  if (measured.base.kind === 'duration') return measured.base;
  blameKind(scan, measured, 'a time such as 2 d', ['d', 'h']);
  return null;
}

/** Another word than the known ones is refused with the nearest of them. */
export function checkAllergen(scan: Scan, name: Name): void {
  if (allergenWords.includes(name.key)) return;
  const near = nearAllergen(name.key);
  if (near !== null) {
    blame(scan, name, `${shown(name.text)} is not a known allergen; write \`${near}\`.`, [
      replaceFix(`Write ${near}`, name, near),
    ]);
  } else blame(scan, name, `${shown(name.text)} is not a known allergen; the words are ${allergenWords.join(', ')}.`);
}

/** By another word people write for it, else by its plural or a slip. */
function nearAllergen(key: string): string | null {
  const row = allergens.find((each) => each.also.some((word) => word === key || `${word}s` === key));
  return row?.word ?? allergenWords.find((word) => `${word}s` === key || word === `${key}s`) ?? nearest(key, allergenWords);
}

function gelatin(scan: Scan, name: Name | null): Value | null {
  if (name === null) return null;
  if (name.key === 'concentration' || name.key === 'strength') return { word: 'gelatin', law: name.key };
  const near = nearest(name.key, ['concentration', 'strength']);
  const fixes = (near === null ? ['concentration', 'strength'] : [near]).map((word) => replaceFix(`Write ${word}`, name, word));
  blame(scan, name, `Grades of gelatin are compared by \`concentration\` or by \`strength\`, not by ${shown(name.text)}.`, fixes);
  return null;
}

/** One percentage; `open` where it may be more than the whole. */
export function percentOf(scan: Scan, measured: Measured, open = false): Numbers | null {
  if (measured.base.kind === 'percent') {
    if (!open) blameShare(scan, measured.base);
    return numbersOf(measured.base);
  }
  if (measured.base.kind === 'number') {
    blame(scan, measured, 'The unit is missing: a percentage such as 5 % was expected.', [
      insertFix('Write %', measured.base.end, ' %'),
    ]);
  } else blameKind(scan, measured, 'a percentage such as 5 %', []);
  return null;
}
