/** The parties of a step: which matter it takes, what takes it in, which vessel it goes into. */
import type { Operand, Quantity, StepLine } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import { gramsPerUnit } from '../quantities/units.ts';
import type { Step, Vessel } from '../resolve/model.ts';
import { type Bench, heirOf, partyMeant, reportUnknown, reportUsedUp, takeGrams } from './bench.ts';
import { clauseOf, partyOf, pickVarying } from './clauses.ts';
import { gramsIn, type Slot, takeShare } from './slots.ts';
import type { Matter } from './trace.ts';
import { vesselNounOf } from './vessel-words.ts';
import { millilitresOf } from './volume-of.ts';

export interface Taken {
  readonly name: string;
  readonly slot: Slot;
  readonly matter: Matter;
  readonly partial: boolean;
}

export interface Parties {
  readonly operands: readonly Taken[];
  readonly withs: readonly Taken[];
  /** What takes the operands in; null where none is written. */
  readonly base: { readonly name: string; readonly slot: Slot; readonly word: 'into' | 'over' | 'in' } | null;
  /** Vessel named as operand or after `into`, `over`, `in`. */
  readonly vessel: { readonly noun: string; readonly equipment: Vessel | null } | null;
  readonly using: Vessel | null;
  /** Everything named is not there (0 g) or unknown: the step does nothing. */
  readonly idle: boolean;
}

export function partiesOf(bench: Bench, step: Step): Parties {
  const { node } = step;
  const coated = coatedWith(node);
  const written = coated ? null : partyOf(node);
  let base: Parties['base'] = null;
  let vessel: Parties['vessel'] = null;
  if (written) {
    const party = partyMeant(bench, step, written.name);
    if (party.is === 'matter') {
      if (party.slot.matter) base = { name: party.name, slot: party.slot, word: written.word };
      else {
        const heir = heirOf(bench, party.slot);
        reportUsedUp(bench, step, written.name, written.name.text, party.slot);
        if (heir?.names.length === 0 && step.node.operands.length > 0)
          base = { name: party.name, slot: heir, word: written.word };
      }
    } else if (party.is === 'vessel') vessel = party;
  }
  const operands: Taken[] = [];
  for (const operand of node.operands) {
    const taken = take(bench, step, operand, base?.slot ?? null);
    if (taken === null) continue;
    if ('noun' in taken) vessel ??= taken;
    else operands.push(taken);
  }
  const withs: Taken[] = [];
  const applied = [...(clauseOf(node, 'with')?.operands ?? []), ...(coated ? [coated] : [])];
  for (const operand of applied) {
    const taken = take(bench, step, operand, null);
    if (taken && !('noun' in taken)) withs.push(taken);
    else if (taken) vessel ??= taken;
  }
  const using = clauseOf(node, 'using');
  const usingVessel = using ? (bench.settings.vessels.find((item) => item.key === using.vessel.key) ?? null) : null;
  if (using && !usingVessel && vesselNounOf(using.vessel.key) === null) reportUnknown(bench, step, using.vessel);
  const named = node.operands.length + applied.length;
  return {
    operands,
    withs,
    base,
    vessel,
    using: usingVessel ?? vessel?.equipment ?? null,
    idle: named > 0 && operands.length + withs.length === 0 && vessel === null,
  };
}

/** `dip éclairs in chocolate`: what they are dipped in goes on them. */
function coatedWith(node: StepLine): Operand | null {
  const { verb } = node;
  if (verb !== 'dip' && verb !== 'coat' && verb !== 'glaze' && verb !== 'dust' && verb !== 'brush') return null;
  const party = partyOf(node);
  if (party?.word !== 'in') return null;
  return { kind: 'operand', start: party.name.start, end: party.name.end, name: party.name, part: null };
}

function take(
  bench: Bench,
  step: Step,
  operand: Operand,
  base: Slot | null,
): Taken | { noun: string; equipment: Vessel | null } | null {
  const party = partyMeant(bench, step, operand.name);
  if (party.is === 'unknown' || party.is === 'absent') return null;
  if (party.is === 'vessel') return { noun: party.noun, equipment: party.equipment };
  const { slot } = party;
  if (slot === base) {
    reportSelf(bench, step, operand);
    return null;
  }
  if (!slot.matter) {
    const heir = heirOf(bench, slot);
    reportUsedUp(bench, step, operand.name, operand.name.text, slot);
    // A mixture without a name is what was meant; one with a name has its own place.
    return heir === null || heir.names.length > 0 || heir === (base ?? bench.current) || operand.part !== null
      ? null
      : { name: party.name, slot: heir, matter: takeShare(heir, 1, step), partial: false };
  }
  const { part } = operand;
  const before = gramsIn(slot);
  if (part === null || part.kind === 'rest') return { name: party.name, slot, matter: takeShare(slot, 1, step), partial: false };
  const grams =
    part.kind === 'fraction'
      ? part.value * slot.first
      : gramsAsked(bench, slot, slot.matter, pickVarying(part.quantity, bench.chosen));
  const matter = takeGrams(bench, step, operand, party.name, slot, grams);
  return { name: party.name, slot, matter, partial: grams < before * (1 - 1e-9) };
}

function gramsAsked(bench: Bench, slot: Slot, matter: Matter, quantity: Quantity): number {
  const written = (quantity.low + quantity.high) / 2;
  if (quantity.unit === '%') return (written / 100) * slot.first;
  if (quantity.unit === 'some') return Math.min(1, gramsIn(slot));
  const piece = pieceOf(slot);
  // Of what has no piece of its own, one is the whole.
  if (quantity.unit === 'pc' && piece === null) return written * slot.first;
  const density = middle(matter.grams) / Math.max(1e-9, middle(millilitresOf(matter)));
  return written * (quantity.each ? bench.pieces : bench.factor) * (gramsPerUnit(quantity.unit, { density, piece }) ?? 1);
}

function pieceOf({ line }: Slot): number | null {
  if (line?.amount.base.unit === 'pc' && line.amount.base.gramsPerUnit) return line.amount.base.gramsPerUnit;
  return line?.substance.is === 'kind' ? line.substance.kind.piece : null;
}

/** Grams of a bare amount (`portion 100 ml`) over all pieces that `makes` counts. */
export function gramsPortioned(bench: Bench, matter: Matter, quantity: Quantity): number {
  const density = middle(matter.grams) / Math.max(1e-9, middle(millilitresOf(matter)));
  return ((quantity.low + quantity.high) / 2) * (gramsPerUnit(quantity.unit, { density, piece: null }) ?? 0) * bench.pieces;
}

function reportSelf(bench: Bench, step: Step, operand: Operand): void {
  bench.findings.push({
    code: 'used-before-made',
    place: { ...step.place, start: operand.start, end: operand.end },
    numbers: { name: operand.name.text, itself: true },
  });
}
