/** Builds the clauses that say how far, how hot and how long: `to`, `at`, `for`, `until`, `losing`. */

import { blame, insertFix, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { Duration, Name, Reading, Varying } from '../tree.ts';
import { type ClauseUse, nameKey, peakOf, peaks, type VerbRow } from '../vocabulary/index.ts';
import { type Built, built, levelOf, type Part } from './built.ts';
import type { Measured, RawClause } from './drafts.ts';
import { blameKind, blameShare, numbersOf, only, quantityOf, varying } from './measured.ts';

export function buildTo(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
  const { measured, name } = raw;
  if (name !== null) return toName(scan, raw, name);
  if (measured === null) return null;
  switch (measured.base.kind) {
    case 'temperature':
      return to(scan, raw, measured, 'to temperature', only('temperature'));
    case 'length':
      return to(scan, raw, measured, 'to length', only('length'));
    case 'brix':
      return to(scan, raw, measured, 'to brix', only('brix'));
    case 'quantity':
      return to(scan, raw, measured, 'to mass', quantityOf);
    case 'percent':
      return losingFor(scan, raw, Math.max(0, 100 - measured.base.low));
    case 'duration':
      blame(scan, raw, 'How long a step takes stands after `for`.', [replaceFix('Write for', raw.wordSpan, 'for')]);
      return duration(scan, raw, measured);
    default:
      blameKind(scan, measured, ...stateOf(verb));
      return null;
  }
}

/** What ends a step of this verb, and the units a number may have lost. */
function stateOf({ word, takes }: VerbRow): [string, string[]] {
  if (takes.includes('to length')) return ['a length such as 3 mm', ['mm', 'cm']];
  if (word === 'reduce') return ['a mass or a sugar reading, such as 120 g or 65 brix', ['g', 'brix']];
  return ['a temperature such as 80 °C', ['°C', '°F']];
}

function to(scan: Scan, raw: RawClause, measured: Measured, use: ClauseUse, accept: Parameters<typeof varying>[2]): Built | null {
  const target = varying(scan, measured, accept);
  return target === null ? null : built(raw, use, { word: 'to', target } as Part);
}

/** `to soft peak`; `to half`, `to room temperature` and `to NAME` are slips. */
function toName(scan: Scan, raw: RawClause, name: Name): Built | null {
  const peak = peakClause(scan, raw, name);
  if (peak !== null) return peak;
  if (name.key === 'half') return losingFor(scan, raw, 50);
  if (name.key.startsWith('room')) {
    const message = 'The state that ends a step is a reading: write the temperature of the room, such as `to 18-24 °C`.';
    blame(scan, name, message, [replaceFix('Write 18-24 °C', name, '18-24 °C')]);
    return null;
  }
  if (peaks.some((row) => name.key.startsWith(row.word))) {
    blame(
      scan,
      name,
      'A peak is written like `soft peak` or `soft-medium peak`; the words are very soft, soft, medium and stiff.',
    );
    return null;
  }
  const message = `\`to\` is followed by the reading that ends the step; ${shown(name.text)} takes something in, so write \`into\`.`;
  blame(scan, raw.wordSpan, message, [replaceFix('Write into', raw.wordSpan, 'into')]);
  return built(raw, 'into', { word: 'into', target: name });
}

/** `soft peak`, `soft-medium peaks`; without the word peak it is asked for. */
function peakClause(scan: Scan, raw: RawClause, name: Name): Built | null {
  const key = nameKey(name.text);
  const ending = [' peak', ' peaks'].find((each) => key.endsWith(each));
  const peak = peakOf(ending === undefined ? key : key.slice(0, -ending.length));
  if (peak === undefined) return null;
  if (ending === undefined && raw.word === 'to') {
    blame(scan, name, `Write \`peak\` after it: \`to ${key} peak\`.`, [insertFix('Add peak', name.end, ' peak')]);
  } else if (ending === undefined) return null;
  const { start, end } = name;
  const target = { base: { kind: 'peak' as const, ...peak, start, end }, overrides: [], start, end };
  return built(raw, 'to peak', { word: 'to', target });
}

function losingFor(scan: Scan, raw: RawClause, percent: number): Built {
  const text = `losing ${percent} %`;
  blame(scan, raw, `A share that is lost is written \`${text}\`; \`to\` takes a mass, such as \`to 120 g\`.`, [
    replaceFix(`Write ${text}`, raw, text),
  ]);
  const { start, end } = raw;
  return built(raw, 'losing', {
    word: 'losing',
    percent: { base: { low: percent, high: percent, ranged: false, start, end }, overrides: [], start, end },
  });
}

export function buildAt(scan: Scan, raw: RawClause): Built | null {
  const { measured, name } = raw;
  if (measured?.base.kind === 'temperature') {
    return built(raw, 'at', { word: 'at', target: varying(scan, measured, only('temperature')) as Varying<Reading> });
  }
  if (name?.key === 'room') return built(raw, 'at room', { word: 'at room' });
  if (name?.key === 'room temperature') {
    blame(scan, name, 'The air of the room is written `at room`.', [replaceFix('Write room', name, 'room')]);
    return built(raw, 'at room', { word: 'at room' });
  }
  const level = name === null ? undefined : levelOf(name);
  if (level !== undefined) {
    blame(scan, raw.wordSpan, 'Heat and speed stand after `on`.', [replaceFix('Write on', raw.wordSpan, 'on')]);
    return built(raw, 'on', { word: 'on', level });
  }
  if (measured !== null) blameKind(scan, measured, 'a temperature such as 80 °C', ['°C', '°F']);
  else if (name !== null)
    blame(scan, name, `After \`at\` a temperature was expected, such as \`at 160 °C\`, not ${shown(name.text)}.`);
  return null;
}

export function buildFor(scan: Scan, raw: RawClause): Built | null {
  const { measured, name } = raw;
  if (measured?.base.kind === 'duration') return duration(scan, raw, measured);
  if (measured !== null) blameKind(scan, measured, 'a time such as 10 min', ['min', 'h']);
  else if (name !== null)
    blame(scan, name, `After \`for\` a time was expected, such as \`for 10 min\`, not ${shown(name.text)}.`);
  return null;
}

function duration(scan: Scan, raw: RawClause, measured: Measured): Built | null {
  const target = varying(scan, measured, only('duration'));
  return target === null ? null : built(raw, 'for', { word: 'for', target: target as Varying<Duration> });
}

/** `chill overnight`; before any other time, and before a temperature, the clause word was forgotten. */
export function buildBare(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
  const { measured, start, end } = raw;
  if (measured === null) return null;
  const { base } = measured;
  const written = scan.text.slice(start, end);
  if (base.kind !== 'duration' && base.kind !== 'temperature') {
    blame(scan, raw, `${shown(written)} has no word before it that says what it means.`);
    return null;
  }
  const word = base.kind === 'duration' ? 'for' : verb.takes.includes('to temperature') ? 'to' : 'at';
  if (base.kind !== 'duration' || !base.overnight) {
    const what = base.kind === 'duration' ? 'How long a step takes' : 'A temperature';
    const gap = { start: listEnd(scan, start), end: start };
    const fix = replaceFix(`Write ${word}`, gap, `${gap.start < start ? ' ' : ''}${word} `);
    const fixes = gap.start < start || scan.text[start - 1] === ' ' ? [fix] : [];
    blame(scan, raw, `${what} stands after \`${word}\`: ${shown(`${word} ${written}`)}.`, fixes);
  }
  if (word === 'for') return buildFor(scan, raw);
  return word === 'to' ? buildTo(scan, raw, verb) : buildAt(scan, raw);
}

/** Where the comma before a place stands, with the space before it; the place itself where there is none. */
function listEnd(scan: Scan, at: number): number {
  const text = scan.text.slice(0, at).trimEnd();
  return text.endsWith(',') ? text.slice(0, -1).trimEnd().length : at;
}

export function buildUntil(scan: Scan, raw: RawClause): Built | null {
  const { sign } = raw;
  if (sign === null) return null;
  if (sign.measured?.base.kind === 'temperature') {
    blame(scan, raw.wordSpan, 'A reading that ends the step stands after `to`.', [replaceFix('Write to', raw.wordSpan, 'to')]);
    return to(scan, raw, sign.measured, 'to temperature', only('temperature'));
  }
  if (sign.measured?.base.kind === 'duration') {
    blame(scan, raw.wordSpan, 'How long a step takes stands after `for`.', [replaceFix('Write for', raw.wordSpan, 'for')]);
    return duration(scan, raw, sign.measured);
  }
  if (sign.name !== null) {
    const peak = peakClause(scan, raw, sign.name);
    if (peak !== null) return peak;
    const { text, quoted, start, end } = sign.name;
    return built(raw, 'until', { word: 'until', sign: { text, quoted, start, end } });
  }
  const text = scan.text.slice(sign.start, sign.end).split('"').join('');
  const word = shown(scan.text.slice((sign.odd ?? sign).start, (sign.odd ?? sign).end));
  blame(scan, sign, `What the cook sees stands in quotes where it holds ${word}: ${shown(`until "${text}"`)}.`, [
    replaceFix('Put it in quotes', sign, `"${text}"`),
  ]);
  return built(raw, 'until', { word: 'until', sign: { text, quoted: false, start: sign.start, end: sign.end } });
}

export function buildLosing(scan: Scan, raw: RawClause): Built | null {
  const { measured } = raw;
  const percent =
    measured === null ? null : varying(scan, measured, (each) => (each.kind === 'percent' ? numbersOf(each) : null));
  if (percent !== null) {
    for (const each of [percent.base, ...percent.overrides.map((override) => override.then)]) blameShare(scan, each);
    return built(raw, 'losing', { word: 'losing', percent });
  }
  if (measured !== null) blameKind(scan, measured, 'a percentage such as `losing 5 %`', ['%']);
  else blame(scan, raw, 'After `losing` a percentage was expected, such as `losing 5 %`.');
  return null;
}
