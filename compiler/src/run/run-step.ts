/** One step: parties meet, the verb has its effect, names and slots follow, a record remains. */

import { type Interval, interval, middle, times } from '../quantities/interval.ts';
import type { Step } from '../resolve/model.ts';
import type { Act, Effect, Meeting, VerbEffect } from '../steps/act.ts';
import { verbEffects } from '../steps/index.ts';
import { addSlot, type Bench, chosenIn } from './bench.ts';
import { atOf, clauseOf, durationOf, losingOf } from './clauses.ts';
import { atReading, bodiesOf, evaporate, keeping, layered, mixed, withMatter } from './matter-of.ts';
import { once } from './once.ts';
import { type Parties, partiesOf, type Taken } from './parties.ts';
import { runPutBy } from './put-by.ts';
import { refill, type Slot, takeShare } from './slots.ts';
import { type Subject, subjectOf } from './subject.ts';
import type { Input, Matter, StepRecord } from './trace.ts';
import { stacksIn, standsIn } from './vessel-words.ts';
import { type Outcome, recordOf, surroundingsVerbs } from './worked-step.ts';

/** Verbs that put matter into a vessel to stay. */
const placingVerbs: ReadonlySet<string> = new Set([
  'pour',
  'portion',
  'pipe',
  'spread',
  'layer',
  'fill',
  'line',
  'press',
  'shape',
]);
/** Heat drives water off; elsewhere what is lost stays behind as it is. */
const steaming: ReadonlySet<string> = new Set([
  'heat',
  'cook',
  'boil',
  'reduce',
  'bake',
  'toast',
  'dry',
  'caramelise',
  'fry',
  'hold',
  'melt',
]);

export function runStep(bench: Bench, step: Step, id: string): StepRecord | null {
  const { node } = step;
  const putBy = runPutBy(bench, step, id);
  if (putBy !== undefined) return putBy;
  const row = verbEffects[node.verb];
  if (!row) return null;
  const parties = partiesOf(bench, step);
  if (parties.idle) return null;
  const subject = subjectOf(bench, step, parties, row.takesUp === true);
  if (subject === null) {
    giveBack(step, parties);
    return null;
  }
  const onto = heldBy(bench, step, subject, parties);
  const put = (matter: Matter): Slot => {
    const before = bench.current;
    const slot = settle(bench, step, subject, parties, matter, row.takesUp === true);
    if (isSmear(step, parties)) {
      slot.spent = true;
      bench.current = before;
    }
    return slot;
  };
  const key = keyOf(bench, step, id, subject, parties, onto);
  const known = bench.done.records.get(key);
  if (known) {
    put(known.result);
    return known;
  }
  const outcome = workedOut(bench, step, subject, parties, onto, row);
  const record = recordOf(bench, step, id, outcome, put(outcome.matter));
  bench.done.records.set(key, record);
  return record;
}

/** A step that cannot be done takes nothing. */
function giveBack(step: Step, { operands, withs }: Parties): void {
  for (const { slot, matter } of [...operands, ...withs])
    if (slot.matter === null && slot.usedBy === step) Object.assign(slot, { matter, usedBy: null });
}

/** All that a step's outcome depends on, besides its component, the settings and the factor. */
function keyOf(bench: Bench, step: Step, id: string, subject: Subject, parties: Parties, onto: Matter | null): string {
  const takenAs = ({ name, matter, partial }: Taken): string => `${name}:${matter.id}${partial ? ' part' : ''}`;
  const { home, base } = subject;
  return [
    id,
    chosenIn(bench, step),
    subject.operands.map(takenAs).join(','),
    base ? `${base.name}:${base.matter.id}` : '',
    parties.withs.map(takenAs).join(','),
    onto?.id ?? '',
    home ? `${home.vessel ?? ''}:${home.names.join(',')}` : '',
    parties.vessel?.noun ?? '',
    parties.using?.key ?? '',
  ].join('|');
}

/** What the step does to the matter. */
function workedOut(bench: Bench, step: Step, subject: Subject, parties: Parties, onto: Matter | null, row: VerbEffect): Outcome {
  const { node } = step;
  const { operands, withs, base } = startReadings(bench, step, subject, parties);
  const inputs = inputsOf(subject, parties, operands, withs, base);
  const stands = parties.base?.word === 'over' && standsIn(parties.base.slot.vessel);
  const together = meet(row.meeting, operands, base, stands);
  const mould = parties.vessel?.noun ?? subject.home?.vessel ?? null;
  const act: Act = {
    step,
    node,
    chosen: bench.chosen,
    settings: bench.settings,
    factor: bench.factor,
    together,
    base,
    operands: base ? operands : operands.length > 1 ? operands : [],
    duration: durationOf(node, bench.chosen),
    vessel: parties.using,
    mould,
  };
  const effect = row.effect(act);
  const seconds = secondsOf(effect);
  let matter = lossesTaken(bench, step, effect.matter);
  if (withs.length > 0 && node.verb !== 'grease') matter = layered([matter, ...withs]);
  if (onto) matter = layered([onto, matter]);
  return { inputs, onto, matter: passTime(matter, together, seconds), act, effect, seconds };
}

