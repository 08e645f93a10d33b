/** What a verb's effect is handed, and what it gives back. */
import type { StepLine } from 'nappe-grammar';
import type { Interval } from '../quantities/interval.ts';
import type { Settings, Step, Vessel } from '../resolve/model.ts';
import type { Chosen } from '../run/clauses.ts';
import type { Addition, Matter } from '../run/trace.ts';

/** How a verb brings its parties together. */
export type Meeting =
  /** One mass. */
  | 'mix'
  /** Side by side, on or in each other. */
  | 'layer'
  /** One mass, or on top of it where the base already holds its shape (set, frozen, baked). */
  | 'mix or layer';

export interface Act {
  readonly step: Step;
  readonly node: StepLine;
  readonly chosen: Chosen;
  readonly settings: Settings;
  /** Times the written grams. */
  readonly factor: number;
  /** Everything brought together, before the verb's own effect: temperatures balanced, nothing else changed. */
  readonly together: Matter;
  /** What took the others in; null where the operands alone met. */
  readonly base: Matter | null;
  /** What went in. Where one matter is acted on alone, empty. */
  readonly operands: readonly Matter[];
  /** Written `for`. */
  readonly duration: Interval | null;
  readonly vessel: Vessel | null;
  /** Noun of the vessel it is in, from this step or an earlier one. */
  readonly mould: string | null;
}

export interface Effect {
  readonly matter: Matter;
  /** A function where the estimate costs work that few ask for. */
  readonly seconds?: Interval | (() => Interval);
  readonly medium?: string;
  readonly surroundings?: Interval;
  readonly additions?: readonly Addition[];
  readonly assumptions?: readonly string[] | (() => readonly string[]);
  /** Overrun that counts for capacity, where the volume is largest during the step (whipping). */
  readonly peakOverrun?: Interval;
}

export interface VerbEffect {
  readonly meeting: Meeting;
  /** `bloom A in B`: A takes B up and keeps its name; else B takes A in. */
  readonly takesUp?: boolean;
  readonly effect: (act: Act) => Effect;
}
