/**
 * How rules look at a run: the four rules above every code, said once.
 *
 * Thresholds meet the *written* reading at its worse end ("can"); a computed, stored or unknown temperature only counts where
 * its most favourable end breaks the rule ("must"). Matter's life is followed to its end.
 */
import type { Trait } from '../catalogue/kind.ts';
import type { Interval } from '../quantities/interval.ts';
import { middle } from '../quantities/interval.ts';
import type { Place, Related, SourceLine, Step } from '../resolve/model.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Heat, Matter, Part, Run, StepRecord } from '../run/trace.ts';

/** The warmest it may be held against: written at its upper end, else the computed lower end. */
export const warmest = (heat: Heat): number => (heat.basis === 'written' && heat.written ? heat.written.high : heat.celsius.low);

/** The coldest it may be held against: written at its lower end, else the computed upper end. */
export const coldest = (heat: Heat): number => (heat.basis === 'written' && heat.written ? heat.written.low : heat.celsius.high);

/** The figure to name for matter that is too warm: the reading it was last taken to where nothing cooled it since, else what decided. */
export function namedWarmth(heat: Heat): number {
  const reading = heat.heated?.written;
  if (heat.basis !== 'written' && reading && !heat.cooledSince && Number.isFinite(reading.high))
    return Math.max(reading.high, heat.celsius.low);
  return warmest(heat);
}

/** Where it was last heated, as a related place. */
export function lastHeated(heat: Heat): readonly Related[] {
  return heat.heated ? [{ place: heat.heated.step.place, message: 'last heated here' }] : [];
}

/** The place of a whole step line, without indentation. */
export const placeOfStep = (step: Step): Place => step.place;

/** The place of a clause of a step, or of the step where it has none. */
export function placeOfClause(step: Step, word: string): Place {
  const clause = step.node.clauses.find((other) => other.word === word);
  return clause ? { ...step.place, start: clause.start, end: clause.end } : step.place;
}

/** Everything that happens after a record to what it left, in order; itself not included. */
export function lifeAfter(run: Run, record: StepRecord): readonly StepRecord[] {
  const seen = new Set<StepRecord>();
  const queue = [...(run.later.get(record) ?? [])];
  for (let at = 0; at < queue.length; at++) {
    const next = queue[at]!;
    if (seen.has(next)) continue;
    seen.add(next);
    queue.push(...(run.later.get(next) ?? []));
  }
  return run.records.filter((other) => seen.has(other));
}

/** Everything that happened to make a matter, latest first. */
export function lifeBefore(matter: Matter): readonly StepRecord[] {
  const seen = new Set<StepRecord>();
  const queue: StepRecord[] = [];
  putMakers(queue, matter);
  for (let at = 0; at < queue.length; at++) {
    const record = queue[at]!;
    if (seen.has(record)) continue;
    seen.add(record);
    for (const input of record.inputs) putMakers(queue, input.matter);
  }
  return [...seen];
}

/** Everything that happened to what came from one line, latest first; indexed once for a matter. */
export function lifeOf(matter: Matter, { line }: Part): readonly StepRecord[] {
  let index = lives.get(matter);
  if (!index) {
    index = new Map();
    for (const record of lifeBefore(matter))
      for (const part of record.result.parts) {
        const known = index.get(part.line);
        if (known) known.push(record);
        else index.set(part.line, [record]);
      }
    lives.set(matter, index);
  }
  return index.get(line) ?? [];
}

const lives = new WeakMap<Matter, Map<SourceLine, StepRecord[]>>();

function putMakers(queue: StepRecord[], { made, layers }: Matter): void {
  if (made) queue.push(made);
  if (layers) for (const layer of layers) if (layer.made) queue.push(layer.made);
}

export const massOf = (matter: Matter): number => Math.max(1e-9, middle(matter.grams));

export const traitsOf = (part: Part): readonly Trait[] =>
  part.line.substance.is === 'kind' ? part.line.substance.kind.traits : [];

/** Grams of parts that have any of the traits. */
export function gramsOfTraits(matter: Matter, ...traits: readonly Trait[]): number {
  let grams = 0;
  for (const part of matter.parts) if (hasAny(traitsOf(part), traits)) grams += part.grams;
  return grams;
}

function hasAny(own: readonly Trait[], wanted: readonly Trait[]): boolean {
  for (const trait of own) for (const other of wanted) if (trait === other) return true;
  return false;
}

/** Mass share (0–1) of parts that have any of the traits. */
export const shareOfTraits = (matter: Matter, ...traits: readonly Trait[]): number =>
  gramsOfTraits(matter, ...traits) / massOf(matter);

/** Gelatin as 200 bloom, percent of the mass it sits in. */
export const gelatinPercent = (matter: Matter): number => (100 * matter.gelatin200) / massOf(matter);

/** The body of a (layered) matter that holds most gelatin. */
export const gelledBody = (matter: Matter): Matter => bodiesOf(matter).reduce((a, b) => (b.gelatin200 > a.gelatin200 ? b : a));

/** Base (what takes in, or is taken) and foam of a fold, whichever way round they meet; null where neither holds one. */
export function foldParties(record: StepRecord): { readonly base: Matter; readonly foam: Matter } | null {
  const target = record.inputs.find((input) => input.role === 'base')?.matter;
  const operands = record.inputs.filter((input) => input.role === 'operand').map((input) => input.matter);
  const parties = target ? [target, ...operands] : operands;
  const foams = parties.filter((matter) => matter.foam !== null);
  if (foams.length === 0 || parties.length < 2) return null;
  const foam = foams.find((matter) => matter !== target) ?? foams[0]!;
  const base = parties.find((matter) => matter !== foam)!;
  return { base, foam };
}

export const isFold = (record: StepRecord): boolean => record.step.node.verb === 'fold';

/** The choice `serving`, where it has one of the usual values. */
export function servingOf(run: Run): 'glass' | 'mould' | 'cut' | null {
  for (const [name, value] of Object.entries(run.selection)) {
    if (name.toLowerCase() !== 'serving') continue;
    const word = value.toLowerCase();
    if (word === 'glass' || word === 'mould' || word === 'cut') return word;
  }
  return null;
}

/** A line to insert before a step, indented like it; the fix's text ends in a line feed. */
export function insertBefore(step: Step, text: string) {
  const indent = step.node.text.slice(0, step.node.span.start);
  return { ...step.place, start: 0, end: 0, text: `${indent}${text}\n` };
}

/** A line to insert after a step (after its notes), indented like it. */
export function insertAfter(step: Step, text: string) {
  const indent = step.node.text.slice(0, step.node.span.start);
  const end = step.node.text.length;
  return { ...step.place, start: end, end, text: `\n${indent}${text}` };
}

export const isInterval = (value: Interval | null): value is Interval => value !== null;

/** By how much a line was scaled where it was weighed: 1 but for batches of what is taken. */
export const factorOf = (run: Run, line: SourceLine): number =>
  run.blocks.find(({ component }) => component.lines.includes(line))?.factor ?? 1;
