/** Builds the lines of `ingredient`, `equipment` and `prices` blocks. */

import { blame, insertFix, replaceFix, type Scan, shown, skipSpaces } from '../scanner/scan.ts';
import { scanPrice, scanWords } from '../scanner/scanner.ts';
import { wordEnd } from '../scanner/words.ts';
import type { BadLine, EquipmentLine, FactLine, Name, PriceLine, Quantity, Reading, Span } from '../tree.ts';
import { type FactRow, type FactWord, facts, nameKey, nearest, phases, storages } from '../vocabulary/index.ts';
import type { Draft, Measured } from './drafts.ts';
import { checkAllergen, percentOf } from './headers.ts';
import { blameKind, numbersOf, quantityOf, refuseOverrides } from './measured.ts';
import { baseOf, type LineReading, type LineRule, run } from './reading.ts';

type Value = FactLine extends infer One ? (One extends FactLine ? Omit<One, keyof BadLine | 'wordSpan'> : never) : never;

/** A line of an `ingredient` block. */
export function buildFact(reading: LineReading): FactLine | BadLine {
  const { scan, span } = reading;
  const found = factAt(scan, span);
  if (found === null) {
    const words = facts.map((row) => row.word).join(', ');
    blame(scan, firstWord(scan, span), `A line about an ingredient starts with one of ${words}.`);
    return { kind: 'bad', ...baseOf(reading) };
  }
  const { row, wordSpan, value: whole } = found;
  scanWords(scan, wordSpan.end);
  const value = whole ?? build(scan, row.word, run(reading, ruleOf(row.word)));
  if (value !== null) return { kind: 'fact', ...baseOf(reading), wordSpan, ...value } as FactLine;
  blame(scan, span, `A \`${row.word}\` line is written like \`${row.example}\`.`);
  return { kind: 'bad', ...baseOf(reading) };
}

interface FactFound {
  readonly row: FactRow;
  readonly wordSpan: Span;
  /** Where the word alone says it all: `ambient` for `stored ambient`. */
  readonly value?: Value;
}

/** The fact word at the line's start: of two words where such a one stands there, else the nearest of one word. */
function factAt(scan: Scan, span: Span): FactFound | null {
  const first = firstWord(scan, span);
  const second = wordEnd(scan.text, skipSpaces(scan.text, first.end, span.end), span.end);
  const two = { start: first.start, end: second };
  return (
    exactly(scan, two) ?? exactly(scan, first) ?? storageAlone(scan, span, first) ?? nearly(scan, two) ?? nearly(scan, first)
  );
}

function exactly(scan: Scan, wordSpan: Span): FactFound | null {
  const key = nameKey(scan.text.slice(wordSpan.start, wordSpan.end));
  const row = facts.find((each) => nameKey(each.word) === key);
  return row === undefined ? null : { row, wordSpan };
}

function storageAlone(scan: Scan, span: Span, word: Span): FactFound | null {
  const key = nameKey(scan.text.slice(word.start, word.end));
  const storage = word.end === span.end ? storages.find((each) => each === key) : undefined;
  if (storage === undefined) return null;
  const row = facts.find((each) => each.word === 'stored')!;
  return { row, wordSpan: { start: word.start, end: word.start }, value: { word: 'stored', storage } };
}

function nearly(scan: Scan, wordSpan: Span): FactFound | null {
  const written = scan.text.slice(wordSpan.start, wordSpan.end);
  const words = facts.map((row) => row.word);
  const near = nearest(nameKey(written), words);
  if (near === null || written.includes(' ') !== near.includes(' ')) return null;
  blame(scan, wordSpan, `${shown(written)} was read as \`${near}\`.`, [replaceFix(`Write ${near}`, wordSpan, near)]);
  return { row: facts.find((row) => row.word === near)!, wordSpan };
}

function firstWord(scan: Scan, span: Span): Span {
  const end = wordEnd(scan.text, span.start, span.end);
  return { start: span.start, end: Math.max(end, Math.min(span.start + 1, span.end)) };
}

function ruleOf(word: FactWord): LineRule {
  if (word === 'allergen') return 'namesLine';
  return word === 'like' || word === 'phase' || word === 'stored' ? 'nameLine' : 'measureLine';
}

function build(scan: Scan, word: FactWord, draft: Draft): Value | null {
  const { name, names, measured } = draft;
  refuseOverrides(scan, measured);
  switch (word) {
    case 'like':
      return name === null ? null : { word, name };
    case 'allergen':
      for (const each of names) checkAllergen(scan, each);
      return names.length === 0 ? null : { word, allergens: names };
    case 'phase': {
      const phase =
        name === null
          ? null
          : oneOf(
              scan,
              name,
              phases.map((row) => row.word),
            );
      return phase === null ? null : { word, phase };
    }
    case 'stored': {
      const storage = name === null ? null : oneOf(scan, name, storages);
      return storage === null ? null : { word, storage };
    }
    default:
      return measured === null ? null : measuredFact(scan, word, measured);
  }
}

