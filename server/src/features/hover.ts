/** Hover: the state of the matter at a step, the catalogue's row of an ingredient, what a verb needs, what a word means. */
import { findKind, formatGrams, formatPercent, type Kind, ruleOf } from 'nappe';
import type { Line, Name, Span } from 'nappe-grammar';
import type { Position, Range } from 'vscode-languageserver';
import { thingOf } from '../names/symbols.ts';
import { type NameUse, useAt } from '../names/uses.ts';
import type { Analysis } from '../project.ts';
import { rangeOn, within } from '../ranges.ts';
import { formulaAt, runOf, standingOf, stepAt, weighedAt } from '../runs.ts';
import { linkAt } from './document-links.ts';
import { wordHover } from './hover-words.ts';
import { kindText } from './kind-text.ts';
import { asText, code, paragraphs } from './markup.ts';
import { matterLines, stateLines } from './matter-text.ts';
import { yieldText } from './yield-text.ts';

export interface HoverText {
  readonly markdown: string;
  readonly range: Range;
}

export function hover(analysis: Analysis, position: Position): HoverText | null {
  const { line, character } = within(analysis, position);
  const node = analysis.file.lines[line];
  if (!node) return null;
  const found = contents(analysis, line, node, character);
  return found ? { markdown: found.markdown, range: rangeOn(line, found.span) } : null;
}

interface Found {
  readonly markdown: string;
  readonly span: Span;
}

function contents(analysis: Analysis, number: number, line: Line, column: number): Found | null {
  const link = linkAt(analysis, number, column);
  if (link) return { markdown: `File ${code(line.text.slice(link.span.start, link.span.end))}`, span: link.span };
  const use = useAt(line, column);
  if (use) {
    const markdown = nameHover(analysis, number, use);
    if (markdown) return { markdown, span: use.name };
  }
  if (line.kind === 'comment') return allowHover(line, column);
  const word = wordHover(line, column);
  if (line.kind === 'step') {
    const state = stepAt(analysis, number);
    const isVerb = line.verbSpan.start <= column && column <= line.verbSpan.end;
    if (isVerb || !word) {
      if (!state && !word) return null;
      const markdown = paragraphs(isVerb ? word?.markdown : null, state && stateLines(state));
      return { markdown, span: isVerb ? line.verbSpan : line.span };
    }
  }
  return word;
}

function nameHover(analysis: Analysis, number: number, use: NameUse): string | null {
  const line = analysis.file.lines[number] as Line;
  switch (use.use) {
    case 'line':
    case 'label':
      return ingredientHover(analysis, number);
    case 'as':
      return line.kind === 'step' ? resultHover(analysis, number) : ingredientHover(analysis, number);
    case 'matter':
    case 'party':
      return inputHover(analysis, number, use.name) ?? declarationHover(analysis, number, use);
    case 'kind': {
      const kind = findKind(use.name.key);
      return kind ? kindText(kind) : declarationHover(analysis, number, use);
    }
    case 'component':
    case 'formula':
      return yieldHover(analysis, number, use);
    case 'value':
    case 'choice':
    case 'choice value':
      return choiceHover(analysis, number, use);
    default:
      return declarationHover(analysis, number, use);
  }
}

/** What it is, with its source, and what it weighs of the whole. */
function ingredientHover(analysis: Analysis, number: number): string | null {
  const state = weighedAt(analysis, number);
  if (!state) return null;
  const { line, ran, weighed } = state;
  const { substance } = line;
  const what =
    substance.is === 'kind'
      ? kindWords(substance.kind, substance.known, substance.house)
      : `**${asText(substance.is === 'batch' ? substance.taken.component.name : substance.component.name)}** · ${
          substance.is === 'batch' ? 'a batch of its own, scaled to this mass' : 'drawn from the component of this formula'
        }`;
  if (!weighed) return what;
  const total = totalGrams(
    ran.run.blocks
      .flatMap((block) => (block.batchOf ? [] : block.lines))
      .filter(({ line: one }) => one.substance.is !== 'own component'),
  );
  const share = total > 0 ? `, ${formatPercent(mean(weighed.grams) / total)} of all that is weighed` : '';
  const left = weighed.left >= 0.5 ? `, ${formatGrams(weighed.left)} of it unused` : '';
  const conditions = ran.with === '' ? '' : ` (with ${asText(ran.with)})`;
  return paragraphs(what, `Here ${formatGrams(weighed.grams)}${share}${left}${conditions}.`);
}

const kindWords = (kind: Kind, known: boolean, house: boolean): string =>
  known ? kindText(kind, house) : `**${asText(kind.name)}** is not in the catalogue: its composition is unknown.`;

const mean = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2;

const totalGrams = (lines: readonly { readonly grams: { readonly low: number; readonly high: number } }[]): number =>
  lines.reduce((sum, { grams }) => sum + mean(grams), 0);

/** The matter of that name as the step finds it. */
function inputHover(analysis: Analysis, number: number, name: Name): string | null {
  const state = stepAt(analysis, number);
  const input = state?.record.inputs.find((one) => one.name.toLowerCase() === name.text.toLowerCase());
  if (!input) return null;
  return `**${asText(name.text)}** going into this step:\n\n${matterLines(input.matter)}`;
}

function resultHover(analysis: Analysis, number: number): string | null {
  const state = stepAt(analysis, number);
  return state ? stateLines(state) : null;
}

/** What the declaring line says. */
function declarationHover(analysis: Analysis, number: number, use: NameUse): string | null {
  const { project, path } = analysis;
  const thing = thingOf(project, path, number, use);
  const line = thing && project.fileAt(thing.path)?.lines[thing.line];
  if (!thing || !line) return null;
  const where = thing.path === path ? '' : ` in ${code(thing.path.slice(project.root.length + 1))}`;
  return paragraphs(`\`\`\`nappe\n${line.text.trim()}\n\`\`\``, `Line ${thing.line + 1}${where}.`);
}

function choiceHover(analysis: Analysis, number: number, use: NameUse): string | null {
  const { project, path } = analysis;
  const thing = thingOf(project, path, number, use);
  const line = thing && project.fileAt(thing.path)?.lines[thing.line];
  if (line?.kind !== 'header' || line.word !== 'choice') return null;
  const values = line.values.map(({ text }, i) => (i === 0 ? `${asText(text)} (unless another is chosen)` : asText(text)));
  return `Choice **${asText(line.name.text)}**: ${values.join(', ')}`;
}

/** A component's or a formula's result. */
function yieldHover(analysis: Analysis, number: number, use: NameUse): string | null {
  const formula = formulaAt(analysis, number);
  if (!formula) return declarationHover(analysis, number, use);
  const ran = runOf(formula, analysis.settings.choices);
  const component = standingOf(analysis, number)?.component;
  if (use.use === 'component' && component) {
    const block = ran.run.blocks.find((one) => one.component === component);
    const matter = block?.result;
    return matter ? `**${asText(component.name)}** makes:\n\n${matterLines(matter)}` : null;
  }
  return paragraphs(
    `**${asText(formula.name)}**${formula.by === null ? '' : ` by ${asText(formula.by)}`}`,
    asText(yieldText(analysis, ran)),
  );
}

/** The title of a code in `// allow`. */
function allowHover(line: Extract<Line, { kind: 'comment' }>, column: number): Found | null {
  const named = line.allow?.codes.find(({ start, end }) => start <= column && column <= end);
  const rule = named && ruleOf(named.text);
  return rule && named
    ? { markdown: paragraphs(`**${asText(rule.title)}**`, asText(rule.why), asText(rule.remedy)), span: named }
    : null;
}
