/** Slots: what a name points at while a block runs. Names share a slot; matter is taken out of it and goes back into it. */
import { middle } from '../quantities/interval.ts';
import type { Place, SourceLine } from '../resolve/model.ts';
import { portionOf } from './matter-of.ts';
import type { Matter } from './trace.ts';

/** Who takes from a slot: a step has all of it; so has an ingredient line that draws from another component. */
export interface Taker {
  readonly place: Place;
  readonly node?: { readonly verb: string };
}

export interface Slot {
  /** What is left; null when all of it went elsewhere. */
  matter: Matter | null;
  /** Grams that were first there, for fractions. */
  first: number;
  /** Grams an act has changed or taken: a line whose slot was never touched is unused. */
  touched: boolean;
  names: string[];
  /** The ingredient line that filled it. */
  readonly line: SourceLine | null;
  /** The step that used the last of it up. */
  usedBy: Taker | null;
  /** What was last in it. */
  gone: Matter | null;
  /** Put in a vessel, under this noun. */
  vessel: string | null;
  /** Drained, discarded, strained out, greased with: a remainder is no leftover. */
  spent: boolean;
}

export function newSlot(matter: Matter, names: readonly string[] = [], line: SourceLine | null = null): Slot {
  return {
    matter,
    first: middle(matter.grams),
    touched: false,
    names: [...names],
    line,
    usedBy: null,
    gone: null,
    vessel: null,
    spent: false,
  };
}

/** Puts new matter in place of what was there: the slot was acted on alone or took others in. */
export function refill(slot: Slot, matter: Matter): void {
  slot.matter = matter;
  slot.first = middle(matter.grams);
  slot.touched = true;
}

export const gramsIn = (slot: Slot): number => (slot.matter ? middle(slot.matter.grams) : 0);

/** Takes a share (0–1) of what is left; all of it empties the slot. */
export function takeShare(slot: Slot, share: number, taker: Taker): Matter {
  const { matter } = slot;
  if (!matter) throw new Error('takeShare: empty slot');
  slot.touched = true;
  if (share >= 1 - 1e-9) {
    slot.matter = null;
    slot.usedBy = taker;
    slot.gone = matter;
    return matter;
  }
  slot.matter = portionOf(matter, 1 - share);
  return portionOf(matter, share);
}
