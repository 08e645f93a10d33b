/** A step of a card: its sentence, its readings, what makes it critical, and the stages of a fold. */
import { interval } from '../quantities/interval.ts';
import { additionsOf, chosenOf, durationOf } from '../run/clauses.ts';
import type { BlockRun, StepRecord } from '../run/trace.ts';
import type { Context } from './context.ts';
import type { CardStep, Stage } from './model.ts';
import { reasonsOf } from './reasons.ts';
import { textOf } from './sentence.ts';
import { wordsOf } from './words.ts';

export function stepOf(record: StepRecord, block: BlockRun, context: Context, number: number): CardStep {
  const { language, measures, run, positions } = context;
  const phrase = language.step(wordsOf(record, block, context));
  const duration = durationOf(record.step.node, chosenOf(block.selection));
  const reasons = reasonsOf(record, run);
  const { written } = record;
  return {
    number,
    line: positions.lineOf(record.step.place),
    verb: record.step.node.verb,
    phrase,
    text: textOf(phrase),
    celsius: written && Number.isFinite(written.low + written.high) ? [written.low, written.high] : null,
    seconds: duration ? [duration.low, duration.high] : null,
    critical: written !== null && reasons.length > 0,
    waiting: waiting.has(record.step.node.verb),
    notes: record.step.notes,
    reasons: reasons.map((key) => language.reasons[key](measures.degrees)),
    stages: stagesOf(record, block, context),
  };
}

/** Steps that need no hands while they last. */
export const waiting: ReadonlySet<string> = new Set([
  'bloom',
  'soak',
  'infuse',
  'chill',
  'freeze',
  'rest',
  'thaw',
  'proof',
  'bake',
  'dry',
  'cool',
  'churn',
]);

function stagesOf(record: StepRecord, block: BlockRun, { language, measures }: Context): readonly Stage[] {
  if (record.additions.length < 2) return [];
  const tools = additionsOf(record.step.node, chosenOf(block.selection))?.tools ?? [];
  return record.additions.map(({ grams, celsius }, index) => {
    const tool = tools[Math.min(index, tools.length - 1)];
    return {
      amount: `≈ ${measures.roughMass((grams.low + grams.high) / 2)}`,
      tool: tool === undefined ? null : (language.tool(tool) ?? tool),
      temperature: Number.isFinite(celsius.low + celsius.high)
        ? `≈ ${measures.temperature(interval(Math.round(celsius.low), Math.round(celsius.high)))}`
        : null,
    };
  });
}
