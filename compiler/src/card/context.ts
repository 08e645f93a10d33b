/** What every part of a card is made with: the scaled run, the language, the units, and where lines stand. */
import { type IngredientLine, nameKey } from 'nappe-grammar';
import type { SourceLine } from '../resolve/model.ts';
import type { BlockRun, Run, StepRecord } from '../run/trace.ts';
import type { Positions } from '../run/trace-json.ts';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import { plain } from './text.ts';

export interface Context {
  /** At the card's size. */
  readonly run: Run;
  readonly language: Language;
  readonly measures: Measures;
  readonly positions: Positions;
  /** How many more pieces than written: for what is counted by piece, whatever their size. */
  readonly pieces: number;
  /** How many pieces the card makes; 1 where it counts none. */
  readonly count: number;
  /** What it counts, as a key in the singular; null where it counts nothing. */
  readonly noun: string | null;
  /** The tree's line of an ingredient, for its written attributes; null where it is not at hand. */
  nodeOf(line: SourceLine): IngredientLine | null;
}

/** A block with its place on the card. */
export interface Part {
  readonly block: BlockRun;
  readonly from: string | null;
}

/**
 * Blocks in the order a cook meets them: components as written, each after what it needs, bases before what takes them, the assembly last.
 */
export function partsOf(run: Run, positions: Positions): readonly Part[] {
  const { formula } = run;
  const own = new Set([...formula.components, ...(formula.assembly ? [formula.assembly] : [])]);
  const rank = (block: BlockRun): number =>
    block.component.isAssembly ? Number.MAX_SAFE_INTEGER : formula.components.indexOf(block.component);
  const written = run.blocks
    .filter((block) => own.has(block.component) && block.batchOf === null)
    .sort((a, b) => rank(a) - rank(b));
  const ordered: BlockRun[] = [];
  const visited = new Set<BlockRun>();
  const visit = (block: BlockRun): void => {
    if (visited.has(block)) return;
    visited.add(block);
    for (const needed of neededBy(block, run)) visit(needed);
    ordered.push(block);
  };
  for (const block of [...written, ...run.blocks]) if (!block.component.isAssembly) visit(block);
  for (const block of run.blocks) visit(block);
  return ordered.map((block) => ({ block, from: own.has(block.component) ? null : positions.fileOf(block.component.place) }));
}

/** Blocks whose matter goes into a block: by its lines, and by what its steps take in. */
function neededBy(block: BlockRun, run: Run): readonly BlockRun[] {
  const made: (StepRecord | null)[] = [];
  for (const { matter } of [...block.lines, ...block.records.flatMap((record) => record.inputs)]) {
    made.push(matter.made, ...(matter.layers ?? []).map((layer) => layer.made));
  }
  const batches = run.blocks.filter(
    (other) => other.batchOf !== null && other !== block && block.lines.some(({ line }) => line === other.batchOf),
  );
  const makers = made.flatMap((record) => (record ? (run.blockOf.get(record) ?? []) : []));
  return [...new Set([...batches, ...makers])].filter((other) => other !== block);
}

/** How the card calls an ingredient: the language's name for a catalogue kind named by its own words, else what is written. */
export function lineName(line: SourceLine, language: Language): string {
  const { substance } = line;
  if (substance.is === 'kind' && substance.known && !substance.house) {
    const key = nameKey(line.label);
    const { kind } = substance;
    if (key === nameKey(kind.name) || kind.synonyms.some((synonym) => nameKey(synonym) === key))
      return plain(language.kind(kind) ?? line.label);
  }
  return plain(line.label);
}
