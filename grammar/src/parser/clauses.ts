/** Builds the clauses of a step, one function a clause word, and reads common slips as they are meant. */

import { blame, insertFix, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { Clause, Duration, Name, Operand, Reading, Span, Text, Varying } from '../tree.ts';
import {
  type ClauseUse,
  levels,
  mediumOf,
  nameKey,
  nearest,
  peakOf,
  peaks,
  toolOf,
  tools,
  type VerbRow,
} from '../vocabulary/index.ts';
import type { Measured, RawClause, RawClauseWord, RawCounted } from './drafts.ts';
import { blameKind, numbersOf, only, quantityOf, varying } from './measured.ts';
import { buildOperand } from './operands.ts';
import { buildYield } from './yields.ts';

/** A clause with the use of its word that the verb must take. */
export interface Built {
  readonly use: ClauseUse;
  readonly clause: Clause;
  /** What `in` is followed by, where it is a part of a name. */
  readonly operand?: Operand | null;
}

type Builder = (scan: Scan, raw: RawClause, verb: VerbRow) => Built | null;

/** The clause as it was written or meant; null where nothing can be made of it, which is then blamed. */
export function buildClause(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
  return builders[raw.word](scan, raw, verb);
}

const builders: Readonly<Record<RawClauseWord, Builder>> = {
  bare: buildBare,
  to: buildTo,
  at: buildAt,
  for: buildFor,
  until: buildUntil,
  into: buildInto,
  over: (scan, raw) => named(scan, raw, 'over', (name) => ({ word: 'over', target: name })),
  using: (scan, raw) => named(scan, raw, 'using', (name) => ({ word: 'using', vessel: name })),
  as: (scan, raw) => named(scan, raw, 'as', (name) => ({ word: 'as', name })),
  in: buildIn,
  with: buildWith,
  while: buildWhile,
  on: buildOn,
  losing: buildLosing,
};

type Part = Clause extends infer One ? (One extends Clause ? Omit<One, keyof Span | 'wordSpan'> : never) : never;

/** Puts the places of the raw clause to its meaning. */
function built(raw: RawClause, use: ClauseUse, part: Part): Built {
  // Filled in rather than spread into a new object: this is one of the busiest places of parsing.
  const clause = part as { -readonly [Key in keyof Clause]: Clause[Key] };
  clause.wordSpan = raw.wordSpan;
  clause.start = raw.start;
  clause.end = raw.end;
  return { use, clause: clause as Clause };
}

function named(scan: Scan, raw: RawClause, use: ClauseUse, part: (name: Name) => Part): Built | null {
  if (raw.name !== null) return built(raw, use, part(raw.name));
  if (raw.measured !== null) blameKind(scan, raw.measured, `a name behind \`${raw.word}\``, []);
  return null;
}

function buildTo(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
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
      return losingFor(scan, raw, 100 - measured.base.low);
    case 'duration':
      blame(scan, raw, 'How long a step takes stands behind `for`.', [replaceFix('Write for', raw.wordSpan, 'for')]);
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
    blame(scan, name, `Write \`peak\` behind it: \`to ${key} peak\`.`, [insertFix('Add peak', name.end, ' peak')]);
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

function buildAt(scan: Scan, raw: RawClause): Built | null {
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
    blame(scan, raw.wordSpan, 'Heat and speed stand behind `on`.', [replaceFix('Write on', raw.wordSpan, 'on')]);
    return built(raw, 'on', { word: 'on', level });
  }
  if (measured !== null) blameKind(scan, measured, 'a temperature such as 80 °C', ['°C', '°F']);
  else if (name !== null)
    blame(scan, name, `Behind \`at\` a temperature was expected, such as \`at 160 °C\`, not ${shown(name.text)}.`);
  return null;
}

function buildFor(scan: Scan, raw: RawClause): Built | null {
  const { measured, name } = raw;
  if (measured?.base.kind === 'duration') return duration(scan, raw, measured);
  if (measured !== null) blameKind(scan, measured, 'a time such as 10 min', ['min', 'h']);
  else if (name !== null)
    blame(scan, name, `Behind \`for\` a time was expected, such as \`for 10 min\`, not ${shown(name.text)}.`);
  return null;
}

function duration(scan: Scan, raw: RawClause, measured: Measured): Built | null {
  const target = varying(scan, measured, only('duration'));
  return target === null ? null : built(raw, 'for', { word: 'for', target: target as Varying<Duration> });
}

/** `chill overnight`; before any other time, and before a temperature, the clause word was forgotten. */
function buildBare(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
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
    blame(scan, raw, `${what} stands behind \`${word}\`: ${shown(`${word} ${written}`)}.`, fixes);
  }
  return builders[word](scan, raw, verb);
}

