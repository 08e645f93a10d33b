/** Where the cursor stands on a line being typed: read from the text before it, because a line half typed is no line yet. */
import { blockOf, connectives, headerOf, type LineContext, nameKey, unitOf, verbOf } from 'nappe-grammar';

/** `from` is the column where the word being completed starts; `lastWord` where its last word does. */
export type Place = { readonly from: number; readonly lastWord: number; readonly typed: string } & (
  | { readonly at: 'line start' }
  | { readonly at: 'unit' }
  | { readonly at: 'ingredient' }
  | { readonly at: 'attribute'; readonly name: string }
  | { readonly at: 'kind' }
  | { readonly at: 'override' }
  | { readonly at: 'guard'; readonly given: readonly string[] }
  | { readonly at: 'operand'; readonly verb: string; readonly mentioned: readonly string[] }
  | {
      readonly at: 'clause';
      readonly verb: string;
      readonly word: string;
      readonly used: readonly string[];
      readonly mentioned: readonly string[];
    }
  | { readonly at: 'header'; readonly word: string; readonly connective: string | null }
  | { readonly at: 'fact'; readonly word: string }
  | { readonly at: 'take' }
  | { readonly at: 'take name'; readonly file: string | null }
  | { readonly at: 'file'; readonly quoted: boolean }
  | { readonly at: 'title'; readonly file: string }
  | { readonly at: 'request'; readonly word: string; readonly connective: string | null; readonly file: string | null }
  | { readonly at: 'code' }
  | { readonly at: 'nowhere' }
);

interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly kind: 'word' | 'mark' | 'quoted' | 'open quote';
}

