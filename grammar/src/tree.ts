/**
 * The tree: what the parser makes of a `.nappe` file, line by line.
 *
 * No construct crosses a line end, so every node holds columns only (0-based UTF-16 code units, end exclusive)
 * and a `Line` never knows its own number: a line is a pure function of its text and its context, may be shared
 * between files and kept across edits. A line's number is its index in `File.lines`.
 */

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A replacement of columns within one line; an empty span inserts. */
export interface LineEdit extends Span {
  readonly text: string;
}

export interface LineFix {
  readonly title: string;
  readonly edits: readonly LineEdit[];
}

/** What the grammar itself finds wrong with a line. The wording layer adds title, cause and remedy by code. */
export interface Problem extends Span {
  readonly code: 'syntax' | 'wrong-clause' | 'range-reversed';
  /** One sentence for a cook: what stands here and what was expected. */
  readonly message: string;
  readonly fixes: readonly LineFix[];
}

/** A name as written; names are compared by `key` (folded case, single spaces, NFKC). */
export interface Name extends Span {
  readonly text: string;
  readonly key: string;
  readonly quoted: boolean;
}

/** Free text kept as written (quoted text without its quotes). */
export interface Text extends Span {
  readonly text: string;
  readonly quoted: boolean;
}

export interface NumberNode extends Span {
  readonly value: number;
}

/** A number or a range of numbers; a single number has low = high and ranged = false. low <= high always. */
export interface Numbers extends Span {
  readonly low: number;
  readonly high: number;
  readonly ranged: boolean;
}

/** Parentheses after a value: other values for other values of one choice. */
export interface Override<T> extends Span {
  readonly value: Name;
  readonly then: T;
}

/** A value with what stands in parentheses behind it. */
export interface Varying<T> extends Span {
  readonly base: T;
  readonly overrides: readonly Override<T>[];
}

/** Canonical unit words. `pc` is also the unit where none is written; `some` has no number. */
export type MassUnit = 'mg' | 'g' | 'kg' | 'oz' | 'lb';
export type VolumeUnit = 'ml' | 'cl' | 'dl' | 'l' | 'tsp' | 'tbsp' | 'cup' | 'floz';
export type QuantityUnit = MassUnit | VolumeUnit | 'pc' | '%' | 'some';
export type LengthUnit = 'mm' | 'cm' | 'm';

export interface Quantity extends Span {
  readonly kind: 'quantity';
  /** In `unit`, as written; 0 for `some`. */
  readonly low: number;
  readonly high: number;
  readonly ranged: boolean;
  readonly unit: QuantityUnit;
  /** False where no unit was written (pieces). */
  readonly unitWritten: boolean;
  /** `each`, in the assembly: for each piece that `makes` counts. */
  readonly each: boolean;
  /** A lower-case word after the number that may be a mistyped unit: the resolver decides by scope and catalogue. */
  readonly doubtfulUnit?: Text;
}

/** A temperature as written; `below` has no low end, `above` no high end (±Infinity). */
export interface Reading extends Span {
  readonly kind: 'temperature';
  readonly low: number;
  readonly high: number;
  readonly ranged: boolean;
  readonly unit: 'C' | 'F';
}

export interface Duration extends Span {
  readonly kind: 'duration';
  /** Seconds. */
  readonly low: number;
  readonly high: number;
  readonly ranged: boolean;
  readonly overnight: boolean;
}

export interface Length extends Span {
  readonly kind: 'length';
  /** Millimetres. */
  readonly low: number;
  readonly high: number;
  readonly unit: LengthUnit;
}

/** `N brix`. */
export interface Brix extends Span {
  readonly kind: 'brix';
  readonly low: number;
  readonly high: number;
}

export type Peak = 'very soft' | 'soft' | 'medium' | 'stiff';

export interface PeakNode extends Span {
  readonly kind: 'peak';
  readonly low: Peak;
  readonly high: Peak;
}

/** `makes`, `for …` of a request, `cut into …`: `1.2 kg`, `1 l`, or `NUMBER NOUN of SIZE`. */
export interface Yield extends Span {
  readonly kind: 'yield';
  /** Set for a mass or a volume yield (`1.2 kg`), else null. */
  readonly quantity: Quantity | null;
  /** Set for a counted yield. */
  readonly count: number | null;
  /** The noun in the singular where the vocabulary knows it, else as written. */
  readonly noun: Name | null;
  /** `shell` or `lined` stands before the noun: only the count is compared. */
  readonly lined: boolean;
  /** `of 16 x 3 cm`: lengths in millimetres in the shape's order (see vocabulary `shapes`). */
  readonly lengths: readonly number[] | null;
  /** `of 100 ml`, `of 110 g`. */
  readonly size: Quantity | null;
}

/** `60 g of NAME`, `half of NAME`, `1/3 of NAME`, `rest of NAME`, or just the NAME (part null). */
export interface Operand extends Span {
  readonly kind: 'operand';
  readonly name: Name;
  readonly part:
    | { readonly kind: 'quantity'; readonly quantity: Varying<Quantity> }
    | { readonly kind: 'fraction'; readonly value: number }
    | { readonly kind: 'rest' }
    | null;
}

