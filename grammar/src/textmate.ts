/** The TextMate grammar, made from the vocabulary: colours for editors before, or without, the language server. */

import { blocks } from './vocabulary/blocks.ts';
import { connectives } from './vocabulary/connectives.ts';
import { allergenWords, facts } from './vocabulary/facts.ts';
import { headers } from './vocabulary/headers.ts';
import { peaks, phases, states } from './vocabulary/states.ts';
import { units } from './vocabulary/units.ts';
import { verbs } from './vocabulary/verbs.ts';

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly Rule[] }>>;
  readonly beginCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
  readonly contentName?: string;
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, Rule>>;
}

/** What surrounds a word: neither letters nor digits nor a joining hyphen. */
const before = "(?<![\\p{L}\\p{M}\\d\\-'])";
const after = "(?![\\p{L}\\p{M}\\d\\-'])";
const lineStart = '^\\x{FEFF}?\\s*';
const number = '(?:\\d+(?:\\.\\d+|/\\d+)?(?:\\s+\\d+/\\d+)?[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]?|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])';

export function textMateGrammar(): TextMateGrammar {
  return {
    name: 'Nappe',
    scopeName: 'source.nappe',
    fileTypes: ['nappe'],
    patterns: ['note', 'comment', 'freeText', 'block', 'header', 'ingredient', 'fact', 'step', 'rest'].map(include),
    repository: {
      note: {
        begin: `${lineStart}(\\|)`,
        end: '$',
        beginCaptures: { 1: { name: 'punctuation.definition.quote.nappe' } },
        contentName: 'markup.quote.nappe',
      },
      comment: { name: 'comment.line.double-slash.nappe', match: '(?:(?<=\\s)|^)//.*$' },
      string: { name: 'string.quoted.double.nappe', match: '"[^"]*"|“[^”"]*”' },
      freeText: {
        match: `${lineStart}(?i:(formula)|(by|version))\\s+((?:(?!\\s//).)+)`,
        captures: {
          1: { name: 'keyword.control.block.nappe' },
          2: { name: 'keyword.other.header.nappe' },
          3: { name: 'entity.name.section.nappe' },
        },
      },
      block: opened(
        'keyword.control.block.nappe',
        blocks.map((row) => row.word),
        'entity.name.section.nappe',
      ),
      header: opened(
        'keyword.other.header.nappe',
        headers.map((row) => row.word),
        null,
      ),
      fact: opened(
        'variable.parameter.fact.nappe',
        facts.map((row) => row.word),
        null,
      ),
      step: opened(
        'entity.name.function.nappe',
        verbs.map((row) => row.word),
        null,
      ),
      ingredient: {
        match: `${lineStart}((?:${number}(?:\\s*(?:-|–|\\.\\.)\\s*${number})?\\s*(?:${unitWords()})?|(?i:some))${after})`,
        captures: { 1: { patterns: [include('measure'), { name: 'constant.language.some.nappe', match: '(?i:some)' }] } },
      },
      measure: {
        match: `([-−]?${number}(?:\\s*(?:-|–|\\.\\.|x|×)\\s*[-−]?${number})*)(?:\\s*((?:${unitWords()})${after}|%|°\\s*[CFcf]))?`,
        captures: { 1: { name: 'constant.numeric.nappe' }, 2: { name: 'keyword.other.unit.nappe' } },
      },
      guard: { name: 'keyword.control.conditional.nappe', match: word(['when', 'unless']) },
      connective: {
        name: 'keyword.operator.word.nappe',
        match: word(connectives.filter((each) => each !== 'when' && each !== 'unless')),
      },
      attribute: {
        match: `(,)\\s*(${alternatives([...phases, ...states].map((row) => row.word))}|is|as|pH)${after}`,
        captures: { 1: { name: 'punctuation.separator.nappe' }, 2: { name: 'storage.modifier.attribute.nappe' } },
      },
      peak: {
        name: 'constant.language.peak.nappe',
        match: `${before}(?i:${alternatives(peaks.map((row) => row.word))})(?:-(?i:${alternatives(peaks.map((row) => row.word))}))?(?=\\s+peaks?)`,
      },
      allergen: {
        name: 'constant.language.allergen.nappe',
        match: `(?<=free from )(?:${alternatives(allergenWords)})(?:,\\s*(?:${alternatives(allergenWords)}))*`,
      },
      rest: {
        patterns: ['comment', 'string', 'guard', 'allergen', 'attribute', 'peak', 'measure', 'connective'].map(include),
      },
    },
  };
}

function include(name: string): Rule {
  return { include: `#${name}` };
}

/** A word at the start of a line, and a name after it where it opens one. */
function opened(scope: string, words: readonly string[], nameScope: string | null): Rule {
  const opener = `${lineStart}((?i:${alternatives(words)}))${after}`;
  if (nameScope === null) return { match: opener, captures: { 1: { name: scope } } };
  return {
    match: `${opener}(?:\\s+((?:(?!\\s//|\\s(?:when|unless|from|as|for|with)\\s)[^"\\n])+))?`,
    captures: { 1: { name: scope }, 2: { name: nameScope } },
  };
}

function word(words: readonly string[]): string {
  return `${before}(?i:${alternatives(words)})${after}`;
}

/** Longest first, so that no word hides a longer one that begins with it. */
function alternatives(words: readonly string[]): string {
  return [...new Set(words)]
    .sort((one, other) => other.length - one.length || (one < other ? -1 : 1))
    .map((each) => each.split('.').join('\\.'))
    .join('|');
}

function unitWords(): string {
  const words = units.flatMap((row) => [row.word, ...row.spellings]).filter((each) => each !== '%');
  return `(?i:${alternatives(words)})`;
}
