/**
 * The kitchen: a formula's components made in order of need, batches of what is taken, and the assembly.
 *
 * A block's run is a pure function of (component, selection, size, settings, what comes in) and is remembered by them.
 */
import { singularNoun } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import { holds, selectionFor } from '../resolve/choices.ts';
import type { Component, Formula, RawFinding, Selection, Settings, SourceLine, Taken } from '../resolve/model.ts';
import { needsOf } from '../resolve/needs.ts';
import { makesOf, yieldGrams } from './makes.ts';
import { layered } from './matter-of.ts';
import { doneIn, memoOf, relabelled, settingsId } from './memo.ts';
import { runBlock } from './run-block.ts';
import { gramsIn, newSlot, type Slot } from './slots.ts';
import type { BlockRun, Matter } from './trace.ts';
import { millilitresOf } from './volume-of.ts';
import { weigh } from './weigh.ts';

/** How many blocks were run and not remembered, for the test that counts re-runs. */
export const runsCounted = { count: 0 };

/** Where one formula (or the part of one that a batch needs) is made, at one size. */
export class Kitchen {
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
    private readonly taken = false,
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
    const { result, records } = this.make(component, this.factorFor(component));
    const slot = newSlot(result ?? emptyMatter, [component.name]);
    // Caramel poured into its ramekins is there still when the custard comes.
    slot.vessel = records.at(-1)?.mould ?? null;
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
      this.taken,
      settingsId(this.settings),
      component.choicesUsed.map((name) => this.selection[name] ?? '').join(','),
      incoming.map(({ key, slot }) => `${key}:${slot?.matter?.id ?? goneFrom(slot)}`).join(','),
    ].join('|');
    const known = relabelled(memo.blocks, id, this.batchOf);
    if (known) {
      for (const [index, state] of known.after.entries()) Object.assign(incoming[index]?.slot ?? {}, state);
      for (const block of known.blocks) if (!this.blocks.includes(block)) this.blocks.push(block);
      return known.blocks.at(-1)!;
    }
    const before = this.blocks.length;
    const taken = new Map<string, Slot | null>();
    let guessed = false;
    const block = runBlock({
      component,
      selection: this.selection,
      factor,
      settings: this.settings,
      pieces: this.count * this.factor,
      makesNoun: this.makesNoun,
      done: doneIn(memo, this.settings, factor),
      batchOf: this.batchOf,
      mayGuess: !this.taken,
      others: (key) => {
        const slot = this.other(component, key, taken);
        // A mistyped name was read as that component's: what the block needs does not tell of it.
        guessed ||= slot !== null && [...this.slots.values()].includes(slot) && !incoming.some((one) => one.slot === slot);
        return slot;
      },
      own: (key) => this.slotOf(key),
      batch: (line, grams) => (line.substance.is === 'batch' ? this.batch(line.substance.taken, line, grams) : null),
    });
    // What a component brought and this block made its own leaves with this block, not twice.
    for (const { slot } of incoming) if (slot?.matter && slot.matter === block.leaves) slot.matter = null;
    this.blocks.push(block);
    runsCounted.count++;
    if (guessed) return block;
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
              gone: slot.gone,
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
    const once = new Kitchen(taken.formula, selection, 1, line, settings, true);
    const whole = once.make(taken.component, 1).result;
    if (!whole || (grams === null && this.factor === 1)) {
      this.adopt(once);
      return whole;
    }
    const factor = grams === null ? this.factor : grams / Math.max(1e-9, middle(whole.grams));
    const kitchen = new Kitchen(taken.formula, selection, factor, line, settings, true);
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
    if (!hasPercent(component) || weigh(component, this.selection, this.count).sized) return this.factor;
    const wanted = this.drawnGrams(component) ?? this.makesGrams(component);
    if (wanted === null) return this.factor;
    const trial = new Kitchen(this.formula, this.selection, 1, this.batchOf, this.settings, this.taken).make(component, 1).result;
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
    const trial = new Kitchen(this.formula, this.selection, 1, this.batchOf, this.settings, this.taken).make(component, 1).result;
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
          place: slot.matter.made && slot.matter.made.component !== component ? slot.matter.made.step.place : component.place,
          numbers: { name: component.name, left, weighed: slot.first, component: true, made: slot.matter.made !== null },
        });
    }
  }
}

/** What went from an empty slot and where to, which a finding may tell. */
const goneFrom = (slot: Slot | null): string =>
  slot?.usedBy ? `${slot.gone?.id} to ${slot.usedBy.place.block} ${slot.usedBy.place.line} ${slot.usedBy.place.end}` : 'none';

const inPercent = new WeakMap<Component, boolean>();

/** Whether any line may be in per cent: else its grams set the size. */
function hasPercent(component: Component): boolean {
  let known = inPercent.get(component);
  if (known === undefined) {
    known = component.lines.some(({ amount }) =>
      [amount.base, ...amount.overrides.map(({ then }) => then)].some(({ measure }) => measure === 'percent'),
    );
    inPercent.set(component, known);
  }
  return known;
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
