/** The bench: what lies before the cook while a block runs: names and their slots, the current matter. */
import { type Name, nameKey, nearest } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import type { Component, Place, RawFinding, Related, Settings, SourceLine, Step, Vessel } from '../resolve/model.ts';
import type { Chosen } from './clauses.ts';
import { newSlot, type Slot, takeShare } from './slots.ts';
import type { Matter, StepRecord } from './trace.ts';
import { sameNoun, vesselNounOf } from './vessel-words.ts';

/** What other choices have in common with these, at the same size and settings: it is not worked out twice. */
export interface Done {
  /** Ingredient lines as weighed, by line and grams. */
  readonly weighed: Map<string, Matter>;
  /** Steps, by all that their outcome depends on: the very same matter, before all. */
  readonly records: Map<string, StepRecord>;
}

export interface Bench {
  readonly component: Component;
  readonly settings: Settings;
  readonly chosen: Chosen;
  /** The pieces made: what `makes` counts, at this size; 1 where it counts nothing. */
  readonly pieces: number;
  /** Times the written grams, of the lines and of what steps take. */
  readonly factor: number;
  readonly makesNoun: string | null;
  readonly slots: Map<string, Slot>;
  /** All slots ever filled in this block, for the leftovers. */
  readonly all: Slot[];
  /** Slots of other components that this block has put its hands on. */
  readonly foreign: Slot[];
  /** Other components of the formula, by key: filled when first asked for. */
  readonly others: (key: string) => Slot | null;
  /** Keys of lines that are declared but not there under this selection, and why. */
  readonly absent: ReadonlyMap<string, 'zero' | 'guarded'>;
  /** Whether a mistyped name may be read as a component: in the formula itself, not where it is taken, as its takers would not hear of a change. */
  readonly mayGuess: boolean;
  current: Slot | null;
  readonly done: Done;
  readonly findings: RawFinding[];
}

/** A party of a step: matter in a slot, a vessel, or nothing that exists. */
export type Party =
  | { readonly is: 'matter'; readonly slot: Slot; readonly name: string }
  | { readonly is: 'vessel'; readonly noun: string; readonly equipment: Vessel | null }
  | { readonly is: 'absent' }
  | { readonly is: 'unknown' };

export function partyNamed(bench: Bench, name: Name): Party {
  const own = bench.slots.get(name.key);
  const slot = own ?? bench.others(name.key);
  if (slot && !own && !bench.foreign.includes(slot)) bench.foreign.push(slot);
  if (slot) return { is: 'matter', slot, name: name.text };
  if (bench.absent.get(name.key) === 'zero') return { is: 'absent' };
  const equipment = bench.settings.vessels.find((vessel) => vessel.key === name.key);
  if (equipment) return { is: 'vessel', noun: vesselNounOf(name.key) ?? name.key, equipment };
  const noun = vesselNounOf(name.key) ?? (bench.makesNoun && sameNoun(bench.makesNoun, name.key) ? name.key : null);
  return noun ? { is: 'vessel', noun, equipment: null } : { is: 'unknown' };
}

/** Codes of steps that name what is not there: they are not done, so that what is made falls short of what was meant by no fault of its own. */
export const undone: ReadonlySet<string> = new Set(['unknown-name', 'used-before-made', 'used-up']);

/** Which of the values that a step's figures depend on are chosen, for a key. */
export const chosenIn = ({ chosen }: Bench, { values }: Step): string => values.filter((value) => chosen.has(value)).join(',');

export const placeOf = (step: Step, span: { start: number; end: number }): Place => ({
  ...step.place,
  start: span.start,
  end: span.end,
});

/** The party of a name; where nothing has it, that is said, and what it was most likely meant to be is taken, so that one slip is one finding. */
export function partyMeant(bench: Bench, step: Step, name: Name): Party {
  const party = partyNamed(bench, name);
  if (party.is !== 'unknown') return party;
  const meant = reportUnknown(bench, step, name);
  return meant === null ? party : partyNamed(bench, { ...name, text: meant, key: nameKey(meant) });
}

