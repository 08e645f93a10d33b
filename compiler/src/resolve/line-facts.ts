/** Which lines of a block are takes, requests and allows: found once for an array of lines, however often the file is resolved. */
import type { CommentLine, Line, RequestLine, TakeLine } from 'nappe-grammar';

export interface LineFacts {
  readonly takes: readonly At<TakeLine>[];
  readonly requests: readonly At<RequestLine>[];
  readonly allows: readonly At<CommentLine>[];
}

export interface At<L extends Line> {
  readonly line: L;
  readonly index: number;
}

const known = new WeakMap<readonly Line[], LineFacts>();

export function factsOf(lines: readonly Line[]): LineFacts {
  const before = known.get(lines);
  if (before) return before;
  const takes: At<TakeLine>[] = [];
  const requests: At<RequestLine>[] = [];
  const allows: At<CommentLine>[] = [];
  lines.forEach((line, index) => {
    if (line.kind === 'take') takes.push({ line, index });
    else if (line.kind === 'request') requests.push({ line, index });
    else if (line.kind === 'comment' && line.allow !== null) allows.push({ line, index });
  });
  const facts = { takes, requests, allows };
  known.set(lines, facts);
  return facts;
}
