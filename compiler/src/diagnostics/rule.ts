/** A rule: everything about one diagnostic code, in one object; its file is named for the code. */
import type { Edit, Figures, Fix, Place, Related, Severity } from '../resolve/model.ts';
import type { Run } from '../run/trace.ts';

export interface Rule {
  readonly code: string;
  /** Worst first. */
  readonly severities: readonly [Severity, ...Severity[]];
  readonly title: string;
  /** A safety code: listed on the card when allowed. */
  readonly safety?: boolean;
  /**
   * Judged only of what a formula serves (its life's end, its yield, its safety at the table): silent for a component that stands
   * by itself in a file for others to take, because who takes it may still cook, chill or set it.
   */
  readonly served?: boolean;
  /** What decides between severities, where there are several. */
  readonly decides?: string;
  /** The physics or the rule behind it, a short paragraph for a cook. */
  readonly why: string;
  /** What to do, imperative. */
  readonly remedy: string;
  /** Where the threshold is from; "common practice, no source" where that is so. */
  readonly source: string;
  /** `bad` raises exactly this code where a line ends `// expect: CODE`; `good` raises nothing. Whole small files. */
  readonly examples: { readonly bad: string; readonly good: string };
  /** The sentence for a cook, from the numbers that decided. */
  message(numbers: Figures): string;
  /** Looks at one run (one combination); absent where grammar, resolver or run find it themselves. */
  check?(run: Run, report: Report): void;
}

export type Report = (finding: {
  readonly severity?: Severity;
  readonly place: Place;
  readonly numbers: Figures;
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[];
}) => void;

/** A diagnostic as printed, by file and line; lines and columns count from 1, ends exclusive. */
export interface Diagnostic {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly severity: Severity;
  readonly code: string;
  readonly message: string;
  readonly numbers: Figures;
  /** Combinations it holds in; absent where it holds in all. */
  readonly when?: readonly Readonly<Record<string, string>>[];
  readonly fixes: readonly { readonly title: string; readonly edits: readonly FileEdit[] }[];
  readonly related: readonly {
    readonly file: string;
    readonly line: number;
    readonly column: number;
    readonly message: string;
  }[];
}

export interface FileEdit {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly text: string;
}

export type { Edit, Figures, Fix, Place, Related, Severity };
