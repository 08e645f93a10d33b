/** The rules of a step: operands, clauses in any order, a guard. */

import type { IToken } from 'chevrotain';
import type { Token } from '../scanner/tokens.ts';
import * as t from '../scanner/tokens.ts';
import type { Guard, Name, Span } from '../tree.ts';
import type { Measured, RawClause, RawClauseWord, RawCounted, RawSign, RawYield } from './drafts.ts';
import { type Alternatives, endOf, ValueParser } from './value-parser.ts';

export class StepParser extends ValueParser {
  #stepParts: Alternatives | undefined;

  /** What follows a verb. The guard is one of the parts, so that recovery can go on after anything it cannot read. */
  step = this.RULE('step', (): void => {
    this.OPTION(() => {
      this.operandsRead = this.draft.operands;
      this.SUBRULE(this.operands);
    });
    this.#stepParts ??= [
      { ALT: () => this.keepClause(this.SUBRULE(this.clause)) },
      { ALT: () => this.keepGuard(this.SUBRULE(this.guard)) },
    ];
    this.MANY(() => this.OR(this.#stepParts!));
  });

  #clauses: Alternatives | undefined;

  clause = this.RULE('clause', (): RawClause | null => {
    this.#clauses ??= [
      { ALT: () => this.valued('to', this.CONSUME(t.ToToken), this.SUBRULE1(this.value)) },
      { ALT: () => this.valued('at', this.CONSUME(t.AtToken), this.SUBRULE2(this.value)) },
      { ALT: () => this.valued('for', this.CONSUME(t.ForToken), this.SUBRULE3(this.value)) },
      { ALT: () => this.valued('losing', this.CONSUME(t.LosingToken), this.SUBRULE4(this.value)) },
      { ALT: () => this.valued('over', this.CONSUME(t.OverToken), this.SUBRULE5(this.value)) },
      { ALT: () => this.valued('using', this.CONSUME(t.UsingToken), this.SUBRULE6(this.value)) },
      { ALT: () => this.valued('as', this.CONSUME(t.AsToken), this.SUBRULE7(this.value)) },
      { ALT: () => this.valued('while', this.CONSUME(t.WhileToken), this.SUBRULE8(this.value)) },
      { ALT: () => this.valued('on', this.CONSUME(t.OnToken), this.SUBRULE9(this.value)) },
      { ALT: () => this.signed(this.CONSUME(t.UntilToken), this.SUBRULE(this.sign)) },
      { ALT: () => this.intoTarget(this.CONSUME(t.IntoToken)) },
      { ALT: () => this.inTarget(this.CONSUME(t.InToken)) },
      { ALT: () => this.withTarget(this.CONSUME(t.WithToken)) },
      { ALT: () => this.bare(this.SUBRULE(this.measure)) },
    ];
    return this.OR({ DEF: this.#clauses, ERR_MSG: 'a clause such as `to`, `for` or `until`' }) as RawClause | null;
  });

  #values: Alternatives | undefined;

  /** What most clause words are followed by: a name or a measure; which of them fits is for the clause to say. */
  value = this.RULE('value', (): Name | Measured => {
    this.#values ??= [{ ALT: () => this.CONSUME(t.NameToken).payload }, { ALT: () => this.SUBRULE(this.measure) }];
    return this.OR({ DEF: this.#values, ERR_MSG: 'a name or a number with its unit' }) as Name | Measured;
  });

  #signParts: Alternatives | undefined;

  /** The words of `until`; connectives among them are remembered, since they ask for quotes. */
  sign = this.RULE('sign', (): RawSign => {
    const start = this.LA(1).startOffset;
    const parts: (IToken | Measured)[] = [];
    this.#signParts ??= [
      { ALT: () => this.SUBRULE(this.measure) },
      ...signTypes.map((type) => ({ ALT: () => this.CONSUME(type) })),
    ];
    this.AT_LEAST_ONE({
      DEF: () => {
        const part = this.OR(this.#signParts!) as IToken | Measured | undefined;
        if (part !== undefined) parts.push(part);
      },
      ERR_MSG: 'what the cook sees, such as `smooth`',
    });
    return signOf(parts, { start, end: this.lastEnd() });
  });

  /** `4 additions: whisk, spatula`, `2 turns: double, single`; `60 g of butter` is read to be refused. */
  counted = this.RULE('counted', (): RawCounted | null => {
    const measured = this.SUBRULE(this.measure);
    const noun = this.OPTION(() => this.CONSUME(t.NameToken)) as Token | undefined;
    const of = this.OPTION2(() => {
      this.CONSUME(t.OfToken);
      return this.CONSUME2(t.NameToken);
    }) as Token | undefined;
    const items = this.OPTION3(() => {
      this.CONSUME(t.ColonToken);
      return this.SUBRULE(this.names);
    }) as Name[] | undefined;
    if (measured?.base === undefined) return null;
    const span = { start: measured.start, end: this.lastEnd() };
    return { measured, noun: noun?.payload ?? null, of: of?.payload ?? null, items: items ?? [], ...span };
  });

  #intoTargets: Alternatives | undefined;

  private intoTarget(word: IToken): RawClause {
    const clause = this.raw('into', word);
    this.#intoTargets ??= [{ ALT: () => this.CONSUME(t.NameToken).payload }, { ALT: () => this.SUBRULE(this.yieldRule) }];
    const target = this.OR1({ DEF: this.#intoTargets, ERR_MSG: 'a name' }) as Name | RawYield | null;
    if (target !== null && target !== undefined && 'amount' in target) clause.yield = target;
    else clause.name = target;
    clause.end = this.lastEnd();
    return clause;
  }

  #inTargets: Alternatives | undefined;

  private inTarget(word: IToken): RawClause {
    const clause = this.raw('in', word);
    this.#inTargets ??= [{ ALT: () => this.CONSUME2(t.NameToken).payload }, { ALT: () => this.SUBRULE(this.counted) }];
    const target = this.OR2({ DEF: this.#inTargets, ERR_MSG: 'a name or a number of additions' }) as
      | Name
      | RawCounted
      | null
      | undefined;
    if (target !== null && target !== undefined && 'items' in target) clause.counted = target;
    else clause.name = target ?? null;
    clause.end = this.lastEnd();
    return clause;
  }

  private withTarget(word: IToken): RawClause | null {
    const clause = this.raw('with', word);
    this.operandsRead = [];
    this.SUBRULE(this.operands);
    clause.operands = this.operandsRead;
    clause.end = this.lastEnd();
    return this.operandsRead.length === 0 ? null : clause;
  }

  private signed(word: IToken, sign: RawSign | undefined): RawClause | null {
    if (sign === undefined) return null;
    const clause = this.raw('until', word);
    clause.sign = sign;
    return clause;
  }

  private valued(word: RawClauseWord, token: IToken, value: Name | Measured | undefined): RawClause | null {
    if (value === undefined) return null;
    const clause = this.raw(word, token);
    if ('base' in value) clause.measured = value;
    else clause.name = value;
    return clause;
  }

  private bare(measured: Measured | undefined): RawClause | null {
    return measured?.base === undefined ? null : bareClause(measured);
  }

  /** A clause to be filled in; it ends, so far, at the token read last. */
  private raw(word: RawClauseWord, token: IToken): RawClause {
    const start = token.startOffset;
    return {
      word,
      wordSpan: { start, end: endOf(token) },
      name: null,
      measured: null,
      yield: null,
      counted: null,
      sign: null,
      operands: none,
      start,
      end: this.lastEnd(),
    };
  }

  private keepClause(clause: RawClause | null | undefined): void {
    if (!clause) return;
    if (this.draft.guard !== null) this.draft.guardInside = true;
    this.draft.clauses.push(clause);
  }

  protected keepGuard(guard: Guard | null | undefined): void {
    if (!guard) return;
    if (this.draft.guard !== null) this.draft.guardInside = true;
    this.draft.guard ??= guard;
  }
}

/** A measure that stands as a clause without its word. */
export function bareClause(measured: Measured): RawClause {
  const { start, end } = measured;
  const target = { name: null, yield: null, counted: null, sign: null, operands: none };
  return { word: 'bare', wordSpan: { start, end: start }, measured, ...target, start, end };
}

const none: readonly never[] = [];

const signTypes = [t.NameToken, t.AndToken, t.OrToken, t.OfToken, t.ByToken, t.FromToken, t.PerToken, t.RestToken];

function signOf(parts: readonly (IToken | Measured)[], span: Span): RawSign {
  const sign: RawSign = { name: null, measured: null, odd: null, ...span };
  const words = parts.filter((part): part is IToken => !('base' in part));
  if (parts.length !== 1) {
    const odd = words.find((word) => word.tokenType !== t.NameToken);
    return { ...sign, odd: odd === undefined ? span : { start: odd.startOffset, end: endOf(odd) } };
  }
  const [word] = words;
  if (word === undefined) return { ...sign, measured: parts[0] as Measured };
  return word.tokenType === t.NameToken ? { ...sign, name: word.payload } : { ...sign, odd: span };
}