export function placeOf(text: string, column: number, context: LineContext): Place {
  const before = text.slice(0, column);
  const tokens = tokensOf(before);
  const last = tokens.at(-1);
  const lastWord = last && last.kind === 'word' && last.end === before.length ? last.start : before.length;
  const here = { from: lastWord, lastWord, typed: before.slice(lastWord) };
  const allow = /^\s*\/\/\s*allow\b[^:]*$/.exec(before);
  if (allow)
    return { ...here, from: codeStart(before), lastWord: codeStart(before), typed: before.slice(codeStart(before)), at: 'code' };
  if (isInComment(tokens) || before.trimStart().startsWith('|')) return { ...here, at: 'nowhere' };
  const first = tokens[0];
  if (!first || (tokens.length === 1 && first.end === before.length && !/^\d/.test(first.text) && first.kind === 'word'))
    return { ...here, at: 'line start' };
  const word = first.text.toLowerCase();
  const rest: Rest = { before, tokens: tokens.slice(1), here };
  if (/^[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(first.text) || word === 'some')
    return context === 'formula' ? ingredientPlace(rest, tokens) : { ...here, at: 'nowhere' };
  const block = blockOf(word);
  if (block === 'take') return takePlace(rest);
  if (block === 'card' || block === 'weigh-out' || block === 'timeline' || block === 'compare') return requestPlace(block, rest);
  if (block === 'component') return guardPlace(rest) ?? { ...here, at: 'nowhere' };
  if (block) return { ...here, at: 'nowhere' };
  if (context === 'ingredient') return { ...here, at: 'fact', word: factWord(before.trimStart()) };
  if (context !== 'formula') return { ...here, at: 'nowhere' };
  if (headerOf(word)) return headerPlace(word, rest);
  return verbOf(word) ? stepPlace(word, rest) : { ...here, at: 'nowhere' };
}

interface Rest {
  readonly before: string;
  /** Behind the first word. */
  readonly tokens: readonly Token[];
  readonly here: { readonly from: number; readonly lastWord: number; readonly typed: string };
}

const isConnective = ({ text, kind }: Token): boolean =>
  kind === 'word' && (connectives as readonly string[]).includes(text.toLowerCase());

/** The words since the last mark or connective: a name of several words is completed as a whole. */
function nameHere({ before, tokens, here }: Rest, from = 0): Rest['here'] {
  let start = before.length;
  for (let i = tokens.length - 1; i >= 0; i--) {
    const token = tokens[i] as Token;
    const isOpen = token.end === before.length && token.kind === 'word';
    if (token.kind !== 'word' || token.start < from || (isConnective(token) && !isOpen)) break;
    start = token.start;
  }
  return { from: start, lastWord: here.lastWord, typed: before.slice(start) };
}

function ingredientPlace(rest: Rest, all: readonly Token[]): Place {
  const { before, here } = rest;
  const comma = commaOutside(all);
  const guard = guardPlace(rest);
  if (guard) return guard;
  const open = openParenthesis(all);
  if (open) return overridePlace(rest, open);
  const quantityEnd = endOfQuantity(all, before);
  if (comma) {
    const name = before.slice(quantityEnd, comma.start).trim();
    const since = rest.tokens.filter(({ start }) => start > (lastComma(all)?.start ?? 0));
    const is = since.findIndex(({ text }) => text.toLowerCase() === 'is');
    if (is >= 0 && (since[is]?.end ?? 0) < before.length) return { ...nameHere(rest, since[is]?.end), at: 'kind' };
    return { ...nameHere(rest), at: 'attribute', name };
  }
  const afterNumber = before.slice(0, here.lastWord).trimEnd();
  if (/[\d½¼¾⅓⅔⅛⅜⅝⅞]$/.test(afterNumber) && all.every((token) => !/\p{L}/u.test(token.text) || token.start >= here.lastWord))
    return { ...here, at: 'unit' };
  const name = nameHere(rest, quantityEnd);
  return { ...name, at: 'ingredient' };
}

/** Behind number and unit, and behind the overrides where there are some. */
function endOfQuantity(tokens: readonly Token[], before: string): number {
  let end = 0;
  for (const token of tokens) {
    const isNumber = /^[\d½¼¾⅓⅔⅛⅜⅝⅞.,/–-]+/.test(token.text) || token.text === '/' || token.text === '.';
    const isUnit = token.kind === 'word' && unitOf(token.text.toLowerCase()) !== undefined;
    if (isNumber || (isUnit && token.end < before.length) || token.text === 'each' || token.text === 'some') end = token.end;
    else break;
  }
  const close = before.lastIndexOf(')');
  return Math.max(end, close + 1);
}

function stepPlace(verb: string, rest: Rest): Place {
  const { tokens, before } = rest;
  const guard = guardPlace(rest);
  if (guard) return guard;
  const open = openParenthesis(tokens);
  if (open) return overridePlace(rest, open);
  const done = tokens.filter((token) => token.end < before.length || token.kind !== 'word');
  const used = done.filter(isConnective).map(({ text }) => text.toLowerCase());
  const word = used.at(-1) ?? null;
  const mentioned = namesIn(done);
  if (word === null || word === 'and' || word === 'of') return { ...nameHere(rest), at: 'operand', verb, mentioned };
  return { ...nameHere(rest), at: 'clause', verb, word, used, mentioned };
}

/** Keys of the names that a mark or a connective ends; one still being typed is none. */
function namesIn(tokens: readonly Token[]): readonly string[] {
  const names: string[] = [];
  let words: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'word' && !isConnective(token)) words.push(token.text);
    else {
      if (words.length > 0) names.push(nameKey(words.join(' ')));
      words = [];
      if (token.kind === 'quoted') names.push(nameKey(token.text.slice(1, -1)));
    }
  }
  return names;
}

function guardPlace(rest: Rest): Place | null {
  const { tokens, before } = rest;
  const at = tokens.findLastIndex(
    (token) => isConnective(token) && (token.text === 'when' || token.text === 'unless') && token.end < before.length,
  );
  if (at < 0 || tokens.slice(at + 1).some((token) => isConnective(token) && token.end < before.length)) return null;
  return {
    ...nameHere(rest, tokens[at]?.end),
    at: 'guard',
    given: namesIn(tokens.slice(at + 1).filter(({ end }) => end < before.length)),
  };
}

function overridePlace(rest: Rest, open: Token): Place {
  const inside = rest.tokens.filter(({ start }) => start > open.start);
  const since = inside.slice(inside.findLastIndex(({ text }) => text === ',') + 1);
  const isFirst = since.filter(({ end }) => end < rest.before.length).length === 0;
  return { ...nameHere(rest, open.end), at: isFirst ? 'override' : 'nowhere' };
}

