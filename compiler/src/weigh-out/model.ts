/** The weigh-out: everything to weigh or order for one or several formulas and their bases, as data. */

export type Stored = 'chilled' | 'frozen' | 'dry';

export interface WeighOut {
  readonly orders: readonly Ordered[];
  /** Chilled, frozen, dry; within each by name. */
  readonly items: readonly Item[];
  readonly bags: readonly Bag[];
  /** One entry a currency; empty where no formula has prices. */
  readonly costs: readonly Costing[];
}

/** One formula of the list. */
export interface Ordered {
  readonly formula: string;
  readonly file: string;
  /** `24 glasses of 100 ml`. */
  readonly makes: string;
  readonly choices: readonly string[];
  /** False where the checker found errors in it. */
  readonly checked: boolean;
}

/** One thing to have ready, over all formulas. */
export interface Item {
  readonly name: string;
  /** `35 % fat`, `200 bloom`. */
  readonly attributes: readonly string[];
  /** Of the catalogue; null where it is in none. */
  readonly kind: string | null;
  /** The sum of what the cards' lines show; null where no line has a mass (`some`). */
  readonly grams: number | null;
  /** `640 g`, `120 g (≈ 8 pc)`, `2 pc (100 g)`, `some`. */
  readonly written: string;
  /** In the unit it is priced in: `1.3 l`, `8 pc`; null without a price. */
  readonly buy: string | null;
  readonly stored: Stored;
  /** To the cent; null without a price. */
  readonly cost: number | null;
  /** Of the whole cost, 0–1; null without a price. */
  readonly share: number | null;
  readonly for: readonly { readonly formula: string; readonly grams: number | null }[];
}

/** What goes into one bag: the lines of one component of one formula. */
export interface Bag {
  readonly formula: string;
  readonly component: string;
  /** The file a base is from; null for the formula's own. */
  readonly from: string | null;
  readonly grams: number;
  readonly lines: readonly BagLine[];
}

export interface BagLine {
  readonly name: string;
  readonly attributes: readonly string[];
  readonly grams: number | null;
  readonly written: string;
  readonly stored: Stored;
}

export interface Costing {
  readonly currency: string;
  /** The sum of the items' costs. */
  readonly total: number;
  readonly formulas: readonly {
    readonly formula: string;
    readonly cost: number;
    /** What it makes, counted, and the cost of one; null where it counts nothing. */
    readonly portions: number | null;
    readonly perPortion: number | null;
  }[];
  /** Names nobody wrote a price for. */
  readonly unpriced: readonly string[];
}
