/** What a word of the notation means where it stands: verbs with what they need, clauses, headers, blocks, units, signs, tools. */
import {
  blocks,
  type Clause,
  type ClauseUse,
  clauses,
  facts,
  headers,
  type Line,
  media,
  peaks,
  phases,
  type Span,
  signs,
  states,
  tools,
  unitOf,
  usesOf,
  type VerbRow,
  verbOf,
} from 'nappe-grammar';
import { asText, bullets, code, paragraphs } from './markup.ts';

export interface WordHover {
  readonly markdown: string;
  readonly span: Span;
}

export function wordHover(line: Line, column: number): WordHover | null {
  const on = (span: Span | null | undefined): span is Span =>
    span !== null && span !== undefined && span.start <= column && column <= span.end;
  switch (line.kind) {
    case 'step': {
      const row = verbOf(line.verb);
      if (row && on(line.verbSpan)) return { markdown: verbText(row), span: line.verbSpan };
      const clause = line.clauses.find(on);
      return clause ? (insideClause(clause, line.text, on) ?? clauseHover(clause)) : unitHover(line, column);
    }
    case 'block':
    case 'take':
    case 'request': {
      const word = line.kind === 'take' ? 'take' : line.word;
      const span = line.kind === 'block' ? line.wordSpan : { start: line.span.start, end: line.span.start + word.length };
      return on(span) ? rowHover(blocks, word, span) : unitHover(line, column);
    }
    case 'header':
      return on(line.wordSpan) ? rowHover(headers, line.word, line.wordSpan) : unitHover(line, column);
    case 'fact':
      return on(line.wordSpan) ? rowHover(facts, line.word, line.wordSpan) : unitHover(line, column);
    case 'ingredient': {
      const attribute = line.attributes.find(on);
      if (attribute?.kind === 'phase') return meaningHover(phases, attribute.phase, attribute);
      if (attribute?.kind === 'state') return meaningHover(states, attribute.state, attribute);
      return unitHover(line, column);
    }
    default:
      return unitHover(line, column);
  }
}

/** What a verb does, needs and takes. */
export function verbText(row: VerbRow): string {
  const needs = row.needs.map((need) => need.map((one) => needWords[one] ?? code(wordOf(one as ClauseUse))).join(' or '));
  const takes = [...new Set(usesOf(row).map(wordOf))].map(code);
  return paragraphs(
    `**${row.word}** · ${row.family}`,
    asText(row.meaning),
    bullets([
      needs.length > 0 && `Needs ${needs.join(', and ')}`,
      `Takes ${takes.join(' ')}`,
      row.amount && 'Takes an amount for each vessel',
    ]),
  );
}

const needWords: Partial<Record<string, string>> = {
  operand: 'something to act on',
  reading: 'a reading',
  text: 'a text in quotes',
};

const wordOf = (use: ClauseUse): string => clauses.find((row) => row.use === use)?.word ?? use;

function insideClause(clause: Clause, text: string, on: (span: Span) => boolean): WordHover | null {
  if (clause.word === 'until' && on(clause.sign)) return meaningHover(signs, clause.sign.text, clause.sign);
  if (clause.word === 'with tool' && on(clause.tool)) return meaningHover(tools, clause.tool.text, clause.tool);
  if (clause.word === 'to' && 'kind' in clause.target.base && clause.target.base.kind === 'peak' && on(clause.target.base)) {
    const { low, high } = clause.target.base;
    const meanings = peaks
      .filter(({ word }) => word === low || word === high)
      .map(({ word, meaning }) => `**${word}**: ${asText(meaning)}`);
    return { markdown: bullets(meanings), span: clause.target.base };
  }
  if (clause.word === 'in' && 'kind' in clause.target && on(clause.target)) {
    if (clause.target.kind === 'medium') return meaningHover(media, clause.target.medium, clause.target);
    if (clause.target.kind === 'additions') {
      const tool = clause.target.tools.find(on);
      return tool ? meaningHover(tools, tool.text, tool) : null;
    }
  }
  return on(clause.wordSpan) ? null : unitIn(text, clause, on);
}

function clauseHover(clause: Clause): WordHover | null {
  const rows = clauses.filter(({ word }) => word === clause.word.split(' ')[0]);
  const row = rows.find(({ use }) => use === finerUse(clause)) ?? rows[0];
  return row
    ? { markdown: paragraphs(`**${row.word}**: ${asText(row.meaning)}`, `As in ${code(row.example)}.`), span: clause }
    : null;
}

function finerUse(clause: Clause): string {
  if (clause.word === 'in') return 'kind' in clause.target ? `in ${clause.target.kind}` : 'in name';
  if (clause.word !== 'to') return clause.word;
  const { base } = clause.target;
  return `to ${base.kind === 'quantity' ? 'mass' : base.kind}`;
}

interface Row {
  readonly word: string;
  readonly meaning: string;
  readonly example?: string;
  readonly also?: readonly string[];
}

function rowHover(rows: readonly Row[], word: string, span: Span): WordHover | null {
  const row = rows.find((one) => one.word === word);
  return row
    ? { markdown: paragraphs(`**${row.word}**: ${asText(row.meaning)}`, row.example && `As in ${code(row.example)}.`), span }
    : null;
}

function meaningHover(rows: readonly Row[], word: string, span: Span): WordHover | null {
  const key = word.toLowerCase();
  const row = rows.find((one) => one.word === key || one.also?.includes(key));
  return row ? { markdown: `**${row.word}**: ${asText(row.meaning)}`, span } : null;
}

const unitHover = (line: Line, column: number): WordHover | null =>
  line.kind === 'note' || line.kind === 'comment' || line.kind === 'bad'
    ? null
    : unitIn(line.text, line.span, ({ start, end }) => start <= column && column <= end);

/** The unit word under the cursor, behind a number. */
function unitIn(text: string, { start, end }: Span, on: (span: Span) => boolean): WordHover | null {
  for (const found of text.slice(start, end).matchAll(/\d\s?([°%]?[A-Za-z%]*)/g)) {
    const [whole, word = ''] = found;
    const from = start + found.index + whole.length - word.length;
    const span = { start: from, end: from + word.length };
    const row = word === '' ? undefined : unitOf(word.toLowerCase());
    if (row && on(span)) return { markdown: `**${row.word}**: ${asText(row.meaning)}`, span };
  }
  return null;
}
