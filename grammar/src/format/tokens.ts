/** The tokens of an error-free line, written canonically and joined with the notation's spacing. */

import { startScan } from '../scanner/scan.ts';
import { scanIngredient, scanPrice, scanTimed, scanWords } from '../scanner/scanner.ts';
import type { Token } from '../scanner/tokens.ts';
import * as t from '../scanner/tokens.ts';
import type { Attribute, Clause, Line, Name } from '../tree.ts';
import type { UnitRow } from '../vocabulary/index.ts';
import { printMeasure } from './measures.ts';

export type TokenLine = Exclude<Line, { kind: 'blank' | 'comment' | 'note' | 'bad' }>;

/** A line's tokens after its first word, where its kind has one. */
export function tokensOf(line: TokenLine): readonly Token[] {
  const scan = startScan(line.text, line.span.end);
  if (line.kind === 'ingredient') scanIngredient(scan, line.span.start);
  else if (line.kind === 'price') scanPrice(scan, line.span.start);
  else if (line.kind === 'equipment') scanWords(scan, line.span.start);
  else if (line.kind === 'take' || line.kind === 'request') scanWords(scan, line.span.start + wordOf(line).length);
  else if (line.kind === 'step') scanTimed(scan, line.verbSpan.end);
  else if (line.kind === 'header' && line.word === 'keeps') scanTimed(scan, line.wordSpan.end);
  else scanWords(scan, line.wordSpan.end);
  return scan.tokens;
}

/** The canonical first word of a line; empty where its kind has none. */
export function wordOf(line: TokenLine): string {
  switch (line.kind) {
    case 'step':
      return line.verb;
    case 'take':
      return 'take';
    case 'block':
    case 'header':
    case 'fact':
    case 'request':
      return line.word;
    default:
      return '';
  }
}

/** Joins tokens: one space between, none inside parentheses and before a comma or a colon. */
export function joinTokens(line: TokenLine, tokens: readonly Token[]): string {
  const replaced = replacements(line);
  let text = '';
  let open = true;
  for (const token of tokens) {
    const type = token.tokenType;
    const tight = open || type === t.CommaToken || type === t.ColonToken || type === t.CloseToken;
    text += `${tight ? '' : ' '}${replaced.get(token.startOffset) ?? printToken(line.text, token)}`;
    open = type === t.OpenToken;
  }
  return text;
}

const marks = new Map([
  [t.CommaToken, ','],
  [t.ColonToken, ':'],
  [t.OpenToken, '('],
  [t.CloseToken, ')'],
  [t.RestToken, 'rest'],
  [t.IsToken, 'is'],
  [t.AcidityToken, 'pH'],
]);

function printToken(text: string, token: Token): string {
  const type = token.tokenType;
  if (type === t.NameToken) {
    const name = token.payload as Name;
    return name.quoted ? `"${name.text}"` : name.text;
  }
  const mark = marks.get(type);
  if (mark !== undefined) return mark;
  if (type === t.UnitToken) return (token.payload as UnitRow).word;
  if (type === t.ClockToken || type === t.StrayToken) return text.slice(token.startOffset, token.endOffset);
  if (token.payload === undefined) return type.name;
  return printMeasure(text, token.startOffset, token.endOffset);
}

/** Words the vocabulary spells its own way, by where they stand. */
function replacements(line: TokenLine): ReadonlyMap<number, string> {
  const words = new Map<number, string>();
  if (line.kind === 'ingredient') for (const attribute of line.attributes) replaceAttribute(words, attribute);
  if (line.kind === 'step') for (const clause of line.clauses) replaceClause(words, line.text, clause);
  return words;
}

function replaceAttribute(words: Map<number, string>, attribute: Attribute): void {
  if (attribute.kind === 'phase') words.set(attribute.start, attribute.phase);
  if (attribute.kind === 'state') words.set(attribute.start, attribute.state);
}

/** `until soft peaks` is written `to soft peak`, `on medium heat` is written `on medium`. */
function replaceClause(words: Map<number, string>, text: string, clause: Clause): void {
  if (clause.word === 'to' && 'kind' in clause.target.base && clause.target.base.kind === 'peak') {
    const { low, high, start } = clause.target.base;
    words.set(clause.wordSpan.start, 'to');
    words.set(start, `${low === high ? low : `${low}-${high}`} peak`);
  }
  if (clause.word === 'on') {
    const gap = text.slice(clause.wordSpan.end, clause.end);
    words.set(clause.end - gap.trimStart().length, clause.level);
  }
}
