/** `gelatin-boiled`: what holds gelatin is boiled or kept very hot, which takes its strength. */
import { boilingPointOf } from '../matter/boiling.ts';
import { weakensGelatin } from '../matter/gelatin.ts';
import { formatCelsius, formatDuration } from '../quantities/format.ts';
import { signOf } from '../run/clauses.ts';
import { thermalComposition } from '../run/thermal-composition.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { bringsGelatin } from './look-gelatin.ts';
import { otherReading } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

interface Harm {
  readonly celsius: number;
  /** Null where it boils: a moment is enough to be named. */
  readonly seconds: number | null;
}

const heats: ReadonlySet<string> = new Set(['heat', 'cook', 'melt', 'boil', 'reduce']);

function harmOf(run: Run, record: StepRecord, matter: Matter): Harm | null {
  const { verb } = record.step.node;
  const written = record.written?.high ?? Number.NEGATIVE_INFINITY;
  if (verb === 'hold') {
    const seconds = record.seconds?.range.high ?? 0;
    return weakensGelatin(written, seconds) ? { celsius: written, seconds } : null;
  }
  if (!heats.has(verb)) return null;
  const boils = boilingPointOf(thermalComposition(matter), run.formula.settings.altitudeMetres) ?? 100;
  const says = verb === 'boil' || verb === 'reduce' || /\bboil/.test(signOf(record.step.node) ?? '');
  return says || written >= boils
    ? { celsius: Math.max(boils, Number.isFinite(written) ? written : boils), seconds: null }
    : null;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const holding = record.inputs.find(({ role, matter }) => role !== 'with' && matter.gelatin200 > 0);
    const harm = holding ? harmOf(run, record, holding.matter) : null;
    if (!holding || !harm) continue;
    const added = addedAt(run, record);
    report({
      place: placeOfStep(record.step),
      numbers: { celsius: Math.round(harm.celsius * 10) / 10, seconds: harm.seconds },
      related: added ? [{ place: added.step.place, message: 'the gelatin went in here' }] : [],
      fixes: harm.seconds === null ? (added ? swapped(run, added, record) : []) : otherReading(run, record, 55, 60),
    });
  }
}

/** The last step before it that put gelatin into what held none. */
function addedAt(run: Run, record: StepRecord): StepRecord | null {
  const before = run.records.slice(0, run.records.indexOf(record)).reverse();
  return (
    before.find(
      ({ inputs, result, step }) =>
        step.node.verb !== 'bloom' &&
        inputs.length > 1 &&
        inputs.some(({ matter }) => matter.gelatin200 === 0) &&
        inputs.some(({ matter }) => matter.parts.some(bringsGelatin)) &&
        result.gelatin200 > 0,
    ) ?? null
  );
}

/** Boils first and adds the gelatin after, where the two steps stand one after the other and name nothing else. */
function swapped(run: Run, added: StepRecord, boiled: StepRecord): readonly Fix[] {
  const neighbours = run.records.indexOf(boiled) === run.records.indexOf(added) + 1 && added.component === boiled.component;
  const plain = [added, boiled].every(
    ({ step: { node } }) => !node.guard && !node.clauses.some(({ word }) => word === 'as' || word === 'into' || word === 'over'),
  );
  if (!neighbours || !plain || added.step.node.verb !== 'add' || boiled.step.node.operands.length > 0) return [];
  const textOf = ({ step: { node } }: StepRecord): string => node.text.slice(node.span.start, node.span.end);
  const edits = [
    { ...added.step.place, text: textOf(boiled) },
    { ...boiled.step.place, text: textOf(added) },
  ];
  return [{ title: 'Add the gelatin after boiling', edits }];
}

const jelly = (first: string, second: string): string => `formula Strawberry jelly
  400 g  strawberry purée, pasteurised, 20 °C
   60 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat strawberry purée, caster sugar to 60 °C
  ${first}
  ${second}
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinBoiled: Rule = {
  code: 'gelatin-boiled',
  severities: ['warning'],
  title: 'The gelatin is boiled or kept very hot',
  why: 'Gelatin is protein chains, and hot water cuts them: the hotter, the longer and the sourer it is, the shorter they become and the softer the gel sets. A moment too hot costs little, a boil or a long hold costs strength that the formula counts on.',
  remedy: 'Boil first, take the pan off the heat, and add the gelatin when it no longer bubbles; keep warm at 50–60 °C.',
  source:
    'Gelatin makers warn of long and strong heating, one shows the loss at 60 °C over hours. A boil, 95 °C for a minute and 80 °C for ten minutes as limits: common practice, no source.',
  examples: {
    bad: jelly('add gelatin', 'boil for 2 min   // expect: gelatin-boiled'),
    good: jelly('boil for 2 min', 'add gelatin'),
  },
  message: (n) =>
    typeof n.seconds === 'number'
      ? `What holds gelatin is kept at ${formatCelsius(Number(n.celsius))} for ${formatDuration(n.seconds)}: it loses strength.`
      : `What holds gelatin is boiled, at about ${formatCelsius(Number(n.celsius))}: it loses strength.`,
  check,
};
