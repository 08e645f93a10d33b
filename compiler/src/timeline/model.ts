/** The timeline: the steps of one or several formulas laid out in time, backwards from when they must be ready, as data. */

export interface Timeline {
  /** A time of day, `18:30`; null where none was given: then nothing is known of nights and days. */
  readonly ready: string | null;
  readonly cooks: number;
  readonly orders: readonly TimelineOrder[];
  /** In order of time. */
  readonly tasks: readonly Task[];
  readonly conflicts: readonly Conflict[];
}

export interface TimelineOrder {
  readonly formula: string;
  readonly file: string;
  readonly makes: string;
  readonly choices: readonly string[];
  /** False where the checker found errors in it. */
  readonly checked: boolean;
  /** `keeps` in words, where the whole may be made the day before. */
  readonly keeps: string | null;
}

export interface Task {
  readonly id: string;
  /** Counts from 1 in order of time. */
  readonly number: number;
  readonly formula: string;
  readonly component: string;
  readonly file: string;
  readonly line: number;
  readonly text: string;
  /** Minutes before (negative) the time it must be ready; whole. */
  readonly startMinutes: number;
  readonly endMinutes: number;
  /** Nobody wrote how long it takes: an estimate, off by half or double. */
  readonly estimated: boolean;
  /** Nothing to do meanwhile. */
  readonly waiting: boolean;
  /** Oven, mixer, fridge, freezer, an item of `equipment`. */
  readonly uses: readonly string[];
  /** Ids of the tasks whose matter it takes. */
  readonly needs: readonly string[];
  /** It may as well be done the day before: what comes of it keeps. */
  readonly dayBefore: boolean;
}

export interface Conflict {
  /** `waits`: matter stands longer than it should; `keeps`: something is ready earlier than it keeps. */
  readonly kind: 'waits' | 'keeps';
  /** In words for a cook. */
  readonly message: string;
  readonly tasks: readonly string[];
}
