/** What quick fixes are made of: a party's name as a line may write it, a reading in the formula's own degrees, a line to insert. */
import { connectives, type Span } from 'nappe-grammar';
import type { Edit, Fix, SourceLine, Step } from '../resolve/model.ts';
import { chosenOf, clauseOf, pickVarying } from '../run/clauses.ts';
import type { Input, Run, StepRecord } from '../run/trace.ts';
import { insertBefore } from './look.ts';

const unnamed = 'what is being worked on';

/** ` custard`, with its space; nothing for current matter that has no name. */
export const operandText = (input: Input): string => (input.name === unnamed ? '' : ` ${nameText(input.name)}`);

/** A name as a step must write it. */
export function nameText(name: string): string {
  const words = name.toLowerCase().split(' ');
  const plain = /^\p{L}/u.test(name) && words.every((word) => !joining.has(word) && !/^\d/.test(word));
  return plain ? name : `"${name}"`;
}

const joining: ReadonlySet<string> = new Set([...connectives, 'rest']);

/** A party's name for a sentence: `the custard`, `the base`. */
export const spoken = (input: Input, otherwise: string): string => (input.name === unnamed ? otherwise : input.name);

/** `30-34 °C`, or `86-93 °F` where the component's own steps are in °F. */
export function readingText(record: StepRecord, low: number, high: number): string {
  const fahrenheit = record.component.steps.some((step) => step.node.text.includes('°F'));
  if (!fahrenheit) return `${low}-${high} °C`;
  return `${Math.ceil(low * 1.8 + 32)}-${Math.floor(high * 1.8 + 32)} °F`;
}

/** A fix that writes one line before the step. */
export const lineBefore = (step: Step, text: string): Fix => ({
  title: `Insert “${text}” before this step`,
  edits: [guarded(insertBefore(step, text), step)],
});

/** Keeps the step's own guard on what is written before it. */
function guarded(edit: Edit, step: Step): Edit {
  const { guard } = step.node;
  if (!guard) return edit;
  return { ...edit, text: edit.text.replace(/\n$/, `  ${step.node.text.slice(guard.start, guard.end)}\n`) };
}

/** Writes another reading where the step has its own (`to`, `check`, or the matter's `at`); no fix where it has none. */
export function otherReading(run: Run, record: StepRecord, low: number, high: number): readonly Fix[] {
  const { node } = record.step;
  const chosen = chosenOf(run.blockOf.get(record)?.selection ?? run.selection);
  const written = node.check ?? clauseOf(node, 'to')?.target ?? clauseOf(node, 'at')?.target;
  const value = written ? pickVarying<{ readonly kind: string } & Span>(written, chosen) : null;
  if (value?.kind !== 'temperature') return [];
  const text = readingText(record, low, high);
  return [
    {
      title: `Change the reading to ${text}`,
      edits: [{ ...record.step.place, start: value.start, end: value.end, text }],
    },
  ];
}

/** Writes `to TEMP` into a step that has no reading. */
export function addedReading(record: StepRecord, low: number, high: number): Fix {
  const { node } = record.step;
  const text = readingText(record, low, high);
  const at = node.operands.at(-1)?.end ?? node.verbSpan.end;
  return { title: `Add “to ${text}”`, edits: [{ ...record.step.place, start: at, end: at, text: ` to ${text}` }] };
}

/** Weighs another amount of a line, in the unit it is written in; no fix where it is no plain mass or volume. */
export function otherAmount(line: SourceLine, grams: number): readonly Fix[] {
  const { base, overrides } = line.amount;
  if (overrides.length > 0 || base.measure !== 'grams' || base.each || base.unit === 'pc' || !base.gramsPerUnit) return [];
  const number = grams / base.gramsPerUnit;
  const text = `${Number(number.toFixed(number >= 20 ? 0 : number >= 2 ? 1 : 2))} ${base.unit}`;
  return [{ title: `Weigh ${text} of ${line.label}`, edits: [{ ...line.quantityPlace, text }] }];
}
