/** One component under one selection and size: weighs its lines, runs its steps, tells what is left over. */
import { type Interval, interval, middle, times } from '../quantities/interval.ts';
import { holds, pick } from '../resolve/choices.ts';
import type { Component, Place, RawFinding, Selection, Settings, SourceLine } from '../resolve/model.ts';
import { addSlot, type Bench, type Done } from './bench.ts';
import { chosenOf } from './clauses.ts';
import { keeping, layered, matterOfLine } from './matter-of.ts';
import { runStep } from './run-step.ts';
import { gramsIn, type Slot, takeShare } from './slots.ts';
import type { BlockRun, Matter, StepRecord, WeighedLine } from './trace.ts';
import { weigh } from './weigh.ts';

export interface BlockInput {
  readonly component: Component;
  readonly selection: Selection;
  readonly factor: number;
  readonly settings: Settings;
  readonly pieces: number;
  readonly makesNoun: string | null;
  readonly done: Done;
  readonly batchOf: SourceLine | null;
  /** See `Bench`. */
  readonly mayGuess: boolean;
  /** The slot of another component's result, filled when first asked for; null where there is none of that name. */
  readonly others: (key: string) => Slot | null;
  /** The slot of a component of the same formula, by the component's key: a line may draw from what its own name hides from the steps. */
  readonly own: (key: string) => Slot | null;
  /** A batch of a taken component for a line, weighing so many grams. */
  readonly batch: (line: SourceLine, grams: number) => Matter | null;
}

export function runBlock(input: BlockInput): BlockRun {
  const { component, selection, settings, factor } = input;
  const weighed = weigh(component, selection, input.pieces / factor);
  const bench: Bench = {
    component,
    settings,
    chosen: chosenOf(selection),
    pieces: input.pieces,
    factor,
    makesNoun: input.makesNoun,
    slots: new Map(),
    all: [],
    foreign: [],
    others: input.others,
    absent: absentLines(component, selection),
    mayGuess: input.mayGuess,
    current: null,
    done: input.done,
    findings: [],
  };
  const lines: { weighed: WeighedLine; slot: Slot }[] = [];
  for (const { line, grams } of weighed.lines) {
    const matter = matterFor(bench, input, line, times(grams, factor));
    if (!matter) continue;
    const slot = addSlot(bench, matter, [line.name], line);
    lines.push({ weighed: { line, grams: times(grams, factor), matter, left: 0, used: false }, slot });
  }
  // What a block of one line works on needs no name: it is the current matter from the start.
  if (lines.length === 1 && lines[0]) bench.current = lines[0].slot;
  const records: StepRecord[] = [];
  const suffix = input.batchOf ? `@${input.batchOf.id}` : '';
  for (const step of component.steps) {
    if (!holds(step.condition, selection)) continue;
    const record = runStep(bench, step, `${step.id}${suffix}`);
    if (record) records.push(record);
  }
  const leaves = whatIsLeft(
    bench,
    lines.map(({ slot }) => slot),
  );
  reportLeftovers(bench, leaves.slots);
  const matter = leaves.matter;
  const loss = component.losses.find(({ condition }) => holds(condition, selection));
  return {
    component,
    factor,
    batchOf: input.batchOf,
    selection,
    lines: lines.map(({ weighed: line, slot }) => ({
      ...line,
      left: leaves.slots.includes(slot) || slot.spent ? 0 : gramsIn(slot),
      used: slot.touched || leaves.slots.includes(slot),
    })),
    records,
    leaves: matter,
    result: matter && loss ? keeping(matter, interval(1 - loss.value.high, 1 - loss.value.low)) : matter,
    findings: bench.findings,
  };
}

