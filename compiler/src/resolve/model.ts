/**
 * The resolved formula: a tree in which every ingredient line knows its kind and its grams, every `take` its component,
 * every guard its choices. Steps keep their tree node: names are bound by the run, because they depend on the choices.
 */
import type { File, FileReference, Guard, RequestLine, StepLine, Yield } from 'nappe-grammar';
import type { Allergen, Kind, Phase } from '../catalogue/kind.ts';
import type { Interval } from '../quantities/interval.ts';

/** `file#component custard`; unique in a program, stable while the block keeps its name. */
export type BlockId = string;

/** A place in a block: `line` counts from the block's first line (0 = its heading), columns are UTF-16, end exclusive. */
export interface Place {
  readonly block: BlockId;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** Which value of each choice is in force. */
export type Selection = Readonly<Record<string, string>>;

export interface Choice {
  readonly name: string;
  /** Values as written; the first is the default. Compared by name key. */
  readonly values: readonly string[];
  readonly place: Place;
}

/** A guard made ready: for each choice named, the values that satisfy it; `unless` negates the whole. */
export interface Condition {
  readonly guard: Guard;
  readonly all: readonly { readonly choice: string; readonly values: readonly string[] }[];
  readonly negated: boolean;
}

/** A value that one choice may override. */
export interface Varied<T> {
  readonly base: T;
  readonly overrides: readonly { readonly choice: string; readonly value: string; readonly then: T }[];
}

export interface Guarded<T> {
  readonly value: T;
  readonly condition: Condition | null;
  readonly place: Place;
}

/** How much: grams (converted from whatever was written), a percentage of the basis, or `some`. */
export interface Amount {
  readonly measure: 'grams' | 'percent' | 'some' | 'unknown';
  /** Grams or percent; a written range is kept as an interval. For `unknown` (a finding says why) 0. */
  readonly value: Interval;
  /** Times the count of `makes`. */
  readonly each: boolean;
  /** As written, without override: `1 1/2 cup`, `2 pc`; for cards. */
  readonly written: string;
  /** Grams in one of the written unit (1 for g), null for percent, some and unknown. */
  readonly gramsPerUnit: number | null;
  readonly unit: string;
}

/** What an ingredient line weighs out. */
export type Substance =
  /** A kind, adjusted by the line's attributes. `known` false: in no catalogue, composition unknown. */
  | { readonly is: 'kind'; readonly kind: Kind; readonly known: boolean; readonly house: boolean }
  /** Draws from a component of the same formula, unscaled. */
  | { readonly is: 'own component'; readonly component: Component }
  /** A batch of its own of a taken component, scaled so that its result weighs the line's grams. */
  | { readonly is: 'batch'; readonly taken: Taken };

export interface Taken {
  readonly component: Component;
  /** The formula the component belongs to (its choices, sibling components, settings); null for a file-level component. */
  readonly formula: Formula | null;
  /** The file-level scope it was resolved in. */
  readonly file: string;
}

export interface SourceLine {
  /** `block:line`. */
  readonly id: string;
  readonly place: Place;
  readonly namePlace: Place;
  readonly quantityPlace: Place;
  /** How steps call it (`as NAME`, else the name), as written and as key. */
  readonly name: string;
  readonly key: string;
  /** The name as written before `as`, for lists and labels. */
  readonly label: string;
  readonly amount: Varied<Amount>;
  readonly condition: Condition | null;
  readonly substance: Substance;
  /** Written, in °C; null = by storage. */
  readonly celsius: Interval | null;
  readonly bloom: Interval | null;
  readonly brix: Interval | null;
  readonly pH: number | null;
  readonly state: 'raw' | 'fresh' | 'canned' | 'pasteurised' | null;
  /** The line's phase attribute, else the kind's. */
  readonly phase: Phase;
  readonly preparation: string | null;
  readonly notes: readonly string[];
}

export interface Step {
  readonly id: string;
  readonly place: Place;
  readonly node: StepLine;
  readonly condition: Condition | null;
  /** Keys of the choices' values that its own figures depend on, besides its condition. */
  readonly values: readonly string[];
  readonly notes: readonly string[];
}

export interface Component {
  readonly id: BlockId;
  readonly name: string;
  readonly key: string;
  readonly file: string;
  readonly isAssembly: boolean;
  readonly place: Place;
  readonly condition: Condition | null;
  /** null: no percentages or `basis total`; else the key of the line that is 100 %. */
  readonly basis: { readonly kind: 'total' } | { readonly kind: 'line'; readonly key: string; readonly place: Place };
  /** `loss N %`, each with its guard; shares 0–1. */
  readonly losses: readonly Guarded<Interval>[];
  readonly lines: readonly SourceLine[];
  readonly steps: readonly Step[];
  readonly notes: readonly string[];
  /** Names of other components, taken or own, that this block's lines or steps may mean: key → what it is. */
  readonly scope: ReadonlyMap<string, ScopeEntry>;
  /** Names of choices this block's guards and overrides mention, for the run's memo. */
  readonly choicesUsed: readonly string[];
}

export type ScopeEntry = { readonly is: 'own component'; readonly key: string } | { readonly is: 'taken'; readonly taken: Taken };

export interface Vessel {
  readonly name: string;
  readonly key: string;
  readonly millilitres: number | null;
  readonly wideMm: number | null;
  readonly deepMm: number | null;
  readonly place: Place;
}

/** Surroundings and rules that the run asks for; one object a formula. */
export interface Settings {
  readonly vessels: readonly Vessel[];
  readonly room: Interval;
  readonly fridge: Interval;
  readonly freezer: Interval;
  readonly altitudeMetres: number;
  readonly gelatinLaw: 'concentration' | 'strength';
  readonly tags: readonly string[];
  /** Give or take of a written reading, K (1 unless configured). */
  readonly thermometer: number;
}

export interface Price {
  readonly amount: number;
  readonly currency: string;
  readonly per: string;
  readonly name: string;
  readonly key: string;
  readonly place: Place;
}

export interface Formula {
  readonly id: BlockId;
  readonly name: string;
  readonly file: string;
  readonly place: Place;
  readonly by: string | null;
  readonly version: string | null;
  readonly notes: readonly string[];
  readonly choices: readonly Choice[];
  readonly makes: readonly Guarded<Yield>[];
  readonly served: readonly Guarded<Interval>[];
  readonly keeps: readonly Guarded<{ readonly seconds: Interval; readonly celsius: Interval | null }>[];
  readonly freeFrom: readonly { readonly allergen: Allergen | 'nuts'; readonly place: Place }[];
  /** Own components in the order written (a one-component formula has one, with the formula's name), without the assembly. */
  readonly components: readonly Component[];
  readonly assembly: Component | null;
  readonly settings: Settings;
  readonly prices: readonly Price[];
  /** Grammar's and resolver's findings in this formula's blocks, any combination. */
  readonly findings: readonly RawFinding[];
  /** A `syntax` problem stands in it: no card. */
  readonly unreadable: boolean;
  /** It draws on more than a run follows, which its findings say: nothing is run. */
  readonly tooLarge: boolean;
}

export interface Request {
  readonly place: Place;
  readonly line: RequestLine;
  /** The formula above it in the file, for entries without a path. */
  readonly above: Formula | null;
}

/** One file resolved. */
export interface Unit {
  readonly path: string;
  readonly formulas: readonly Formula[];
  /** File-level components and house ingredients, for others to take. */
  readonly components: readonly Component[];
  readonly houseKinds: ReadonlyMap<string, Kind>;
  readonly requests: readonly Request[];
  /** Findings outside formulas: grammar problems, imports, file-level blocks. */
  readonly findings: readonly RawFinding[];
  /** Where each block of this file starts (0-based line), for turning places into lines. */
  readonly blockLines: ReadonlyMap<BlockId, number>;
  /** `// allow` comments with the line they hold for. */
  readonly allows: readonly Allow[];
  /** Paths of files this one takes from, resolved. */
  readonly imports: readonly string[];
}

export interface Allow {
  readonly place: Place;
  readonly codes: readonly { readonly code: string; readonly place: Place }[];
  readonly reason: string | null;
  /** Line of the block that it hides codes on; null where nothing follows. */
  readonly hidesLine: number | null;
}

export type Severity = 'error' | 'warning' | 'notice';

export interface Edit extends Place {
  readonly text: string;
}

export interface Fix {
  readonly title: string;
  /** A new line is inserted as an empty span at column 0 of the line it goes before, text ending in a line feed, or at a line's end, text starting with one. */
  readonly edits: readonly Edit[];
}

export interface Related {
  readonly place: Place;
  readonly message: string;
}

export type Figures = Readonly<Record<string, number | string | boolean | null>>;

/** What grammar, resolver and run find, before the diagnostic of that code words it. */
export interface RawFinding {
  readonly code: string;
  /** Where the code has several; else the diagnostic's own. */
  readonly severity?: Severity;
  readonly place: Place;
  readonly numbers: Figures;
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[];
  /** Found without a run: it is there only where all of these hold. */
  readonly conditions?: readonly Condition[];
  /** The whole line's text, where not all of it could be read: what it names may be missing elsewhere. */
  readonly unreadable?: string;
  /** The run went on with the name proposed, as if it had been written. */
  readonly readOn?: boolean;
}

/** What the compiler asks of the world for files; paths are absolute with `/`. */
export interface Files {
  /** The workspace root: nothing outside it is read. */
  readonly root: string;
  /** The text, with its tree where the reader keeps one up to date (not of Markdown); or why there is none. */
  read(
    path: string,
  ):
    | { readonly text: string; readonly tree?: File | undefined }
    | { readonly refused: 'missing' | 'outside' | 'unreadable'; readonly why: string };
}

export type { FileReference };