function measuredFact(
  scan: Scan,
  word: Exclude<FactWord, 'like' | 'allergen' | 'phase' | 'stored'>,
  measured: Measured,
): Value | null {
  const { base } = measured;
  switch (word) {
    case 'density':
      if (base.kind === 'density') return { word, value: numbersOf(base) };
      blameKind(scan, measured, 'a density such as 1.42 g/ml', ['g/ml']);
      return null;
    case 'pH':
      if (base.kind === 'number') return { word, value: numbersOf(base) };
      blameKind(scan, measured, 'a number such as 3.4', []);
      return null;
    case 'each': {
      const quantity = base.kind === 'quantity' && base.unit !== 'pc' ? quantityOf(base) : null;
      if (quantity !== null) return { word, quantity };
      blameKind(scan, measured, 'the mass of one piece, such as 18 g', ['g']);
      return null;
    }
    default: {
      const percent = percentOf(scan, measured, word === 'absorbs');
      return percent === null ? null : { word, percent };
    }
  }
}

function oneOf<Word extends string>(scan: Scan, name: Name, words: readonly Word[]): Word | null {
  const exact = words.find((word) => word === name.key);
  if (exact !== undefined) return exact;
  const near = nearest(name.key, words);
  const fixes = near === null ? [] : [replaceFix(`Write ${near}`, name, near)];
  blame(scan, name, `${shown(name.text)} is not one of ${words.join(', ')}.`, fixes);
  return words.find((word) => word === near) ?? null;
}

/** A line of an `equipment` block. */
export function buildEquipment(reading: LineReading): EquipmentLine | BadLine {
  const { scan, span } = reading;
  scanWords(scan, span.start);
  const draft = run(reading, 'equipmentLine');
  if (draft.name === null || draft.more.length === 0) {
    blame(scan, span, 'A line of equipment is written like `saucepan 3 l, 20 cm wide` or `fridge 3 °C`.');
    return { kind: 'bad', ...baseOf(reading) };
  }
  const values = { capacity: null, wide: null, deep: null, temperature: null, altitude: null } as Equipped;
  for (const { measured, word } of draft.more) equip(scan, values, draft.name, measured, word);
  return { kind: 'equipment', ...baseOf(reading), name: draft.name, ...values };
}

interface Equipped {
  capacity: Quantity | null;
  wide: number | null;
  deep: number | null;
  temperature: Reading | null;
  altitude: number | null;
}

function equip(scan: Scan, values: Equipped, name: Name, measured: Measured, word: Name | null): void {
  const { base } = measured;
  refuseOverrides(scan, measured);
  if (base.kind === 'length') equipLength(scan, values, name, base, word);
  else if (word !== null)
    blame(scan, word, `Nothing was expected here, not ${shown(word.text)}; only lengths are \`wide\` or \`deep\`.`);
  else if (base.kind === 'temperature') values.temperature = base;
  else if (base.kind === 'quantity' && base.unit !== 'pc') values.capacity = base;
  else blameKind(scan, measured, 'a size or a temperature, such as 3 l, 20 cm wide or 3 °C', ['l', '°C']);
}

function equipLength(
  scan: Scan,
  values: Equipped,
  name: Name,
  base: Extract<Measured['base'], { kind: 'length' }>,
  word: Name | null,
): void {
  if (name.key === 'altitude' && word === null) values.altitude = base.low / 1000;
  else if (word?.key === 'wide') values.wide = base.low;
  else if (word?.key === 'deep') values.deep = base.low;
  else if (word !== null) {
    const fixes = ['wide', 'deep'].map((each) => replaceFix(`Write ${each}`, word, each));
    blame(scan, word, `A length is \`wide\` or \`deep\`, not ${shown(word.text)}.`, fixes);
  } else {
    const fixes = ['wide', 'deep'].map((each) => insertFix(`Write ${each}`, base.end, ` ${each}`));
    blame(scan, base, 'A length says what it is: `wide` or `deep`.', fixes);
  }
}

/** A line of a `prices` block. */
export function buildPrice(reading: LineReading): PriceLine | BadLine {
  const { scan, span } = reading;
  scanPrice(scan, span.start);
  const draft = run(reading, 'priceLine');
  const { measured, unit, name } = draft;
  refuseOverrides(scan, measured);
  if (measured?.base.kind === 'number' && unit !== null && name !== null) {
    const per = quantityUnits.find((word) => word === unit.word);
    if (measured.base.ranged) blame(scan, measured, 'A price is one number, not a range.');
    if (measured.base.low < 0) blame(scan, measured, 'A price cannot be negative.');
    if (per !== undefined) return { kind: 'price', ...baseOf(reading), amount: measured.base.low, per, name };
  }
  blame(scan, span, 'A price is written like `5.20 per kg cream`.');
  return { kind: 'bad', ...baseOf(reading) };
}

const quantityUnits = ['mg', 'g', 'kg', 'oz', 'lb', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'cup', 'floz', 'pc'] as const;
