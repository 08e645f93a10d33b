/** What people already have, taken apart: a recipe as lines of ingredients and prose, before anything in it is understood. */

export interface Found {
  readonly title: string | null;
  readonly by: string | null;
  /** As written: `Serves 8`, `12 tartlets`. */
  readonly yield: string | null;
  /** Other words of the recipe, kept as notes. */
  readonly notes: readonly string[];
  /** In the order written; one without a heading where the recipe has none. */
  readonly parts: readonly Part[];
}

export interface Part {
  /** `Custard`, `For the custard`. */
  readonly heading: string | null;
  readonly ingredients: readonly Written[];
  /** Paragraphs or numbered lines of the method. */
  readonly prose: readonly Written[];
}

export interface Written {
  readonly text: string;
  /** From 1, in the file; null where the file's lines mean nothing (a page). */
  readonly line: number | null;
}

export interface Draft {
  /** Canonical notation. */
  readonly text: string;
  /** What was not understood, each with where it stands; for the one who finishes the draft. */
  readonly open: readonly { readonly line: number | null; readonly message: string }[];
}
