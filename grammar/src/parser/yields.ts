/** Builds what `makes`, `for` and `cut into` say: a mass, a volume, or a number of pieces and their size. */

import type { Measure } from '../scanner/payloads.ts';
import { blame, type Scan, shown } from '../scanner/scan.ts';
import type { Name, Quantity, Span, Yield } from '../tree.ts';
import { nameKey, type ShapeRow, shapeOf, singularNoun } from '../vocabulary/index.ts';
import type { RawYield } from './drafts.ts';
import { quantityOf, refuseOverrides } from './measured.ts';

/** `partial` where the last length is given by the matter itself, as in `cut into 24 bars of 9 x 3 cm`. */
export function buildYield(scan: Scan, raw: RawYield, partial: boolean): Yield | null {
  const { start, end, amount } = raw;
  refuseOverrides(scan, raw.varied);
  const counted = countOf(scan, raw);
  if (counted === null) return weighed(scan, raw);
  if (amount.kind === 'number' && amount.ranged) blame(scan, amount, 'A yield is one number, not a range.');
  blameNothing(scan, counted.count, amount);
  const { noun, lined } = unlined(counted.noun);
  const size = sizeOf(scan, raw, noun, partial);
  return { kind: 'yield', quantity: null, count: counted.count, noun, lined, ...size, start, end };
}

/** A count and its noun; null for a mass or a volume. `12 cups of 100 ml` counts cups, `2 cups` is a volume. */
function countOf(scan: Scan, raw: RawYield): { count: number; noun: Name | null } | null {
  const { amount } = raw;
  if (amount.kind === 'number') return { count: amount.low, noun: raw.noun };
  if (amount.kind !== 'quantity') return null;
  if (amount.unit !== 'pc' && (raw.size === null || amount.unit !== 'cup')) return null;
  return { count: amount.low, noun: raw.noun ?? unitNoun(scan, amount) };
}

function blameNothing(scan: Scan, count: number, span: Span): void {
  if (count <= 0) blame(scan, span, `A yield is more than nothing, not ${shown(scan.text.slice(span.start, span.end))}.`);
}

/** The unit word of a count of pieces or cups, as its noun. */
function unitNoun(scan: Scan, amount: Quantity): Name {
  const written = scan.text.slice(amount.start, amount.end);
  const start = amount.end - [...written].reverse().findIndex((character) => !/\p{L}/u.test(character));
  const text = amount.unit === 'pc' ? 'piece' : 'cup';
  return { text, key: text, quoted: false, start, end: amount.end };
}

function weighed(scan: Scan, raw: RawYield): Yield | null {
  const { amount, start, end } = raw;
  if (amount.kind !== 'quantity' || amount.unit === 'some') {
    const written = shown(scan.text.slice(amount.start, amount.end));
    blame(
      scan,
      amount,
      `A yield is a mass, a volume or a number of pieces, such as \`1.2 kg\` or \`12 glasses of 100 ml\`, not ${written}.`,
    );
    return null;
  }
  blameNothing(scan, amount.low, amount);
  const extra = raw.noun ?? raw.size;
  if (extra !== null)
    blame(
      scan,
      extra,
      'Nothing stands after a mass or a volume here; pieces are a number and a noun, such as `12 glasses of 100 ml`.',
    );
  return { kind: 'yield', quantity: amount, count: null, noun: null, lined: false, lengths: null, size: null, start, end };
}

/** `lined rings`, `shell tarts`, `tart shells`: the shape alone, in the singular where the vocabulary knows it. */
function unlined(noun: Name | null): { noun: Name | null; lined: boolean } {
  if (noun === null) return { noun: null, lined: false };
  const words = nameKey(noun.text).split(' ');
  const rest = withoutLining(words);
  const lined = rest.length < words.length;
  const singular = singularNoun(rest.join(' '));
  const text = singular === nameKey(noun.text) ? noun.text : singular;
  return { noun: { ...noun, text, key: singular }, lined };
}

function withoutLining(words: readonly string[]): readonly string[] {
  if (words.length < 2) return words;
  if (words[0] === 'lined' || words[0] === 'shell') return words.slice(1);
  return words.at(-1) === 'shell' || words.at(-1) === 'shells' ? words.slice(0, -1) : words;
}

function sizeOf(scan: Scan, raw: RawYield, noun: Name | null, partial: boolean): Pick<Yield, 'lengths' | 'size'> {
  const { size } = raw;
  if (size === null) return { lengths: null, size: null };
  if (size.kind === 'length' || size.kind === 'dimensions') return { lengths: lengthsOf(scan, size, noun, partial), size: null };
  const quantity = size.kind === 'quantity' ? quantityOf(size) : null;
  if (quantity !== null && quantity.unit !== 'pc') return { lengths: null, size: quantity };
  blame(
    scan,
    size,
    `After \`of\` a mass, a volume or lengths were expected, such as \`100 ml\` or \`16 x 3 cm\`, not ${shown(scan.text.slice(size.start, size.end))}.`,
  );
  return { lengths: null, size: null };
}

function lengthsOf(
  scan: Scan,
  size: Extract<Measure, { kind: 'length' | 'dimensions' }>,
  noun: Name | null,
  partial: boolean,
): readonly number[] | null {
  const lengths = size.kind === 'length' ? [size.low] : size.lengths;
  const shape = noun === null ? undefined : shapeOf(noun.text);
  if (shape === undefined) {
    if (partial) return lengths;
    blame(scan, size, 'Lengths go with a shape, such as `rings of 16 x 3 cm`; other pieces take a mass or a volume.');
    return null;
  }
  if (lengths.length === shape.lengths.length || (partial && lengths.length < shape.lengths.length)) return lengths;
  blameLengths(scan, size, shape);
  return null;
}

function blameLengths(scan: Scan, span: Span, shape: ShapeRow): void {
  const count = ['no length', 'one length', 'two lengths', 'three lengths'][shape.lengths.length];
  blame(scan, span, `A ${shape.word} has ${count}: ${shape.lengths.join(' x ')}.`);
}
