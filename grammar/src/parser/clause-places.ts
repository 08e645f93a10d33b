/** Builds the clauses that say where and with what: `into`, `in`, `with`. */

import { blame, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { Name, Span, Text } from '../tree.ts';
import { mediumOf, nearest, toolOf, tools, type VerbRow } from '../vocabulary/index.ts';
import { type Built, built } from './built.ts';
import type { RawClause, RawCounted } from './drafts.ts';
import { blameKind, numbersOf, refuseOverrides, varying } from './measured.ts';
import { buildOperand } from './operands.ts';
import { buildYield } from './yields.ts';

export function buildInto(scan: Scan, raw: RawClause): Built | null {
  if (raw.name !== null) return built(raw, 'into', { word: 'into', target: raw.name });
  const target = raw.yield === null ? null : buildYield(scan, raw.yield, true);
  return target === null ? null : built(raw, 'into', { word: 'into', target });
}

export function buildIn(scan: Scan, raw: RawClause): Built | null {
  if (raw.counted !== null) return counted(scan, raw, raw.counted);
  const { name } = raw;
  if (name === null) return null;
  const medium = name.quoted ? undefined : mediumOf(name.key);
  if (name.key === 'room' && !name.quoted) {
    blame(scan, raw, 'The air of the room is written `at room`.', [replaceFix('Write at', raw.wordSpan, 'at')]);
    return built(raw, 'at room', { word: 'at room' });
  }
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
    refuseOverrides(scan, measured);
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

export function buildWith(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
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
  blame(scan, span, 'After `with` a name was expected, such as `with 40 g of cream`.');
  return [];
}

/** Whether a name is a tool, or so nearly one that it is read as it and blamed. */
function checkTool(scan: Scan, name: Name): boolean {
  if (name.quoted || toolOf(name.key) !== undefined) return true;
  const bare = name.key.replace(/^(?:an?|the|your) /u, '');
  const known = tools.flatMap((row) => [row.word, ...row.also]);
  const near = toolOf(bare)?.word ?? nearest(bare, known);
  if (near === null) return false;
  blame(scan, name, `${shown(name.text)} is not a known tool; write \`${near}\`.`, [replaceFix(`Write ${near}`, name, near)]);
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
    `\`${verb.word}\` takes a tool after \`with\`, and ${shown(written)} is none.`,
    [...fixes, quote],
    'wrong-clause',
  );
}

function spaceBefore(scan: Scan, at: number): number {
  return at > 0 && scan.text[at - 1] === ' ' ? at - 1 : at;
}
