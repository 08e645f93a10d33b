/** Reads the lines that hold no notation: notes, and comments alone on their line. */

import { limits } from '../limits.ts';
import { wordEnd } from '../scanner/words.ts';
import type { CommentLine, NoteLine, Text } from '../tree.ts';

/** `| …`: everything after the bar and one space is Markdown. */
export function readNote(text: string, bar: number): NoteLine {
  const from = text[bar + 1] === ' ' ? bar + 2 : bar + 1;
  const span = { start: bar, end: bar + text.slice(bar).trimEnd().length };
  const markdown = text.slice(from);
  if (markdown.length <= limits.note) return { kind: 'note', text, span, comment: null, problems: [], markdown };
  const message = `A line of a note has at most ${limits.note} characters; this one has ${markdown.length}.`;
  const problems = [{ code: 'syntax' as const, message, ...span, fixes: [] }];
  return { kind: 'note', text, span, comment: null, problems, markdown: markdown.slice(0, limits.note) };
}

/** A comment line; `// allow CODE, CODE: reason` is read here. */
export function readAllow(text: string, comment: Text): CommentLine {
  const span = { start: comment.start, end: comment.end };
  return { kind: 'comment', text, span, comment, problems: [], allow: allowOf(text, comment) };
}

function allowOf(text: string, comment: Text): CommentLine['allow'] {
  const start = text.indexOf(comment.text, comment.start + 2);
  const word = wordEnd(text, start, comment.end);
  if (text.slice(start, word).toLowerCase() !== 'allow' || (text[word] !== ' ' && text[word] !== '\t')) return null;
  const colon = text.indexOf(':', word);
  const codesEnd = colon < 0 ? comment.end : colon;
  const codes = pieces(text, word, codesEnd);
  const reason = colon < 0 ? null : trimmed(text, colon + 1, comment.end);
  return { codes, reason };
}

function pieces(text: string, start: number, end: number): Text[] {
  const found: Text[] = [];
  let from = start;
  while (from <= end) {
    const comma = text.indexOf(',', from);
    const stop = comma < 0 || comma > end ? end : comma;
    const piece = trimmed(text, from, stop);
    if (piece !== null) found.push(piece);
    from = stop + 1;
  }
  return found;
}

function trimmed(text: string, start: number, end: number): Text | null {
  const written = text.slice(start, end);
  const from = end - written.trimStart().length;
  const bare = written.trim();
  return bare === '' ? null : { text: bare, quoted: false, start: from, end: from + bare.length };
}