function headerPlace(word: string, rest: Rest): Place {
  const guard = guardPlace(rest);
  if (guard) return guard;
  const done = rest.tokens.filter(({ end }) => end < rest.before.length);
  return { ...nameHere(rest), at: 'header', word, connective: done.filter(isConnective).at(-1)?.text.toLowerCase() ?? null };
}

function takePlace(rest: Rest): Place {
  const { tokens, before } = rest;
  const open = tokens.at(-1);
  if (open?.kind === 'open quote') return quotedPlace(open, before);
  const from = tokens.find((token) => isConnective(token) && token.text === 'from' && token.end < before.length);
  if (from) return { ...rest.here, at: 'file', quoted: false };
  const nameSince = nameHere(rest);
  return { ...nameSince, at: 'take name', file: null };
}

/** Inside quotes: a path, or behind `#` a title. */
function quotedPlace(open: Token, before: string): Place {
  const inside = before.slice(open.start + 1);
  const mark = inside.indexOf('#');
  const from = open.start + 1 + (mark < 0 ? 0 : mark + 1);
  const here = { from, lastWord: from, typed: before.slice(from) };
  return mark < 0 ? { ...here, at: 'file', quoted: true } : { ...here, at: 'title', file: inside.slice(0, mark) };
}

function requestPlace(word: string, rest: Rest): Place {
  const { tokens, before, here } = rest;
  const open = tokens.at(-1);
  if (open?.kind === 'open quote') return quotedPlace(open, before);
  const done = tokens.filter((token) => token.end < before.length || token.kind !== 'word');
  const file = done.findLast(({ kind }) => kind === 'quoted')?.text.slice(1, -1) ?? null;
  const since = done.slice(done.findLastIndex(({ kind }) => kind === 'quoted') + 1);
  return { ...here, at: 'request', word, connective: since.filter(isConnective).at(-1)?.text.toLowerCase() ?? null, file };
}

const factWord = (text: string): string =>
  /^(milk fat|cocoa butter|other fat|other sugars|\S+)/i.exec(text)?.[1]?.toLowerCase() ?? '';

/** Where the code being typed begins, behind `allow` or a comma. */
function codeStart(before: string): number {
  let start = before.length;
  while (start > 0 && /[\w-]/.test(before.charAt(start - 1))) start--;
  return start;
}

const isInComment = (tokens: readonly Token[]): boolean => tokens.some(({ kind, text }) => kind === 'mark' && text === '//');

const commaOutside = (tokens: readonly Token[]): Token | undefined => {
  let depth = 0;
  return tokens.find(({ kind, text }) => {
    if (kind !== 'mark') return false;
    if (text === '(') depth += 1;
    if (text === ')') depth -= 1;
    return text === ',' && depth === 0;
  });
};

const lastComma = (tokens: readonly Token[]): Token | undefined =>
  tokens.findLast(({ kind, text }) => kind === 'mark' && text === ',');

function openParenthesis(tokens: readonly Token[]): Token | null {
  let open: Token | null = null;
  for (const token of tokens)
    if (token.kind === 'mark' && token.text === '(') open = token;
    else if (token.kind === 'mark' && token.text === ')') open = null;
  return open;
}

/** Words, marks and quoted text; a `//` behind a space ends the line. */
function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  const pattern = /"[^"]*("?)|\/\/|[\p{L}\p{M}\p{N}°%½¼¾⅓⅔⅛⅜⅝⅞'’-]+|\S/gu;
  for (const { 0: found, 1: close, index } of text.matchAll(pattern)) {
    const isQuote = found.startsWith('"');
    const kind = isQuote
      ? close === '"'
        ? 'quoted'
        : 'open quote'
      : /^[\p{L}\p{M}\p{N}°%½¼¾⅓⅔⅛⅜⅝⅞]/u.test(found)
        ? 'word'
        : 'mark';
    tokens.push({ text: found, start: index, end: index + found.length, kind });
  }
  return tokens;
}
