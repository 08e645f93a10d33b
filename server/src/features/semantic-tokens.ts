/** Semantic tokens: what each word is, line by line, whole, for a range, or as the difference to the last answer. */
import { type Clause, connectives, type Line, type Span, unitOf, type Varying } from 'nappe-grammar';
import type { Range, SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver';
import { byteLength, type TextUnits } from '../encoding.ts';
import { tokenTypes } from '../legend.ts';
import { type Use, usesIn } from '../names/uses.ts';
import type { Analysis } from '../project.ts';

type TokenType = (typeof tokenTypes)[number];

interface Token extends Span {
  readonly type: TokenType;
  readonly declares: boolean;
}

/** Five numbers a token, as the protocol has them: line and start from the one before, length, type, modifiers. */
export function semanticTokens({ file }: Analysis, units: TextUnits, range?: Range): number[] {
  const data: number[] = [];
  const last = Math.min(file.lines.length - 1, range ? range.end.line : file.lines.length);
  let above = 0;
  for (let number = Math.max(0, range?.start.line ?? 0); number <= last; number++) {
    const line = file.lines[number] as Line;
    const columnOf = (column: number): number => (units === 'utf-8' ? byteLength(line.text, column) : column);
    let before = 0;
    for (const token of tokensOf(line)) {
      const start = columnOf(token.start);
      const length = columnOf(token.end) - start;
      data.push(number - above, start - before, length, tokenTypes.indexOf(token.type), token.declares ? 1 : 0);
      above = number;
      before = start;
    }
  }
  return data;
}

/** What must change in the last answer's numbers to make this one's. */
export function tokensDelta(
  before: readonly number[],
  now: readonly number[],
  resultId: string,
): SemanticTokensDelta | SemanticTokens {
  let front = 0;
  const shorter = Math.min(before.length, now.length);
  while (front < shorter && before[front] === now[front]) front += 1;
  if (front === before.length && front === now.length) return { resultId, edits: [] };
  let back = 0;
  while (back < shorter - front && before[before.length - 1 - back] === now[now.length - 1 - back]) back += 1;
  const edit = { start: front, deleteCount: before.length - front - back, data: now.slice(front, now.length - back) };
  return { resultId, edits: [edit] };
}

const known = new WeakMap<Line, readonly Token[]>();

/** A line's tokens in order, none over another. */
function tokensOf(line: Line): readonly Token[] {
  let tokens = known.get(line);
  if (!tokens) {
    tokens = filled(line.text, withoutOverlap(fromTree(line)), hasWords(line) ? line.span : null);
    known.set(line, tokens);
  }
  return tokens;
}

const hasWords = ({ kind }: Line): boolean => kind !== 'note' && kind !== 'comment' && kind !== 'blank' && kind !== 'bad';

function fromTree(line: Line): Token[] {
  const tokens: Token[] = [];
  const put = (span: Span | null | undefined, type: TokenType, declares = false) => {
    if (span && span.end > span.start) tokens.push({ start: span.start, end: span.end, type, declares });
  };
  for (const { use, name } of usesIn(line)) if (use !== 'formula reference') put(name, typeOf[use], declaring.has(use));
  put(line.comment, 'comment');
  switch (line.kind) {
    case 'note':
      put({ start: line.text.indexOf('|'), end: line.text.length }, 'string');
      break;
    case 'step':
      put(line.verbSpan, 'function');
      if (line.doing) put(line.doing, 'string');
      for (const clause of line.clauses) clauseTokens(clause, put);
      break;
    case 'ingredient':
      for (const attribute of line.attributes) {
        if (attribute.kind === 'phase' || attribute.kind === 'state') put(attribute, 'property');
        if (attribute.kind === 'preparation') put(attribute.text, 'string');
      }
      break;
    case 'block':
      put(line.wordSpan, 'keyword');
      break;
    case 'header':
      put(line.wordSpan, 'keyword');
      if (line.word === 'by' || line.word === 'version') put(line.value, 'string');
      if (line.word === 'tagged') for (const tag of line.tags) put(tag, 'property');
      if (line.word === 'free') for (const name of line.allergens) put(name, 'property');
      if (line.word === 'makes') put(line.yield.noun, 'property');
      break;
    case 'fact':
      put(line.wordSpan, 'property');
      break;
    case 'take':
      put({ start: line.span.start, end: line.span.start + 'take'.length }, 'keyword');
      put(line.from, 'string');
      break;
    case 'request':
      put({ start: line.span.start, end: line.span.start + line.word.length }, 'keyword');
      for (const { reference } of line.entries) put(reference, 'string');
      break;
  }
  return tokens;
}

function clauseTokens(clause: Clause, put: (span: Span | null | undefined, type: TokenType) => void): void {
  put(clause.wordSpan, 'keyword');
  if (clause.word === 'until') put(clause.sign, 'string');
  if (clause.word === 'with tool') put(clause.tool, 'property');
  if (clause.word === 'at room' || clause.word === 'while whipping') put(clause, 'keyword');
  if (clause.word === 'on') put({ start: clause.wordSpan.end, end: clause.end }, 'property');
  if (clause.word === 'to') for (const value of valuesOf(clause.target)) if (value.kind === 'peak') put(value, 'property');
  if (clause.word !== 'in' || !('kind' in clause.target)) return;
  if (clause.target.kind === 'medium') put(clause.target, 'property');
  if (clause.target.kind === 'additions') for (const tool of clause.target.tools) put(tool, 'property');
  if (clause.target.kind === 'turns') for (const turn of clause.target.turns) put(turn, 'property');
}

const valuesOf = <T>({ base, overrides }: Varying<T>): T[] => [base, ...overrides.map(({ then }) => then)];

const typeOf: Record<Use, TokenType> = {
  line: 'variable',
  label: 'variable',
  as: 'variable',
  matter: 'variable',
  party: 'variable',
  component: 'class',
  formula: 'class',
  taken: 'class',
  alias: 'class',
  'formula reference': 'class',
  house: 'struct',
  kind: 'struct',
  equipment: 'namespace',
  vessel: 'namespace',
  choice: 'property',
  'choice value': 'enumMember',
  value: 'enumMember',
};

const declaring: ReadonlySet<Use> = new Set([
  'line',
  'as',
  'component',
  'formula',
  'house',
  'equipment',
  'choice',
  'choice value',
  'alias',
]);

/** By start; of two that overlap the later-starting or shorter one gives way, so a client never sees a token twice. */
function withoutOverlap(tokens: readonly Token[]): Token[] {
  const sorted = [...tokens].sort((a, b) => a.start - b.start || a.end - b.end);
  const kept: Token[] = [];
  for (const token of sorted) if (token.start >= (kept.at(-1)?.end ?? 0)) kept.push(token);
  return kept;
}

/** Numbers, units and connectives in what the tree's names leave over. */
function filled(text: string, tokens: readonly Token[], span: Span | null): readonly Token[] {
  if (!span) return tokens;
  const all: Token[] = [];
  let at = span.start;
  for (const token of [...tokens, { start: Math.max(at, span.end), end: text.length }]) {
    words(text, at, Math.min(token.start, span.end), all);
    if ('type' in token) all.push(token);
    at = Math.max(at, token.end);
  }
  return all;
}

function words(text: string, from: number, to: number, into: Token[]): void {
  if (to <= from) return;
  for (const { 0: word, index } of text.slice(from, to).matchAll(/[\d½¼¾⅓⅔⅛⅜⅝⅞]+(?:[.,/]\d+)?|[\p{L}°%][\p{L}\p{M}'-]*/gu)) {
    const type = wordType(word);
    if (type) into.push({ start: from + index, end: from + index + word.length, type, declares: false });
  }
}

function wordType(word: string): TokenType | null {
  const first = word.codePointAt(0) ?? 0;
  if ((first >= 48 && first <= 57) || /^[½¼¾⅓⅔⅛⅜⅝⅞]/u.test(word)) return 'number';
  if (unitOf(word.toLowerCase())) return 'type';
  return keywords.has(word.toLowerCase()) ? 'keyword' : null;
}

/** Words of the notation that stand between names and values. */
const keywords: ReadonlySet<string> = new Set([
  ...connectives,
  'half',
  'rest',
  'each',
  'some',
  'is',
  'brix',
  'bloom',
  'additions',
  'addition',
  'turns',
  'peak',
  'overnight',
  'ready',
]);
