/** The vocabulary: every word the notation knows, in tables from which completion, hover and the documentation are made. */

export * from './blocks.ts';
export * from './clauses.ts';
export * from './connectives.ts';
export * from './facts.ts';
export * from './headers.ts';
export * from './lookup.ts';
export * from './names.ts';
export * from './nearest.ts';
export * from './places.ts';
export * from './snippet.ts';
export * from './states.ts';
export * from './units.ts';
export { cooksWords, type Need, usesOf, type VerbFamily, type VerbRow, verbs } from './verbs.ts';
