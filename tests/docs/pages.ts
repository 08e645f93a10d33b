/** The reference pages, made from the tables they describe; `npm run docs` writes them, and a test holds that none is stale. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { commands } from '../../compiler/src/cli/table.ts';
import { catalogueTable, referencePage } from '../../compiler/src/index.ts';
import {
  allergenWords,
  blocks,
  type ClauseUse,
  clauses,
  connectives,
  facts,
  type HeaderWord,
  headers,
  media,
  peaks,
  shapes,
  signs,
  tools,
  units,
  verbs,
  vessels,
} from '../../grammar/src/index.ts';

/** Where the pages are, from the root of the repository. */
export const folder = 'samples/guide/reference';

/** Every page by its file's name. @throws where the programs are not built. */
export const pages = (root: string): Readonly<Record<string, string>> => ({
  'README.md': index,
  'notation.md': notation(),
  'verbs.md': verbPage(),
  'diagnostics.md': diagnostics(),
  'catalogue.md': catalogue(),
  'models.md': models(root),
  'command-line.md': commandLine(root),
});

const made = '<!-- Made by `npm run docs` from the tables of the program: change those, not this. -->';

const page = (title: string, intro: string, ...parts: readonly string[]): string =>
  `${[made, `# ${title}`, intro, ...parts].join('\n\n')}\n`;

const index = page(
  'Reference',
  'These pages are made from the same tables the program runs on.',
  `- [Notation](notation.md): every form a line may have
- [Verbs](verbs.md): what each does, and the clauses it takes
- [Diagnostics](diagnostics.md): every code, with why, what to do and an example
- [Catalogue](catalogue.md): the ingredients Nappe knows, with the source of their figures
- [Models](models.md): the physics, each with formula, range, source and error
- [Command line](command-line.md): every command and option`,
);

function notation(): string {
  return page(
    'Notation',
    'Every line stands by itself: what it is follows from its first word. Below, `{ … }` means any number, `[ … ]` may be left out, `|` is a choice, and words in quotes are written as they are. Words in capitals are explained in the text that follows.',
    fence('ebnf', grammar()),
    `- **TEXT** runs to the end of the line. **NAME** is one or more words of letters, digits, \`-\`, \`'\` and \`%\`; in double quotes where it begins with a digit or holds one of: ${list(connectives)}.
- **NUMBER** is \`12\`, \`1.5\`, \`1/2\`, \`1 1/2\` or \`½\`. **TIME** is \`18:30\`.
- \`//\` at the start of a line or after a space begins a comment. \`// allow CODE: reason\`, alone on its line, turns that diagnostic off for the next line.`,
    '## Blocks and requests',
    table(
      ['word', 'meaning', 'example'],
      blocks.map((row) => [code(row.word), row.meaning, code(row.example)]),
    ),
    '## Headers',
    table(
      ['word', 'meaning', 'example'],
      headers.map((row) => [code(row.word), row.meaning, code(row.example)]),
    ),
    '## Facts of a house ingredient',
    table(
      ['word', 'meaning', 'example'],
      facts.map((row) => [code(row.word), row.meaning, code(row.example)]),
    ),
    '## Clauses of a step',
    table(
      ['word', 'meaning', 'example', 'taken by'],
      clauses.map((row) => [code(row.word), row.meaning, code(row.example), row.common ? 'every verb' : takers(row.use)]),
    ),
    '## Units',
    table(
      ['unit', 'meaning', 'also written'],
      units.map((row) => [code(row.word), row.meaning, list(row.spellings)]),
    ),
    ...(
      [
        ['Peaks', peaks],
        ['Signs', signs],
        ['Media', media],
        ['Tools', tools],
        ['Vessels', vessels],
        ['Shapes', shapes],
      ] as const
    ).flatMap(([title, rows]) => [
      `## ${title}`,
      table(
        ['word', 'meaning'],
        rows.map((row) => [code(row.word), row.meaning]),
      ),
    ]),
    `## Allergens\n\n\`free from\` and \`allergen\` know ${list(allergenWords)}.`,
  );
}

