/** `reserve`, `discard`, `check` and `do`: steps that leave the current matter what it is. */
import { type Interval, interval } from '../quantities/interval.ts';
import type { Step } from '../resolve/model.ts';
import { afterHeating } from '../steps/treatment.ts';
import { addSlot, type Bench, chosenIn, partyMeant, placeOf, reportUsedUp } from './bench.ts';
import { checkOf, clauseOf, durationOf } from './clauses.ts';
import { atReading } from './matter-of.ts';
import { once } from './once.ts';
import { partiesOf } from './parties.ts';
import { type Taker, takeShare } from './slots.ts';
import type { Matter, StepRecord } from './trace.ts';
import { millilitresOf } from './volume-of.ts';

/** The record, null where there is nothing to record, undefined where the verb is another. */
export function runPutBy(bench: Bench, step: Step, id: string): StepRecord | null | undefined {
  switch (step.node.verb) {
    case 'reserve':
      return reserve(bench, step, id);
    case 'discard':
      return discard(bench, step, id);
    case 'check':
      return check(bench, step, id);
    case 'do':
      return bench.current?.matter ? plain(bench, step, id, bench.current.matter) : null;
    default:
      return undefined;
  }
}

function reserve(bench: Bench, step: Step, id: string): StepRecord | null {
  const keepCurrent = bench.current;
  const as = clauseOf(step.node, 'as');
  const parties = partiesOf(bench, step);
  const taken = parties.operands[0];
  if (!taken) return null;
  // All of it put by under no other name: it stays where it is and what it was called.
  if (!as && !taken.partial) Object.assign(taken.slot, { matter: taken.matter, usedBy: null });
  else addSlot(bench, taken.matter, as ? [as.name.text] : []);
  bench.current = keepCurrent;
  const left = taken.slot.matter ?? taken.matter;
  const { name, matter, partial } = taken;
  return plain(bench, step, id, left, { inputs: [{ role: 'operand', name, matter, partial }], reserved: matter });
}

function discard(bench: Bench, step: Step, id: string): StepRecord | null {
  let gone: Matter | null = null;
  for (const operand of step.node.operands) {
    const party = partyMeant(bench, step, operand.name);
    if (party.is !== 'matter') continue;
    party.slot.spent = true;
    party.slot.touched = true;
    if (party.slot.matter === null && party.slot.usedBy && !wasTakenUp(party.slot.usedBy)) {
      reportUsedUp(bench, step, operand.name, operand.name.text, party.slot);
      continue;
    }
    if (party.slot.matter) {
      gone = takeShare(party.slot, 1, step);
      if (bench.current === party.slot) bench.current = null;
    }
  }
  const left = bench.current?.matter ?? gone;
  return left ? plain(bench, step, id, left) : null;
}

/** Strained out or drained: to discard what the sieve held back is no use of used-up matter. */
const wasTakenUp = ({ node }: Taker): boolean => ['bloom', 'soak', 'infuse', 'strain', 'press'].includes(node?.verb ?? '');

function check(bench: Bench, step: Step, id: string): StepRecord | null {
  const { current } = bench;
  if (!current?.matter) {
    bench.findings.push({
      code: 'used-before-made',
      place: placeOf(step, step.node.verbSpan),
      numbers: { name: null, verb: 'check', into: null },
    });
    return null;
  }
  const before = current.matter;
  const key = [id, chosenIn(bench, step), before.id, current.names.join(','), current.vessel].join('|');
  const known = bench.done.records.get(key);
  const record = known ?? checked(bench, step, id, before, current.names[0] ?? 'it');
  if (!known) bench.done.records.set(key, record);
  current.matter = record.result;
  return record;
}

function checked(bench: Bench, step: Step, id: string, before: Matter, name: string): StepRecord {
  const reading = checkOf(step.node, bench.chosen);
  if (!reading || !('celsius' in reading)) return plain(bench, step, id, before);
  const read = atReading(before, reading.celsius, reading.ranged, bench.settings, 'read', step);
  // It was that warm for a second at least: what heat does to egg, gelatin and chocolate counts.
  const result = { ...(Number.isFinite(reading.celsius.low) ? afterHeating(read, reading.celsius.low, 1) : read) };
  const record = plain(bench, step, id, result, {
    inputs: [{ role: 'operand', name, matter: before, partial: false }],
    computed: () => before.heat.celsius,
    written: reading.celsius,
  });
  result.made = record;
  return record;
}

/** What a record has beside what every step has. */
interface More {
  readonly inputs?: StepRecord['inputs'];
  readonly reserved?: Matter;
  readonly computed?: () => Interval;
  readonly written?: Interval;
}

function plain(bench: Bench, step: Step, id: string, result: Matter, more: More = {}): StepRecord {
  const duration = durationOf(step.node, bench.chosen);
  const volume = once(() => millilitresOf(result));
  return {
    id,
    step,
    component: bench.component,
    inputs: more.inputs ?? [],
    onto: null,
    result,
    reserved: more.reserved ?? null,
    names: bench.current?.names.slice() ?? [],
    additions: [],
    get computed() {
      return more.computed?.() ?? null;
    },
    written: more.written ?? null,
    seconds: { range: duration ?? interval(15, 60), estimated: duration === null },
    medium: null,
    surroundings: null,
    vessel: null,
    mould: bench.current?.vessel ?? null,
    get millilitres() {
      return volume();
    },
    get largestMillilitres() {
      return volume();
    },
    assumptions: [],
  };
}
