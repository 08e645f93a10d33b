/** The record of a step that was worked out. */
import { type Interval, interval } from '../quantities/interval.ts';
import type { Component, Step } from '../resolve/model.ts';
import type { Act, Effect } from '../steps/act.ts';
import type { Bench } from './bench.ts';
import { atOf, checkOf, toCelsiusOf } from './clauses.ts';
import type { Slot } from './slots.ts';
import type { Input, Matter, StepRecord } from './trace.ts';
import { millilitresOf } from './volume-of.ts';

/** Verbs for which `at` is the surroundings (or, for `hold`, the effect itself reads it). */
export const surroundingsVerbs: ReadonlySet<string> = new Set([
  'bake',
  'toast',
  'dry',
  'fry',
  'chill',
  'freeze',
  'rest',
  'thaw',
  'proof',
  'hold',
]);
/** What a step came to, before its names are settled. */
export interface Outcome {
  readonly inputs: readonly Input[];
  readonly onto: Matter | null;
  readonly matter: Matter;
  readonly act: Act;
  readonly effect: Effect;
  readonly seconds: () => Interval;
}

/** The record of a step, which its result is marked with; the slot then holds that result. */
export function recordOf(bench: Bench, step: Step, id: string, outcome: Outcome, slot: Slot): StepRecord {
  const result: { -readonly [K in keyof Matter]: Matter[K] } = { ...outcome.matter };
  const record = new WorkedStep(id, step, bench.component, outcome, result, slot, writtenReading(bench, step));
  result.made = record;
  slot.matter = result;
  return record;
}

/** What few ask for is reckoned when they do. */
class WorkedStep implements StepRecord {
  readonly inputs: readonly Input[];
  readonly onto: Matter | null;
  readonly reserved = null;
  readonly names: readonly string[];
  readonly mould: string | null;
  private volume: Interval | null = null;
  private largest: Interval | null = null;
  private time: StepRecord['seconds'] = null;

  constructor(
    readonly id: string,
    readonly step: Step,
    readonly component: Component,
    private readonly outcome: Outcome,
    readonly result: Matter,
    slot: Slot,
    readonly written: Interval | null,
  ) {
    this.inputs = outcome.inputs;
    this.onto = outcome.onto;
    this.names = [...slot.names];
    this.mould = slot.vessel ?? outcome.act.mould;
  }

  get additions(): StepRecord['additions'] {
    return this.outcome.effect.additions ?? [];
  }

  get computed(): Interval | null {
    const { act } = this.outcome;
    return act.base || act.operands.length > 0 ? act.together.heat.celsius : null;
  }

  get seconds(): StepRecord['seconds'] {
    const { seconds, act } = this.outcome;
    this.time ??= { range: seconds(), estimated: act.duration === null };
    return this.time;
  }

  get medium(): string | null {
    return this.outcome.effect.medium ?? null;
  }

  get surroundings(): Interval | null {
    return this.outcome.effect.surroundings ?? null;
  }

  get vessel(): StepRecord['vessel'] {
    return this.outcome.act.vessel;
  }

  get millilitres(): Interval {
    this.volume ??= millilitresOf(this.result);
    return this.volume;
  }

  get largestMillilitres(): Interval {
    this.largest ??= this.largestVolume();
    return this.largest;
  }

  get assumptions(): readonly string[] {
    const { assumptions = [] } = this.outcome.effect;
    return typeof assumptions === 'function' ? assumptions() : assumptions;
  }

  private largestVolume(): Interval {
    const { peakOverrun } = this.outcome.effect;
    const end = this.millilitres;
    const peak = peakOverrun ? millilitresOf(this.result, peakOverrun) : end;
    return interval(Math.max(end.low, peak.low), Math.max(end.high, peak.high));
  }
}

function writtenReading(bench: Bench, step: Step) {
  const to = toCelsiusOf(step.node, bench.chosen);
  if (to) return to.written;
  const check = checkOf(step.node, bench.chosen);
  if (check && 'celsius' in check) return check.celsius;
  const at = surroundingsVerbs.has(step.node.verb) && step.node.verb !== 'hold' ? null : atOf(step.node, bench.chosen);
  return at?.written ?? null;
}
