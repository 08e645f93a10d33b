/** Rounding a factor so that eggs stay whole and everything else follows. */
import { middle } from '../quantities/interval.ts';
import { pick } from '../resolve/choices.ts';
import type { SourceLine } from '../resolve/model.ts';
import type { Run } from '../run/trace.ts';

export interface WholePieces {
  readonly factor: number;
  readonly count: number;
  readonly line: SourceLine;
}

/**
 * The factor nearest to the run's at which one line comes to whole pieces (at least one): a line written in pieces before one written in
 * grams, egg before anything else, the heaviest of these. Null where nothing in the formula comes in pieces.
 */
export function wholePieces(run: Run): WholePieces | null {
  const candidates = run.blocks.flatMap((block) =>
    block.lines.flatMap(({ line, grams }) => {
      const amount = pick(line.amount, block.selection);
      const kind = line.substance.is === 'kind' ? line.substance.kind : null;
      const isEgg = kind?.traits.some((trait) => eggs.has(trait)) ?? false;
      const counted = amount.unit === 'pc';
      const piece = counted ? amount.gramsPerUnit : isEgg ? (kind?.piece ?? null) : null;
      const mass = middle(grams);
      if (piece === null || piece <= 0 || mass <= 0 || amount.each) return [];
      return [{ line, mass, pieces: mass / piece, rank: (isEgg ? 2 : 0) + (counted ? 1 : 0) }];
    }),
  );
  const [best] = candidates.sort((a, b) => b.rank - a.rank || b.mass - a.mass);
  if (!best) return null;
  const count = Math.max(1, Math.round(best.pieces));
  return { factor: (run.factor * count) / best.pieces, count, line: best.line };
}

const eggs: ReadonlySet<string> = new Set(['whole egg', 'egg yolk', 'egg white']);
