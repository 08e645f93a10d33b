/** What is measured on: formulas of any length, never the same text twice, and other languages' texts of as many bytes or lines. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const repository = fileURLToPath(new URL('../..', import.meta.url));

/** Formulas that stand alone; what memory keeps by content must not help, so each copy has its own name and amounts. */
const originals = [
  'hojicha-bavarois',
  'pastry-cream',
  'blackcurrant-mousse',
  'sable-diamonds',
  'panna-cotta',
  'chocolate-mousse',
].map((name) => readFileSync(`${repository}/samples/${name}.nappe`, 'utf8'));

let copies = 0;

/** Names that a formula gives itself: components, and what follows `as`. */
const ownNames = originals.map((text) =>
  [...text.matchAll(/^component (.+?) *$|\bas (?!raw)([a-zé ]+?) *$/gm)].map((found) => found[1] ?? found[2] ?? ''),
);

/** One formula, unlike every other so far: other amounts, readings and names, so that few of its lines were there before. */
export function formula(): string {
  const at = copies % originals.length;
  const text = originals[at] ?? '';
  copies++;
  const names = ownNames[at] ?? [];
  const renamed =
    names.length === 0 ? text : text.replaceAll(new RegExp(`\\b(${names.join('|')})\\b`, 'g'), `$1 ${letters(copies)}`);
  return renamed
    .replace(/^formula .*$/m, `$& ${copies}`)
    .replaceAll(/\b(\d{1,3})( g\b)/g, (_, grams, unit) => `${grams}.${copies % 1000}${unit}`)
    .replaceAll(/\b(\d{1,2})-(\d{1,2})( °C)/g, (_, low, high, unit) => `${low}.${copies % 1000}-${high}.${copies % 1000}${unit}`);
}

/** A number in letters, as names end in no figure. */
const letters = (n: number): string => [...String(n)].map((digit) => 'abcdefghij'[Number(digit)]).join('');

const until = (enough: (text: string) => boolean, piece: (index: number) => string): string => {
  const pieces: string[] = [];
  let text = '';
  for (let i = 0; !enough(text); i++) {
    pieces.push(piece(i));
    text = pieces.join('');
  }
  return text;
};

const lineCount = (text: string): number => text.split('\n').length - 1;

/** At least so many bytes. */
export const nappeOfBytes = (bytes: number): string => grown(bytes, () => `${formula()}\n`);

function grown(bytes: number, piece: (index: number) => string): string {
  const pieces: string[] = [];
  for (let i = 0, length = 0; length < bytes; i++) {
    const text = piece(i);
    pieces.push(text);
    length += Buffer.byteLength(text);
  }
  return pieces.join('');
}

export const yamlOfBytes = (bytes: number): string => grown(bytes, yamlPiece);
export const jsonOfBytes = (bytes: number): string =>
  `[${grown(bytes, (i) => `${i === 0 ? '' : ','}\n${JSON.stringify(thing(i), null, 2)}`)}\n]`;
export const markdownOfBytes = (bytes: number): string => grown(bytes, markdownPiece);

const cut = (text: string, lines: number): string => `${text.split('\n').slice(0, lines).join('\n')}\n`;

/** Exactly so many lines: whole formulas, then remarks. */
export function nappeOfLines(lines: number): string {
  let text = '';
  let left = lines;
  for (;;) {
    const next = `${formula()}\n`;
    if (lineCount(next) > left) break;
    text += next;
    left -= lineCount(next);
  }
  return text + '// nothing more\n'.repeat(left);
}

export const yamlOfLines = (lines: number): string =>
  cut(
    until((text) => lineCount(text) > lines, yamlPiece),
    lines - (lines % 8),
  );

export function jsonOfLines(lines: number): string {
  const rows = Array.from(
    { length: lines - 2 },
    (_, i) => `  "item ${i}": { "grams": ${i}, "text": "whole milk", "parts": [1, ${i}] }`,
  );
  return `{\n${rows.join(',\n')}\n}\n`;
}

/** Functions with a type each, so that a checker has something to check. */
export const typescriptOfLines = (lines: number, file: number): string =>
  cut(
    until(
      (text) => lineCount(text) > lines,
      (i) =>
        `export interface Part${i} {\n  readonly name: string;\n  readonly grams: number;\n}\nexport const total${i} = (parts: readonly Part${i}[]): number =>\n  parts.reduce((sum, { grams }) => sum + grams * ${file + 1}, 0);\n`,
    ),
    lines - (lines % 6),
  );

const thing = (i: number) => ({
  name: `whole milk ${i}`,
  grams: i * 3,
  steps: ['heat to 80', `stir ${i}`],
  nested: { celsius: [80, 85], made: true, of: null },
});

const yamlPiece = (i: number): string =>
  `item${i}:\n  name: "whole milk ${i}"  # a remark\n  grams: ${i * 3}\n  list: [a, b${i}, c]\n  text: heat to 80\n  nested:\n    - one: ${i}\n      two: x${i}\n`;

const markdownPiece = (i: number): string =>
  `## Custard ${i}\n\nHeat the **milk** to 80 °C, then add [sugar](sugar.md) and \`gelatin\`.\n\n- ${i} g whole milk\n- 30 g sugar\n\n> It should *coat* a spoon.\n\n`;
