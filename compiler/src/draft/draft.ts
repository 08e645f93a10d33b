/** Writes the draft: headers, ingredient lines, understood steps, every other sentence word for word; canonical. */
import { format, limits, nameKey, parse, parseLine } from 'nappe-grammar';
import { type DraftLine, ingredientLine } from './ingredient.ts';
import type { Draft, Found, Part } from './model.ts';
import { Names } from './parties.ts';
import { sentencesOf } from './sentences.ts';
import { stepsOf } from './step.ts';

export function draftOf(found: Found): Draft {
  const open: { line: number | null; message: string }[] = [];
  const lines = [`formula ${oneLine(found.title ?? 'Untitled').replaceAll('//', '/')}`];
  if (found.title === null) open.push({ line: null, message: 'no title; the formula is called Untitled' });
  if (found.by) lines.push(`  by ${oneLine(found.by).replaceAll('//', '/')}`);
  if (found.yield !== null) {
    const header = yieldHeader(found.yield);
    lines.push(header ?? comment(found.yield));
    if (header === null) open.push({ line: null, message: `the yield is not understood: ${found.yield}` });
  }
  lines.push(...found.notes.map((note) => `  | ${oneLine(note)}`));
  // Parts that have a method of their own are components; lists that share one method are one list.
  const withMethod = found.parts.filter(({ ingredients, prose }) => ingredients.length > 0 && prose.length > 0);
  const split = withMethod.length > 1 || (withMethod.length === 1 && found.parts.length > 1 && withMethod[0]?.heading !== null);
  const names: string[] = [];
  if (split) {
    for (const part of found.parts) {
      if (part.ingredients.length + part.prose.length === 0) continue;
      const heading = blockName(part, names);
      lines.push('', heading.text, ...body([part], open, names));
      if (heading.name) names.push(heading.name);
    }
  } else lines.push('', ...body(found.parts, open, []));
  return { text: canonical(lines), open: open.sort((a, b) => (a.line ?? 0) - (b.line ?? 0)) };
}

type Open = { line: number | null; message: string }[];

/** Ingredient lines of all parts, then their method. */
function body(parts: readonly Part[], open: Open, components: readonly string[]): string[] {
  const lines: string[] = [];
  const drafted: DraftLine[] = [];
  const weighed = new Set<string>();
  for (const { heading, ingredients } of parts) {
    if (heading && parts.length > 1 && ingredients.length > 0) lines.push(comment(heading));
    for (const { text, line } of ingredients) {
      const one = ingredientLine(text);
      lines.push(`  ${one.text}`);
      if (one.open) open.push({ line, message: `${one.open}: ${text}` });
      if (weighed.has(nameKey(one.name)))
        open.push({ line, message: `${one.name} is weighed more than once; give each a name of its own with as` });
      weighed.add(nameKey(one.name));
      drafted.push(one);
    }
  }
  const names = new Names([
    ...drafted.map(({ name, written, weighed }) => ({ name, also: [written.toLowerCase()], weighed })),
    ...components.map((name) => ({ name, also: [], weighed: true })),
  ]);
  for (const { heading, prose } of parts) {
    if (heading && parts.length > 1 && prose.length > 0) lines.push(comment(heading));
    for (const { text, line } of prose) {
      if (text.endsWith(':') && text.length < 60) lines.push(comment(text));
      else for (const sentence of sentencesOf(text)) lines.push(...steps(sentence, line, names, open));
    }
  }
  return lines;
}

function steps(sentence: string, line: number | null, names: Names, open: Open): string[] {
  const understood = stepsOf(sentence, names);
  if (understood) return [...understood.steps.map((step) => `  ${step}`), ...(understood.whole ? [] : [`    | ${sentence}`])];
  names.unsure(sentence);
  open.push({ line, message: `kept as it is: ${sentence}` });
  return [`  do "${quotable(sentence)}"`];
}

/** `Serves 8` → `makes 8 portions`. */
function yieldHeader(written: string): string | null {
  const said = oneLine(written);
  const people =
    /^(?:serves|for|pour|für)? ?:? ?(?:about )?(\d+) ?(?:people|persons?|personnes|personen|portions?|portionen|servings?)?$/iu.exec(
      said,
    );
  const made = said
    .replace(/^(?:makes|yields?|donne|ergibt|portions?|servings?|pour|für|for|serves) ?:? ?(?:about )?/iu, '')
    .trim();
  const bare = people && (!/^(?:makes|yield)/iu.test(said) || /portion|serving|people|person/iu.test(said));
  for (const text of [...(bare ? [`${people[1]} portions`] : []), made, withoutAside(made)]) {
    const line = parseLine(`makes ${text}`, 'formula');
    if (line.kind === 'header' && line.problems.length === 0) return `  makes ${text}`;
  }
  return null;
}

function blockName(
  { heading, ingredients }: Part,
  before: readonly string[],
): { readonly text: string; readonly name: string | null } {
  if (ingredients.length === 0) return { text: 'assembly', name: null };
  const name = (heading ?? 'base').toLowerCase();
  const own = before.includes(name) ? `${name} ${before.length + 1}` : name;
  for (const text of [`component ${own}`, `component "${own.replaceAll('"', '”')}"`]) {
    const line = parseLine(text, 'formula');
    if (line.kind === 'block' && line.problems.length === 0) return { text, name: own };
  }
  return { text: `component part ${before.length + 1} // ${own}`, name: `part ${before.length + 1}` };
}

/** The formatter leaves a line it cannot read as it is; one is commented out, so that nothing is lost and everything parses. */
function canonical(lines: readonly string[]): string {
  const read = parse(`${lines.join('\n')}\n`).lines;
  const sound = lines.flatMap((line, index) =>
    read[index]?.problems.length === 0 && read[index]?.kind !== 'bad' ? [line] : comments(line.trim()),
  );
  return format(parse(`${sound.join('\n')}\n`));
}

/** Without what stands in parentheses at its end. */
function withoutAside(text: string): string {
  const open = text.endsWith(')') ? text.indexOf('(') : -1;
  return open < 0 ? text : text.slice(0, open).trimEnd();
}

const comment = (text: string): string => `  // ${oneLine(text)}`;

/** A text of any length, in as many comments as the notation's longest line needs. */
function comments(text: string): string[] {
  const size = limits.line / 2;
  const words = oneLine(text);
  return Array.from({ length: Math.ceil(words.length / size) }, (_, index) =>
    comment(words.slice(index * size, (index + 1) * size)),
  );
}

const oneLine = (text: string): string => text.split(/\s+/).join(' ').trim();

/** Double quotes inside quoted text have no spelling in the notation; curved ones read the same. */
function quotable(text: string): string {
  let isOpen = false;
  return text.replace(/"/g, () => {
    isOpen = !isOpen;
    return isOpen ? '“' : '”';
  });
}