/** `grease ring with butter`, `dust tray with flour`: it stays on the vessel, and what is being worked on is still that. */
const isSmear = ({ node }: Step, parties: Parties): boolean =>
  (node.verb === 'grease' || node.verb === 'dust') && parties.vessel !== null && parties.operands.length === 0;

/** `at TEMP` of the matter as the step starts: of what is poured, glazed or dipped with; of the base of a fold; else of what is acted on. */
function startReadings(bench: Bench, step: Step, subject: Subject, parties: Parties) {
  const { node } = step;
  const at = surroundingsVerbs.has(node.verb) ? null : atOf(node, bench.chosen);
  const read = (matter: Matter): Matter => (at ? atReading(matter, at.written, at.ranged, bench.settings, 'read', step) : matter);
  const withs = parties.withs === subject.operands ? [] : parties.withs.map((taken) => taken.matter);
  const operands = subject.operands.map((taken) => taken.matter);
  const base = subject.base?.matter ?? null;
  if (!at) return { operands, withs, base };
  if (withs.length > 0) return { operands, withs: withs.map(read), base };
  if (node.verb === 'fold' && base) return { operands, withs, base: read(base) };
  return { operands: operands.map(read), withs, base };
}

function inputsOf(
  subject: Subject,
  parties: Parties,
  operands: readonly Matter[],
  withs: readonly Matter[],
  base: Matter | null,
): readonly Input[] {
  return [
    ...(subject.base && base ? [{ role: 'base' as const, name: subject.base.name, matter: base, partial: false }] : []),
    ...subject.operands.map((taken, index) => ({
      role: 'operand' as const,
      name: taken.name,
      matter: operands[index]!,
      partial: taken.partial,
    })),
    ...withs.map((matter, index) => ({
      role: 'with' as const,
      name: parties.withs[index]?.name ?? 'it',
      matter,
      partial: parties.withs[index]?.partial ?? false,
    })),
  ];
}

/** `stands`: the base lies in what it is served or moulded in, so that nothing is stirred into it. */
function meet(meeting: Meeting, operands: readonly Matter[], base: Matter | null, stands: boolean): Matter {
  const parties = base ? [base, ...operands] : operands;
  if (parties.length === 1) return parties[0]!;
  if (meeting === 'layer' || (meeting === 'mix or layer' && base && (stands || holdsShape(base)))) return layered(parties);
  return mixed(parties);
}

/** Set, frozen or baked matter carries what is poured on it. */
const holdsShape = (matter: Matter): boolean =>
  matter.layers !== null || matter.frozen || matter.baked || matter.gelatin === 'set';

function lossesTaken(bench: Bench, step: Step, matter: Matter): Matter {
  const losing = losingOf(step.node, bench.chosen);
  if (!losing) return matter;
  return steaming.has(step.node.verb)
    ? evaporate(matter, times(losing, middle(matter.grams)))
    : keeping(matter, interval(1 - losing.high, 1 - losing.low));
}

/** What is put into a vessel that already holds matter of this block lies on top of it. */
function heldBy(bench: Bench, step: Step, subject: Subject, parties: Parties): Matter | null {
  if (!parties.vessel || !placingVerbs.has(step.node.verb) || !stacksIn(parties.vessel.noun)) return null;
  const { noun } = parties.vessel;
  const below = [...bench.all, ...bench.foreign].find(
    (slot) => slot.vessel === noun && slot.matter !== null && slot !== subject.home,
  );
  return below ? takeShare(below, 1, step) : null;
}

/** The step's time, reckoned when first asked for. */
function secondsOf({ seconds }: Effect): () => Interval {
  if (typeof seconds === 'function') return once(seconds);
  return () => seconds ?? interval(30, 120);
}

/** Foams in the matter grow older by every step. */
function passTime(matter: Matter, before: Matter, time: () => Interval): Matter {
  const { foam } = matter;
  if (!foam || foam !== before.foam) return matter;
  const seconds = time();
  return withMatter(matter, {
    foam: { ...foam, waited: interval(foam.waited.low + seconds.low, foam.waited.high + seconds.high) },
  });
}

/** Puts the result into its slot, names it, and makes it current. */
function settle(bench: Bench, step: Step, subject: Subject, parties: Parties, matter: Matter, takesUp: boolean): Slot {
  const as = clauseOf(step.node, 'as');
  let slot = subject.home;
  if (slot) {
    slot.usedBy = null;
    refill(slot, matter);
  } else slot = addSlot(bench, matter, []);
  if (as) {
    slot.names.unshift(as.name.text);
    bench.slots.set(as.name.key, slot);
  }
  if (takesUp && parties.base) parties.base.slot.spent = true;
  if (step.node.verb === 'unmould') slot.vessel = null;
  else if (parties.vessel && placingVerbs.has(step.node.verb)) slot.vessel = parties.vessel.noun;
  bench.current = slot;
  return slot;
}

/** All masses of a record's result, for models that look at each. */
export const massesOf = (record: StepRecord): readonly Matter[] => bodiesOf(record.result);