export type Clause = Span & { readonly wordSpan: Span } & (
    | { readonly word: 'to'; readonly target: Varying<Reading | PeakNode | Quantity | Length | Brix> }
    | { readonly word: 'at'; readonly target: Varying<Reading> }
    /** `at room`. */
    | { readonly word: 'at room' }
    | { readonly word: 'for'; readonly target: Varying<Duration> }
    | { readonly word: 'until'; readonly sign: Text }
    /** A matter or a vessel (the resolver decides), or `cut into 24 bars of 9 x 3 cm`. */
    | { readonly word: 'into'; readonly target: Name | Yield }
    | { readonly word: 'over'; readonly target: Name }
    | { readonly word: 'in'; readonly target: Name | Medium | Additions | Turns }
    /** For the verbs that take names after `with`. */
    | { readonly word: 'with'; readonly operands: readonly Operand[] }
    /** A tool of the table or quoted text. */
    | { readonly word: 'with tool'; readonly tool: Text }
    | { readonly word: 'while whipping' }
    | { readonly word: 'on'; readonly level: 'low' | 'medium' | 'high' }
    | { readonly word: 'using'; readonly vessel: Name }
    | { readonly word: 'losing'; readonly percent: Varying<Numbers> }
    | { readonly word: 'as'; readonly name: Name }
  );

export type ClauseWord = Clause['word'];

export interface Medium extends Span {
  readonly kind: 'medium';
  /** Canonical word of the vocabulary's table of media. */
  readonly medium: string;
}

export interface Additions extends Span {
  readonly kind: 'additions';
  readonly count: Varying<Numbers>;
  readonly tools: readonly Text[];
}

export interface Turns extends Span {
  readonly kind: 'turns';
  readonly count: number;
  readonly turns: readonly Text[];
}

/** `when a, b` or `unless a, b` at a line's end. */
export interface Guard extends Span {
  readonly word: 'when' | 'unless';
  readonly values: readonly Name[];
}

export type Attribute = Span &
  (
    | { readonly kind: 'phase'; readonly phase: string }
    | { readonly kind: 'temperature'; readonly reading: Reading }
    | { readonly kind: 'share'; readonly of: 'fat' | 'cocoa' | 'sugar' | 'solids' | 'alcohol'; readonly percent: Numbers }
    | { readonly kind: 'brix'; readonly brix: Brix }
    | { readonly kind: 'bloom'; readonly bloom: Numbers }
    | { readonly kind: 'pH'; readonly pH: Numbers }
    | { readonly kind: 'is'; readonly name: Name }
    | { readonly kind: 'as'; readonly name: Name }
    | { readonly kind: 'state'; readonly state: 'raw' | 'fresh' | 'canned' | 'pasteurised' }
    | { readonly kind: 'preparation'; readonly text: Text }
  );

interface LineBase {
  /** The line's text without its line end. */
  readonly text: string;
  /** Where the content stands, without indentation, trailing space and comment. */
  readonly span: Span;
  /** A trailing comment, from its `//`. */
  readonly comment: Text | null;
  readonly problems: readonly Problem[];
}

export interface BlankLine extends LineBase {
  readonly kind: 'blank';
}

/** A comment alone on its line. `// allow CODE, CODE: reason` is read here. */
export interface CommentLine extends LineBase {
  readonly kind: 'comment';
  readonly comment: Text;
  readonly allow: { readonly codes: readonly Text[]; readonly reason: Text | null } | null;
}

/** `| …`: Markdown. `markdown` is what follows the bar and one space. */
export interface NoteLine extends LineBase {
  readonly kind: 'note';
  readonly markdown: string;
}

/** A line nothing could be made of; unreadable lines in a row are one diagnostic, on the first. */
export interface BadLine extends LineBase {
  readonly kind: 'bad';
}

export interface IngredientLine extends LineBase {
  readonly kind: 'ingredient';
  readonly quantity: Varying<Quantity>;
  readonly name: Name;
  readonly attributes: readonly Attribute[];
  readonly guard: Guard | null;
}

export interface StepLine extends LineBase {
  readonly kind: 'step';
  readonly verb: string;
  readonly verbSpan: Span;
  readonly operands: readonly Operand[];
  /** `portion 100 ml`, `pour 40 g`, `spread 300 g`: that much of the current matter into each vessel. */
  readonly amount: Varying<Quantity> | null;
  /** `check 84 °C`, `check 65 brix`. */
  readonly check: Varying<Reading | Brix> | null;
  /** `do "free text"`. */
  readonly doing: Text | null;
  readonly clauses: readonly Clause[];
  readonly guard: Guard | null;
}

export type BlockWord =
  | 'formula'
  | 'component'
  | 'assembly'
  | 'ingredient'
  | 'equipment'
  | 'prices'
  | 'take'
  | 'card'
  | 'weigh-out'
  | 'timeline'
  | 'compare';

