/** JSON as Chevrotain's own examples read it: a lexer, a grammar, a concrete syntax tree. */
import { CstParser, createToken, Lexer } from 'chevrotain';

const token = (name: string, pattern: RegExp) => createToken({ name, pattern });
const t = {
  open: token('LCurly', /{/),
  close: token('RCurly', /}/),
  openList: token('LSquare', /\[/),
  closeList: token('RSquare', /]/),
  comma: token('Comma', /,/),
  colon: token('Colon', /:/),
  string: token('StringLiteral', /"(?:[^\\"]|\\(?:[bfnrtv"\\/]|u[0-9a-fA-F]{4}))*"/),
  number: token('NumberLiteral', /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/),
  yes: token('True', /true/),
  no: token('False', /false/),
  nothing: token('Null', /null/),
  space: createToken({ name: 'WhiteSpace', pattern: /[ \t\n\r]+/, group: Lexer.SKIPPED }),
};
const tokens = Object.values(t);
const lexer = new Lexer(tokens);

class JsonParser extends CstParser {
  constructor() {
    super(tokens);
    this.performSelfAnalysis();
  }

  readonly value: () => unknown = this.RULE('value', () => {
    this.OR([
      { ALT: () => this.CONSUME(t.string) },
      { ALT: () => this.CONSUME(t.number) },
      { ALT: () => this.SUBRULE(this.object) },
      { ALT: () => this.SUBRULE(this.list) },
      { ALT: () => this.CONSUME(t.yes) },
      { ALT: () => this.CONSUME(t.no) },
      { ALT: () => this.CONSUME(t.nothing) },
    ]);
  });

  readonly object = this.RULE('object', () => {
    this.CONSUME(t.open);
    this.MANY_SEP({
      SEP: t.comma,
      DEF: () => {
        this.CONSUME(t.string);
        this.CONSUME(t.colon);
        this.SUBRULE(this.value as never);
      },
    });
    this.CONSUME(t.close);
  });

  readonly list = this.RULE('list', () => {
    this.CONSUME(t.openList);
    this.MANY_SEP({ SEP: t.comma, DEF: () => this.SUBRULE(this.value as never) });
    this.CONSUME(t.closeList);
  });
}

const parser = new JsonParser();

export function parseJson(text: string): unknown {
  parser.input = lexer.tokenize(text).tokens;
  const tree = parser.value();
  if (parser.errors.length > 0) throw new Error(parser.errors[0]?.message);
  return tree;
}
