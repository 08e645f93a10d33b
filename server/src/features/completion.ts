/** Completion that knows the place: what may stand where the cursor is, what is unused first, its documentation when asked for. */
import { findKind, locate, ruleOf, rules } from 'nappe';
import {
  blocks,
  clauses,
  contextAt,
  facts,
  headers,
  media,
  peaks,
  phases,
  plainTemplate,
  signs,
  singularNoun,
  snippetOf,
  states,
  tools,
  unitOf,
  type VerbRow,
  verbOf,
} from 'nappe-grammar';
import { type CompletionItem, type CompletionList, InsertTextFormat, type Position } from 'vscode-languageserver';
import { blockAt, choicesOf, groupOf, groupsOf } from '../names/groups.ts';
import { declaredIn } from '../names/things.ts';
import type { Analysis } from '../project.ts';
import { rangeOn, within } from '../ranges.ts';
import { folderOf, relativePath } from '../uris.ts';
import { type About, CompletionItemKind, type Proposal, proposal } from './completion-item.ts';
import { ingredientNames, kindNames, matterNames, takeable } from './completion-names.ts';
import { type Place, placeOf } from './completion-place.ts';
import {
  attributeWords,
  clauseValues,
  clauseWords,
  factValues,
  firstWords,
  headerValues,
  unitWords,
  vesselWords,
} from './completion-words.ts';
import { yieldProposals } from './completion-yields.ts';
import { verbText } from './hover-words.ts';
import { kindText } from './kind-text.ts';
import { asText, code, paragraphs } from './markup.ts';

export interface CompletionAbilities {
  readonly snippets: boolean;
}

/** More than this a person does not scroll through; the list is then asked for again as letters are typed. */
const most = 400;

export function completion(analysis: Analysis, position: Position, { snippets }: CompletionAbilities): CompletionList {
  const { line, character } = within(analysis, position);
  const text = analysis.file.lines[line]?.text ?? '';
  if (analysis.isMarkdown && !isInFence(analysis, line)) return { isIncomplete: false, items: [] };
  const place = placeOf(text, character, contextAt(analysis.file, line));
  const proposals = proposalsAt(analysis, line, place);
  const items = proposals
    .sort((a, b) => a.rank - b.rank)
    .slice(0, most)
    .map((one, i) => itemOf(one, i, line, character, snippets));
  const isIncomplete = place.at === 'ingredient' || place.at === 'kind' || proposals.length > most;
  return { isIncomplete, items };
}

