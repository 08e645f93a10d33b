/** House ingredients: the `ingredient` blocks of a file as kinds, made when first asked for. */
import type { FactLine, Line } from 'nappe-grammar';
import { findKind, type HouseFacts, houseKind, nearestKinds } from '../catalogue/index.ts';
import type { Allergen, Kind, Phase } from '../catalogue/kind.ts';
import type { Constituent } from '../matter/composition.ts';
import { middle } from '../quantities/interval.ts';
import { gramsOf } from '../quantities/units.ts';
import { headingPlace, type NamedBlock, placeIn, sameItems } from './blocks.ts';
import type { BlockId, Place, RawFinding } from './model.ts';

export interface RememberedKind {
  readonly lines: readonly Line[];
  readonly like: Kind | null;
  readonly kind: Kind;
  readonly findings: readonly RawFinding[];
}

export class HouseKinds {
  private readonly byKey = new Map<string, NamedBlock>();
  private readonly repeated: RawFinding[] = [];
  private readonly underway = new Set<BlockId>();

  constructor(
    blocks: readonly NamedBlock[],
    private readonly taken: ReadonlyMap<string, Kind>,
    private readonly earlier: ReadonlyMap<BlockId, RememberedKind>,
    private readonly now: Map<BlockId, RememberedKind>,
  ) {
    for (const block of blocks) {
      if (block.heading?.word !== 'ingredient' || block.heading.name === null) continue;
      const first = this.byKey.get(block.heading.name.key);
      if (first === undefined) this.byKey.set(block.heading.name.key, block);
      else
        this.repeated.push({
          code: 'duplicate-name',
          place: placeIn(block.id, 0, block.heading.name),
          numbers: { name: block.heading.name.text },
          related: [{ place: headingPlace(first), message: `${block.heading.name.text} is declared here first` }],
        });
    }
  }

  kind(key: string): Kind | null {
    const block = this.byKey.get(key);
    return block === undefined ? null : this.kindIn(block);
  }

  all(): ReadonlyMap<string, Kind> {
    const kinds = new Map<string, Kind>();
    for (const [key, block] of this.byKey) {
      const kind = this.kindIn(block);
      if (kind) kinds.set(key, kind);
    }
    return kinds;
  }

  /** To be asked after every kind was. */
  findings(): readonly RawFinding[] {
    this.all();
    return [...this.repeated, ...[...this.now.values()].flatMap(({ findings }) => findings)];
  }

  private kindIn(block: NamedBlock): Kind | null {
    const done = this.now.get(block.id);
    if (done) return done.kind;
    if (this.underway.has(block.id)) return null;
    this.underway.add(block.id);
    const like = this.likeOf(block);
    this.underway.delete(block.id);
    const before = this.earlier.get(block.id);
    const remembered = before && before.like === like && sameItems(before.lines, block.lines) ? before : made(block, like);
    this.now.set(block.id, remembered);
    return remembered.kind;
  }

  /** `like NAME`: another house ingredient, one taken, or a kind; an ingredient like its own name means the catalogue's. */
  private likeOf(block: NamedBlock): Kind | null {
    const line = factsOf(block).find(({ line: fact }) => fact.word === 'like')?.line;
    if (line?.word !== 'like') return null;
    const { key } = line.name;
    const own = key === block.heading?.name?.key ? null : (this.kind(key) ?? this.taken.get(key));
    return own ?? findKind(key);
  }
}

const factsOf = (block: NamedBlock): readonly { readonly line: FactLine; readonly index: number }[] =>
  block.lines.flatMap((line, index) => (line.kind === 'fact' ? [{ line, index }] : []));

const constituentOf: Readonly<Record<string, Constituent>> = {
  water: 'water',
  'milk fat': 'milkFat',
  'cocoa butter': 'cocoaButter',
  'other fat': 'otherFat',
  sucrose: 'sucrose',
  'other sugars': 'otherSugars',
  starch: 'starch',
  protein: 'protein',
  fibre: 'fibre',
  ash: 'ash',
  alcohol: 'alcohol',
};

function made(block: NamedBlock, like: Kind | null): RememberedKind {
  const findings: RawFinding[] = [];
  const facts = readFacts(block, like, findings);
  const kind = houseKind(facts);
  if (!('error' in kind)) return { lines: block.lines, like, kind, findings };
  findings.push({ code: 'syntax', place: headingPlace(block), numbers: { message: kind.error } });
  // What can be said without the composition still holds.
  const rest = houseKind({ ...facts, percent: {} });
  if ('error' in rest) throw new Error(rest.error);
  return { lines: block.lines, like, kind: rest, findings };
}

function readFacts(block: NamedBlock, like: Kind | null, findings: RawFinding[]): HouseFacts {
  const percent: Partial<Record<Constituent, number>> = {};
  const allergens: Allergen[] = [];
  let facts: HouseFacts = { name: block.heading?.name?.text ?? '', like };
  for (const { line, index } of factsOf(block)) {
    const place = placeIn(block.id, index, line.span);
    switch (line.word) {
      case 'like':
        if (like === null) findings.push(unknownLike(line.name, placeIn(block.id, index, line.name)));
        break;
      case 'density':
        facts = { ...facts, density: middle(line.value) };
        break;
      case 'each':
        facts = { ...facts, each: pieceOf(line, place, findings) };
        break;
      case 'phase':
        facts = { ...facts, phase: line.phase as Phase };
        break;
      case 'pH':
        facts = { ...facts, pH: middle(line.value) };
        break;
      case 'allergen':
        allergens.push(...line.allergens.flatMap(({ key }) => allergensOf(key)));
        break;
      case 'absorbs':
        facts = { ...facts, absorbs: middle(line.percent) };
        break;
      case 'stored':
        facts = { ...facts, stored: line.storage };
        break;
      default: {
        const name = constituentOf[line.word];
        if (name !== undefined) percent[name] = middle(line.percent);
      }
    }
  }
  return { ...facts, percent, allergens };
}

/** Nuts of no name may be any of them. */
const nuts: readonly Allergen[] = ['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia'];

const allergensOf = (key: string): readonly Allergen[] => (key === 'nuts' ? nuts : [key as Allergen]);

function pieceOf(line: Extract<FactLine, { word: 'each' }>, place: Place, findings: RawFinding[]): number | null {
  const grams = gramsOf(line.quantity, { density: null, piece: null });
  if (grams !== null && typeof grams === 'object') return middle(grams);
  findings.push({ code: 'syntax', place, numbers: { message: 'What one piece weighs is a mass, such as `each 18 g`.' } });
  return null;
}

function unknownLike(name: { readonly text: string; readonly key: string }, place: Place): RawFinding {
  const near = nearestKinds(name.key);
  return {
    code: 'unknown-ingredient',
    place,
    numbers: { name: name.text, kind: name.text, nearest: near[0] ?? null },
    fixes: near.map((text) => ({ title: `Change to ${text}`, edits: [{ ...place, text }] })),
  };
}
