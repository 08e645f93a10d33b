/** The factor from what there is of one ingredient: `8 pc egg yolk` is as far as the formula can go. */
import { type IngredientLine, nameKey } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import { middle } from '../quantities/interval.ts';
import { gramsOf } from '../quantities/units.ts';
import type { Run, WeighedLine } from '../run/trace.ts';
import type { Unscalable } from './factor.ts';

export interface Limited {
  readonly factor: number;
  /** Grams there are, and grams the formula as run needs over all its blocks and bases. */
  readonly available: number;
  readonly needed: number;
  /** The first line it was found at, and the name asked for. */
  readonly line: WeighedLine['line'];
}

/**
 * How often the run's written amounts go into what is there. `find` looks a name up in the catalogue, so that `yolk` finds `egg yolk`;
 * every line of that name or kind counts, in components, assembly and taken bases alike.
 */
export function limitOf(run: Run, limit: IngredientLine, find: (key: string) => Kind | null): Limited | Unscalable {
  const { text, key } = limit.name;
  const kind = find(key);
  const matching = run.blocks
    .flatMap((block) => block.lines)
    .filter(
      ({ line }) =>
        isCalled(line, key) || (kind !== null && line.substance.is === 'kind' && line.substance.kind.name === kind.name),
    );
  const first = matching[0]?.line;
  if (!first) return { problem: `Nothing in the formula is called “${text}”${listed(run)}.` };
  const needed = matching.reduce((sum, { grams }) => sum + middle(grams), 0);
  if (needed <= 0) return { problem: `The formula gives no mass for “${text}”, so it cannot limit the batch.` };
  const own = first.substance.is === 'kind' ? first.substance.kind : null;
  const quantity = limit.quantity.base;
  const perPiece = quantity.unit === 'pc' && first.amount.base.unit === 'pc' ? first.amount.base.gramsPerUnit : null;
  const grams = gramsOf(quantity, { density: own?.density ?? null, piece: perPiece ?? own?.piece ?? null });
  if (grams === 'needs density')
    return { problem: `“${text}” cannot be measured by volume: its density is not known. Give grams.` };
  if (grams === 'needs piece mass') return { problem: `One piece of “${text}” has no known mass. Give grams.` };
  if (grams === null) return { problem: 'A limit is an amount: grams, a volume or pieces.' };
  const available = middle(grams);
  if (available <= 0) return { problem: `There is none of “${text}”.` };
  return { factor: (run.factor * available) / needed, available, needed, line: first };
}

const isCalled = (line: WeighedLine['line'], key: string): boolean => line.key === key || nameKey(line.label) === key;

function listed(run: Run): string {
  const names = [...new Set(run.blocks.flatMap((block) => block.lines).map(({ line }) => line.label))];
  return names.length === 0 ? '' : `; it weighs ${names.slice(0, 6).join(', ')}${names.length > 6 ? ' …' : ''}`;
}
