/** An ingredient line resolved: what it is, what it weighs, what its attributes say. */
import { type Attribute, type IngredientLine, type Name, nameKey } from 'nappe-grammar';
import { findKind, nearestKinds } from '../catalogue/catalogue.ts';
import type { Kind, Phase } from '../catalogue/kind.ts';
import { density } from '../matter/thermal.ts';
import { type Interval, interval, middle } from '../quantities/interval.ts';
import { celsiusOf, gramsOf, type Measures } from '../quantities/units.ts';
import { amountOf, lackingFinding, unknownUnit } from './amounts.ts';
import { adjusted } from './attributes.ts';
import { placeIn, under } from './blocks.ts';
import type { GuardReader } from './guards.ts';
import type { BlockId, RawFinding, SourceLine, Substance, Taken } from './model.ts';
import type { Meaning, Names } from './names.ts';

export interface LineSurroundings {
  readonly block: BlockId;
  readonly names: Names;
  readonly guards: GuardReader;
  /** Keys of the block's other ingredient lines, for words that may be mistyped units. */
  readonly siblings: ReadonlySet<string>;
  readonly notes: readonly string[];
  /** Nearest kinds are looked for this many times more: where a block knows nothing, no slip of the pen is the reason. */
  readonly proposals: { left: number };
  report(finding: RawFinding): void;
}

export function sourceLineOf(node: IngredientLine, index: number, surroundings: LineSurroundings): SourceLine {
  const { block, guards } = surroundings;
  const condition = guards.condition(node.guard, index);
  const report = (finding: RawFinding): void => surroundings.report(under(finding, [condition]));
  const around = { ...surroundings, report };
  const { name, misread } = nameOf(node, index, around);
  const is = attribute(node, 'is');
  const substance = withAttributes(substanceOf(name, is?.name ?? null, index, around), node, index, around);
  const measures = measuresOf(substance);
  const quantityPlace = placeIn(block, index, node.quantity);
  const weighed = { name: name.text, component: substance.is !== 'kind' };
  const amount = guards.varied(node.quantity, index, (quantity, when) =>
    amountOf(quantity, node.text, measures, (code) => {
      if (!misread) report(under(lackingFinding(quantityPlace, code, quantity, weighed), when));
    }),
  );
  const alias = attribute(node, 'as')?.name ?? name;
  const state = attribute(node, 'state')?.state ?? null;
  return {
    id: `${block}:${index}`,
    place: placeIn(block, index, node.span),
    namePlace: placeIn(block, index, name),
    quantityPlace,
    name: alias.text,
    key: alias.key,
    label: name.text,
    amount: misread
      ? { base: { ...amount.base, measure: 'unknown', value: interval(0), gramsPerUnit: null }, overrides: [] }
      : amount,
    condition,
    substance,
    celsius: readingOf(node),
    bloom: numbersOf(attribute(node, 'bloom')?.bloom),
    brix: numbersOf(attribute(node, 'brix')?.brix),
    pH: acidityOf(node),
    state,
    phase: (attribute(node, 'phase')?.phase as Phase | undefined) ?? (substance.is === 'kind' ? substance.kind.phase : 'paste'),
    preparation: node.attributes.flatMap((one) => (one.kind === 'preparation' ? [one.text.text] : [])).join(', ') || null,
    notes: around.notes,
  };
}

type Of<K extends Attribute['kind']> = Extract<Attribute, { kind: K }>;

/** The first attribute of a kind; more of the same were reported by the grammar. */
export function attribute<K extends Attribute['kind']>(node: IngredientLine, kind: K): Of<K> | undefined {
  return node.attributes.find((one): one is Of<K> => one.kind === kind);
}

const numbersOf = (numbers: { readonly low: number; readonly high: number } | undefined): Interval | null =>
  numbers === undefined ? null : interval(numbers.low, numbers.high);

function readingOf(node: IngredientLine): Interval | null {
  const reading = attribute(node, 'temperature')?.reading;
  return reading === undefined ? null : celsiusOf(reading);
}

function acidityOf(node: IngredientLine): number | null {
  const pH = numbersOf(attribute(node, 'pH')?.pH);
  return pH === null ? null : middle(pH);
}

/**
 * The name, without a first word that can only be a mistyped unit: the whole is nothing known, the rest is.
 * `misread`: so it was, and the quantity means nothing.
 */
function nameOf(
  node: IngredientLine,
  index: number,
  { block, names, siblings, report }: LineSurroundings,
): { name: Name; misread: boolean } {
  const { name } = node;
  const word = node.quantity.base.doubtfulUnit;
  if (word === undefined || name.quoted || isKnown(name.key, names) || attribute(node, 'is') !== undefined)
    return { name, misread: false };
  const rest = name.text.slice(word.text.length).trimStart();
  const key = nameKey(rest);
  if (rest === '' || !(isKnown(key, names) || siblings.has(key))) return { name, misread: false };
  let start = word.end;
  while (node.text[start]?.trim() === '') start++;
  report(unknownUnit(block, index, word, { text: rest, start, end: name.end }));
  return { name: { ...name, text: rest, key, start }, misread: true };
}

