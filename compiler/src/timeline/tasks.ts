/** Tasks from the runs: a step is a task that takes time, hands and devices, and needs what others leave. */
import { nameKey } from 'nappe-grammar';
import { lineName } from '../card/context.ts';
import type { Order } from '../card/order.ts';
import { textOf } from '../card/sentence.ts';
import { waiting } from '../card/steps.ts';
import { plain } from '../card/text.ts';
import { wordsOf } from '../card/words.ts';
import { middle } from '../quantities/interval.ts';
import { inForce } from '../resolve/choices.ts';
import { clauseOf } from '../run/clauses.ts';
import type { BlockRun, Matter, Run, StepRecord } from '../run/trace.ts';
import { keepsOvernight, mayStand } from './waits.ts';

/** What the schedule knows of a step. */
export interface Job {
  /** Place in the list of jobs. */
  readonly index: number;
  readonly order: Order;
  readonly block: BlockRun;
  readonly record: StepRecord;
  readonly text: string;
  readonly component: string;
  readonly minutes: number;
  readonly estimated: boolean;
  readonly waiting: boolean;
  readonly uses: readonly string[];
  readonly needs: readonly Need[];
  /** It, and all before it, may be done the day before. */
  readonly dayBefore: boolean;
}

export interface Need {
  /** Index of the job whose matter is taken. */
  readonly of: number;
  /** Minutes that matter may stand; infinite where it keeps. */
  readonly stands: number;
}

export function jobsOf(orders: readonly Order[]): readonly Job[] {
  const jobs: Job[] = [];
  for (const order of orders) {
    const { run } = order.context;
    const before = predecessorsOf(run);
    const early = keepable(run, before);
    const first = jobs.length;
    const indexes = new Map(run.records.map((record, index) => [record, first + index] as const));
    for (const record of run.records) {
      const block = run.blockOf.get(record);
      if (!block) continue;
      jobs.push({
        index: indexes.get(record) ?? 0,
        order,
        block,
        record,
        text: textOf(order.context.language.step(wordsOf(record, block, order.context))),
        component: componentName(order, block),
        ...durationOf(record),
        waiting: waiting.has(record.step.node.verb),
        uses: devicesOf(record),
        needs: [...(before.get(record) ?? [])].map(([maker, takes]) => ({
          of: indexes.get(maker) ?? 0,
          stands: takes ? mayStand(maker, record) : Number.POSITIVE_INFINITY,
        })),
        dayBefore: early.has(record),
      });
    }
  }
  return jobs;
}

/** `keeps` of an order, where what it makes keeps a day and more. */
export function keepsWords({ formula, selection, context: { language, measures } }: Order): string | null {
  const keeps = inForce(formula.keeps, selection);
  if (!keeps || keeps.seconds.low < 86_400) return null;
  return language.keeping(measures.duration(keeps.seconds), keeps.celsius ? measures.temperature(keeps.celsius) : null);
}

function componentName({ context: { language } }: Order, { component, batchOf }: BlockRun): string {
  if (component.isAssembly) return language.labels.assembly.toLocaleLowerCase(language.code);
  return batchOf ? lineName(batchOf, language) : plain(component.name);
}

/** Drawn up for steps whose time nobody wrote and nothing estimates. */
const unknownSeconds = 120;

/** Days beyond which a time is no step of a day's work. */
const mostMinutes = 14 * 24 * 60;

function durationOf({ seconds }: StepRecord): { readonly minutes: number; readonly estimated: boolean } {
  const known = seconds !== null && Number.isFinite(seconds.range.high);
  const minutes = Math.round((known ? middle(seconds.range) : unknownSeconds) / 60);
  return { minutes: Math.min(mostMinutes, Math.max(1, minutes)), estimated: !known || seconds.estimated };
}

/** Which records must be done before each, and whether their matter is taken: where it does not say, the order written does. */
type Before = ReadonlyMap<StepRecord, ReadonlyMap<StepRecord, boolean>>;

function predecessorsOf(run: Run): Before {
  const before = new Map<StepRecord, Map<StepRecord, boolean>>(run.records.map((record) => [record, new Map()]));
  const rank = new Map(run.records.map((record, index) => [record, index] as const));
  const link = (from: StepRecord, to: StepRecord, takes: boolean): void => {
    const known = before.get(to);
    if (known && (rank.get(from) ?? Number.POSITIVE_INFINITY) < (rank.get(to) ?? -1))
      known.set(from, takes || known.get(from) === true);
  };
  for (const record of run.records)
    for (const matter of [...record.inputs.map((input) => input.matter), ...(record.onto ? [record.onto] : [])])
      for (const maker of makersOf(matter, 0)) link(maker, record, true);
  for (const { records } of run.blocks)
    records.forEach((record, index) => {
      const [last, next] = [records[index - 1], records[index + 1]];
      if (unbound.has(record.step.node.verb)) {
        if (last) link(last, record, false);
        if (next) link(record, next, false);
      }
      if (preparing.has(record.step.node.verb) && record.mould !== null)
        for (const later of records.slice(index + 1)) if (later.mould === record.mould) link(record, later, false);
    });
  return before;
}

/** Verbs that change no matter: they stay where they were written. */
const unbound: ReadonlySet<string> = new Set(['do', 'check', 'reserve', 'discard']);

/** Verbs that make a vessel ready for what goes into it. */
const preparing: ReadonlySet<string> = new Set(['grease', 'line', 'dust']);

/** The step that left it so; where things only lie together, each of theirs. */
function makersOf(matter: Matter, depth: number): readonly StepRecord[] {
  if (matter.made || depth > 8) return matter.made ? [matter.made] : [];
  return (matter.layers ?? []).flatMap((layer) => makersOf(layer, depth + 1));
}

/** Records after which the work can rest until tomorrow, and all before them: whatever leaves them keeps. */
function keepable(run: Run, before: Before): ReadonlySet<StepRecord> {
  const after = new Map<StepRecord, StepRecord[]>(run.records.map((record) => [record, []]));
  for (const [record, makers] of before) for (const [maker] of makers) after.get(maker)?.push(record);
  const early = new Set<StepRecord>();
  for (const record of [...run.records].reverse()) {
    const takers = after.get(record) ?? [];
    const rests = takers.length > 0 && takers.every((taker) => early.has(taker) || keepsOvernight(record));
    if (rests) early.add(record);
  }
  return early;
}

/** Oven, mixer, fridge and freezer by what is done; an item of `equipment` where the step names one. */
function devicesOf({ step: { node }, medium, vessel }: StepRecord): readonly string[] {
  const named = clauseOf(node, 'with tool')?.tool;
  const tool = named ? nameKey(named.text) : null;
  const devices = new Set<string>();
  if (medium === 'oven' || node.verb === 'bake') devices.add('oven');
  if (vessel?.key.includes('mixer') || (tool !== null && mixerTools.has(tool))) devices.add('mixer');
  else if ((node.verb === 'whip' && tool === null) || clauseOf(node, 'while whipping')) devices.add('mixer');
  if (medium === 'fridge' || medium === 'freezer' || medium === 'blast chiller') devices.add(medium);
  if (vessel && !vessel.key.includes('mixer') && clauseOf(node, 'using')) devices.add(plain(vessel.name));
  return [...devices];
}

const mixerTools: ReadonlySet<string> = new Set(['mixer', 'stand mixer', 'paddle', 'flat beater', 'hook', 'dough hook']);

/** Devices that hold several things at once. */
export const shared: ReadonlySet<string> = new Set(['fridge', 'freezer']);
