/** The kinds of token a line is made of. Every token carries the finished tree node as its payload. */

import { createToken, type IToken, type TokenType } from 'chevrotain';
import { type Connective, connectives } from '../vocabulary/connectives.ts';

/** A token; `endOffset` is exclusive here, unlike Chevrotain's own lexer's. */
export interface Token extends IToken {
  endOffset: number;
}

/** A run of words, or quoted text. Payload: `Name`. */
export const NameToken = kind('Name', 'a name');
/** A number without a unit. Payload: `Numbers`. */
export const NumberToken = kind('Number', 'a number');
/** A mass, a volume or pieces. Payload: `Quantity`. */
export const QuantityToken = kind('Quantity', 'a quantity such as 240 g');
/** Payload: `Numbers`. */
export const PercentToken = kind('Percent', 'a percentage such as 35 %');
/** Payload: `Reading`. */
export const TemperatureToken = kind('Temperature', 'a temperature such as 80 °C');
/** Payload: `Duration`. */
export const DurationToken = kind('Duration', 'a time such as 10 min');
/** Payload: `Length`. */
export const LengthToken = kind('Length', 'a length such as 3 mm');
/** `16 x 3 cm`. Payload: `Dimensions`. */
export const DimensionsToken = kind('Dimensions', 'lengths such as 16 x 3 cm');
/** Payload: `Brix`. */
export const BrixToken = kind('Brix', 'a sugar reading such as 65 brix');
/** Payload: `Numbers`. */
export const BloomToken = kind('Bloom', 'a strength such as 200 bloom');
/** Grams per millilitre. Payload: `Numbers`. */
export const DensityToken = kind('Density', 'a density such as 1.42 g/ml');
/** `18:30`. */
export const ClockToken = kind('Clock', 'a time of day such as 18:30');
/** A unit alone, after `per`. Payload: its row. */
export const UnitToken = kind('Unit', 'a unit such as kg');

export const CommaToken = kind('Comma', 'a comma');
export const ColonToken = kind('Colon', 'a colon');
export const OpenToken = kind('Open', '`(`');
export const CloseToken = kind('Close', '`)`');
/** `rest`, where `of` follows. */
export const RestToken = kind('Rest', '`rest of`');
/** `is` in an ingredient line. */
export const IsToken = kind('Is', '`is`');
/** `pH` in an ingredient line. */
export const AcidityToken = kind('Acidity', '`pH`');
/** Anything the notation has no use for. */
export const StrayToken = kind('Stray', 'something else');

const joining = new Map<string, TokenType>(connectives.map((word) => [word, kind(word, `\`${word}\``)]));

/** The token type of a connective word. */
export function connectiveToken(word: Connective): TokenType {
  return joining.get(word)!;
}

/** The token type of a lower-case word, where it is a connective. */
export function connectiveAt(word: string): TokenType | undefined {
  return joining.get(word);
}

export const AndToken = connectiveToken('and');
export const AsToken = connectiveToken('as');
export const AtToken = connectiveToken('at');
export const ByToken = connectiveToken('by');
export const ForToken = connectiveToken('for');
export const FromToken = connectiveToken('from');
export const InToken = connectiveToken('in');
export const IntoToken = connectiveToken('into');
export const LosingToken = connectiveToken('losing');
export const OfToken = connectiveToken('of');
export const OnToken = connectiveToken('on');
export const OrToken = connectiveToken('or');
export const OverToken = connectiveToken('over');
export const PerToken = connectiveToken('per');
export const ReadyToken = connectiveToken('ready');
export const ToToken = connectiveToken('to');
export const UnlessToken = connectiveToken('unless');
export const UntilToken = connectiveToken('until');
export const UsingToken = connectiveToken('using');
export const WhenToken = connectiveToken('when');
export const WhileToken = connectiveToken('while');
export const WithToken = connectiveToken('with');

/** Every token type, for the parser. */
export const tokenTypes: TokenType[] = [
  NameToken,
  NumberToken,
  QuantityToken,
  PercentToken,
  TemperatureToken,
  DurationToken,
  LengthToken,
  DimensionsToken,
  BrixToken,
  BloomToken,
  DensityToken,
  ClockToken,
  UnitToken,
  CommaToken,
  ColonToken,
  OpenToken,
  CloseToken,
  RestToken,
  IsToken,
  AcidityToken,
  StrayToken,
  ...joining.values(),
];

function kind(name: string, label: string): TokenType {
  return createToken({ name, label });
}