/** Where the comma before a place stands, with the space before it; the place itself where there is none. */
function listEnd(scan: Scan, at: number): number {
  const text = scan.text.slice(0, at).trimEnd();
  return text.endsWith(',') ? text.slice(0, -1).trimEnd().length : at;
}

function buildUntil(scan: Scan, raw: RawClause): Built | null {
  const { sign } = raw;
  if (sign === null) return null;
  if (sign.measured?.base.kind === 'temperature') {
    blame(scan, raw.wordSpan, 'A reading that ends the step stands behind `to`.', [replaceFix('Write to', raw.wordSpan, 'to')]);
    return to(scan, raw, sign.measured, 'to temperature', only('temperature'));
  }
  if (sign.name !== null) {
    const peak = peakClause(scan, raw, sign.name);
    if (peak !== null) return peak;
    const { text, quoted, start, end } = sign.name;
    return built(raw, 'until', { word: 'until', sign: { text, quoted, start, end } });
  }
  const text = scan.text.slice(sign.start, sign.end).split('"').join('');
  const word = shown(scan.text.slice((sign.odd ?? sign).start, (sign.odd ?? sign).end));
  blame(scan, sign, `What the cook sees stands in quotes where it holds ${word}: \`until "${text}"\`.`, [
    replaceFix('Put it in quotes', sign, `"${text}"`),
  ]);
  return built(raw, 'until', { word: 'until', sign: { text, quoted: false, start: sign.start, end: sign.end } });
}

function buildInto(scan: Scan, raw: RawClause): Built | null {
  if (raw.name !== null) return built(raw, 'into', { word: 'into', target: raw.name });
  const target = raw.yield === null ? null : buildYield(scan, raw.yield, true);
  return target === null ? null : built(raw, 'into', { word: 'into', target });
}

function buildIn(scan: Scan, raw: RawClause): Built | null {
  if (raw.counted !== null) return counted(scan, raw, raw.counted);
  const { name } = raw;
  if (name === null) return null;
  const medium = name.quoted ? undefined : mediumOf(name.key);
  if (medium === undefined) return built(raw, 'in name', { word: 'in', target: name });
  return built(raw, 'in medium', {
    word: 'in',
    target: { kind: 'medium', medium: medium.word, start: name.start, end: name.end },
  });
}

/** `4 additions: whisk, spatula`, `2 turns: double, single`. */
function counted(scan: Scan, raw: RawClause, part: RawCounted): Built | null {
  const { noun, measured } = part;
  const span = { start: part.start, end: part.end };
  const items = part.items.map(({ text, quoted, start, end }): Text => ({ text, quoted, start, end }));
  if (measured.base.kind === 'number' && (noun?.key === 'addition' || noun?.key === 'additions')) {
    for (const item of part.items) checkTool(scan, item);
    const count = varying(scan, measured, (measure) => (measure.kind === 'number' ? numbersOf(measure) : null));
    if (count === null) return null;
    if (count.base.low < 1) blame(scan, measured, 'There is at least one addition.');
    return built(raw, 'in additions', { word: 'in', target: { kind: 'additions', count, tools: items, ...span } });
  }
  if (measured.base.kind === 'number' && (noun?.key === 'turn' || noun?.key === 'turns')) {
    return built(raw, 'in turns', { word: 'in', target: { kind: 'turns', count: measured.base.low, turns: items, ...span } });
  }
  if (measured.base.kind === 'quantity' && (noun ?? part.of) !== null) return partIn(scan, raw, part);
  blameKind(scan, measured, 'a name, or a number of additions or turns', ['additions', 'turns']);
  return null;
}

/** `whisk in 60 g of butter`: no verb takes it, so the step reads it as what it adds. */
function partIn(scan: Scan, raw: RawClause, part: RawCounted): Built | null {
  const { start, end, measured } = part;
  const name = part.of ?? part.noun;
  if (name === null) return null;
  const ofMissing = part.of === null;
  const operand = buildOperand(scan, { measured, part: null, name, unit: null, ofMissing, start, end });
  return { ...built(raw, 'in name', { word: 'in', target: name }), operand };
}

