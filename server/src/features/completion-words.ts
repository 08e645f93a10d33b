/** Proposals of the notation's own words: verbs, clauses, headers, blocks, units, and the values that go with them. */
import {
  allergenWords,
  blocks,
  type ClauseRow,
  clauses,
  facts,
  headers,
  type LineContext,
  levels,
  media,
  peaks,
  phases,
  shapes,
  signs,
  states,
  storages,
  tools,
  units,
  usesOf,
  type VerbRow,
  verbs,
  vessels,
} from 'nappe-grammar';
import { CompletionItemKind, type Proposal, proposal } from './completion-item.ts';
import { anyTime, keepTimes, kept, served, type Usual, usualAt, usualFor, usualTo } from './usual.ts';

/** What may open a line: in a formula's own block headers first, else steps. */
export function firstWords(context: LineContext, block: string | null, from: number): Proposal[] {
  if (context === 'ingredient')
    return [...facts.map((row) => template(row, from, 0, CompletionItemKind.Property, 'fact')), ...blockWords(from, 20)];
  if (context !== 'formula') return blockWords(from, 0);
  const inHead = block === 'formula';
  const inside = block !== null;
  return [
    ...(inside ? verbs.map((row) => template(row, from, inHead ? 10 : 0, CompletionItemKind.Function, 'verb')) : []),
    ...headers
      .filter(({ inComponent }) => inHead || (inside && inComponent))
      .map((row) => template(row, from, inHead ? 0 : 10, CompletionItemKind.Keyword, 'header')),
    ...blockWords(from, inside ? 20 : 0),
  ];
}

const blockWords = (from: number, rank: number): Proposal[] =>
  blocks.map((row) => template(row, from, rank, CompletionItemKind.Module, 'block'));

interface Row {
  readonly word: string;
  readonly template: string;
}

function template(
  row: Row,
  from: number,
  rank: number,
  kind: CompletionItemKind,
  what: 'verb' | 'header' | 'block' | 'fact',
): Proposal {
  const isTemplate = row.template.includes('<');
  return proposal(row.word, from, rank, kind, {
    text: row.template,
    isTemplate,
    about: { what, word: row.word },
    ...(row.template !== row.word && { note: plain(row.template) }),
  });
}

const plain = (text: string): string => text.replace(/<([^<>|]*)(?:\|[^<>]*)?>/g, '$1');

/** The clauses a verb takes that its line does not have yet. */
export function clauseWords(verb: VerbRow, used: readonly string[], from: number, rank: number): Proposal[] {
  const open = usesOf(verb).flatMap((use) =>
    clauses.filter((row) => row.use === use && (!used.includes(row.word) || row.word === 'with')),
  );
  return open.map((row) =>
    proposal(labelOf(row), from, rank, CompletionItemKind.Keyword, {
      text: row.template,
      isTemplate: row.template.includes('<'),
      note: row.example,
      filter: row.word,
      about: { what: 'clause', word: row.use },
    }),
  );
}

const labelOf = ({ template: text }: ClauseRow): string =>
  text.replace(/<([^<>]*)>/g, (_, inside: string) => inside.split('|')[0] ?? '');

/** What goes on after a clause word, names apart. */
export function clauseValues(verb: VerbRow, word: string, from: number): Proposal[] {
  const takes = usesOf(verb);
  const value = CompletionItemKind.Value;
  switch (word) {
    case 'to':
      return [
        ...(takes.includes('to peak')
          ? peaks.map((row) =>
              proposal(`${row.word} peak`, from, 0, value, { note: row.meaning, about: { what: 'peak', word: row.word } }),
            )
          : []),
        ...readings(usualTo[verb.word] ?? [], from),
      ];
    case 'at':
      return [
        ...readings(usualAt[verb.word] ?? [], from),
        ...(takes.includes('at room') ? [proposal('room', from, 1, value, { note: "the room's air" })] : []),
      ];
    case 'for':
      return readings(usualFor[verb.word] ?? anyTime, from);
    case 'until':
      return signs.map((row) =>
        proposal(row.word, from, 0, value, { note: row.meaning, about: { what: 'sign', word: row.word } }),
      );
    case 'in':
      return [
        ...(takes.includes('in medium')
          ? media.map((row) =>
              proposal(row.word, from, 0, value, { note: row.meaning, about: { what: 'medium', word: row.word } }),
            )
          : []),
        ...(takes.includes('in additions')
          ? [
              proposal('3 additions: whisk, spatula', from, 0, value, {
                text: '<3> additions: <whisk>, <spatula>',
                isTemplate: true,
              }),
            ]
          : []),
        ...(takes.includes('in turns')
          ? [proposal('3 turns: single', from, 0, value, { text: '<3> turns: <single>', isTemplate: true })]
          : []),
      ];
    case 'with':
      return tools.map((row) =>
        proposal(row.word, from, takes.includes('with') ? 15 : 0, value, {
          note: row.meaning,
          about: { what: 'tool', word: row.word },
        }),
      );
    case 'on':
      return levels.map((level) => proposal(level, from, 0, value));
    case 'while':
      return [proposal('whipping', from, 0, value)];
    case 'losing':
      return [proposal('5 %', from, 0, value, { text: '<5> %', isTemplate: true })];
    default:
      return [];
  }
}