/** The forms of a line; words come from the vocabulary, so that a new one is in it. */
function grammar(): string {
  const alternatives = (words: readonly string[]) => words.map((word) => `"${word}"`).join(' | ');
  const rows: readonly (readonly [string, string])[] = [
    ['file', '{ line }'],
    ['line', '[ block | request | header | fact | kit | price | ingredient | step | note ] [ comment ]'],
    ['note', '"|" TEXT'],
    ['comment', '"//" TEXT'],
    ['block', `( ${alternatives(blocks.filter((row) => row.opens).map((row) => row.word))} ) [ NAME ] [ guard ]`],
    ['request', 'take | ask | difference'],
    ['take', '"take" taken { "," taken } "from" \'"\' PATH [ "#" TEXT ] \'"\''],
    ['taken', 'NAME [ "as" NAME ]'],
    ['ask', '( "card" | "weigh-out" | "timeline" ) entry { "," entry } [ "ready" TIME ]'],
    ['entry', '\'"\' PATH [ "#" TEXT ] \'"\' [ "for" yield ] [ "with" NAME { "," NAME } ]'],
    ['difference', '"compare" \'"\' PATH \'"\' "with" \'"\' PATH \'"\''],
    ['header', headers.map((row) => `"${row.word}" ${headerForms[row.word]}`).join(' | ')],
    ['fact', `${facts.map((row) => `"${row.word}" VALUE`).join(' | ')}`],
    ['kit', 'NAME { VALUE }'],
    ['price', 'NUMBER "per" UNIT NAME'],
    ['yield', 'quantity | NUMBER NOUN [ "of" ( quantity | lengths ) ]'],
    ['lengths', 'NUMBER { "x" NUMBER } ( "mm" | "cm" )'],
    ['ingredient', 'quantity [ overrides ] [ "each" ] NAME { "," attribute } [ guard ]'],
    ['quantity', `range UNIT | range | "some"`],
    ['range', 'NUMBER [ "-" NUMBER ]'],
    ['overrides', '"(" VALUE quantity { "," VALUE quantity } ")"'],
    [
      'attribute',
      'PHASE | temperature | range "%" NAME | range "brix" | range "bloom" | "pH" range | "is" NAME | "as" NAME | "raw" | "fresh" | "canned" | "pasteurised" | \'"\' TEXT \'"\'',
    ],
    ['temperature', '[ "below" | "above" ] range ( "°C" | "°F" )'],
    ['duration', '( range ( "s" | "min" | "h" | "d" ) [ NUMBER "min" ] | "overnight" )'],
    ['step', 'VERB [ operand { ( "," | "and" ) operand } ] { clause } [ guard ]'],
    ['operand', '[ ( quantity | FRACTION | "half" | "rest" ) "of" ] NAME'],
    ['guard', '( "when" | "unless" ) VALUE { "," VALUE }'],
    ['VERB', alternatives(verbs.map((row) => row.word))],
    ['clause', clauses.map((row) => row.use.replaceAll(' ', '-')).join(' | ')],
    ...clauses.map(
      (row) => [row.use.replaceAll(' ', '-'), `"${row.word}" ${clauseForms[row.use]}   (* ${row.example} *)`] as const,
    ),
  ];
  return rows.map(([name, form]) => `${name} = ${form} ;`).join('\n');
}

/** What follows the first word of a header; the type asks for a form of every header there is. */
const headerForms: Readonly<Record<HeaderWord, string>> = {
  by: 'TEXT',
  version: 'TEXT',
  makes: 'yield [ guard ]',
  choice: 'NAME ":" NAME { "," NAME }',
  served: '"at" temperature [ guard ]',
  keeps: 'duration [ "at" temperature ] [ guard ]',
  free: '"from" ALLERGEN { "," ALLERGEN }',
  gelatin: '"by" ( "concentration" | "strength" )',
  tagged: 'NAME { "," NAME }',
  basis: '"total" | "basis" NAME',
  loss: 'range "%" [ guard ]',
};

/** What follows the word of a clause; likewise. */
const clauseForms: Readonly<Record<ClauseUse, string>> = {
  'to temperature': 'temperature',
  'to peak': 'PEAK [ "-" PEAK ] "peak"',
  'to mass': 'quantity',
  'to length': 'range ( "mm" | "cm" )',
  'to brix': 'range "brix"',
  at: 'temperature',
  'at room': '"room"',
  for: 'duration',
  until: `( SIGN | '"' TEXT '"' )`,
  into: 'NAME',
  over: 'NAME',
  'in name': 'NAME',
  'in medium': 'MEDIUM',
  'in additions': 'NUMBER ( "addition" | "additions" ) [ ":" TOOL { "," TOOL } ]',
  'in turns': 'NUMBER ( "turn" | "turns" ) [ ":" TURN { "," TURN } ]',
  with: 'NAME { "," NAME }',
  'with tool': `( TOOL | '"' TEXT '"' )`,
  'while whipping': '"whipping"',
  on: '( "low" | "medium" | "high" )',
  using: 'NAME',
  losing: 'range "%"',
  as: 'NAME',
};

const takers = (use: string): string =>
  list(verbs.filter((row) => (row.takes as readonly string[]).includes(use)).map((row) => row.word));

