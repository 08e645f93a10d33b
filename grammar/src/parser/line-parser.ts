/** The rules of every kind of line but steps; each fills the draft as it reads. */

import type { IToken } from 'chevrotain';
import type { Token } from '../scanner/tokens.ts';
import * as t from '../scanner/tokens.ts';
import type { Name } from '../tree.ts';
import { clearDraft, type Measured, type RawAttribute } from './drafts.ts';
import { StepParser } from './step-parser.ts';
import { type Alternatives, endOf, type ParserOptions } from './value-parser.ts';

export class LineParser extends StepParser {
  constructor(options: ParserOptions = {}) {
    super(options);
    this.performSelfAnalysis();
  }

  /** Makes ready for the tokens of one line. */
  start(tokens: Token[]): void {
    clearDraft(this.draft);
    this.problem = null;
    this.failed = false;
    this.input = tokens;
  }

  #ingredientParts: Alternatives | undefined;

  /** `QUANTITY [(VALUE QUANTITY, …)] NAME {, ATTRIBUTE} [when VALUE]`. */
  ingredientLine = this.RULE('ingredientLine', (): void => {
    this.draft.measured = this.SUBRULE(this.measure) ?? null;
    this.draft.name = this.CONSUME(t.NameToken).payload;
    this.#ingredientParts ??= [
      { ALT: () => this.SUBRULE(this.attribute) },
      { ALT: () => this.keepGuard(this.SUBRULE(this.guard)) },
    ];
    this.MANY(() => this.OR(this.#ingredientParts!));
  });

  #attributes: Alternatives | undefined;

  /** `, ATTRIBUTE`. */
  attribute = this.RULE('attribute', (): void => {
    this.CONSUME(t.CommaToken);
    this.#attributes ??= [
      { ALT: () => this.keepAttribute(null, this.CONSUME(t.NameToken), null) },
      { ALT: () => this.keepAttribute(this.CONSUME(t.IsToken), this.CONSUME2(t.NameToken), null) },
      { ALT: () => this.keepAttribute(this.CONSUME(t.AsToken), this.CONSUME3(t.NameToken), null) },
      { ALT: () => this.keepAttribute(this.CONSUME(t.AcidityToken), undefined, this.SUBRULE(this.measure)) },
      {
        ALT: () => {
          const measured = this.SUBRULE2(this.measure);
          this.keepAttribute(null, this.OPTION(() => this.CONSUME4(t.NameToken)) as IToken | undefined, measured);
        },
      },
    ];
    this.OR({ DEF: this.#attributes, ERR_MSG: 'an attribute such as `35 % fat`' });
  });

  private keepAttribute(word: IToken | null, name: IToken | undefined, measured: Measured | null | undefined): void {
    if (!name && measured?.base === undefined) return;
    const kind: RawAttribute['word'] =
      word === null ? null : word.tokenType === t.IsToken ? 'is' : word.tokenType === t.AsToken ? 'as' : 'pH';
    const start = word?.startOffset ?? measured?.start ?? name?.startOffset ?? 0;
    this.draft.attributes.push({
      word: kind,
      name: name?.payload ?? null,
      measured: measured ?? null,
      start,
      end: this.lastEnd(),
    });
  }

  /** `component NAME`, `basis NAME`, `phase WORD`. */
  nameLine = this.RULE('nameLine', (): void => {
    this.draft.name = this.CONSUME(t.NameToken).payload;
    this.OPTION(() => this.keepGuard(this.SUBRULE(this.guard)));
  });

  /** `tagged WORD, …`, `allergen WORD, …`. */
  namesLine = this.RULE('namesLine', (): void => {
    this.draft.names = this.SUBRULE(this.names) ?? [];
  });

  freeLine = this.RULE('freeLine', (): void => {
    this.CONSUME(t.FromToken);
    this.draft.names = this.SUBRULE(this.names) ?? [];
  });

  gelatinLine = this.RULE('gelatinLine', (): void => {
    this.CONSUME(t.ByToken);
    this.draft.name = this.CONSUME(t.NameToken).payload;
  });

  choiceLine = this.RULE('choiceLine', (): void => {
    this.draft.name = this.CONSUME(t.NameToken).payload;
    this.CONSUME(t.ColonToken);
    this.draft.names = this.SUBRULE(this.names) ?? [];
  });

  makesLine = this.RULE('makesLine', (): void => {
    this.draft.yield = this.SUBRULE(this.yieldRule) ?? null;
    this.OPTION(() => this.keepGuard(this.SUBRULE(this.guard)));
  });

  /** `loss 5 %`, `water 17 %`, `density 1.42 g/ml`. */
  measureLine = this.RULE('measureLine', (): void => {
    this.draft.measured = this.SUBRULE(this.measure) ?? null;
    this.OPTION(() => this.keepGuard(this.SUBRULE(this.guard)));
  });

  servedLine = this.RULE('servedLine', (): void => {
    this.CONSUME(t.AtToken);
    this.draft.measured = this.SUBRULE(this.measure) ?? null;
    this.OPTION(() => this.keepGuard(this.SUBRULE(this.guard)));
  });

  keepsLine = this.RULE('keepsLine', (): void => {
    this.draft.measured = this.SUBRULE(this.measure) ?? null;
    this.OPTION(() => {
      this.CONSUME(t.AtToken);
      const measured = this.SUBRULE2(this.measure);
      if (measured) this.draft.more.push({ measured, word: null });
    });
    this.OPTION2(() => this.keepGuard(this.SUBRULE(this.guard)));
  });

  /** `saucepan 3 l, 20 cm wide`. */
  equipmentLine = this.RULE('equipmentLine', (): void => {
    this.draft.name = this.CONSUME(t.NameToken).payload;
    this.AT_LEAST_ONE_SEP({
      SEP: t.CommaToken,
      ERR_MSG: 'a size or a temperature, such as 3 l, 20 cm wide or 3 °C',
      DEF: () => {
        const measured = this.SUBRULE(this.measure);
        const word = this.OPTION(() => this.CONSUME2(t.NameToken)) as Token | undefined;
        if (measured) this.draft.more.push({ measured, word: word?.payload ?? null });
      },
    });
  });

  /** `5.20 per kg cream`. */
  priceLine = this.RULE('priceLine', (): void => {
    this.draft.measured = this.SUBRULE(this.measure) ?? null;
    this.CONSUME(t.PerToken);
    this.draft.unit = this.CONSUME(t.UnitToken).payload;
    this.draft.name = this.CONSUME(t.NameToken).payload;
  });

  /** `take NAME [as NAME], … from "path"`. */
  takeLine = this.RULE('takeLine', (): void => {
    this.AT_LEAST_ONE_SEP({
      SEP: t.CommaToken,
      ERR_MSG: 'the name of what is taken',
      DEF: () => {
        const name = this.CONSUME(t.NameToken);
        const as = this.OPTION(() => {
          this.CONSUME(t.AsToken);
          return this.CONSUME2(t.NameToken);
        }) as Token | undefined;
        this.draft.taken.push({ name: name.payload, as: as?.payload ?? null });
      },
    });
    this.CONSUME(t.FromToken);
    this.draft.second = this.CONSUME3(t.NameToken).payload;
  });

  /** `compare "old" with "new"`. */
  compareLine = this.RULE('compareLine', (): void => {
    this.draft.name = this.CONSUME(t.NameToken).payload;
    this.CONSUME(t.WithToken);
    this.draft.second = this.CONSUME2(t.NameToken).payload;
  });

  /** `ENTRY {, ENTRY} [ready 18:30]`. */
  requestLine = this.RULE('requestLine', (): void => {
    this.SUBRULE(this.entry);
    this.MANY(() => {
      this.CONSUME(t.CommaToken);
      this.SUBRULE2(this.entry);
    });
    this.OPTION(() => {
      this.CONSUME(t.ReadyToken);
      this.draft.clock = this.CONSUME(t.ClockToken).payload;
    });
  });

  /** `"path" [for YIELD] [with VALUE {, VALUE}]`; a quoted text after a comma is the next entry, not a value. */
  entry = this.RULE('entry', (): void => {
    const path = this.OPTION(() => this.CONSUME(t.NameToken)) as Token | undefined;
    const start = path?.startOffset ?? this.LA(1).startOffset;
    const amount = this.OPTION2(() => {
      this.CONSUME(t.ForToken);
      return this.SUBRULE(this.yieldRule);
    });
    const values: Name[] = [];
    this.OPTION3(() => {
      this.CONSUME(t.WithToken);
      values.push(this.CONSUME2(t.NameToken).payload);
      this.MANY({
        GATE: () => this.LA(2).tokenType === t.NameToken && !(this.LA(2).payload as Name).quoted,
        DEF: () => {
          this.CONSUME(t.CommaToken);
          values.push(this.CONSUME3(t.NameToken).payload);
        },
      });
    });
    this.draft.entries.push({ path: path?.payload ?? null, yield: amount ?? null, values, start, end: endOf(this.LA(0)) });
  });
}
