/** A step's words: its numbers formatted at the card's size, its names in the card's language; each language puts them in order. */
import { isVesselNoun, type Name, nameKey, type Operand, type Quantity, singularNoun, type Yield } from 'nappe-grammar';
import { type Interval, interval, middle } from '../quantities/interval.ts';
import { celsiusOf, gramsPerUnit, isVolume, millilitresPer } from '../quantities/units.ts';
import { additionsOf, chosenOf, clauseOf, durationOf, losingOf, pickVarying } from '../run/clauses.ts';
import type { BlockRun, Input, StepRecord } from '../run/trace.ts';
import { type Context, lineName } from './context.ts';
import type { StepWords, Term } from './languages/language.ts';
import { plain } from './text.ts';
import { yieldText } from './yield.ts';

export function wordsOf(record: StepRecord, block: BlockRun, context: Context): StepWords {
  const { node } = record.step;
  const { language, measures } = context;
  const chosen = chosenOf(block.selection);
  const parties = new Parties(record, block, context);
  const range = (x: Interval, digits = 2): string =>
    x.low === x.high ? measures.number(x.low, digits) : `${measures.number(x.low, digits)}–${measures.number(x.high, digits)}`;
  const quantity = (q: Quantity, factor: number): string => amountText(interval(q.low * factor, q.high * factor), q, context);
  const to = clauseOf(node, 'to');
  const target = to ? pickVarying(to.target, chosen) : null;
  const at = clauseOf(node, 'at');
  const into = clauseOf(node, 'into');
  const over = clauseOf(node, 'over');
  const inside = clauseOf(node, 'in');
  const additions = additionsOf(node, chosen);
  const losing = losingOf(node, chosen);
  const duration = durationOf(node, chosen);
  const check = node.check ? pickVarying(node.check, chosen) : null;
  // A piece of another size takes more or less than written: grams in all over the number of pieces.
  const perPiece = block.factor / context.pieces;
  return {
    verb: node.verb,
    operands: node.operands.flatMap((operand) => parties.operand(operand, 'operand') ?? []),
    each: node.amount ? quantity(pickVarying(node.amount, chosen), perPiece) : null,
    check: check ? (check.kind === 'temperature' ? measures.temperature(celsiusOf(check)) : `${range(check)} °Bx`) : null,
    doing: node.doing ? plain(node.doing.text) : null,
    into: into && !('kind' in into.target) ? parties.other(into.target, node.amount !== null) : null,
    over: over ? parties.other(over.target, node.amount !== null) : null,
    inside: inside && !('kind' in inside.target) ? parties.other(inside.target, false) : null,
    pieces: into && 'kind' in into.target ? piecesText(into.target, context) : null,
    additions: additions
      ? {
          count: range(additions.count, 0),
          single: additions.count.high === 1,
          tools: additions.tools.map((tool) => language.tool(tool) ?? plain(tool)),
        }
      : null,
    turns:
      inside && 'kind' in inside.target && inside.target.kind === 'turns'
        ? { count: String(inside.target.count), kinds: inside.target.turns.map((turn) => plain(turn.text)) }
        : null,
    medium: inside && 'kind' in inside.target && inside.target.kind === 'medium' ? inside.target.medium : null,
    atRoom: clauseOf(node, 'at room') !== null,
    with: (clauseOf(node, 'with')?.operands ?? []).flatMap((operand) => parties.operand(operand, 'with') ?? []),
    tool: toolText(record),
    to:
      target === null
        ? null
        : target.kind === 'temperature'
          ? { kind: 'temperature', text: measures.temperature(celsiusOf(target)) }
          : target.kind === 'peak'
            ? { kind: 'peak', peaks: target.low === target.high ? [target.low] : [target.low, target.high] }
            : target.kind === 'quantity'
              ? { kind: 'mass', text: quantity(target, block.factor) }
              : target.kind === 'length'
                ? { kind: 'length', text: measures.length(interval(target.low, target.high)) }
                : { kind: 'brix', text: `${range(target)} °Bx` },
    at: at ? measures.temperature(celsiusOf(pickVarying(at.target, chosen))) : null,
    for: duration ? measures.duration(duration) : null,
    until: signText(record),
    whileWhipping: clauseOf(node, 'while whipping') !== null,
    level: clauseOf(node, 'on')?.level ?? null,
    using: usingText(record),
    losing: losing ? measures.percent(middle(losing) * 100) : null,
    as: asText(record),
  };
}

/** Which input of the record each name of the step is; a name that stands twice takes its inputs in order. */
class Parties {
  private readonly left: Input[];

  constructor(
    private readonly record: StepRecord,
    private readonly block: BlockRun,
    private readonly context: Context,
  ) {
    this.left = [...record.inputs];
  }