/** `formula NAME`, `component NAME [when …]`, `assembly`, `ingredient NAME`, `equipment`, `prices EUR`. */
export interface BlockLine extends LineBase {
  readonly kind: 'block';
  readonly word: 'formula' | 'component' | 'assembly' | 'ingredient' | 'equipment' | 'prices';
  readonly wordSpan: Span;
  /** Null for `assembly` and `equipment`; the currency for `prices`; missing names are a problem, with null here. */
  readonly name: Name | null;
  readonly guard: Guard | null;
}

export interface TakeLine extends LineBase {
  readonly kind: 'take';
  /** Names, or the words `equipment`, `prices`. */
  readonly items: readonly { readonly name: Name; readonly as: Name | null }[];
  readonly from: FileReference | null;
}

/** `"path.nappe"` or `"path.nappe#Formula name"`; without a path (handouts) the formula above. */
export interface FileReference extends Span {
  readonly path: string;
  readonly formula: string | null;
}

export interface RequestEntry extends Span {
  readonly reference: FileReference | null;
  readonly yield: Yield | null;
  readonly choices: readonly Name[];
}

/** `card …`, `weigh-out …`, `timeline … ready 18:30`, `compare "old" with "new"`. */
export interface RequestLine extends LineBase {
  readonly kind: 'request';
  readonly word: 'card' | 'weigh-out' | 'timeline' | 'compare';
  readonly entries: readonly RequestEntry[];
  /** `18:30`, for `timeline`. */
  readonly ready: Text | null;
}

interface HeaderBase extends LineBase {
  readonly kind: 'header';
  readonly wordSpan: Span;
  readonly guard: Guard | null;
}

export type HeaderLine = HeaderBase &
  (
    | { readonly word: 'by'; readonly value: Text }
    | { readonly word: 'version'; readonly value: Text }
    | { readonly word: 'makes'; readonly yield: Yield }
    | { readonly word: 'choice'; readonly name: Name; readonly values: readonly Name[] }
    | { readonly word: 'served'; readonly at: Reading }
    | { readonly word: 'keeps'; readonly for: Duration; readonly at: Reading | null }
    | { readonly word: 'free'; readonly allergens: readonly Name[] }
    | { readonly word: 'gelatin'; readonly law: 'concentration' | 'strength' }
    | { readonly word: 'tagged'; readonly tags: readonly Name[] }
    /** `basis total` has name null. */
    | { readonly word: 'basis'; readonly name: Name | null }
    | { readonly word: 'loss'; readonly percent: Numbers }
  );

/** A line of an `ingredient` block. */
export type FactLine = LineBase & {
  readonly kind: 'fact';
  readonly wordSpan: Span;
} & (
    | { readonly word: 'like'; readonly name: Name }
    /** Mass %. */
    | {
        readonly word:
          | 'water'
          | 'milk fat'
          | 'cocoa butter'
          | 'other fat'
          | 'sucrose'
          | 'other sugars'
          | 'starch'
          | 'protein'
          | 'fibre'
          | 'ash'
          | 'alcohol';
        readonly percent: Numbers;
      }
    /** g/ml. */
    | { readonly word: 'density'; readonly value: Numbers }
    | { readonly word: 'each'; readonly quantity: Quantity }
    | { readonly word: 'phase'; readonly phase: string }
    | { readonly word: 'pH'; readonly value: Numbers }
    | { readonly word: 'allergen'; readonly allergens: readonly Name[] }
    | { readonly word: 'absorbs'; readonly percent: Numbers }
    | { readonly word: 'stored'; readonly storage: 'chilled' | 'ambient' | 'frozen' }
  );

/** A line of an `equipment` block: `saucepan 3 l, 20 cm wide`, `fridge 3 °C`, `altitude 800 m`. */
export interface EquipmentLine extends LineBase {
  readonly kind: 'equipment';
  readonly name: Name;
  readonly capacity: Quantity | null;
  /** Millimetres. */
  readonly wide: number | null;
  readonly deep: number | null;
  readonly temperature: Reading | null;
  /** Metres; only for `altitude`. */
  readonly altitude: number | null;
}

/** A line of a `prices` block: `5.20 per kg cream`. */
export interface PriceLine extends LineBase {
  readonly kind: 'price';
  readonly amount: number;
  readonly per: QuantityUnit;
  readonly name: Name;
}

export type Line =
  | BlankLine
  | CommentLine
  | NoteLine
  | BadLine
  | IngredientLine
  | StepLine
  | BlockLine
  | TakeLine
  | RequestLine
  | HeaderLine
  | FactLine
  | EquipmentLine
  | PriceLine;

/** What the lines under a block word are read as. */
export type LineContext = 'formula' | 'ingredient' | 'equipment' | 'prices';

/** A run of lines under one block word; `first` is the block line itself. Lines before any block word have `heading` null. */
export interface Block {
  readonly heading: BlockLine | null;
  /** Index of the first line (the heading, where there is one) in `File.lines`. */
  readonly first: number;
  /** Index after the last line. */
  readonly end: number;
  readonly lines: readonly Line[];
}

export interface File {
  readonly text: string;
  readonly lines: readonly Line[];
  /** Blocks in order; `take` and request lines stand inside the block they follow and do not open one. */
  readonly blocks: readonly Block[];
  readonly eol: '\n' | '\r\n';
}
