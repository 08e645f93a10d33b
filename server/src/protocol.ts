/**
 * What the server speaks beside the Language Server Protocol, for the extension and for any other client.
 *
 * Requests of the client: `nappe/card`, `nappe/scale`, `nappe/compare`, `nappe/bases`,
 * `nappe/status`, `nappe/explain`. Requests of the server, only to a client that
 * says `initializationOptions.files = true` (a browser, where the server cannot read files itself): `nappe/files`, `nappe/file`.
 * Notification of the server: `nappe/cardChanged`. Nothing here throws on bad requests: an answer is data or a `problem` for a cook.
 */

/** The client's own command that a code lens runs; its argument is `{ uri, formula }`. */
export const openCard = 'nappe.openCard';

/** The scheme of the pages a diagnostic's code links to; the server gives their text (`workspace/textDocumentContent`). */
export const explanationScheme = 'nappe-explain';

export const explanationUri = (code: string): string => `${explanationScheme}:/${code}.md`;

export interface InitializationOptions {
  /** The client answers `nappe/files` and `nappe/file`. */
  readonly files?: boolean;
  /** The client wants `nappe/cardChanged`. */
  readonly cards?: boolean;
  /** Settings of the section `nappe`, for clients without `workspace/configuration`. */
  readonly settings?: unknown;
}

/** Why there is no answer, in one sentence for a cook. */
export interface Problem {
  readonly problem: string;
}

export const cardRequest = 'nappe/card';

export interface CardParams {
  readonly uri: string;
  /** A formula's title; the first of the file where absent. In its place: the formula a line (from 0) stands in. */
  readonly formula?: string;
  readonly line?: number;
  /** A yield, as after `makes`: `24 glasses`, `2.4 kg`. */
  readonly for?: string;
  /** Values of choices by name; the others at their first. */
  readonly choices?: readonly string[];
  readonly units?: 'metric' | 'us';
  /** BCP 47; English where not known. */
  readonly language?: string;
  /** Wants the card in Markdown as well. */
  readonly markdown?: boolean;
}

export interface CardAnswer {
  /** The whole page, self-contained. */
  readonly html: string;
  /** Where it was asked for. */
  readonly markdown?: string;
  readonly formula: string;
  /** Every formula of the file, for a picker. */
  readonly formulas: readonly string[];
  /** The formula's choices, and the value in force of each. */
  readonly choices: readonly { readonly name: string; readonly values: readonly string[]; readonly value: string }[];
  /** What `makes` says, and the card's own yield in words. */
  readonly makes: string;
  readonly languages: readonly { readonly code: string; readonly name: string }[];
  /** Steps and ingredient lines by where they stand, lines from 0, for following the cursor. `number` is the step's on the card. */
  readonly steps: readonly { readonly number: number; readonly uri: string; readonly line: number }[];
  readonly checked: boolean;
  readonly faults: { readonly errors: number; readonly warnings: number };
}

export const scaleRequest = 'nappe/scale';

export interface ScaleParams {
  readonly uri: string;
  readonly formula?: string;
  readonly line?: number;
  /** A yield, or a factor such as `2` or `1/2` where `factor` is set. */
  readonly for?: string;
  readonly factor?: number;
  readonly choices?: readonly string[];
}

/** The formula rewritten in place at another size. */
export interface ScaleAnswer {
  readonly factor: number;
  readonly edit: import('vscode-languageserver').WorkspaceEdit;
}

export const compareRequest = 'nappe/compare';

export interface CompareParams {
  /** The two files; `#title` after a URI picks a formula. */
  readonly old: string;
  readonly new: string;
  /** Text to read in place of the old file's, such as an earlier revision. */
  readonly oldText?: string;
}

export interface CompareAnswer {
  /** The changes as `nappe compare --to json` gives them. */
  readonly changes: readonly unknown[];
  /** The same in words, with the formulas that are new and those that are gone. */
  readonly markdown: string;
}

export const basesRequest = 'nappe/bases';

export interface BasesParams {
  readonly uri: string;
}

export interface BasesAnswer {
  /** Components of other files that this one can take, and what a `take` line for each says. */
  readonly bases: readonly Base[];
}

export interface Base {
  readonly name: string;
  /** As the file would write it. */
  readonly file: string;
  /** The line to insert, and where: below the last `take`, or as the formula's first line after its headers. */
  readonly edit: import('vscode-languageserver').TextEdit;
}

export const statusRequest = 'nappe/status';

export interface StatusParams {
  readonly uri: string;
  /** From 0. */
  readonly line: number;
}

/** The formula a line stands in, or the file's first, for a line of status; empty texts where there is none or it cannot be run yet. */
export interface StatusAnswer {
  readonly formula: string;
  /** What it makes and weighs. */
  readonly makes: string;
}

export const explainRequest = 'nappe/explain';

export interface ExplainParams {
  readonly code: string;
}

export interface ExplainAnswer {
  readonly markdown: string;
}

/** After a change that may alter cards: the files whose cards are stale. */
export const cardChanged = 'nappe/cardChanged';

export interface CardChangedParams {
  readonly uris: readonly string[];
}

/** Server to client: every `.nappe` and Markdown file below a workspace folder. */
export const filesRequest = 'nappe/files';

export interface FilesParams {
  readonly folder: string;
  readonly limit: number;
}

export interface FilesAnswer {
  readonly uris: readonly string[];
}

/** Server to client: the text of one file, or null where there is none. */
export const fileRequest = 'nappe/file';

export interface FileParams {
  readonly uri: string;
}

export interface FileAnswer {
  readonly text: string | null;
}
