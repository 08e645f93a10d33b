/** Vessels do not grow with a formula: which steps must be done in several goes. */
import type { Vessel } from '../resolve/model.ts';
import type { Run, StepRecord } from '../run/trace.ts';

export interface Batches {
  readonly record: StepRecord;
  readonly vessel: Vessel;
  /** Millilitres at the step's fullest, at the high end of what is computed. */
  readonly needs: number;
  readonly holds: number;
  readonly batches: number;
}

/** The fullest step of each vessel that cannot take it at once; `run` is the run at the scaled size. */
export function batchesOf(run: Run): readonly Batches[] {
  const fullest = new Map<string, Batches>();
  for (const record of run.records) {
    const { vessel } = record;
    const holds = vessel?.millilitres ?? null;
    const needs = (record.largestMillilitres ?? record.millilitres)?.high ?? 0;
    if (!vessel || holds === null || holds <= 0 || !Number.isFinite(needs) || needs <= holds) continue;
    const known = fullest.get(vessel.key);
    if (!known || known.needs < needs)
      fullest.set(vessel.key, { record, vessel, needs, holds, batches: Math.ceil(needs / holds) });
  }
  return [...fullest.values()];
}
