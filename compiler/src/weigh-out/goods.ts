/** What a weighed line asks for as goods: which lines are the same thing, where it is kept, and whether it is counted. */
import { nameKey } from 'nappe-grammar';
import { lineName } from '../card/context.ts';
import { exactGrams, productOf } from '../card/ingredients.ts';
import type { Order } from '../card/order.ts';
import type { Kind } from '../catalogue/kind.ts';
import { pick } from '../resolve/choices.ts';
import type { SourceLine } from '../resolve/model.ts';
import type { BlockRun, WeighedLine } from '../run/trace.ts';
import { scaleGrams } from '../scale/rounding.ts';
import type { Stored } from './model.ts';

/** One ingredient line at the order's size. */
export interface Goods {
  /** The same for lines that ask for the same thing. */
  readonly key: string;
  readonly name: string;
  /** The kind's own name, for lines that call one thing by several. */
  readonly kindName: string;
  readonly attributes: readonly string[];
  readonly kind: Kind | null;
  readonly line: SourceLine;
  readonly stored: Stored;
  /** What the card's line shows; null for `some` and what has no mass. */
  readonly grams: number | null;
  /** As written where there are no grams. */
  readonly unweighed: string;
  /** Pieces, where it comes in pieces; `counted` where the line is written in them. */
  readonly pieces: { readonly grams: number; readonly counted: boolean } | null;
}

/** Null for what is weighed elsewhere: a batch of a base, or a draw from another component. */
export function goodsOf(weighed: WeighedLine, block: BlockRun, { context }: Order): Goods | null {
  const { line } = weighed;
  if (line.substance.is !== 'kind') return null;
  const kind = line.substance.known ? line.substance.kind : null;
  const exact = exactGrams(weighed, block, context);
  const attributes = productOf(line, context);
  const amount = pick(line.amount, block.selection);
  const name = lineName(line, context.language);
  const kindName = kind === null ? name : line.substance.house ? kind.name : (context.language.kind(kind) ?? kind.name);
  return {
    key: [kind ? kind.name : `? ${nameKey(line.label)}`, ...[...attributes].sort()].join('\n'),
    name,
    kindName,
    attributes,
    kind,
    line,
    stored: storedOf(line, kind),
    grams: exact === null ? null : scaleGrams(exact),
    unweighed: amount.measure === 'some' ? context.language.labels.some : amount.written,
    pieces: piecesOf(line, kind, amount),
  };
}

function storedOf(line: SourceLine, kind: Kind | null): Stored {
  if (line.phase === 'frozen') return 'frozen';
  return kind === null || kind.storage === 'ambient' ? 'dry' : kind.storage;
}

/** Eggs in the shell and pods are counted even where they are weighed. */
function piecesOf(line: SourceLine, kind: Kind | null, amount: { readonly unit: string; readonly gramsPerUnit: number | null }) {
  if (amount.unit === 'pc' && amount.gramsPerUnit) return { grams: amount.gramsPerUnit, counted: true };
  if (!kind?.piece || line.state === 'pasteurised' || kind.pasteurised) return null;
  const countable = kind.traits.some((trait) => eggs.has(trait)) || /\bpod\b/u.test(kind.name);
  return countable ? { grams: kind.piece, counted: false } : null;
}

const eggs: ReadonlySet<string> = new Set(['whole egg', 'egg yolk', 'egg white']);
