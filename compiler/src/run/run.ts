/** The abstract run of a formula under one selection: everything made, in order, with what came of each step. */
import type { Formula, Selection } from '../resolve/model.ts';
import { Kitchen } from './kitchen.ts';
import { once } from './once.ts';
import type { Run, StepRecord } from './trace.ts';

export interface RunOptions {
  /** Times the written grams. */
  readonly factor?: number;
}

export function runFormula(formula: Formula, selection: Selection, options: RunOptions = {}): Run {
  const factor = options.factor ?? 1;
  const kitchen = new Kitchen(formula, selection, factor, null);
  const result = formula.tooLarge ? null : kitchen.serve();
  const records = kitchen.blocks.flatMap((block) => block.records);
  const blockOf = once(() => new Map(kitchen.blocks.flatMap((block) => block.records.map((record) => [record, block] as const))));
  return {
    formula,
    selection,
    factor,
    blocks: kitchen.blocks,
    records,
    later: laterOf(records),
    get blockOf() {
      return blockOf();
    },
    result,
    findings: [...kitchen.findings, ...kitchen.blocks.flatMap((block) => (block.batchOf ? [] : block.findings))],
  };
}

function laterOf(records: readonly StepRecord[]): ReadonlyMap<StepRecord, readonly StepRecord[]> {
  const later = new Map<StepRecord, StepRecord[]>();
  const link = (from: StepRecord | null, to: StepRecord): void => {
    if (!from || from === to) return;
    const known = later.get(from);
    if (!known) later.set(from, [to]);
    else if (!known.includes(to)) known.push(to);
  };
  for (const record of records)
    for (const matter of [...record.inputs.map((input) => input.matter), ...(record.onto ? [record.onto] : [])]) {
      link(matter.made, record);
      for (const layer of matter.layers ?? []) link(layer.made, record);
    }
  return later;
}
