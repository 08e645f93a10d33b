/** The rules that several kinds of line share: measures with their overrides, names, guards, yields, operands. */

import { EmbeddedActionsParser, type IToken, type TokenType } from 'chevrotain';
import type { Measure } from '../scanner/payloads.ts';
import { replaceFix } from '../scanner/scan.ts';
import * as t from '../scanner/tokens.ts';
import { type Token, tokenTypes } from '../scanner/tokens.ts';
import type { Guard, LineFix, Name, Override, Problem } from '../tree.ts';
import { type Draft, emptyDraft, type Measured, type RawOperand, type RawYield } from './drafts.ts';
import { expectations } from './expectations.ts';
import { oneTokenLookahead } from './lookahead.ts';

export type Alternatives = { ALT: () => unknown }[];

export interface ParserOptions {
  /** Goes on past an error in a line. */
  readonly recovers?: boolean;
  /** Has Chevrotain check the rules, with its own lookahead; for a test. */
  readonly validated?: boolean;
}

export class ValueParser extends EmbeddedActionsParser {
  /** What the line under way has given so far; what was read before an error stays. */
  readonly draft: Draft = emptyDraft();
  problem: Problem | null = null;
  /** An error was found, and stands first in `errors`. */
  failed = false;
  /** Where `operands` puts what it reads. */
  protected operandsRead: RawOperand[] = [];

  constructor({ recovers = false, validated = false }: ParserOptions) {
    super(tokenTypes, {
      recoveryEnabled: recovers,
      maxLookahead: 1,
      nodeLocationTracking: 'none',
      errorMessageProvider: expectations(() => {
        this.failed = true;
      }),
      skipValidations: !validated,
      ...(validated ? {} : { lookaheadStrategy: oneTokenLookahead() }),
    });
  }

  /** A token made up to go on would have no place in the line. */
  override canTokenTypeBeInsertedInRecovery(): boolean {
    return false;
  }

  #measures: Alternatives | undefined;

