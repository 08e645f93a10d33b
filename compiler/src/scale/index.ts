/** Scaling's door: factors from yields, moulds, limits and whole eggs; rounding; vessels that are too small. */
export { amountOf, type YieldAmount } from './amounts.ts';
export { type Batches, batchesOf } from './batches.ts';
export { factorFor, type Made, type Scaling, type Unscalable } from './factor.ts';
export { type Limited, limitOf } from './limit.ts';
export { type WholePieces, wholePieces } from './pieces.ts';
export { notableRounding, roundingError, scaleGrams, scaleStep } from './rounding.ts';
export { parseLimit, parseTarget } from './target.ts';
