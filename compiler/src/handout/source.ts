/** Notation as highlighted text: the first word of a line, quantities, notes and comments set apart by what the grammar read. */
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Line, Span } from 'nappe-grammar';
import { plain } from '../card/text.ts';

export function sourceListing(lines: readonly Line[]): Element {
  const rows = lines.flatMap((line, index): ElementContent[] => [...(index === 0 ? [] : [textOf('\n')]), ...highlighted(line)]);
  return h('pre', { className: ['notation', 'scroll'], tabIndex: 0, ariaLabel: 'Notation' }, h('code', rows));
}

function highlighted(line: Line): ElementContent[] {
  if (line.kind === 'note' || line.kind === 'comment') return [h('span', { className: [line.kind] }, plain(line.text))];
  const marked = marksOf(line).sort((a, b) => a.start - b.start);
  const out: ElementContent[] = [];
  let at = 0;
  for (const { start, end, className } of marked) {
    if (start < at) continue;
    out.push(textOf(line.text.slice(at, start)), h('span', { className: [className] }, plain(line.text.slice(start, end))));
    at = end;
  }
  return [...out, textOf(line.text.slice(at))];
}

const textOf = (value: string): ElementContent => ({ type: 'text', value: value === '\n' ? value : plain(value) });

interface Mark extends Span {
  readonly className: 'word' | 'verb' | 'quantity' | 'comment';
}

function marksOf(line: Line): Mark[] {
  const marks: Mark[] = line.comment ? [{ start: line.comment.start, end: line.text.length, className: 'comment' }] : [];
  if ('wordSpan' in line) marks.push({ ...spanOf(line.wordSpan), className: 'word' });
  else if (line.kind === 'step') marks.push({ ...spanOf(line.verbSpan), className: 'verb' });
  else if (line.kind === 'ingredient') marks.push({ ...spanOf(line.quantity), className: 'quantity' });
  else if (line.kind === 'take' || line.kind === 'request') marks.push({ ...firstWord(line.text), className: 'word' });
  return marks;
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });

function firstWord(text: string): Span {
  const start = text.length - text.trimStart().length;
  const space = text.indexOf(' ', start);
  return { start, end: space < 0 ? text.length : space };
}