  /** A number with its unit: `MEASURE [(VALUE MEASURE, …)]`. */
  measure = this.RULE('measure', (): Measured => {
    this.#measures ??= measureTypes.map((type) => ({ ALT: () => this.CONSUME(type) }));
    const token = this.OR({ DEF: this.#measures, ERR_MSG: 'a number with its unit' }) as Token;
    const overrides = (this.OPTION(() => this.SUBRULE(this.overrides)) as Override<Measure>[] | undefined) ?? none;
    return { base: token.payload, overrides, start: token.startOffset, end: this.lastEnd() };
  });

  #overrideMeasures: Alternatives | undefined;

  /** `(mould 11 g, cut 13 g)`. */
  overrides = this.RULE(
    'overrides',
    (): Override<Measure>[] => {
      const overrides: Override<Measure>[] = [];
      this.CONSUME(t.OpenToken);
      this.AT_LEAST_ONE_SEP({
        SEP: t.CommaToken,
        ERR_MSG: 'a choice value and its quantity, as in `(mould 11 g)`',
        DEF: () => {
          const value = this.CONSUME(t.NameToken);
          this.#overrideMeasures ??= measureTypes.map((type) => ({ ALT: () => this.CONSUME2(type) }));
          const then = this.OR({ DEF: this.#overrideMeasures, ERR_MSG: 'the value for this choice' }) as Token;
          // biome-ignore lint/suspicious/noThenProperty: the tree's word for an override's value; nothing awaits it
          overrides.push({ value: value.payload, then: then.payload, start: value.startOffset, end: endOf(then) });
        },
      });
      this.CONSUME(t.CloseToken);
      return overrides;
    },
    { recoveryValueFunc: () => [] },
  );

  /** A name, or several with commas between. */
  names = this.RULE(
    'names',
    (): Name[] => {
      const names: Name[] = [];
      names.push(this.CONSUME(t.NameToken).payload);
      this.MANY(() => {
        this.OR([{ ALT: () => this.CONSUME(t.CommaToken) }, { ALT: () => this.CONSUME(t.AndToken) }]);
        names.push(this.CONSUME2(t.NameToken).payload);
      });
      return names;
    },
    { recoveryValueFunc: () => [] },
  );

  #guardWords: Alternatives | undefined;
  #guardCommas: Alternatives | undefined;

  /** `when VALUE, VALUE` or `unless …`. */
  guard = this.RULE(
    'guard',
    (): Guard | null => {
      this.#guardWords ??= [{ ALT: () => this.CONSUME(t.WhenToken) }, { ALT: () => this.CONSUME(t.UnlessToken) }];
      const word = this.OR(this.#guardWords) as Token;
      const values: Name[] = [this.CONSUME(t.NameToken).payload];
      this.#guardCommas ??= [
        { ALT: () => this.CONSUME(t.CommaToken) },
        { ALT: () => this.refuseGuardWord(this.CONSUME(t.AndToken)) },
        { ALT: () => this.refuseGuardWord(this.CONSUME(t.OrToken)) },
      ];
      this.MANY(() => {
        this.OR2(this.#guardCommas!);
        values.push(this.CONSUME2(t.NameToken).payload);
      });
      return { word: word.tokenType === t.WhenToken ? 'when' : 'unless', values, start: word.startOffset, end: this.lastEnd() };
    },
    { recoveryValueFunc: () => null },
  );

  /** `1.2 kg`, `40 macarons`, `12 glasses of 100 ml`. */
  yieldRule = this.RULE(
    'yieldRule',
    (): RawYield | null => {
      const amount = this.SUBRULE(this.measure);
      const noun = this.OPTION(() => this.CONSUME(t.NameToken)) as Token | undefined;
      const size = this.OPTION2(() => {
        this.CONSUME(t.OfToken);
        return this.SUBRULE2(this.measure);
      }) as Measured | undefined;
      if (amount?.base === undefined) return null;
      const varied = amount.overrides.length > 0 ? amount : size !== undefined && size.overrides.length > 0 ? size : null;
      const { base, start } = amount;
      return { amount: base, noun: noun?.payload ?? null, size: size?.base ?? null, varied, start, end: this.lastEnd() };
    },
    { recoveryValueFunc: () => null },
  );

  #operandStarts: Alternatives | undefined;

  /** `NAME`, `60 g of NAME`, `half of NAME`, `1/3 of NAME`, `rest of NAME`, or a bare measure. */
  operand = this.RULE(
    'operand',
    (): RawOperand | null => {
      this.#operandStarts ??= [
        {
          ALT: () => {
            const first = this.CONSUME(t.NameToken);
            const name = this.OPTION(() => {
              this.CONSUME(t.OfToken);
              return this.CONSUME2(t.NameToken);
            }) as Token | undefined;
            const part = name === undefined ? null : first.payload;
            return this.rawOperand(first, part, (name ?? first).payload);
          },
        },
        {
          ALT: () => {
            const rest = this.CONSUME(t.RestToken);
            this.CONSUME2(t.OfToken);
            return this.rawOperand(rest, 'rest', this.CONSUME3(t.NameToken).payload);
          },
        },
        {
          ALT: () => {
            const measured = this.SUBRULE(this.measure);
            const before = this.OPTION2(() => this.CONSUME4(t.NameToken)) as Token | undefined;
            const after = this.OPTION3(() => {
              this.CONSUME3(t.OfToken);
              return this.CONSUME5(t.NameToken);
            }) as Token | undefined;
            return this.measuredOperand(measured, before?.payload ?? null, after?.payload ?? null);
          },
        },
      ];
      return this.OR({ DEF: this.#operandStarts, ERR_MSG: 'a name or a part of one, such as `60 g of cream`' }) as RawOperand;
    },
    { recoveryValueFunc: () => null },
  );

  #operandCommas: Alternatives | undefined;

  /** Operands with commas or `and` between, kept one by one: an error in one does not lose the ones before. */
  operands = this.RULE('operands', (): void => {
    this.keepOperand(this.SUBRULE(this.operand));
    this.#operandCommas ??= [{ ALT: () => this.CONSUME(t.CommaToken) }, { ALT: () => this.CONSUME(t.AndToken) }];
    this.MANY(() => {
      this.OR(this.#operandCommas!);
      this.keepOperand(this.SUBRULE2(this.operand));
    });
  });

  private keepOperand(operand: RawOperand | null | undefined): void {
    if (operand?.start !== undefined) this.operandsRead.push(operand);
  }

  /** `when mould or cut`: values stand after commas, whatever joins them. */
  private refuseGuardWord(token: IToken): void {
    const start = endOf(this.LA(-1));
    const end = this.LA(1).startOffset;
    const fixes = Number.isNaN(end) ? [] : [replaceFix('Write a comma', { start, end }, ', ')];
    this.complain(token, 'Values of a choice stand after commas: `when mould, cut`.', fixes);
  }

  /** Keeps the first thing found wrong with the line. */
  protected complain(token: IToken, message: string, fixes: readonly LineFix[]): void {
    this.problem ??= { code: 'syntax', start: token.startOffset, end: endOf(token), message, fixes };
  }

  /** Where the token read last ends. */
  protected lastEnd(): number {
    return endOf(this.LA(0));
  }

  private rawOperand(first: IToken, part: RawOperand['part'], name: Name): RawOperand {
    return { measured: null, part, name, unit: null, ofMissing: false, start: first.startOffset, end: this.lastEnd() };
  }

  private measuredOperand(measured: Measured | undefined, before: Name | null, after: Name | null): RawOperand | null {
    if (measured?.base === undefined) return null;
    const unit = after === null ? null : before;
    const ofMissing = after === null && before !== null;
    return { measured, part: null, name: after ?? before, unit, ofMissing, start: measured.start, end: this.lastEnd() };
  }
}

const none: readonly never[] = [];

const measureTypes: readonly TokenType[] = [
  t.QuantityToken,
  t.TemperatureToken,
  t.DurationToken,
  t.NumberToken,
  t.PercentToken,
  t.LengthToken,
  t.DimensionsToken,
  t.BrixToken,
  t.BloomToken,
  t.DensityToken,
  t.ClockToken,
];

/** The exclusive end that the scanner gave a token. */
export function endOf(token: IToken): number {
  return token.endOffset ?? 0;
}