/** Says that a name means nothing here: made later, only there in another choice, or unknown. Gives the name to read in its place. */
export function reportUnknown(bench: Bench, step: Step, name: Name): string | null {
  const later = bench.component.steps.find(
    (other) => other.place.line > step.place.line && other.node.clauses.some((c) => c.word === 'as' && c.name.key === name.key),
  );
  if (later) {
    bench.findings.push({
      code: 'used-before-made',
      place: placeOf(step, name),
      numbers: { name: name.text },
      related: [{ place: later.place, message: `${name.text} is made here` }],
    });
    return null;
  }
  const guarded = bench.absent.get(name.key) === 'guarded';
  const declared = bench.component.lines.find((line) => line.key === name.key);
  const candidates = [
    ...new Set([
      ...[...bench.slots.values()].flatMap((slot) => slot.names),
      ...[...bench.component.scope.keys()].filter((key) => key !== bench.component.key),
      ...bench.component.lines.map((l) => l.name),
    ]),
  ];
  const keys = candidates.map(nameKey);
  const close = guarded ? null : (onlyOfKind(bench, name.key) ?? nearest(name.key, keys) ?? onlyFuller(name.key, keys));
  const proposal = close === null ? null : (candidates.find((candidate) => nameKey(candidate) === close) ?? close);
  const key = nameKey(proposal ?? '');
  const read =
    proposal !== null && (bench.slots.has(key) || (bench.mayGuess && bench.component.scope.get(key)?.is === 'own component'));
  bench.findings.push({
    code: 'unknown-name',
    place: placeOf(step, name),
    numbers: { name: name.text, nearest: proposal, guarded },
    readOn: read,
    ...(guarded && declared ? { related: [{ place: declared.place, message: 'weighed only in other choices' }] } : {}),
    fixes: proposal === null ? [] : [{ title: `Change to ${proposal}`, edits: [{ ...placeOf(step, name), text: proposal }] }],
  });
  return read ? proposal : null;
}

/** `milk` where the only line of that kind is `whole milk`, and `pectin` where it is `yellow pectin`: the catalogue knows both names. */
function onlyOfKind({ component, slots }: Bench, key: string): string | null {
  const known = component.lines.filter(
    ({ key: own, substance }) =>
      slots.has(own) &&
      substance.is === 'kind' &&
      [substance.kind.name, ...substance.kind.synonyms].some((other) => nameKey(other) === key),
  );
  const names = new Set(known.map((line) => line.key));
  return names.size === 1 ? ([...names][0] ?? null) : null;
}

/** `milk` where `whole milk` is the only one of its words: what a cook says for short. */
function onlyFuller(key: string, keys: readonly string[]): string | null {
  const fuller = keys.filter((other) => ` ${other} `.includes(` ${key} `));
  return fuller.length === 1 ? (fuller[0] as string) : null;
}

export function reportUsedUp(bench: Bench, step: Step, span: { start: number; end: number }, name: string, slot: Slot): void {
  const related: Related[] = slot.usedBy ? [{ place: slot.usedBy.place, message: 'the last of it went in here' }] : [];
  const heir = heirOf(bench, slot);
  const now = heir === null ? null : (heir.names[0] ?? '');
  bench.findings.push({ code: 'used-up', place: placeOf(step, span), numbers: { name, now }, related });
}

/** What holds the matter now that was once in a slot, where that is one thing. */
export function heirOf({ all, foreign }: Bench, { gone }: Slot): Slot | null {
  const lines = new Set(gone?.parts.map(({ line }) => line));
  const heirs = [...all, ...foreign].filter(({ matter }) => matter?.made && matter.parts.some(({ line }) => lines.has(line)));
  return heirs.length === 1 ? (heirs[0] ?? null) : null;
}

/** Grams asked of a slot against what is left; more than that is a finding, and all that is left is taken. */
export function takeGrams(
  bench: Bench,
  step: Step,
  span: { start: number; end: number },
  name: string,
  slot: Slot,
  grams: number,
): Matter {
  const left = slot.matter ? middle(slot.matter.grams) : 0;
  if (grams > left + Math.max(0.5, 0.005 * left)) {
    bench.findings.push({
      code: 'overdrawn',
      place: placeOf(step, span),
      numbers: { name, weighed: slot.first, taken: slot.first - left + grams, over: grams - left, left, asked: grams },
      related: slot.line ? [{ place: slot.line.place, message: 'weighed here' }] : [],
    });
  }
  return takeShare(slot, left > 0 ? Math.min(1, grams / left) : 1, step);
}

export function addSlot(bench: Bench, matter: Matter, names: readonly string[], line: SourceLine | null = null): Slot {
  const slot = newSlot(matter, names, line);
  bench.all.push(slot);
  for (const name of names) bench.slots.set(nameKey(name), slot);
  return slot;
}
