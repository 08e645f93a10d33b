/**
 * The abstract run of a formula under one selection: components in order of need, batches of taken components, the assembly.
 *
 * A block's run is a pure function of (component, selection, size, settings, what comes in) and is remembered by them.
 */
import { shapeOf, singularNoun, type Yield } from 'nappe-grammar';
import { type Shape, shapeMillilitres } from '../matter/volume.ts';
import { middle } from '../quantities/interval.ts';
import { gramsPerUnit } from '../quantities/units.ts';
import { holds, selectionFor } from '../resolve/choices.ts';
import type { Component, Formula, RawFinding, Selection, Settings, SourceLine, Taken } from '../resolve/model.ts';
import { needsOf } from '../resolve/needs.ts';
import type { Done } from './bench.ts';
import { layered } from './matter-of.ts';
import { runBlock } from './run-block.ts';
import { gramsIn, newSlot, type Slot } from './slots.ts';
import type { BlockRun, Matter, Run, StepRecord } from './trace.ts';
import { millilitresOf } from './volume-of.ts';
import { weigh } from './weigh.ts';

export interface RunOptions {
  /** Times the written grams. */
  readonly factor?: number;
}

export function runFormula(formula: Formula, selection: Selection, options: RunOptions = {}): Run {
  const factor = options.factor ?? 1;
  const kitchen = new Kitchen(formula, selection, factor, null);
  const result = formula.tooLarge ? null : kitchen.serve();
  const records = kitchen.blocks.flatMap((block) => block.records);
  return {
    formula,
    selection,
    factor,
    blocks: kitchen.blocks,
    records,
    later: laterOf(records),
    blockOf: new Map(kitchen.blocks.flatMap((block) => block.records.map((record) => [record, block] as const))),
    result,
    findings: [...kitchen.findings, ...kitchen.blocks.flatMap((block) => (block.batchOf ? [] : block.findings))],
  };
}

/** The yield in force under a selection. */
export function makesOf(formula: Formula, selection: Selection): { yield: Yield; place: Formula['place'] } | null {
  const made = formula.makes.find(({ condition }) => holds(condition, selection));
  return made ? { yield: made.value, place: made.place } : null;
}

