/** The attack strings of tests/corpus/attacks, and files that hold one wherever a file can hold text. */
import { readFileSync } from 'node:fs';

const corpus = new URL('../corpus/attacks/', import.meta.url);

/** Every line of the lists, and what stands behind its `\xNN` where it has any. */
export const strings: readonly string[] = [...new Set(['script-injection.txt', 'own.txt'].flatMap(linesOf))];

function linesOf(file: string): readonly string[] {
  const lines = readFileSync(new URL(file, corpus), 'utf8').split('\n');
  return lines.filter((line) => line !== '' && !/^#(?:[\t ]|$)/.test(line)).flatMap((line) => [line, meant(line)]);
}

/** Bytes in UTF-8; line ends and zeros, which no line of a file holds, are spaces. */
function meant(line: string): string {
  const bytes = line.replace(/\\x([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
  return bytes === line
    ? line
    : Buffer.from(bytes, 'latin1')
        .toString('utf8')
        .replace(/[\n\r\0]/g, ' ');
}

/** As a quoted name can hold it. */
const quotable = (text: string): string => text.replaceAll('"', "'").slice(0, 190).trim();

/** One formula with the text as title, free text, note, name, attribute, result, stage, target, kit and price; it has a card. */
export function formulaOf(text: string): string {
  const name = quotable(text);
  return `formula ${text}
  by ${text}
  version ${text}
  makes 12 glasses of 100 ml
  keeps 2 d at 0-4 °C
  choice serving: "${name} a", "${name} b"
  | ${text}
equipment
  "${name} k" 2 l
prices EUR
  1.15 per l "${name} d"
ingredient "${name} h"
  like caster sugar
component "${name} c"
  400 g  "${name} d", "${name}", 4 °C
    | ${text}
  100 g  "${name} h"
  100 g  caster sugar, as "${name} e" // ${text}
  heat "${name} d" to 80-84 °C until "${name}" as "${name} f"
    | ${text}
  add "${name} e", "${name} h"
  do "${name}"
  cool to 4 °C
assembly
  portion 100 ml into "${name} g" when "${name} a"
  portion 100 ml into glass when "${name} b"
  chill to 4 °C for 2 h
`;
}

/** Lines that nothing can be made of, so that messages and listings hold the text. */
export const faultyOf = (text: string): string =>
  `formula A\n  100 g  water\n  ${text}\n  stir ${text}\n  100 g  ${text}\n  heat water to ${text}\n  stir water, "${quotable(text)}"\n${text}\ntake ${text} from "${quotable(text)}"\n`;

/** Markdown with the text in every place that Markdown has. */
export function handoutOf(text: string): string {
  const places = [
    `# ${text}`,
    text,
    `## ${text}`,
    `Within a line ${text} and after it, **${text}**, \`${text}\`.`,
    `- ${text}`,
    `> ${text}`,
    `| a | b |\n| -- | -- |\n| ${text} | ${text} |`,
    `[${text}](https://example.org/)`,
    `[x](${text})`,
    `[x](<${text}>)`,
    `[x](https://example.org/ "${quotable(text)}")`,
    `![${text}](x.png)`,
    `![x](${text})`,
    `![x](x.png "${quotable(text)}")`,
    `<${text}>`,
    `<a href="${text}">x</a>`,
    `<div>\n${text}\n</div>`,
    `<div title="${text}" ${text}>\nx\n</div>`,
    `Reference [x][r] and note[^n].`,
    `[r]: ${text}`,
    `[^n]: ${text}`,
    `\`\`\`${text}\nx\n\`\`\``,
    `\`\`\`nappe source\n| ${text}\nstir ${text} // ${text}\n\`\`\``,
    `\`\`\`nappe\ncard "${quotable(text)}"\ncard ${text}\n\`\`\``,
    `<!-- ${text} -->`,
  ];
  return `${places.join('\n\n')}\n`;
}
