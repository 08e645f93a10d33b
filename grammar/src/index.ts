/** The notation's grammar: text to tree and back, and the vocabulary. */

export { createCache, type LineCache } from './cache.ts';
export { format, formatLines } from './format/format.ts';
export { limits } from './limits.ts';
export { contextAt, contextOf, type LinesChange, parse, reparse, splitLines } from './parse.ts';
export { parseLine } from './parser/line.ts';
export { type TextMateGrammar, textMateGrammar } from './textmate.ts';
export * from './tree.ts';
export * from './vocabulary/index.ts';
