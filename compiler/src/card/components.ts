/** Components of a card: each block's weighed lines, shares and numbered steps. */
import { middle } from '../quantities/interval.ts';
import type { StepRecord } from '../run/trace.ts';
import { type Context, partsOf } from './context.ts';
import { exactGrams, flourGrams, ingredientsOf } from './ingredients.ts';
import type { CardComponent } from './model.ts';
import { stepOf } from './steps.ts';
import { plain } from './text.ts';

export interface Components {
  readonly list: readonly CardComponent[];
  /** The card's number of every step. */
  readonly numbers: ReadonlyMap<StepRecord, number>;
  /** Exact grams of everything weighed, batches and draws left out (what is in them is weighed elsewhere on the card). */
  readonly weighed: readonly number[];
}

export function componentsOf(context: Context): Components {
  const { run, positions } = context;
  const parts = partsOf(run, positions);
  const weighed = parts.flatMap(({ block }) =>
    block.lines.flatMap((line) => (line.line.substance.is === 'kind' ? (exactGrams(line, block, context) ?? []) : [])),
  );
  const total = weighed.reduce((sum, grams) => sum + grams, 0);
  const numbers = new Map<StepRecord, number>();
  for (const { block } of parts) for (const record of block.records) numbers.set(record, numbers.size + 1);
  const list = parts.map(({ block, from }) => ({
    name: block.component.isAssembly ? 'assembly' : plain(block.component.name),
    from,
    isAssembly: block.component.isAssembly,
    grams: block.result ? Math.round(middle(block.result.grams)) : null,
    notes: block.component.notes,
    bakers: flourGrams(block, context) > 0,
    ingredients: ingredientsOf(block, context, total),
    steps: block.records.map((record) => stepOf(record, block, context, numbers.get(record) ?? 0)),
  }));
  return { list, numbers, weighed };
}
