/** The temperature line in words: one row for every step that changes or fixes a temperature. */
import type { Measures } from './measures.ts';
import type { Move, TemperatureLine } from './model.ts';

export interface Reading {
  readonly step: number;
  readonly text: string;
  /** Time, start, end (for a fold: after each addition), written window. */
  readonly cells: readonly [string, string, string, string];
}

export function readingsOf(line: TemperatureLine, measures: Measures): readonly Reading[] {
  const moves = line.strands.flatMap(({ moves: own }) => own).filter(tells);
  return moves
    .sort((a, b) => a.step - b.step)
    .map(({ step, text, start, end, window, additions, seconds, estimated }) => ({
      step,
      text,
      cells: [
        seconds === null
          ? ''
          : estimated
            ? `≈ ${measures.duration({ low: rounded(seconds[0]), high: rounded(seconds[1]) })}`
            : measures.duration({ low: seconds[0], high: seconds[1] }),
        reading(start, measures),
        additions.length > 1 ? additions.map((celsius) => reading(celsius, measures)).join(' → ') : reading(end, measures),
        window ? reading(window, measures) : '',
      ],
    }));
}

/** It fixes a reading, folds, or changes the temperature by more than a thermometer can miss. */
function tells({ start, end, window, additions }: Move): boolean {
  if (window !== null || additions.length > 1) return true;
  return start !== null && end !== null && Math.abs(start[0] + start[1] - end[0] - end[1]) > 4;
}

const reading = (pair: readonly [number, number] | null, measures: Measures): string =>
  pair ? measures.degrees(Math.round(pair[0]), Math.round(pair[1])) : '–';

/** Estimated times as a kitchen says them: 10 s below two minutes, the minute up to twenty, five up to an hour, else a quarter of an hour. */
function rounded(seconds: number): number {
  const step = seconds < 120 ? 10 : seconds < 1200 ? 60 : seconds < 3600 ? 300 : 900;
  return Math.round(seconds / step) * step;
}
