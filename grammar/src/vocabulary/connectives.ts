/** The words that join the parts of a line; an unquoted name never holds one. */

export const connectives = [
  'above',
  'and',
  'as',
  'at',
  'below',
  'by',
  'for',
  'from',
  'in',
  'into',
  'losing',
  'of',
  'on',
  'or',
  'over',
  'per',
  'ready',
  'to',
  'unless',
  'until',
  'using',
  'when',
  'while',
  'with',
] as const;

export type Connective = (typeof connectives)[number];