function buildWith(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
  const [first] = raw.operands;
  if (first === undefined) return null;
  const single = raw.operands.length === 1 && first.measured === null && first.part === null ? first.name : null;
  const takesNames = verb.takes.includes('with');
  if (single !== null && !single.quoted && toolOf(single.key) !== undefined) return toolClause(raw, single);
  if (takesNames) {
    const operands = raw.operands.flatMap((each) => buildOperand(scan, each) ?? blameBare(scan, each));
    return operands.length === 0 ? null : built(raw, 'with', { word: 'with', operands });
  }
  if (single !== null && (single.quoted || checkTool(scan, single))) return toolClause(raw, single);
  blameWith(scan, raw, verb);
  return null;
}

function toolClause(raw: RawClause, { text, quoted, start, end }: Name): Built {
  return built(raw, 'with tool', { word: 'with tool', tool: { text, quoted, start, end } });
}

function blameBare(scan: Scan, span: Span): never[] {
  blame(scan, span, 'Behind `with` a name was expected, such as `with 40 g of cream`.');
  return [];
}

/** Whether a name is a tool, or so nearly one that it is read as it and blamed. */
function checkTool(scan: Scan, name: Name): boolean {
  if (name.quoted || toolOf(name.key) !== undefined) return true;
  const bare = name.key.replace(/^(?:an?|the|your) /u, '');
  const known = tools.flatMap((row) => [row.word, ...row.also]);
  const near = toolOf(bare)?.word ?? nearest(bare, known);
  if (near === null) return false;
  blame(scan, name, `${shown(name.text)} is no tool known here; \`${near}\` is.`, [replaceFix(`Write ${near}`, name, near)]);
  return true;
}

/** `mix milk with sugar` joins by a comma; `soak sponge with syrup` is `in`; anything else may be quoted. */
function blameWith(scan: Scan, raw: RawClause, verb: VerbRow): void {
  const { wordSpan } = raw;
  const inside = { start: wordSpan.end, end: raw.end };
  const written = scan.text.slice(inside.start, inside.end).trim();
  const fixes = verb.takes.includes('in name')
    ? [replaceFix('Write in', wordSpan, 'in')]
    : [replaceFix('Write a comma', { start: spaceBefore(scan, wordSpan.start), end: wordSpan.end }, ',')];
  const quote = replaceFix('Put the tool in quotes', inside, ` "${written.split('"').join('')}"`);
  blame(
    scan,
    raw,
    `\`${verb.word}\` takes a tool behind \`with\`, and ${shown(written)} is none.`,
    [...fixes, quote],
    'wrong-clause',
  );
}

function spaceBefore(scan: Scan, at: number): number {
  return at > 0 && scan.text[at - 1] === ' ' ? at - 1 : at;
}

function buildWhile(scan: Scan, raw: RawClause): Built | null {
  if (raw.name?.key === 'whipping') return built(raw, 'while whipping', { word: 'while whipping' });
  blame(scan, raw, '`while` is followed by `whipping` only.', [replaceFix('Write while whipping', raw, 'while whipping')]);
  return null;
}

function buildOn(scan: Scan, raw: RawClause): Built | null {
  const level = raw.name === null ? undefined : levelOf(raw.name);
  if (level !== undefined) return built(raw, 'on', { word: 'on', level });
  const span = raw.name ?? raw.measured ?? raw;
  blame(
    scan,
    span,
    'Behind `on` the heat or the speed was expected: `low`, `medium` or `high`.',
    levels.map((each) => replaceFix(`Write ${each}`, span, each)),
  );
  return null;
}

/** `low`, `medium`, `high`, also as `low heat` and `high speed`. */
function levelOf(name: Name): (typeof levels)[number] | undefined {
  const [first, second, third] = name.key.split(' ');
  if (third !== undefined || (second !== undefined && second !== 'heat' && second !== 'speed')) return undefined;
  return levels.find((level) => level === first);
}

function buildLosing(scan: Scan, raw: RawClause): Built | null {
  const { measured } = raw;
  const percent =
    measured === null ? null : varying(scan, measured, (each) => (each.kind === 'percent' ? numbersOf(each) : null));
  if (percent !== null) return built(raw, 'losing', { word: 'losing', percent });
  if (measured !== null) blameKind(scan, measured, 'a percentage such as `losing 5 %`', ['%']);
  else blame(scan, raw, 'Behind `losing` a percentage was expected, such as `losing 5 %`.');
  return null;
}
