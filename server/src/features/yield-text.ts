/** What a formula makes, in words: what is written after `makes`, and what it comes to by the run. */
import { formatGrams, isMass, makesOf } from 'nappe';
import type { Analysis } from '../project.ts';
import type { Ran } from '../runs.ts';

/** `makes 12 glasses of 100 ml · 1.24 kg`, `makes 570 g, comes to 565 g`; empty where neither is known. */
export function yieldText({ file, unit }: Analysis, { formula, selection, run }: Ran): string {
  const made = makesOf(formula, selection);
  const line = made && file.lines[(unit.blockLines.get(made.place.block) ?? 0) + made.place.line];
  const text = made && line ? `makes ${line.text.slice(made.yield.start, made.yield.end)}` : '';
  const grams = run.result ? formatGrams((run.result.grams.low + run.result.grams.high) / 2) : '';
  if (made?.yield.quantity && isMass(made.yield.quantity.unit))
    return text.endsWith(` ${grams}`) ? text : `${text}, comes to ${grams}`;
  return [text, grams].filter((part) => part !== '').join(' · ');
}