function matterFor(bench: Bench, input: BlockInput, line: SourceLine, grams: Interval): Matter | null {
  const { substance } = line;
  if (substance.is === 'kind') return weighed(bench, line, grams);
  if (substance.is === 'batch') return input.batch(line, middle(grams));
  const slot = input.own(substance.component.key);
  if (!slot?.matter) {
    bench.findings.push({ code: slot ? 'used-up' : 'used-before-made', place: line.namePlace, numbers: { name: line.label } });
    return null;
  }
  const asked = middle(grams);
  const there = gramsIn(slot);
  if (asked > there + Math.max(0.5, 0.005 * there)) {
    bench.findings.push({
      code: 'overdrawn',
      place: line.quantityPlace,
      numbers: { name: line.label, weighed: there, taken: asked, over: asked - there, left: there, asked },
    });
  }
  slot.touched = true;
  return takeShare(slot, Math.min(1, asked / Math.max(1e-9, there)), line);
}

function weighed({ done, settings }: Bench, line: SourceLine, grams: Interval): Matter {
  const key = `${line.place.line}:${grams.low}:${grams.high}`;
  let matter = done.weighed.get(key);
  if (!matter) {
    matter = matterOfLine(line, grams, settings);
    done.weighed.set(key, matter);
  }
  return matter;
}

function absentLines(component: Component, selection: Selection): ReadonlyMap<string, 'zero' | 'guarded'> {
  const absent = new Map<string, 'zero' | 'guarded'>();
  for (const line of component.lines) {
    if (!holds(line.condition, selection)) absent.set(line.key, absent.get(line.key) ?? 'guarded');
    else if (pick(line.amount, selection).measure === 'grams' && pick(line.amount, selection).value.high <= 0)
      absent.set(line.key, 'zero');
  }
  for (const line of component.lines)
    if (holds(line.condition, selection) && absent.get(line.key) === 'guarded') absent.delete(line.key);
  return absent;
}

/** The current matter; without steps (or with steps that leave nothing) all lines side by side. */
function whatIsLeft(bench: Bench, lineSlots: readonly Slot[]): { matter: Matter | null; slots: readonly Slot[] } {
  if (bench.current?.matter) return { matter: bench.current.matter, slots: [bench.current] };
  if (bench.component.steps.length > 0 && bench.all.some((slot) => slot.touched)) return { matter: null, slots: [] };
  const there = lineSlots.filter((slot) => slot.matter);
  return there.length === 0 ? { matter: null, slots: [] } : { matter: layered(there.map((slot) => slot.matter!)), slots: there };
}

/** Remainders smaller than this are what sticks to the bowl (common practice, no source). */
const least = { grams: 2, share: 0.02 } as const;

function reportLeftovers(bench: Bench, result: readonly Slot[]): void {
  for (const slot of bench.all) {
    if (result.includes(slot) || slot.spent) continue;
    if (slot.line && !slot.touched) {
      bench.findings.push(unused(slot.line.place, slot.line.namePlace, slot.line.label, gramsIn(slot)));
      continue;
    }
    const left = gramsIn(slot);
    if (!slot.matter || left <= 0) continue;
    const weighedGrams = slot.line ? (slot.first > 0 ? slot.first : left) : slot.first;
    const whole = left >= 0.98 * weighedGrams;
    const by = slot.matter.made;
    const made = by?.component === bench.component ? by.step.place : undefined;
    if (slot.line && whole && !made) {
      bench.findings.push(unused(slot.line.place, slot.line.namePlace, slot.line.label, left));
      continue;
    }
    if (left < least.grams || left < least.share * weighedGrams) continue;
    const place: Place | undefined = made ?? slot.line?.place;
    if (!place) continue;
    const name = slot.line?.label ?? slot.names[0] ?? slot.matter.parts[0]?.line.label ?? 'what is left';
    bench.findings.push({ code: 'leftover', place, numbers: { name, left, weighed: weighedGrams, made: made !== undefined } });
  }
}

function unused(place: Place, namePlace: Place, name: string, weighed: number): RawFinding {
  return {
    code: 'unused-ingredient',
    place: { ...place, start: Math.min(place.start, namePlace.start) },
    numbers: { name, weighed },
    related: [],
  };
}