/** What a yield weighs in grams, given the density of what fills it; null where it says only a number. */
export function yieldGrams(makes: Yield, gramsPerMillilitre: number): number | null {
  const one = makes.size ?? makes.quantity;
  const count = makes.count ?? 1;
  if (one) {
    const per = gramsPerUnit(one.unit, { density: gramsPerMillilitre, piece: null });
    return per === null ? null : ((one.low + one.high) / 2) * per * count;
  }
  if (!makes.lengths || !makes.noun || makes.lined) return null;
  const shape = shapeOf(makes.noun.key)?.word as Shape | undefined;
  const millilitres = shape ? shapeMillilitres(shape, makes.lengths) : null;
  return millilitres === null ? null : millilitres * gramsPerMillilitre * count;
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

/** Where one formula (or the part of one that a batch needs) is made, at one size. */
class Kitchen {
  readonly blocks: BlockRun[] = [];
  readonly findings: RawFinding[] = [];
  private readonly slots = new Map<string, Slot | 'being made'>();
  private readonly count: number;
  private readonly makesNoun: string | null;

  constructor(
    private readonly formula: Formula | null,
    private readonly selection: Selection,
    private readonly factor: number,
    private readonly batchOf: SourceLine | null,
    private readonly settings: Settings = formula?.settings ?? standardSettings,
  ) {
    const makes = formula ? makesOf(formula, selection) : null;
    this.count = makes?.yield.count ?? 1;
    this.makesNoun = makes?.yield.noun ? singularNoun(makes.yield.noun.key) : null;
  }

  /** Runs everything; what is served is the assembly's result, or what no other component took. */
  serve(): Matter | null {
    const { formula } = this;
    if (!formula) return null;
    const there = formula.components.filter((component) => holds(component.condition, this.selection));
    if (formula.assembly) {
      const assembled = this.make(formula.assembly, this.factorFor(formula.assembly));
      for (const component of there) this.slotOf(component.key);
      this.reportUnusedComponents(there);
      return assembled.result;
    }
    const results: Matter[] = [];
    for (const component of there) this.slotOf(component.key);
    for (const component of there) {
      const slot = this.slotOf(component.key);
      if (slot?.matter && !slot.touched) results.push(slot.matter);
    }
    this.reportUnusedComponents(there.filter((component) => this.slotOf(component.key)?.touched === true));
    return results.length === 0 ? null : layered(results);
  }

  /** A component's result, made when first asked for; null where it does not exist here or needs itself. */
  slotOf(key: string): Slot | null {
    const known = this.slots.get(key);
    if (known === 'being made') return null;
    if (known) return known;
    const component = this.formula?.components.find((other) => other.key === key && holds(other.condition, this.selection));
    if (!component) return null;
    this.slots.set(key, 'being made');
    const { result } = this.make(component, this.factorFor(component));
    const slot = newSlot(result ?? emptyMatter, [component.name]);
    if (!result) slot.matter = null;
    this.slots.set(key, slot);
    return slot;
  }

  make(component: Component, factor: number): BlockRun {
    const incoming = needsOf(component).own.map((key) => ({ key, slot: this.slotOf(key) }));
    const memo = memoOf(component);
    const id = [
      factor,
      this.count * this.factor,
      this.makesNoun,
      this.batchOf?.id ?? '',
      settingsId(this.settings),
      component.choicesUsed.map((name) => this.selection[name] ?? '').join(','),
      incoming.map(({ key, slot }) => `${key}:${slot?.matter?.id ?? 'none'}`).join(','),
    ].join('|');
    const known = relabelled(memo.blocks, id, this.batchOf);
    if (known) {
      for (const [index, state] of known.after.entries()) Object.assign(incoming[index]?.slot ?? {}, state);
      for (const block of known.blocks) if (!this.blocks.includes(block)) this.blocks.push(block);
      return known.blocks.at(-1)!;
    }
    const before = this.blocks.length;
    const taken = new Map<string, Slot | null>();
    const block = runBlock({
      component,
      selection: this.selection,
      factor,
      settings: this.settings,
      pieces: this.count * this.factor,
      makesNoun: this.makesNoun,
      done: doneIn(memo, this.settings, factor),
      batchOf: this.batchOf,
      others: (key) => this.other(component, key, taken),
      own: (key) => this.slotOf(key),
      batch: (line, grams) => (line.substance.is === 'batch' ? this.batch(line.substance.taken, line, grams) : null),
    });
    // What a component brought and this block made its own leaves with this block, not twice.
    for (const { slot } of incoming) if (slot?.matter && slot.matter === block.leaves) slot.matter = null;
    this.blocks.push(block);
    runsCounted.count++;
    if (memo.blocks.size > 512) memo.blocks.clear();
    memo.blocks.set(id, {
      blocks: this.blocks.slice(before),
      after: incoming.map(({ slot }) =>
        slot
          ? {
              matter: slot.matter,
              first: slot.first,
              touched: slot.touched,
              usedBy: slot.usedBy,
              vessel: slot.vessel,
              spent: slot.spent,
            }
          : {},
      ),
    });
    return block;
  }

  private other(component: Component, key: string, taken: Map<string, Slot | null>): Slot | null {
    const entry = component.scope.get(key);
    if (!entry) return null;
    if (entry.is === 'own component') return this.slotOf(entry.key);
    const known = taken.get(key);
    if (known !== undefined) return known;
    // Taken and named in a step without being weighed: the whole of it, as its own file has it.
    const matter = this.batch(entry.taken, null, null);
    const slot = matter ? newSlot(matter, [entry.taken.component.name]) : null;
    taken.set(key, slot);
    return slot;
  }

  /** A batch of its own, scaled so that its result after losses weighs `grams`. */
  private batch(taken: Taken, line: SourceLine | null, grams: number | null): Matter | null {
    const selection = selectionFor(taken.formula, this.selection);
    const settings = taken.formula?.settings ?? this.settings;
    const once = new Kitchen(taken.formula, selection, 1, line, settings);
    const whole = once.make(taken.component, 1).result;
    if (!whole || (grams === null && this.factor === 1)) {
      this.adopt(once);
      return whole;
    }
    const factor = grams === null ? this.factor : grams / Math.max(1e-9, middle(whole.grams));
    const kitchen = new Kitchen(taken.formula, selection, factor, line, settings);
    const { result } = kitchen.make(taken.component, factor);
    this.adopt(kitchen);
    return result;
  }

  private adopt(kitchen: Kitchen): void {
    for (const block of kitchen.blocks) if (!this.blocks.includes(block)) this.blocks.push(block);
    this.findings.push(...kitchen.findings);
  }

  /** Percentages without grams are sized by the line that uses the component, or by `makes`. */
  private factorFor(component: Component): number {
    if (weigh(component, this.selection, this.count).sized) return this.factor;
    const wanted = this.drawnGrams(component) ?? this.makesGrams(component);
    if (wanted === null) return this.factor;
    const trial = new Kitchen(this.formula, this.selection, 1, this.batchOf, this.settings).make(component, 1).result;
    return trial ? wanted / Math.max(1e-9, middle(trial.grams)) : this.factor;
  }

  private drawnGrams(component: Component): number | null {
    let grams = 0;
    const blocks = [...(this.formula?.components ?? []), ...(this.formula?.assembly ? [this.formula.assembly] : [])];
    for (const block of blocks) {
      if (block === component) continue;
      for (const { line, grams: weighed } of weigh(block, this.selection, this.count).lines)
        if (line.substance.is === 'own component' && line.substance.component.key === component.key)
          grams += middle(weighed) * this.factor;
    }
    return grams > 0 ? grams : null;
  }

  private makesGrams(component: Component): number | null {
    if (!this.formula) return null;
    const makes = makesOf(this.formula, this.selection);
    if (!makes) return null;
    const trial = new Kitchen(this.formula, this.selection, 1, this.batchOf, this.settings).make(component, 1).result;
    if (!trial) return null;
    const grams = yieldGrams(makes.yield, middle(trial.grams) / Math.max(1e-9, middle(millilitresOf(trial))));
    return grams === null ? null : grams * this.factor;
  }

  private reportUnusedComponents(components: readonly Component[]): void {
    for (const component of components) {
      const slot = this.slotOf(component.key);
      if (!slot?.matter || slot.spent) continue;
      const left = gramsIn(slot);
      if (!slot.touched)
        this.findings.push({
          code: 'unused-ingredient',
          place: component.place,
          numbers: { name: component.name, weighed: left, component: true },
        });
      else if (left >= 2 && left >= 0.02 * slot.first)
        this.findings.push({
          code: 'leftover',
          place: component.place,
          numbers: { name: component.name, left, weighed: slot.first, component: true },
        });
    }
  }
}

/** How many blocks were run and not remembered, for the test that counts re-runs. */
export const runsCounted = { count: 0 };

/** Of one component. */
interface Memo {
  readonly blocks: Map<string, Remembered>;
  /** By settings and factor. */
  readonly done: Map<string, Done>;
}

function doneIn({ done }: Memo, settings: Settings, factor: number): Done {
  const key = `${settingsId(settings)}|${factor}`;
  const known = done.get(key);
  if (known) return known;
  if (done.size > 64) done.clear();
  const fresh: Done = { weighed: new Map(), records: new Map() };
  done.set(key, fresh);
  return fresh;
}

interface Remembered {
  readonly blocks: readonly BlockRun[];
  readonly after: readonly Partial<Slot>[];
}

/** What is remembered; a taker's line that was read anew since is the one its batch is of. */
function relabelled(memo: Map<string, Remembered>, id: string, batchOf: SourceLine | null): Remembered | undefined {
  const known = memo.get(id);
  if (!known || known.blocks.at(-1)?.batchOf === batchOf) return known;
  const blocks = known.blocks.map((block) => (block.batchOf?.id === batchOf?.id ? { ...block, batchOf } : block));
  const now = { ...known, blocks };
  memo.set(id, now);
  return now;
}

/**
 * Of so many components the runs are remembered, those asked for last: what is being worked on stays at hand, and a file of a thousand
 * formulas does not keep all its matter.
 */
const mostRemembered = 128;

const memos = new Map<Component, Memo>();

function memoOf(component: Component): Memo {
  const known = memos.get(component);
  if (known) memos.delete(component);
  const memo = known ?? { blocks: new Map(), done: new Map() };
  memos.set(component, memo);
  const [oldest] = memos.size > mostRemembered ? memos.keys() : [];
  if (oldest) memos.delete(oldest);
  return memo;
}

const settingsIds = new WeakMap<Settings, number>();
let lastSettings = 0;

function settingsId(settings: Settings): number {
  let id = settingsIds.get(settings);
  if (id === undefined) {
    id = ++lastSettings;
    settingsIds.set(settings, id);
  }
  return id;
}

const standardSettings: Settings = {
  vessels: [],
  room: { low: 18, high: 24 },
  fridge: { low: 2, high: 5 },
  freezer: { low: -22, high: -16 },
  altitudeMetres: 0,
  gelatinLaw: 'concentration',
  tags: [],
  thermometer: 1,
};

const emptyMatter = { grams: { low: 0, high: 0 } } as Matter;
