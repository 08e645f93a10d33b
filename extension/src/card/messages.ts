/** What the card's page and the extension tell each other, and what is kept of a card over a restart. */

/** What was chosen for a card; what is absent stands at its default. */
export interface Wish {
  readonly formula?: string;
  /** A yield, as typed. */
  readonly for?: string;
  /** Values of choices by the choice's name. */
  readonly choices?: Readonly<Record<string, string>>;
  readonly units?: 'metric' | 'us';
  readonly language?: string;
}

/** What the page keeps: enough to open the same card at the same place. */
export interface Kept {
  readonly uri: string;
  readonly wish: Wish;
  readonly scroll: number;
}

export type ToPage =
  | { readonly type: 'card'; readonly uri: string; readonly wish: Wish; readonly card: ShownCard }
  | { readonly type: 'problem'; readonly problem: string }
  /** The numbers of the steps under the cursor. */
  | { readonly type: 'mark'; readonly steps: readonly number[] };

export type FromPage =
  | { readonly type: 'ready' }
  | { readonly type: 'wish'; readonly wish: Wish }
  | { readonly type: 'go'; readonly step: number }
  | { readonly type: 'save' };

/** Of the server's answer, what the page draws. */
export interface ShownCard {
  readonly html: string;
  readonly formula: string;
  readonly formulas: readonly string[];
  readonly choices: readonly { readonly name: string; readonly values: readonly string[]; readonly value: string }[];
  readonly makes: string;
  readonly languages: readonly { readonly code: string; readonly name: string }[];
  readonly units: 'metric' | 'us';
  readonly language: string;
}