  operand({ name, part }: Operand, role: 'operand' | 'with'): Term | null {
    const input = this.take(name, role) ?? (role === 'with' ? this.next(role) : null);
    if (!input) return this.isVessel(name) ? this.vessel(name, false) : null;
    const grams = middle(input.matter.grams);
    const { measures } = this.context;
    const words = this.nameOf(input, name);
    if (part === null) return { text: words, amount: this.weighed(input) ?? this.made(input), part: null, vessel: null };
    if (part.kind === 'rest') return { text: words, amount: `≈ ${measures.roughMass(grams)}`, part: 'rest', vessel: null };
    if (part.kind === 'fraction')
      return { text: words, amount: `≈ ${measures.roughMass(grams)}`, part: { fraction: part.value }, vessel: null };
    const asked = pickVarying(part.quantity, chosenOf(this.block.selection));
    const factor = asked.each ? this.context.count : this.block.factor;
    return {
      text: words,
      amount: amountText(interval(asked.low * factor, asked.high * factor), asked, this.context),
      part: 'quantity',
      vessel: null,
    };
  }

  other(name: Name, each: boolean): Term {
    const input = this.take(name, 'base');
    if (!input && this.isVessel(name)) return this.vessel(name, each);
    return input
      ? { text: this.nameOf(input, name), amount: this.weighed(input), part: null, vessel: null }
      : { text: plain(name.text), amount: null, part: null, vessel: null };
  }

  private take(name: Name, role: Input['role']): Input | null {
    const at = this.left.findIndex((input) => input.role === role && nameKey(input.name) === name.key);
    const found = at >= 0 ? at : this.left.findIndex((input) => nameKey(input.name) === name.key);
    return found < 0 ? null : (this.left.splice(found, 1)[0] ?? null);
  }

  /** The run names what goes on after its first ingredient, so these are also told by their order. */
  private next(role: Input['role']): Input | null {
    const at = this.left.findIndex((input) => input.role === role);
    return at < 0 ? null : (this.left.splice(at, 1)[0] ?? null);
  }

  private nameOf({ matter }: Input, name: Name): string {
    const [part] = matter.parts;
    const isLine = part !== undefined && this.block.lines.some(({ line }) => line === part.line) && part.line.key === name.key;
    return isLine && nameKey(part.line.label) === part.line.key ? lineName(part.line, this.context.language) : plain(name.text);
  }

  /** What was weighed for it, where nothing has been done to it yet. */
  private weighed({ matter }: Input): string | null {
    if (matter.made !== null || matter.parts.length !== 1) return null;
    const grams = middle(matter.grams);
    return grams > 0 ? this.context.measures.mass(grams) : null;
  }

  /** What another component or base comes to: a figure to check on the scale. */
  private made({ matter }: Input): string | null {
    const maker = matter.made ? this.context.run.blockOf.get(matter.made) : undefined;
    return maker && maker !== this.block ? `≈ ${this.context.measures.roughMass(middle(matter.grams))}` : null;
  }

  private isVessel(name: Name): boolean {
    return this.record.mould !== null || isVesselNoun(name.key) || this.record.vessel?.key === name.key;
  }

  private vessel(name: Name, each: boolean): Term {
    const noun = singularNoun(name.key);
    const many = !each && this.context.count > 1 && noun === this.context.noun;
    const isEquipment = this.record.vessel?.key === name.key && this.record.vessel.name !== noun;
    const words = isEquipment ? null : this.context.language.noun(noun, many ? this.context.count : 1);
    return { text: words ?? plain(name.text), amount: null, part: null, vessel: many ? 'many' : 'one' };
  }
}

/** A written quantity at the card's size: masses and volumes in the card's units, pieces as a number. */
function amountText(x: Interval, { unit }: Quantity, { language, measures }: Context): string {
  const grams = gramsPerUnit(unit, { density: null, piece: null });
  if (grams !== null) return measures.mass(middle(x) * grams);
  if (isVolume(unit)) return measures.volume(middle(x) * (millilitresPer[unit] ?? 0));
  if (unit === '%') return `${measures.number(middle(x))} %`;
  return unit === 'some' ? language.labels.some : `${measures.number(middle(x))} ${language.units.pc}`;
}

const piecesText = (made: Yield, context: Context): string => yieldText(made, context.pieces, context.language, context.measures);

const signText = ({ step: { node } }: StepRecord): string | null => {
  const sign = clauseOf(node, 'until')?.sign;
  return sign ? plain(sign.text) : null;
};

const usingText = ({ step: { node } }: StepRecord): string | null => {
  const using = clauseOf(node, 'using')?.vessel;
  return using ? plain(using.text) : null;
};

const asText = ({ step: { node } }: StepRecord): string | null => {
  const as = clauseOf(node, 'as')?.name;
  return as ? plain(as.text) : null;
};

const toolText = ({ step: { node } }: StepRecord): string | null => {
  const tool = clauseOf(node, 'with tool')?.tool;
  return tool ? plain(tool.text) : null;
};
