/** Turns the parser's exceptions into one sentence for a cook: what was expected here, and what stands here instead. */

import type { IParserErrorMessageProvider, IRecognitionException, IToken, TokenType } from 'chevrotain';
import { shown } from '../scanner/scan.ts';
import { CommaToken, OpenToken, StrayToken, type Token, UnlessToken, WhenToken } from '../scanner/tokens.ts';
import type { LineFix, Problem } from '../tree.ts';
import { clauses } from '../vocabulary/clauses.ts';

/** The provider names what was expected only; `problemOf` makes the sentence, since it knows the line. */
export function expectations(onError: () => void): IParserErrorMessageProvider {
  const say = (expected: string | undefined): string => {
    onError();
    return expected ?? 'something else';
  };
  return {
    buildMismatchTokenMessage: ({ expected, ruleName }) => say(expected.name === 'EOF' ? leftover(ruleName) : labelOf(expected)),
    buildNotAllInputParsedMessage: ({ ruleName }) => say(leftover(ruleName)),
    buildNoViableAltMessage: ({ customUserDescription }) => say(customUserDescription),
    buildEarlyExitMessage: ({ customUserDescription }) => say(customUserDescription),
  };
}

/** One sentence: what was expected, and what stands there. */
export function problemOf(error: IRecognitionException & { previousToken?: IToken }, text: string, lineEnd: number): Problem {
  const token = error.token as Token;
  const before = neighbourBefore(error.previousToken as Token | undefined, token);
  const ends = Number.isNaN(token.startOffset);
  const goesOn = clauses.find((row) => row.word === before?.tokenType.name);
  if (ends) {
    const message =
      goesOn === undefined
        ? `The line ends where ${error.message} was expected.`
        : `The line ends after \`${goesOn.word}\`, which goes on as in \`${goesOn.example}\`.`;
    return { code: 'syntax', start: Math.max(0, lineEnd - 1), end: lineEnd, message, fixes: [] };
  }
  const span = { start: token.startOffset, end: token.endOffset };
  const found = shown(text.slice(span.start, span.end));
  if (before?.tokenType === CommaToken && isWord(token)) {
    return { code: 'syntax', ...span, message: `No comma stands before ${found}.`, fixes: [withoutComma(before, span.start)] };
  }
  const special = inDays(text, span) ?? specialOf(found, token, error.message);
  if (special !== null) return { code: 'syntax', ...span, ...special };
  if (goesOn !== undefined) {
    const message = `\`${goesOn.word}\` goes on as in \`${goesOn.example}\`, not with ${found}.`;
    return { code: 'syntax', ...span, message, fixes: [] };
  }
  const fixes = token.tokenType === StrayToken && isFullStop(text, span, lineEnd) ? [remove(span.start, span.end)] : [];
  return { code: 'syntax', ...span, message: `Here ${error.message} was expected, not ${found}.`, fixes };
}

/** The token before, where it is one: recovery may have gone on past the error by the time it is told. */
function neighbourBefore(before: Token | undefined, token: Token): Token | undefined {
  return before !== undefined && (Number.isNaN(token.startOffset) || before.endOffset <= token.startOffset) ? before : undefined;
}

const daysIn: Readonly<Record<string, number>> = { week: 7, weeks: 7, month: 30, months: 30 };

/** `3 weeks`, `2 months`: the longest unit of time is the day. */
function inDays(text: string, span: { start: number; end: number }): Pick<Problem, 'message' | 'fixes'> | null {
  const word = text.slice(span.start, span.end).toLowerCase();
  const days = Object.hasOwn(daysIn, word) ? daysIn[word] : undefined;
  const count = days === undefined ? null : /(\d{1,3})\s*$/.exec(text.slice(0, span.start));
  if (days === undefined || count === null) return null;
  const written = `${Number(count[1]) * days} d`;
  const edits = [{ start: count.index, end: span.end, text: written }];
  return { message: `The longest unit of time is the day: \`${written}\`.`, fixes: [{ title: `Write ${written}`, edits }] };
}

/** What people write that the notation says otherwise. */
function specialOf(found: string, token: Token, expected: string): Pick<Problem, 'message' | 'fixes'> | null {
  if (found.startsWith('`;'))
    return { message: 'One step stands on one line: what is after the `;` is a line of its own.', fixes: [] };
  if (expected === lineEnds && (token.tokenType === WhenToken || token.tokenType === UnlessToken)) {
    return { message: `This line holds for every choice and takes no ${found}.`, fixes: [] };
  }
  if (token.tokenType === OpenToken) {
    const message = 'Parentheses hold values for other choices, as in `4 h (mould 6 h)`; a remark is a note line with `|`.';
    return { message, fixes: [] };
  }
  return null;
}

/** What may follow a line that could have ended, by the rule that read it. */
function leftover(ruleName: string): string {
  return leftovers[ruleName] ?? lineEnds;
}

const lineEnds = 'the end of the line';

const leftovers: Readonly<Record<string, string>> = {
  step: 'a clause such as `to`, `for`, `until` or `into`, or the end of the line',
  ingredientLine: 'a comma, `when` or the end of the line',
  equipmentLine: 'a comma or the end of the line',
  requestLine: '`for`, `with`, `ready`, a comma or the end of the line',
};

function labelOf(type: TokenType): string {
  return type.LABEL ?? type.name;
}

function isWord(token: Token): boolean {
  return /^[a-z]/.test(token.tokenType.name);
}

function isFullStop(text: string, span: { start: number; end: number }, lineEnd: number): boolean {
  return span.end === lineEnd && /^[.;!]$/.test(text.slice(span.start, span.end));
}

function withoutComma(comma: Token, next: number): LineFix {
  return { title: 'Remove the comma', edits: [{ start: comma.startOffset, end: next, text: ' ' }] };
}

function remove(start: number, end: number): LineFix {
  return { title: 'Remove it', edits: [{ start, end, text: '' }] };
}
