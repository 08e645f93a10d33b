/** What the server asks of the world it runs in: files, their names, and the folder a lone file belongs to. */

export type ReadResult =
  | { readonly text: string }
  | { readonly refused: 'missing' | 'outside' | 'unreadable'; readonly why: string };

export interface Host {
  /** The text of a file below `root`, at once; paths are absolute with `/`. Nothing outside the root is read, links followed first. */
  read(root: string, path: string): ReadResult;
  /** `.nappe` and Markdown files below a folder, hidden folders and `node_modules` left out. Stops when told to. */
  list(root: string, options: ListOptions): Promise<readonly string[]>;
  /** The root that a file outside every workspace folder belongs to. */
  rootOf(path: string): string;
  /** Says that files below were changed from outside, so that what is kept of them is fetched again. */
  refresh?(paths: readonly string[]): Promise<void>;
}

export interface ListOptions {
  /** No more files than this. */
  readonly limit: number;
  /** How many folders deep; 1 is the folder itself. */
  readonly depth: number;
  readonly isCancelled: () => boolean;
}

/** More files than this are not indexed; they are still read where something names them. */
export const mostFiles = 20_000;

/** Of the files beside a lone file. */
export const mostBeside = 500;

/** A project of more files keeps of the closed ones the reports alone. */
export const mostKept = 400;
