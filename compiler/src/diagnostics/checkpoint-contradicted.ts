/** `checkpoint-contradicted`: a written reading cannot follow from what came before it. */
import { sugarsOf } from '../matter/composition.ts';
import { formatCelsius } from '../quantities/format.ts';
import { checkOf, chosenOf } from '../run/clauses.ts';
import { dextrinsOf } from '../run/matter-of.ts';
import type { Heat, Run, StepRecord } from '../run/trace.ts';
import { lastHeated, lifeBefore, placeOfStep } from './look.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** K by which it may differ: after readings, and after steps of unknown time or vessel. */
const tolerance = { read: 5, estimated: 10 } as const;

const cooling: ReadonlySet<string> = new Set(['cool', 'chill', 'freeze']);
const heating: ReadonlySet<string> = new Set(['heat', 'cook', 'boil', 'melt', 'reduce']);

interface Contradiction {
  readonly verb: string;
  /** The end of the reading that is out of reach, and where the matter is at its nearest. */
  readonly celsius: number;
  readonly was: number;
}

function contradictionIn(record: StepRecord): Contradiction | null {
  const { written } = record;
  const { verb } = record.step.node;
  if (!written || !(verb === 'check' || cooling.has(verb) || heating.has(verb))) return null;
  const before = record.computed ?? record.inputs[0]?.matter.heat.celsius;
  if (!before) return null;
  const slack = record.inputs.some(({ matter }) => isEstimate(matter.heat)) ? tolerance.estimated : tolerance.read;
  const above = written.low > before.high + slack;
  const below = written.high < before.low - slack;
  if (above && (cooling.has(verb) || verb === 'check')) return { verb, celsius: written.low, was: before.high };
  if (below && (heating.has(verb) || verb === 'check')) return { verb, celsius: written.high, was: before.low };
  return null;
}

const isEstimate = (heat: Heat): boolean => heat.basis === 'unknown' || (heat.basis === 'computed' && heat.cooledSince);

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    checkBrix(run, record, report);
    const found = contradictionIn(record);
    if (!found) continue;
    const heat = record.inputs[0]?.matter.heat;
    report({
      severity: 'warning',
      place: placeOfStep(record.step),
      numbers: { verb: found.verb, celsius: round(found.celsius), was: round(found.was) },
      related: heat ? lastHeated(heat) : [],
      fixes: fixesOf(record, found),
    });
  }
}

/** °Bx by which a reading may differ: acids, salts and pectin read as sugar, and steam is reckoned coarsely (common practice, no source). */
const looseBrix = 10;

/** `check 65 brix` against the sugar that was weighed and the water that is left. */
function checkBrix(run: Run, { step, result }: StepRecord, report: Report): void {
  const reading = step.node.verb === 'check' ? checkOf(step.node, chosenOf(run.selection)) : null;
  if (!reading || !('brix' in reading) || result.unknownGrams > 0 || result.layers) return;
  const solids = 100 * (sugarsOf(result.composition) + dextrinsOf(result));
  const was = { low: solids / Math.max(1e-9, result.grams.high), high: solids / Math.max(1e-9, result.grams.low) };
  const { brix } = reading;
  if (brix.low <= was.high + looseBrix && brix.high >= was.low - looseBrix) return;
  const above = brix.low > was.high;
  if (above && lifeBefore(result).some(boilsOff)) return;
  report({
    severity: 'warning',
    place: placeOfStep(step),
    numbers: { brix: round(above ? brix.low : brix.high), was: Math.round(above ? was.high : was.low) },
  });
}

/** Boiled for a time or until a sign: how much water that took is for the reading to say. */
const boilsOff = ({ step: { node } }: StepRecord): boolean =>
  heating.has(node.verb) && node.clauses.some(({ word }) => word === 'for' || word === 'until' || word === 'to');

const round = (celsius: number): number => Math.round(celsius * 10) / 10;

function fixesOf({ step }: StepRecord, { verb }: Contradiction): readonly Fix[] {
  if (verb !== 'cool' && verb !== 'heat') return [];
  const other = verb === 'cool' ? 'heat' : 'cool';
  return [{ title: `Write ${other}`, edits: [{ ...step.place, ...span(step.node.verbSpan), text: other }] }];
}

const span = ({ start, end }: { readonly start: number; readonly end: number }) => ({ start, end });

export const checkpointContradicted: Rule = {
  code: 'checkpoint-contradicted',
  severities: ['warning'],
  title: 'The reading cannot follow from what came before',
  why: 'A reading after “cool to” that is warmer than the matter already is, or after “heat to” that is colder, was meant for another step or mistyped; so was a “check” far from anything the matter can be at, in degrees or in brix. The reading is believed from here on, but one of the two lines is wrong.',
  remedy: 'Correct the reading or the verb, or write the step that is missing between.',
  source: 'Conservation of energy; 5 °C of tolerance after readings, 10 °C after estimates, 10 brix: common practice, no source.',
  examples: {
    bad: `formula Warm syrup
  200 g  water
  200 g  caster sugar
  heat water, caster sugar to 40 °C
  cool to 55 °C   // expect: checkpoint-contradicted
`,
    good: `formula Cool syrup
  200 g  water
  200 g  caster sugar
  heat water, caster sugar to 60 °C
  cool to 55 °C
`,
  },
  message: (n) => {
    if (typeof n.brix === 'number') return `A check says ${n.brix} brix, but by what was weighed it is at about ${n.was} brix.`;
    const was = formatCelsius(Number(n.was));
    const reading = formatCelsius(Number(n.celsius));
    if (n.verb === 'check') return `A check says ${reading}, but by what came before it is at about ${was}.`;
    return Number(n.celsius) > Number(n.was)
      ? `“${n.verb} to” says ${reading}, but it is no warmer than ${was} before.`
      : `“${n.verb} to” says ${reading}, but it is at ${was} or more before.`;
  },
  check,
};