function verbPage(): string {
  const families = [...new Set(verbs.map((row) => row.family))];
  const always = list(clauses.filter((row) => row.common).map((row) => row.use));
  return page(
    'Verbs',
    `A step begins with one of these. Every verb takes ${always}, and \`when\` or \`unless\` at the end.`,
    ...families.flatMap((family) => [
      `## ${family[0]?.toUpperCase()}${family.slice(1)}`,
      table(
        ['verb', 'meaning', 'also takes', 'needs', 'written'],
        verbs
          .filter((row) => row.family === family)
          .map((row) => [
            code(row.word),
            row.meaning,
            list(row.takes),
            row.needs.map((need) => need.join(' or ')).join(', and '),
            code(row.template.replace(/[<>]/g, '')),
          ]),
      ),
    ]),
  );
}

/** Examples are shown as text: the broken ones would be found by whoever checks this folder. */
const diagnostics = (): string => `${made}\n\n${referencePage().replaceAll('```nappe\n', '```text\n')}`;

function catalogue(): string {
  const rows = catalogueTable();
  const families = [...new Set(rows.map((row) => row.family))];
  return page(
    'Catalogue',
    `${rows.length} kinds of ingredient. Composition is in per cent of mass; what is not listed is not there. Figures are of an average product: the label of yours comes first, and a house ingredient can say what it says.`,
    ...families.flatMap((family) => [
      `## ${family}`,
      table(
        ['name', 'also called', 'composition', 'density', 'a piece', 'allergens', 'source'],
        rows
          .filter((row) => row.family === family)
          .map((row) => [row.name, row.synonyms, row.composition, row.density, row.piece, row.allergens, row.source]),
      ),
    ]),
  );
}

/** From the header of each model's file: its sentence, then paragraphs that open with a word and a colon. */
function models(root: string): string {
  const at = join(root, 'compiler/src/matter');
  const sections = readdirSync(at)
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .sort()
    .map((name) => ({ name, header: headerOf(readFileSync(join(at, name), 'utf8')) }))
    .filter(({ header }) => /^(Range|Error)|\bError:/m.test(header.join('\n')))
    .map(({ name, header: [title, ...facts] }) =>
      [
        `## ${title?.split(':')[0]}`,
        title?.replace(/^[^:]+: /, '').replace(/^./, (letter) => letter.toUpperCase()),
        facts.map((fact) => `- ${fact.replace(/^([^:]+):/, '**$1:**')}`).join('\n'),
        `File \`compiler/src/matter/${name}\`; the test beside it holds the model against figures from outside.`,
      ].join('\n\n'),
    );
  return page(
    'Models',
    'What Nappe computes, it computes by these. An interval is not a guess of one number: what is written there is what can be said.',
    ...sections,
  );
}

/** A header comment as its first sentence and its labelled facts, one a line. */
export function headerOf(source: string): readonly string[] {
  const lines = (/^\/\*\*([\s\S]*?)\*\//.exec(source)?.[1] ?? '').split('\n').map((line) => line.replace(/^\s*\* ?/, ''));
  const text = lines.map((line) => line.trim()).join('\n');
  const broken = text.replace(/([.;)]) (Source|Range|Error|Rounding)([^:.\n]{0,30}):/g, '$1\n$2$3:');
  const facts: string[] = [];
  for (const line of broken.split('\n').filter((one) => one !== '')) {
    if (facts.length === 0 || /^(Formulas?|Source|Range|Error|Rounding)\b[^:.]{0,30}:/.test(line)) facts.push(line);
    else facts[facts.length - 1] += ` ${line}`;
  }
  return facts.map((fact) => fact.replaceAll('*', '\\*').replaceAll('_', '\\_'));
}

function commandLine(root: string): string {
  const help = (...words: string[]): string => {
    const { stdout, error, status } = spawnSync(process.execPath, [join(root, 'compiler/dist/nappe.js'), ...words, '--help'], {
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1', COLUMNS: '100' },
    });
    if (error || status !== 0) throw new Error(`nappe ${words.join(' ')} --help does not answer: npm run build first`);
    return stdout;
  };
  return page(
    'Command line',
    'Exit status: 0 when nothing is wrong, 1 when something is, 2 for a command that cannot be carried out or a file that cannot be read. What was found goes to standard output, progress and failures to standard error; `NO_COLOR` is honoured. The language server is a program of its own: `nappe-server --stdio`.',
    fence('text', help()),
    ...commands.filter(({ hidden }) => !hidden).flatMap(({ name }) => [`## \`nappe ${name}\``, fence('text', help(name))]),
  );
}

const fence = (info: string, text: string): string => `\`\`\`${info}\n${text.trimEnd()}\n\`\`\``;
const code = (text: string): string => `\`${text}\``;
const list = (words: readonly string[]): string => words.map(code).join(', ');

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows]
    .map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`)
    .join('\n');
