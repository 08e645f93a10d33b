/** The subject of a step: the matter acted on, what takes it in, and where the result goes. */
import { middle } from '../quantities/interval.ts';
import type { Step } from '../resolve/model.ts';
import { type Bench, placeOf, undone } from './bench.ts';
import { pickVarying } from './clauses.ts';
import { gramsPortioned, type Parties, type Taken } from './parties.ts';
import { type Slot, takeShare } from './slots.ts';
import type { Matter } from './trace.ts';

/** Whom a step acts on. */
export interface Subject {
  /** The slot the result goes into; null for a new one. */
  readonly home: Slot | null;
  readonly operands: readonly Taken[];
  readonly base: { readonly name: string; readonly matter: Matter } | null;
}

/** Who is acted on: the party after `into`, `over`, `in`; the current matter for `add` and `fold`; the operands; else the current matter. */
export function subjectOf(bench: Bench, step: Step, parties: Parties, takesUp: boolean): Subject | null {
  const { node } = step;
  let { operands } = parties;
  if (parties.base) {
    const { slot, name } = parties.base;
    if (operands.length === 0) {
      const current = currentMatter(bench, step, slot);
      if (!current) return null;
      operands = [current];
    }
    const matter = takeShare(slot, 1, step);
    const own = operands.length === 1 && !operands[0]!.partial ? operands[0]!.slot : null;
    return { home: takesUp ? own : slot, operands, base: { name, matter } };
  }
  if ((node.verb === 'add' || node.verb === 'fold') && operands.length > 0) {
    const { current } = bench;
    if (!current?.matter || operands.some((taken) => taken.slot === current)) {
      if (!current?.matter && operands.length > 1 && node.verb === 'fold') return { home: null, operands, base: null };
      missingCurrent(bench, step, operands);
      return operands.length === 1 && !operands[0]!.partial
        ? { home: operands[0]!.slot, operands, base: null }
        : { home: null, operands, base: null };
    }
    return {
      home: current,
      operands,
      base: { name: current.names[0] ?? 'what is being worked on', matter: takeShare(current, 1, step) },
    };
  }
  if (operands.length === 0 && parties.vessel && parties.withs.length > 0) {
    // `line ring with sponge`: what goes in is what is acted on.
    return { home: null, operands: parties.withs, base: null };
  }
  // What it acts on was named and is not there, which has been said.
  if (operands.length === 0 && node.operands.length > 0) return null;
  if (operands.length === 0) {
    const current = currentMatter(bench, step, null);
    return current ? { home: current.slot, operands: [current], base: null } : null;
  }
  const only = operands.length === 1 ? operands[0]! : null;
  return { home: only && !only.partial ? only.slot : null, operands, base: null };
}

/** The current matter, or as much of it as a bare amount says where that is clearly only a part. */
function currentMatter(bench: Bench, step: Step, base: Slot | null): Taken | null {
  const before = bench.current;
  const current = before && before.usedBy === step ? coatedInstead(bench, step, before) : before;
  if (!current?.matter || current === base) {
    if (current !== null || before === null) missingCurrent(bench, step, []);
    return null;
  }
  const name = current.names[0] ?? 'what is being worked on';
  // `portion 200 ml into jar` where `makes` counts no pieces: into as many as it fills.
  if (step.node.amount && !(step.node.verb === 'portion' && bench.makesNoun === null)) {
    const asked = gramsPortioned(bench, current.matter, pickVarying(step.node.amount, bench.chosen));
    const there = middle(current.matter.grams);
    // Portion sizes rest on estimated volumes: only a clearly smaller amount leaves a rest for a later step.
    if (asked > 0 && asked < 0.6 * there)
      return { name, slot: current, matter: takeShare(current, asked / there, step), partial: true };
  }
  return { name, slot: current, matter: takeShare(current, 1, step), partial: false };
}

/** `brush with egg wash` below the step that made the wash: the wash is what is in work, and something else is meant. */
function coatedInstead(bench: Bench, step: Step, coat: Slot): Slot | null {
  const { verb } = step.node;
  const made = bench.all.filter((slot) => slot !== coat && slot.matter?.made && slot.names.length > 0);
  const meant = made.at(-1) ?? null;
  const name = meant?.names[0] ?? null;
  const { end } = step.node.verbSpan;
  bench.findings.push({
    code: 'used-before-made',
    place: placeOf(step, step.node.verbSpan),
    numbers: { name: null, verb, coat: coat.names[0] ?? null, into: name },
    related: coat.matter?.made ? [{ place: coat.matter.made.step.place, message: 'made here' }] : [],
    fixes:
      name === null
        ? []
        : [{ title: `Write ${verb} ${name}`, edits: [{ ...placeOf(step, { start: end, end }), text: ` ${name}` }] }],
  });
  return meant;
}

function missingCurrent(bench: Bench, step: Step, operands: readonly Taken[]): void {
  const { node } = step;
  // After a step that could not be done there is nothing in work because of that one.
  if (bench.findings.some(({ code }) => undone.has(code))) return;
  const other = [...bench.slots.values()].find((slot) => slot.matter && operands.every((taken) => taken.slot !== slot))?.names[0];
  const end = node.operands.at(-1)?.end ?? node.verbSpan.end;
  bench.findings.push({
    code: 'used-before-made',
    place: placeOf(step, node.verbSpan),
    numbers: { name: null, verb: node.verb, into: other ?? null },
    fixes:
      other && operands.length > 0
        ? [{ title: `Write into ${other}`, edits: [{ ...placeOf(step, { start: end, end }), text: ` into ${other}` }] }]
        : [],
  });
}
