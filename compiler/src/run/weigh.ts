/** Weighing: the grams of a block's ingredient lines under one selection, percentages resolved. */
import { add, type Interval, interval, middle, times } from '../quantities/interval.ts';
import { holds, pick } from '../resolve/choices.ts';
import type { Amount, Component, Selection, SourceLine } from '../resolve/model.ts';

export interface Weighing {
  readonly line: SourceLine;
  readonly amount: Amount;
  readonly grams: Interval;
}

/**
 * Grams of each line that is there. `count` is what `makes` counts, for `each`. Where no line has grams, percentages are taken
 * of 100 g and `sized` is false: the caller scales the whole.
 */
export function weigh(component: Component, selection: Selection, count: number): { lines: readonly Weighing[]; sized: boolean } {
  const there = component.lines
    .filter((line) => holds(line.condition, selection))
    .map((line) => ({ line, amount: pick(line.amount, selection) }))
    .filter(({ amount }) => amount.measure === 'some' || amount.measure === 'unknown' || amount.value.high > 0);
  const written = ({ amount }: { amount: Amount }): Interval => times(amount.value, amount.each ? count : 1);
  const inGrams = there.filter(({ amount }) => amount.measure === 'grams');
  const inPercent = there.filter(({ amount }) => amount.measure === 'percent');
  const grams = inGrams.map(written).reduce(add, interval(0));
  let hundred: number;
  let sized = true;
  if (inPercent.length === 0) hundred = 0;
  else if (component.basis.kind === 'line') {
    const { key } = component.basis;
    const basisLine = there.find(({ line }) => line.key === key);
    const basisGrams = basisLine && basisLine.amount.measure === 'grams' ? middle(written(basisLine)) : 0;
    sized = basisGrams > 0;
    hundred = sized ? basisGrams : 100;
  } else {
    const percent = inPercent.reduce((sum, { amount }) => sum + middle(amount.value), 0);
    sized = middle(grams) > 0;
    // total = Σg / (1 − Σ%/100); at 100 % and more nothing is left for the grams, and `percent-total` says so.
    hundred = sized && percent < 100 ? middle(grams) / (1 - percent / 100) : 100;
  }
  const lines = there.map(({ line, amount }) => ({
    line,
    amount,
    grams:
      amount.measure === 'grams'
        ? written({ amount })
        : amount.measure === 'percent'
          ? times(amount.value, hundred / 100)
          : interval(0),
  }));
  return { lines, sized };
}