/** A blank line outside the fences is Markdown's own. */
function isInFence({ file, text }: Analysis, line: number): boolean {
  if (file.lines[line]?.kind !== 'blank') return true;
  let open = false;
  const lines = text.split('\n');
  for (let number = 0; number < line; number++) {
    const fence = /^ {0,3}(`{3,}|~{3,})\s*(\S*)/.exec(lines[number] ?? '');
    if (fence) open = !open && fence[2]?.toLowerCase() === 'nappe';
  }
  return open;
}

function proposalsAt(analysis: Analysis, line: number, place: Place): Proposal[] {
  const { file, project, path } = analysis;
  const { from, lastWord, typed } = place;
  const block = blockAt(file, line);
  switch (place.at) {
    case 'line start':
      return firstWords(contextAt(file, line), block.heading?.word ?? null, from);
    case 'unit':
      return [
        ...unitWords(from),
        ...ingredientNames(analysis, line, from, typed).map((one) => ({ ...one, rank: one.rank + 10 })),
      ];
    case 'ingredient':
      return [...ingredientNames(analysis, line, from, typed), ...(typed.includes(' ') ? [when(lastWord)] : [])];
    case 'attribute':
      return [...attributeWords(place.name, from), when(lastWord)];
    case 'kind':
      return kindNames(from, typed);
    case 'override':
      return values(analysis, line, from, []);
    case 'guard':
      return values(analysis, line, from, place.given);
    case 'operand': {
      const verb = verbOf(place.verb);
      const names = matterNames(analysis, line, from, place.mentioned);
      return verb ? [...names, ...clauseWords(verb, [], lastWord, typed === '' ? 40 : 30), when(lastWord)] : names;
    }
    case 'clause': {
      const verb = verbOf(place.verb);
      return verb ? clauseProposals(analysis, line, place, verb) : [];
    }
    case 'header': {
      const names = [...declaredIn(block).values()].map(({ name }) => name.text);
      return [
        ...headerValues(place.word, place.connective, from, names),
        ...(typed.includes(' ') || place.connective ? [when(lastWord)] : []),
      ];
    }
    case 'fact':
      return place.word === 'like' ? kindNames(from, typed) : factValues(place.word, from);
    case 'take':
    case 'take name':
      return [
        ...takeable(analysis, from, (other) => relativePath(folderOf(path), other), takenFile(analysis, line)),
        proposal('from', lastWord, 50, CompletionItemKind.Keyword),
      ];
    case 'file':
      return files(analysis, place);
    case 'title': {
      const located = locate(place.file, path, project.root);
      const other = 'path' in located ? project.fileAt(located.path) : null;
      return titles(other).map((title) => proposal(title, from, 0, CompletionItemKind.Class));
    }
    case 'request':
      return requestProposals(analysis, place);
    case 'code':
      return codes(analysis, line, from);
    case 'nowhere':
      return [];
  }
}

const when = (from: number): Proposal =>
  proposal('when', from, 60, CompletionItemKind.Keyword, {
    text: 'when <value>',
    isTemplate: true,
    note: 'only for these choices',
  });

function clauseProposals(analysis: Analysis, line: number, place: Extract<Place, { at: 'clause' }>, verb: VerbRow): Proposal[] {
  const { from, lastWord, word, used, mentioned, typed } = place;
  const isFresh = !typed.trimEnd().includes(' ') && !typed.endsWith(' ');
  const proposals = [...clauseValues(verb, word, from)];
  if (word === 'into' || word === 'over' || word === 'in' || (word === 'with' && verb.takes.includes('with')))
    proposals.push(...matterNames(analysis, line, from, mentioned));
  if (word === 'into' || word === 'over' || word === 'in')
    proposals.push(...vesselWords(from, madeNouns(analysis, line), 25), ...equipment(analysis, from, 25));
  if (word === 'using') proposals.push(...equipment(analysis, from, 0));
  // A value that is there already is followed by another clause.
  if (!isFresh || typed === '') proposals.push(...clauseWords(verb, used, lastWord, typed === '' ? 80 : 30), when(lastWord));
  return proposals;
}

function values({ file }: Analysis, line: number, from: number, given: readonly string[]): Proposal[] {
  return choicesOf(groupOf(file, blockAt(file, line))).flatMap(({ line: header }) =>
    header.values
      .filter(({ key }) => !given.includes(key))
      .map(({ text }) => proposal(text, from, 0, CompletionItemKind.EnumMember, { note: header.name.text })),
  );
}

/** Nouns of `makes` in the formula of a line. */
function madeNouns({ file }: Analysis, line: number): readonly string[] {
  const lines = groupOf(file, blockAt(file, line)).head?.lines ?? [];
  return lines.flatMap((node) =>
    node.kind === 'header' && node.word === 'makes' && node.yield.noun ? [singularNoun(node.yield.noun.text)] : [],
  );
}

function equipment({ file }: Analysis, from: number, rank: number): Proposal[] {
  return file.lines.flatMap((node) =>
    node.kind === 'equipment' ? [proposal(node.name.text, from, rank, CompletionItemKind.Module, { note: 'equipment' })] : [],
  );
}

function takenFile({ file, path, project }: Analysis, line: number): string | null {
  const node = file.lines[line];
  if (node?.kind !== 'take' || !node.from) return null;
  const located = locate(node.from.path, path, project.root);
  return 'path' in located ? located.path : null;
}

function files({ project, path }: Analysis, { from, quoted }: Extract<Place, { at: 'file' }>): Proposal[] {
  return project
    .paths()
    .filter((other) => other !== path && other.endsWith('.nappe'))
    .map((other) => {
      const written = relativePath(folderOf(path), other);
      return proposal(written, from, written.startsWith('..') ? 1 : 0, CompletionItemKind.File, {
        text: quoted ? written : `"${written}"`,
      });
    });
}

const titles = (file: Analysis['file'] | null): readonly string[] =>
  file ? groupsOf(file).flatMap(({ head }) => head?.heading?.name?.text.trim() ?? []) : [];

function requestProposals(analysis: Analysis, { word, connective, file, from }: Extract<Place, { at: 'request' }>): Proposal[] {
  const { project, path } = analysis;
  const located = file === null ? null : locate(file.split('#')[0] ?? '', path, project.root);
  const other = located && 'path' in located ? project.fileAt(located.path) : file === null ? analysis.file : null;
  if (connective === 'with' && word !== 'compare' && other)
    return groupsOf(other).flatMap((group) =>
      choicesOf(group).flatMap(({ line: header }) =>
        header.values.map(({ text }) => proposal(text, from, 0, CompletionItemKind.EnumMember, { note: header.name.text })),
      ),
    );
  if (connective === 'for' && other) return yieldProposals(other, from);
  if (file === null || (word === 'compare' && connective === 'with'))
    return files(analysis, { ...placeless(from), at: 'file', quoted: false });
  const words = word === 'compare' ? ['with'] : word === 'timeline' ? ['for', 'with', 'ready'] : ['for', 'with'];
  return words.map((one, i) => proposal(one, from, i, CompletionItemKind.Keyword));
}

const placeless = (from: number) => ({ from, lastWord: from, typed: '' });

/** Codes to allow: those raised on the next line first. */
function codes({ checked, path }: Analysis, line: number, from: number): Proposal[] {
  const raised = new Set(
    checked.diagnostics.filter((one) => one.file === path && one.line > line && one.line <= line + 3).map((one) => one.code),
  );
  return rules
    .filter((rule) => rule.code !== 'syntax')
    .map((rule) =>
      proposal(rule.code, from, raised.has(rule.code) ? 0 : 1, CompletionItemKind.Constant, {
        note: rule.title,
        about: { what: 'code', word: rule.code },
      }),
    );
}

function itemOf(one: Proposal, index: number, line: number, column: number, snippets: boolean): CompletionItem {
  const inserted = one.text ?? one.label;
  const newText = !one.isTemplate ? inserted : snippets ? snippetOf(inserted) : plainTemplate(inserted);
  return {
    label: one.label,
    kind: one.kind,
    sortText: String(index).padStart(4, '0'),
    ...(one.note !== undefined && { detail: one.note }),
    ...(one.filter !== undefined && { filterText: one.filter }),
    ...(one.isTemplate && snippets && { insertTextFormat: InsertTextFormat.Snippet }),
    ...(one.about && { data: one.about }),
    textEdit: { range: rangeOn(line, { start: Math.min(one.from, column), end: column }), newText },
  };
}

/** The documentation of a proposal, as Markdown; null where there is none. */
export function documentationOf(data: unknown): string | null {
  const { what, word } = aboutFrom(data) ?? {};
  if (what === undefined || word === undefined) return null;
  switch (what) {
    case 'verb': {
      const row = verbOf(word);
      return row ? verbText(row) : null;
    }
    case 'kind': {
      const kind = findKind(word);
      return kind ? kindText(kind) : null;
    }
    case 'code': {
      const rule = ruleOf(word);
      return rule ? paragraphs(`**${asText(rule.title)}**`, asText(rule.why), asText(rule.remedy)) : null;
    }
    case 'unit': {
      const row = unitOf(word.toLowerCase());
      return row ? asText(row.meaning) : null;
    }
    case 'clause': {
      const row = clauses.find(({ use }) => use === word);
      return row ? paragraphs(asText(row.meaning), `As in ${code(row.example)}.`) : null;
    }
    default: {
      const row = tables[what].find((one) => one.word === word);
      return row ? paragraphs(asText(row.meaning), row.example && `As in ${code(row.example)}.`) : null;
    }
  }
}

interface MeaningRow {
  readonly word: string;
  readonly meaning: string;
  readonly example?: string;
}

const tables: Record<Exclude<About['what'], 'verb' | 'kind' | 'code' | 'unit' | 'clause'>, readonly MeaningRow[]> = {
  header: headers,
  block: blocks,
  fact: facts,
  sign: signs,
  tool: tools,
  medium: media,
  peak: peaks,
  phase: phases,
  state: states,
};

/** What a client sends back may be anything. */
function aboutFrom(data: unknown): About | null {
  if (typeof data !== 'object' || data === null || !('what' in data) || !('word' in data)) return null;
  const { what, word } = data;
  const known = typeof what === 'string' && (what in tables || ['verb', 'kind', 'code', 'unit', 'clause'].includes(what));
  return known && typeof word === 'string' ? { what: what as About['what'], word } : null;
}