const readings = (usual: readonly Usual[], from: number): Proposal[] =>
  usual.map(({ text, why }, i) => proposal(text, from, i / 10, CompletionItemKind.Value, { note: why }));

/** Nouns of vessels, those of `makes` first. */
export const vesselWords = (from: number, made: readonly string[], rank: number): Proposal[] => {
  const words = [...new Set([...made, ...vessels.map((row) => row.word), ...shapes.map((row) => row.word)])];
  return words.map((word) =>
    proposal(word, from, rank + (made.includes(word) ? 0 : 1), CompletionItemKind.EnumMember, { note: 'vessel' }),
  );
};

/** Units after a number, those of mass first. */
export const unitWords = (from: number): Proposal[] =>
  units
    .filter(({ kind }) => kind === 'mass' || kind === 'volume' || kind === 'piece' || kind === 'percent')
    .map((row, i) =>
      proposal(row.word, from, (row.word === 'g' ? 0 : 1) + i / 100, CompletionItemKind.Unit, {
        note: row.meaning,
        about: { what: 'unit', word: row.word },
      }),
    );

/** What may follow a comma on an ingredient line. */
export function attributeWords(name: string, from: number): Proposal[] {
  const property = CompletionItemKind.Property;
  const fill = (text: string, rank: number, note: string) =>
    proposal(plain(text), from, rank, property, { text, isTemplate: text.includes('<'), note });
  const key = name.toLowerCase();
  return [
    ...(key.includes('gelatin') ? [fill('<200> bloom', 0, 'strength'), fill('sheet', 0, 'phase')] : []),
    ...(key.includes('cream') ? [fill('<35> % fat', 0, 'share')] : []),
    ...(key.includes('chocolate') ? [fill('<70> % cocoa', 0, 'share')] : []),
    fill('<4> °C', 1, 'temperature when weighed'),
    fill('is <kind>', 2, 'which catalogue entry it is'),
    fill('as <name>', 2, 'how the steps call it'),
    ...states.map((row) =>
      proposal(row.word, from, 3, property, { note: row.meaning, about: { what: 'state', word: row.word } }),
    ),
    ...phases.map((row) =>
      proposal(row.word, from, 4, property, { note: row.meaning, about: { what: 'phase', word: row.word } }),
    ),
    ...['fat', 'cocoa', 'sugar', 'solids', 'alcohol'].map((of) => fill(`<35> % ${of}`, 5, 'share')),
    fill('<65> brix', 5, 'sugar reading'),
    fill('<200> bloom', 5, 'strength of gelatin'),
    fill('pH <3.4>', 5, 'acidity'),
    fill('"<finely chopped>"', 6, 'preparation'),
  ];
}

/** What goes on after a header's word. */
export function headerValues(word: string, connective: string | null, from: number, lineNames: readonly string[]): Proposal[] {
  const value = CompletionItemKind.Value;
  const words = (list: readonly string[]) => list.map((text, i) => proposal(text, from, i / 100, value));
  switch (word) {
    case 'makes':
      return connective === 'of'
        ? words(['100 ml', '110 g', '16 x 3 cm'])
        : [...shapes, ...vessels].map((row) => proposal(row.word, from, 0, value, { note: row.meaning }));
    case 'served':
      return connective === 'at' ? readings(served, from) : words(['at']);
    case 'keeps':
      return connective === 'at'
        ? readings(kept, from)
        : [...readings(keepTimes, from), proposal('at', from, 2, CompletionItemKind.Keyword)];
    case 'free':
      return connective === 'from' ? words(allergenWords) : words(['from']);
    case 'gelatin':
      return connective === 'by' ? words(['concentration', 'strength']) : words(['by concentration', 'by strength']);
    case 'tagged':
      return words(['children', 'pregnant', 'hospital']);
    case 'basis':
      return [
        proposal('total', from, 0, value),
        ...lineNames.map((name) => proposal(name, from, 1, CompletionItemKind.Variable)),
      ];
    default:
      return [];
  }
}

/** What goes on after a word of an `ingredient` block. */
export function factValues(word: string, from: number): Proposal[] {
  const words = (list: readonly string[]) => list.map((text) => proposal(text, from, 0, CompletionItemKind.Value));
  if (word === 'stored') return words(storages);
  if (word === 'allergen') return words(allergenWords);
  return word === 'phase'
    ? phases.map((row) => proposal(row.word, from, 0, CompletionItemKind.Value, { note: row.meaning }))
    : [];
}
