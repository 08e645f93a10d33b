/** Quick fixes for gelatin that meets something cold: melted first, and loosened with a part of what it goes into. */
import type { Input, StepRecord } from '../run/trace.ts';
import { insertBefore, massOf } from './look.ts';
import { operandText } from './repair.ts';
import type { Fix } from './rule.ts';

/** °C of the base up to which melted gelatin sets in threads before it is stirred in. */
export const shocksAt = 18;

/** Melts it first; where the base is so cold that melted gelatin would set in threads, loosens it with a part of the base too. */
export function meltedInto(record: StepRecord, gelatin: Input, base: Input): readonly Fix[] {
  const name = operandText(gelatin);
  if (name === '') return [];
  const melted = `melt${name} to 50-55 °C`;
  if (base.matter.heat.celsius.low > shocksAt) return fix(record, base, [melted], `Melt the${name} first`);
  const part = loosening(gelatin, base);
  return part === null ? [] : fix(record, base, [melted, part], `Melt the${name} and stir a part of the base into it first`);
}

/** Stirs a part of the base into gelatin that is melted already. */
export function loosened(record: StepRecord, gelatin: Input, base: Input): readonly Fix[] {
  const part = loosening(gelatin, base);
  return part === null ? [] : fix(record, base, [part], 'Stir a part of it into the gelatin first');
}

/** About as much as twice the gelatin, so that the two are lukewarm together; a foam is not whisked into anything. */
function loosening(gelatin: Input, base: Input): string | null {
  const into = operandText(gelatin);
  const of = operandText(base);
  const grams = Math.max(10, Math.round((1.6 * massOf(gelatin.matter)) / 10) * 10);
  if (into === '' || of === '' || base.matter.foam || grams > 0.5 * massOf(base.matter)) return null;
  return `whisk ${grams} g of${of} into${into}`;
}

/** The lines before the step, which then must name what it goes into: the gelatin is what is being worked on now. */
function fix(record: StepRecord, base: Input, lines: readonly string[], title: string): readonly Fix[] {
  const { step } = record;
  const { node } = step;
  const named = node.clauses.some(({ word }) => word === 'into' || word === 'over' || word === 'in');
  const of = operandText(base);
  if (node.guard || (base.role === 'base' && !named && of === '')) return [];
  const before = lines.map((line) => insertBefore(step, line).text).join('');
  const edits = [{ ...step.place, start: 0, end: 0, text: before }];
  if (base.role !== 'base' || named) return [{ title, edits }];
  const at = node.operands.at(-1)?.end ?? node.verbSpan.end;
  return [{ title, edits: [...edits, { ...step.place, start: at, end: at, text: ` into${of}` }] }];
}