const isKnown = (key: string, names: Names): boolean =>
  names.meaning(key) !== null || findKind(key) !== null || names.late(key) !== null;

function substanceOf(name: Name, is: Name | null, index: number, around: LineSurroundings): Substance {
  const asked = is ?? name;
  const meaning = around.names.meaning(asked.key);
  // `is` names a kind, so a component of that name is not meant.
  if (meaning && (is === null || meaning.is === 'house')) return fromMeaning(meaning, asked, index, around);
  const kind = findKind(asked.key);
  if (kind) return { is: 'kind', kind, known: true, house: false };
  const late = is === null ? around.names.late(asked.key) : null;
  if (late) return fromMeaning(late, asked, index, around);
  around.report(unknownIngredient(around.block, index, name, is, around.proposals.left-- > 0));
  return { is: 'kind', kind: unknownKind(name.text), known: false, house: false };
}

function fromMeaning(meaning: Meaning, name: Name, index: number, { block, report }: LineSurroundings): Substance {
  switch (meaning.is) {
    case 'house':
      return { is: 'kind', kind: meaning.kind, known: true, house: true };
    case 'taken':
      return { is: 'batch', taken: meaning.taken };
    case 'own component':
      if (meaning.component) return { is: 'own component', component: meaning.component };
      report({ code: 'used-before-made', place: placeIn(block, index, name), numbers: { name: name.text, circle: true } });
      break;
    case 'missing':
      break;
    case 'circle':
      report({ code: 'import-cycle', place: placeIn(block, index, name), numbers: { name: name.text, path: meaning.file } });
  }
  return { is: 'kind', kind: unknownKind(name.text), known: false, house: false };
}

function unknownIngredient(block: BlockId, line: number, name: Name, is: Name | null, proposing: boolean): RawFinding {
  const asked = is ?? name;
  const near = proposing ? nearestKinds(asked.key) : [];
  const place = placeIn(block, line, asked);
  return {
    code: 'unknown-ingredient',
    place,
    numbers: { name: name.text, kind: is?.text ?? null, nearest: near[0] ?? null },
    fixes: near.map((kind) =>
      is === null
        ? { title: `Say it is ${kind}`, edits: [{ ...place, start: name.end, end: name.end, text: `, is ${kind}` }] }
        : { title: `Change to ${kind}`, edits: [{ ...place, text: kind }] },
    ),
  };
}

/** Stands in for an ingredient no catalogue knows: nothing is known of it. */
function unknownKind(name: string): Kind {
  return {
    name,
    synonyms: [],
    composition: null,
    density: null,
    piece: null,
    phase: 'solid',
    storage: 'ambient',
    allergens: [],
    traits: [],
    pH: null,
    absorbs: null,
    saturated: 0,
    salt: 0,
    pasteurised: false,
    source: { text: 'not known' },
    fr: name,
  };
}

function withAttributes(
  substance: Substance,
  node: IngredientLine,
  index: number,
  { block, report }: LineSurroundings,
): Substance {
  const complain = (span: Attribute, message: string): void => {
    report({ code: 'syntax', place: placeIn(block, index, span), numbers: { message } });
  };
  if (substance.is === 'kind') return { ...substance, kind: adjusted(substance.kind, node.attributes, complain) };
  for (const one of node.attributes)
    if (one.kind === 'share' || one.kind === 'brix' || one.kind === 'bloom' || one.kind === 'is')
      complain(
        one,
        `“${node.text.slice(one.start, one.end)}” cannot be said of a component: what is in it follows from its own lines.`,
      );
  return substance;
}

/** Density and piece mass: the kind's; of a liquid the density may be computed; of a taken formula that counts its pieces by mass, that. */
function measuresOf(substance: Substance): Measures {
  switch (substance.is) {
    case 'kind': {
      const { kind } = substance;
      const liquid = kind.phase === 'liquid' && kind.composition !== null;
      return { density: kind.density ?? (liquid && kind.composition ? density(kind.composition, 20) : null), piece: kind.piece };
    }
    case 'own component':
      return { density: null, piece: null };
    case 'batch':
      return { density: null, piece: pieceOf(substance.taken) };
  }
}

function pieceOf({ formula }: Taken): number | null {
  const [makes] = formula?.makes ?? [];
  if (!makes || makes.condition !== null || formula?.components.length !== 1) return null;
  const { count, size } = makes.value;
  if (count === null || size === null) return null;
  const grams = gramsOf(size, { density: null, piece: null });
  return grams !== null && typeof grams === 'object' ? middle(grams) : null;
}
