/** The weighed lines of a component: grams as a scale shows them, shares, and what the line says of its ingredient. */
import type { Attribute } from 'nappe-grammar';
import { type Interval, interval, middle } from '../quantities/interval.ts';
import { celsiusOf } from '../quantities/units.ts';
import { pick } from '../resolve/choices.ts';
import type { SourceLine } from '../resolve/model.ts';
import type { BlockRun, WeighedLine } from '../run/trace.ts';
import { scaleGrams } from '../scale/rounding.ts';
import { type Context, lineName } from './context.ts';
import type { AttributeWords } from './languages/language.ts';
import type { CardIngredient } from './model.ts';
import { plain } from './text.ts';

/** `total` is everything weighed on the card, in grams: what shares are of. */
export function ingredientsOf(block: BlockRun, context: Context, total: number): readonly CardIngredient[] {
  const flour = flourGrams(block, context);
  return block.lines.map((weighed) => {
    const { line } = weighed;
    const exact = exactGrams(weighed, block, context);
    const kind = line.substance.is === 'kind' ? line.substance.kind : null;
    return {
      line: context.positions.lineOf(line.place),
      name: lineName(line, context.language),
      kind: line.substance.is === 'kind' ? (line.substance.known ? line.substance.kind.name : null) : nameOfComponent(weighed),
      attributes: attributesOf(weighed, context),
      exactGrams: exact,
      grams: exact === null ? null : scaleGrams(exact),
      written: writtenAmount(weighed, block, exact, context),
      cups: exact === null || context.measures.units === 'metric' ? null : context.measures.cups(exact, kind?.density ?? null),
      percent: exact === null || total <= 0 ? null : round((100 * exact) / total, 1),
      bakersPercent: exact === null || flour <= 0 ? null : round((100 * exact) / flour, 1),
      notes: line.notes,
    };
  });
}

/** Grams of a line at the card's size; null for `some` and for what cannot be weighed. What is weighed for each piece follows the pieces. */
export function exactGrams(weighed: WeighedLine, block: BlockRun, context: Context): number | null {
  const amount = pick(weighed.line.amount, block.selection);
  if (amount.measure === 'some' || amount.measure === 'unknown') return null;
  if (amount.each && amount.measure === 'grams') return middle(amount.value) * context.count;
  return middle(weighed.grams);
}

/** Grams of flour in a block; 0 where there is none. */
export function flourGrams(block: BlockRun, context: Context): number {
  let grams = 0;
  for (const weighed of block.lines) {
    const { substance } = weighed.line;
    if (substance.is === 'kind' && substance.kind.traits.includes('flour')) grams += exactGrams(weighed, block, context) ?? 0;
  }
  return grams;
}

function nameOfComponent({ line: { substance } }: WeighedLine): string | null {
  return substance.is === 'batch'
    ? substance.taken.component.name
    : substance.is === 'own component'
      ? substance.component.name
      : null;
}

function writtenAmount(weighed: WeighedLine, block: BlockRun, exact: number | null, { language, measures }: Context): string {
  const amount = pick(weighed.line.amount, block.selection);
  if (amount.measure === 'some') return language.labels.some;
  if (exact === null) return plain(amount.written);
  if (amount.unit !== 'pc' || !amount.gramsPerUnit) return measures.mass(exact);
  return `${measures.number(exact / amount.gramsPerUnit, 2)} ${language.units.pc} (${measures.mass(exact)})`;
}

function attributesOf({ line }: WeighedLine, context: Context): readonly string[] {
  const node = context.nodeOf(line);
  if (node) return node.attributes.flatMap((attribute) => spoken(attribute, context));
  const { language, measures } = context;
  return [
    ...(line.state ? [language.attribute({ kind: 'state', state: line.state })] : []),
    ...(line.bloom ? [language.attribute({ kind: 'bloom', value: range(line.bloom, context) })] : []),
    ...(line.celsius ? [measures.temperature(line.celsius)] : []),
    ...(line.preparation ? [plain(line.preparation)] : []),
  ];
}

/** What tells a product from others of its kind: `35 % fat`, `200 bloom`, `frozen`; not how warm it is or how it is cut. */
export function productOf(line: SourceLine, context: Context): readonly string[] {
  const attributes = context.nodeOf(line)?.attributes ?? [];
  return attributes.flatMap((attribute) => {
    const words = wordsOf(attribute, context);
    return words ? [context.language.attribute(words)] : [];
  });
}

function spoken(attribute: Attribute, context: Context): readonly string[] {
  const words = wordsOf(attribute, context);
  if (words) return [context.language.attribute(words)];
  if (attribute.kind === 'temperature') return [context.measures.temperature(celsiusOf(attribute.reading))];
  if (attribute.kind === 'preparation') return [plain(attribute.text.text)];
  return [];
}

function wordsOf(attribute: Attribute, context: Context): AttributeWords | null {
  switch (attribute.kind) {
    case 'share':
      return { kind: 'share', of: attribute.of, percent: `${range(attribute.percent, context)} %` };
    case 'bloom':
      return { kind: 'bloom', value: range(attribute.bloom, context) };
    case 'brix':
      return { kind: 'brix', value: range(attribute.brix, context) };
    case 'pH':
      return { kind: 'pH', value: range(attribute.pH, context) };
    case 'phase':
      return { kind: 'phase', phase: attribute.phase };
    case 'state':
      return { kind: 'state', state: attribute.state };
    default:
      return null;
  }
}

function range(x: { readonly low: number; readonly high: number }, { measures }: Context): string {
  const { low, high }: Interval = interval(x.low, x.high);
  return low === high ? measures.number(low) : `${measures.number(low)}–${measures.number(high)}`;
}

const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;
