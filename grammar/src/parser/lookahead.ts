/**
 * One token of lookahead, looked up in a table: what Chevrotain's own strategy computes for any number of tokens takes
 * half of the parser's start, and one is all this grammar needs (a test holds it to Chevrotain's check for ambiguity).
 */

import {
  Alternation,
  type ILookaheadStrategy,
  type IProduction,
  type IToken,
  NonTerminal,
  Option,
  Repetition,
  RepetitionMandatory,
  RepetitionMandatoryWithSeparator,
  RepetitionWithSeparator,
  type Rule,
  Terminal,
} from 'chevrotain';

type Body = { readonly definition: IProduction[] };
type Looking = { LA_FAST(howMuch: number): IToken };

export function oneTokenLookahead(): ILookaheadStrategy {
  const firsts = new Map<Rule, ReadonlySet<number>>();
  return {
    validate: () => [],
    buildLookaheadForAlternation({ rule, prodOccurrence }) {
      const choice = find(rule, (each) => each instanceof Alternation && each.idx === prodOccurrence);
      const table: (number | undefined)[] = [];
      for (const [index, alternative] of choice.definition.entries()) {
        for (const token of firstOf([alternative], firsts)) table[token] ??= index;
      }
      return function (this: unknown) {
        return table[(this as Looking).LA_FAST(1).tokenTypeIdx];
      };
    },
    buildLookaheadForOptional({ rule, prodOccurrence, prodType }) {
      const Kind = optionals[prodType];
      const optional = find(rule, (each) => each instanceof Kind && each.idx === prodOccurrence);
      const table: boolean[] = [];
      for (const token of firstOf(optional.definition, firsts)) table[token] = true;
      return function (this: unknown) {
        return table[(this as Looking).LA_FAST(1).tokenTypeIdx] === true;
      };
    },
  };
}

const optionals = { Option, Repetition, RepetitionMandatory, RepetitionMandatoryWithSeparator, RepetitionWithSeparator };

/** The production of a rule that a test picks out; the parser asks only for what is there. */
function find(body: Body, matches: (production: IProduction) => boolean): Body {
  const queue: IProduction[] = [...body.definition];
  for (const production of queue) {
    if (matches(production)) return production as unknown as Body;
    if (!(production instanceof NonTerminal) && 'definition' in production)
      queue.push(...(production as unknown as Body).definition);
  }
  throw new Error('Asked for a production that the rule does not hold.');
}

/** The token types a sequence can start with. */
function firstOf(sequence: readonly IProduction[], firsts: Map<Rule, ReadonlySet<number>>): Set<number> {
  const found = new Set<number>();
  for (const production of sequence) {
    for (const token of firstOfOne(production, firsts)) found.add(token);
    if (!canBeEmpty(production)) break;
  }
  return found;
}

function firstOfOne(production: IProduction, firsts: Map<Rule, ReadonlySet<number>>): Iterable<number> {
  if (production instanceof Terminal) return [production.terminalType.tokenTypeIdx!];
  if (production instanceof NonTerminal) return firstOfRule(production.referencedRule, firsts);
  const { definition } = production as unknown as Body;
  if (production instanceof Alternation) return definition.flatMap((each) => [...firstOf([each], firsts)]);
  return firstOf(definition, firsts);
}

function firstOfRule(rule: Rule, firsts: Map<Rule, ReadonlySet<number>>): ReadonlySet<number> {
  let known = firsts.get(rule);
  if (known === undefined) {
    known = firstOf(rule.definition, firsts);
    firsts.set(rule, known);
  }
  return known;
}

function canBeEmpty(production: IProduction): boolean {
  if (production instanceof Terminal) return false;
  if (production instanceof NonTerminal) return production.referencedRule.definition.every(canBeEmpty);
  if (production instanceof Option || production instanceof Repetition || production instanceof RepetitionWithSeparator)
    return true;
  const { definition } = production as unknown as Body;
  if (production instanceof Alternation) return definition.some(canBeEmpty);
  return definition.every(canBeEmpty);
}
