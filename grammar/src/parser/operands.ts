/** Builds the operands of a step from what was written. */

import { blame, insertFix, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { Name, Operand } from '../tree.ts';
import { nameKey } from '../vocabulary/index.ts';
import type { Measured, RawOperand } from './drafts.ts';
import { blameNegative, quantityOf, varying } from './measured.ts';

/** The operand, or null for a bare measure. */
export function buildOperand(scan: Scan, raw: RawOperand): Operand | null {
  const { name, start, end } = raw;
  if (name === null) return null;
  if (!name.quoted) blameOnto(scan, name);
  if (raw.part === 'rest') return { kind: 'operand', name, part: { kind: 'rest' }, start, end };
  if (raw.part !== null) return halfOf(scan, raw, raw.part, name);
  if (raw.measured === null) return { kind: 'operand', name, part: null, start, end };
  if (raw.ofMissing) {
    const written = scan.text.slice(raw.measured.start, raw.measured.end);
    const message = `A part of something is written with \`of\`: \`${written} of ${name.text}\`.`;
    blame(scan, { start, end }, message, [insertFix('Add of', raw.measured.end, ' of')]);
  }
  return { kind: 'operand', name, part: partOf(scan, raw.measured, raw.unit), start, end };
}

/** `pipe chantilly onto savarin`. */
function blameOnto(scan: Scan, { text, start, end }: Name): void {
  const at = scan.text.slice(start, end).search(/ onto /i);
  if (at < 0) return;
  const word = { start: start + at + 1, end: start + at + 5 };
  blame(scan, word, `\`onto\` is written \`over\`, or \`into\` a vessel; ${shown(text)} was read as one name.`, [
    replaceFix('Write over', word, 'over'),
  ]);
}

/** `half of NAME`; with any other word it was meant as one name: `cream of tartar`. */
function halfOf(scan: Scan, raw: RawOperand, part: Name, name: Name): Operand {
  const { start, end } = raw;
  if (part.key === 'half') return { kind: 'operand', name, part: { kind: 'fraction', value: 0.5 }, start, end };
  const text = `${part.text} of ${name.text}`;
  blame(scan, { start, end }, `A name that holds the word \`of\` stands in quotes: \`"${text}"\`.`, [
    replaceFix('Put the name in quotes', { start, end }, `"${text}"`),
  ]);
  return { kind: 'operand', name: { text, key: nameKey(text), quoted: false, start, end }, part: null, start, end };
}

/** A quantity, or a fraction: a number of at most one, or a percentage. */
function partOf(scan: Scan, measured: Measured, unit: Name | null): Operand['part'] {
  const { base } = measured;
  const plain = measured.overrides.length === 0 && unit === null;
  if (base.kind === 'number' && plain && !base.ranged && base.low < 1) return fraction(scan, measured, base.low);
  if (base.kind === 'percent' && plain && !base.ranged) return fraction(scan, measured, base.low / 100);
  const quantity = varying(scan, measured, quantityOf);
  if (quantity === null) {
    blame(
      scan,
      measured,
      `A part of something is a quantity or a fraction, such as \`60 g of cream\`, not ${shown(scan.text.slice(base.start, base.end))}.`,
    );
    return null;
  }
  blameNegative(scan, quantity);
  if (unit === null) return { kind: 'quantity', quantity };
  const doubtfulUnit = { text: unit.text, quoted: unit.quoted, start: unit.start, end: unit.end };
  return { kind: 'quantity', quantity: { ...quantity, base: { ...quantity.base, doubtfulUnit } } };
}

function fraction(scan: Scan, measured: Measured, value: number): Operand['part'] {
  if (value <= 0 || value > 1) blame(scan, measured, 'A fraction of something lies between 0 and 1.');
  return { kind: 'fraction', value: Math.min(1, Math.max(0, value)) };
}
