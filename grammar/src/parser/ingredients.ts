/** Builds an ingredient line and its attributes; an attribute nobody knows costs itself only. */

import { blame, insertFix, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import { AcidityToken, AtToken, CommaToken, NameToken, type Token, UnlessToken, WhenToken } from '../scanner/tokens.ts';
import type { Attribute, BadLine, IngredientLine, Name, Quantity, Span, Varying } from '../tree.ts';
import { phases, shares, states } from '../vocabulary/index.ts';
import type { RawAttribute } from './drafts.ts';
import { blameKind, blameNegative, blameShare, numbersOf, quantityOf, refuseOverrides, varying } from './measured.ts';
import { baseOf, type LineReading, run } from './reading.ts';

export function buildIngredient(reading: LineReading): IngredientLine | BadLine {
  const { scan } = reading;
  const found = scan.problem;
  const draft = run(reading, 'ingredientLine');
  if (draft.measured === null || draft.name === null) return unreadable(reading, draft.measured?.base.end ?? null);
  // An error among the attributes is told in their words, with the fix to quote.
  if (found === null && scan.problem !== null) scan.problem = attributeProblem(scan, scan.problem);
  const written = varying(scan, draft.measured, quantityOf);
  if (written === null) {
    blameKind(scan, draft.measured, 'a quantity such as 240 g', []);
    return { kind: 'bad', ...baseOf(reading) };
  }
  blameNegative(scan, written);
  const quantity = doubtful(written, draft.name);
  const attributes = draft.attributes.flatMap((raw) => buildAttribute(scan, raw) ?? []);
  blameTwice(scan, attributes);
  if (draft.guardInside && draft.guard !== null)
    blame(scan, draft.guard, `\`${draft.guard.word}\` ends the line; attributes stand before it.`);
  const { text, span, comment, problems } = baseOf(reading);
  return { kind: 'ingredient', text, span, comment, problems, quantity, name: draft.name, attributes, guard: draft.guard };
}

function unreadable(reading: LineReading, quantityEnd: number | null): BadLine {
  const { scan, span } = reading;
  const at = quantityEnd ?? span.start;
  blame(scan, { start: at, end: span.end }, 'After the quantity the name of an ingredient was expected.');
  return { kind: 'bad', ...baseOf(reading) };
}

/** `3 large eggs`: the first word may be a unit nobody knows; scope and catalogue decide. */
function doubtful(quantity: Varying<Quantity>, name: Name): Varying<Quantity> {
  if (quantity.base.unitWritten || name.quoted) return quantity;
  const space = name.text.indexOf(' ');
  const first = space < 0 ? '' : name.text.slice(0, space);
  if (first === '' || first !== first.toLowerCase()) return quantity;
  const doubtfulUnit = { text: first, quoted: false, start: name.start, end: name.start + first.length };
  return { ...quantity, base: { ...quantity.base, doubtfulUnit } };
}

function buildAttribute(scan: Scan, raw: RawAttribute): Attribute | null {
  const { start, end, name, measured } = raw;
  refuseOverrides(scan, measured);
  if (raw.word === 'is' || raw.word === 'as') return name === null ? null : { kind: raw.word, name, start, end };
  const built = measured === null ? wordAttribute(name, { start, end }) : measureAttribute(scan, raw, { start, end });
  if (built !== null) return built;
  if (measured?.base.kind === 'percent' && name === null) {
    const message = `${shown(scan.text.slice(start, end))} of what? Write ${shares.map((share) => `\`${share}\``).join(', ')} after it.`;
    blame(scan, raw, message, [
      insertFix('Write fat', end, ' fat'),
      ...shares.slice(1).map((share) => insertFix(`Write ${share}`, end, ` ${share}`)),
    ]);
  } else if (measured?.base.kind === 'number' && name === null && raw.word === null) {
    blameKind(scan, measured, 'an attribute such as `4 °C`, `35 % fat` or `200 bloom`', ['°C', '% fat', 'bloom', 'brix']);
  } else blameUnknown(scan, { start, end });
  return null;
}

function wordAttribute(name: Name | null, span: Span): Attribute | null {
  if (name === null) return null;
  const { text, quoted, key } = name;
  if (quoted) return { kind: 'preparation', text: { text, quoted, ...span }, ...span };
  const phase = phases.find((row) => row.word === key);
  if (phase !== undefined) return { kind: 'phase', phase: phase.word, ...span };
  const state = states.find((row) => row.word === key || (key === 'pasteurized' && row.word === 'pasteurised'));
  return state === undefined ? null : { kind: 'state', state: state.word, ...span };
}

function measureAttribute(scan: Scan, raw: RawAttribute, span: Span): Attribute | null {
  const { measured, name } = raw;
  if (measured === null) return null;
  const { base } = measured;
  if (raw.word === 'pH') return base.kind === 'number' ? { kind: 'pH', pH: numbersOf(base), ...span } : null;
  if (base.kind === 'percent') {
    const share = shares.find((word) => word === name?.key);
    if (share === undefined) return null;
    blameShare(scan, base);
    return { kind: 'share', of: share, percent: numbersOf(base), ...span };
  }
  if (name !== null) return null;
  if (base.kind === 'temperature') return { kind: 'temperature', reading: base, ...span };
  if (base.kind === 'brix') return { kind: 'brix', brix: base, ...span };
  return base.kind === 'bloom' ? { kind: 'bloom', bloom: numbersOf(base), ...span } : null;
}

function blameUnknown(scan: Scan, span: Span): void {
  const written = scan.text.slice(span.start, span.end);
  const inside = written.split('"').join('');
  blame(scan, span, `${shown(written)} is not a known attribute; put what is done to an ingredient in quotes.`, [
    replaceFix('Put it in quotes', span, `"${inside}"`),
  ]);
}

/** The parser's error, told for the whole attribute it lies in. */
function attributeProblem(scan: Scan, problem: NonNullable<Scan['problem']>): NonNullable<Scan['problem']> {
  const part = attributeAround(scan.tokens, problem.start);
  if (part === null) return problem;
  const [first] = part;
  const last = part[part.length - 1]!;
  const span = { start: first!.startOffset, end: last.endOffset };
  scan.problem = null;
  if (first!.tokenType === AtToken && part.length === 2) {
    blame(scan, span, 'A temperature stands here without `at`.', [
      replaceFix('Remove at', { start: span.start, end: last.startOffset }, ''),
    ]);
  } else if (part.length === 1 && first!.tokenType !== NameToken && first!.payload === undefined) {
    const word = shown(scan.text.slice(span.start, span.end));
    blame(scan, span, `After ${word} ${first!.tokenType === AcidityToken ? 'a number' : 'a name'} was expected.`);
  } else blameUnknown(scan, span);
  return scan.problem ?? problem;
}

/** The tokens of the attribute that `at` lies in; null where it lies in none. */
function attributeAround(tokens: readonly Token[], at: number): readonly Token[] | null {
  let comma = -1;
  for (const [index, token] of tokens.entries()) {
    if (token.startOffset > at) break;
    if (token.tokenType === CommaToken) comma = index;
    else if (token.tokenType === WhenToken || token.tokenType === UnlessToken) return null;
  }
  if (comma < 0) return null;
  const rest = tokens.slice(comma + 1);
  const stop = rest.findIndex(
    ({ tokenType }) => tokenType === CommaToken || tokenType === WhenToken || tokenType === UnlessToken,
  );
  const part = stop < 0 ? rest : rest.slice(0, stop);
  return part.length === 0 ? null : part;
}

/** Each attribute says one thing once. */
function blameTwice(scan: Scan, attributes: readonly Attribute[]): void {
  const seen = new Set<string>();
  for (const attribute of attributes) {
    const what = attribute.kind === 'share' ? attribute.of : attribute.kind;
    if (attribute.kind !== 'preparation' && attribute.kind !== 'state' && seen.has(what)) {
      blame(
        scan,
        attribute,
        `${shown(scan.text.slice(attribute.start, attribute.end))} says for the second time what the line has said before.`,
      );
    }
    seen.add(what);
  }
}
