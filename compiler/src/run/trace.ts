/**
 * The trace: what the abstract run of a formula under one selection leaves behind, step by step.
 *
 * Records and matter are immutable and shared between combinations and edits; edges forward in time are kept in `Run.later`.
 */
import type { Phase } from '../catalogue/kind.ts';
import type { Composition } from '../matter/composition.ts';
import type { FoamStage, FoamKind as ModelledFoam } from '../matter/foam.ts';
import type { Hold } from '../matter/lethality.ts';
import type { Interval } from '../quantities/interval.ts';
import type { Component, Formula, RawFinding, Selection, SourceLine, Step, Vessel } from '../resolve/model.ts';

/** What came from one ingredient line. */
export interface Part {
  readonly line: SourceLine;
  /** Grams at the middle of what is written. */
  readonly grams: number;
  /** Highest temperature certainly reached since it was weighed (written readings at their lower end), °C. */
  readonly reached: number;
  /** For egg: what it was certainly held at, in order, since it was weighed. */
  readonly holds: readonly Hold[];
  /** Oven-baked, fried or dried through: counts as heated for egg, starch and flour. */
  readonly baked: boolean;
}

export type Basis = 'written' | 'computed' | 'stored' | 'unknown';

export interface Heat {
  /** What physics allows, thermometer's give or take included. */
  readonly celsius: Interval;
  /** Where it is from: a written reading in force, computed from others, by storage, or unknown. */
  readonly basis: Basis;
  /** The written reading in force, as written, where basis is `written`. */
  readonly written: Interval | null;
  /** The last step that heated this matter, with its written reading; null where nothing did. */
  readonly heated: { readonly step: Step; readonly written: Interval | null } | null;
  /** A step since then took heat out (`cool`, `chill`, `rest` …). */
  readonly cooledSince: boolean;
}

/** The kinds the foam model has figures for, and three more that whip like cream or gelatin. */
export type FoamKind = ModelledFoam | 'plant cream' | 'ganache' | 'sugar';

export interface Foam {
  readonly kind: FoamKind;
  readonly low: FoamStage;
  readonly high: FoamStage;
  /** Percent, of the matter it is in now. */
  readonly overrun: Interval;
  /** The step that whipped it, and how long ago. */
  readonly whipped: Step;
  readonly waited: Interval;
}

export type GelatinState = 'none' | 'dry' | 'bloomed' | 'dissolved' | 'set';

export interface Matter {
  /** Unique in the process; a memo hit returns the same object. */
  readonly id: number;
  /** The step that left it so; null for weighed ingredients as they stand. */
  readonly made: StepRecord | null;
  readonly parts: readonly Part[];
  /** Water gone as steam, grams. */
  readonly evaporated: Interval;
  readonly grams: Interval;
  /** Grams at the middle, evaporation taken off. */
  readonly composition: Composition;
  /** Grams in it whose composition is not known. */
  readonly unknownGrams: number;
  readonly heat: Heat;
  readonly phase: Phase;
  readonly foam: Foam | null;
  readonly gelatin: GelatinState;
  /** Grams of gelatin as 200 bloom, by the formula's law. */
  readonly gelatin200: number;
  readonly chocolate: 'none' | 'solid' | 'melted' | 'in temper' | 'seized';
  readonly eggCurdled: boolean;
  /** Frozen through and not thawed. */
  readonly frozen: boolean;
  /** Smoothed after it last cooled (`smooth`, or `whisk`, `stir`, `blend` with `until smooth`). */
  readonly smoothed: boolean;
  /** Baked, dried or fried as a whole. */
  readonly baked: boolean;
  /** Cold stays since it last took anything in: each with its surroundings and length. */
  readonly stays: readonly { readonly step: Step; readonly celsius: Interval; readonly seconds: Interval }[];
  /** Matter lying on, in or around other matter, bottom to top; null where it is one mass. Totals above are over all. */
  readonly layers: readonly Matter[] | null;
}

export type Role =
  /** Named, or put in. */
  | 'operand'
  /** What takes the operands in: `into`, `over`, `in NAME`, or the current matter. */
  | 'base'
  /** After `with`. */
  | 'with';

export interface Input {
  readonly role: Role;
  readonly name: string;
  readonly matter: Matter;
  /** Grams of it that this step took (all of `matter`, which is already the part taken). */
  readonly partial: boolean;
}

export interface Addition {
  readonly grams: Interval;
  readonly celsius: Interval;
}

export interface StepRecord {
  /** `block:line` of its step, with `@n` for the nth batch of a taken component. */
  readonly id: string;
  readonly step: Step;
  readonly component: Component;
  readonly inputs: readonly Input[];
  /** What the vessel held already, on which this came to lie; null where it held nothing. */
  readonly onto: Matter | null;
  /** What the step leaves as current matter (for `reserve`, what remains). */
  readonly result: Matter;
  /** `reserve … as`: what was put by. */
  readonly reserved: Matter | null;
  /** Names the result has after the step. */
  readonly names: readonly string[];
  /** After each addition of a fold or an `add in N additions`. */
  readonly additions: readonly Addition[];
  /** Temperature of everything brought together, computed before any written reading took over; null where nothing was computed. */
  readonly computed: Interval | null;
  /** The written reading of this step (`to`, `check`, `at` of matter), as written, °C. */
  readonly written: Interval | null;
  readonly seconds: { readonly range: Interval; readonly estimated: boolean } | null;
  /** The surroundings: medium word of the vocabulary, `room`, `oven`, `stove`; null where none. */
  readonly medium: string | null;
  readonly surroundings: Interval | null;
  /** Item of `equipment` it happens in. */
  readonly vessel: Vessel | null;
  /** Noun of the vessel or mould it was put into (`glass`, `ring`). */
  readonly mould: string | null;
  /** Millilitres at the step's end. */
  readonly millilitres: Interval | null;
  /** The largest volume during the step, for capacity. */
  readonly largestMillilitres: Interval | null;
  readonly assumptions: readonly string[];
}

/** One component under one selection and one size. */
export interface BlockRun {
  readonly component: Component;
  /** The batch's factor on the written grams. */
  readonly factor: number;
  /** The taker's line, for a batch. */
  readonly batchOf: SourceLine | null;
  readonly selection: Selection;
  readonly lines: readonly WeighedLine[];
  readonly records: readonly StepRecord[];
  /** What the block leaves; null for an empty block. Before `loss`. */
  readonly leaves: Matter | null;
  /** What the block leaves after written losses. */
  readonly result: Matter | null;
  /** Naming and mass findings of the run itself. */
  readonly findings: readonly RawFinding[];
}

export interface WeighedLine {
  readonly line: SourceLine;
  readonly grams: Interval;
  readonly matter: Matter;
  /** Grams at the middle still unused when the block (and all that draws on it) ended. */
  readonly left: number;
  /** Used by some step, or part of the result. */
  readonly used: boolean;
}

export interface Run {
  readonly formula: Formula;
  readonly selection: Selection;
  readonly factor: number;
  /** In order of need; batches of taken components before what uses them. */
  readonly blocks: readonly BlockRun[];
  /** All records in order. */
  readonly records: readonly StepRecord[];
  /** Which records took in what a record left (directly). */
  readonly later: ReadonlyMap<StepRecord, readonly StepRecord[]>;
  readonly blockOf: ReadonlyMap<StepRecord, BlockRun>;
  /** What is served; null where the formula makes nothing. */
  readonly result: Matter | null;
  readonly findings: readonly RawFinding[];
}

export type { FoamStage } from '../matter/foam.ts';
