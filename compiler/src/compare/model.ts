/** What changed in meaning between two versions of a formula, as data. */

export type ChangeKind =
  | 'grams'
  | 'share'
  | 'celsius'
  | 'time'
  | 'step'
  | 'order'
  | 'yield'
  | 'allergen'
  | 'diagnostic'
  | 'nutrition';

export interface Change {
  readonly kind: ChangeKind;
  /** The component it is in; the formula's name for what belongs to the whole. */
  readonly component: string;
  /** The ingredient, the verb, the header, the code. */
  readonly name: string;
  /** As a cook would say it; null where it was not there. */
  readonly old: string | null;
  readonly new: string | null;
  /** From 1; null where there is no line of its own. */
  readonly oldLine: number | null;
  readonly newLine: number | null;
}

export interface Comparison {
  readonly old: string;
  readonly new: string;
  readonly formula: string;
  readonly changes: readonly Change[];
}
