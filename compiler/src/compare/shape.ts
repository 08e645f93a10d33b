/** Shapes: trees without places and spacing, so that two lines that mean the same compare equal. */
import { type Clause, nameKey, type Quantity, type Reading, type StepLine } from 'nappe-grammar';
import { celsius, gramsPer, isMass, isVolume, millilitresPer } from '../quantities/units.ts';
import type { Renames } from './names.ts';

const places: ReadonlySet<string> = new Set([
  'start',
  'end',
  'wordSpan',
  'verbSpan',
  'span',
  'comment',
  'problems',
  'unitWritten',
  'ranged',
]);

/** A node as text without places: names by their key as they are called now, measures in one unit, overrides in one order. */
export function shapeOf(node: unknown, renames: Renames): string {
  return JSON.stringify(node, (key, value: unknown) => {
    if (places.has(key)) return undefined;
    if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return String(value);
    if (typeof value === 'number') return Math.round(value * 1e4) / 1e4;
    if (value === null || typeof value !== 'object') return value;
    if ('key' in value && typeof value.key === 'string') return renames.get(value.key) ?? value.key;
    // A sign or a tool: quotes mean nothing.
    if ('quoted' in value && 'text' in value && typeof value.text === 'string') return nameKey(value.text);
    if ('overrides' in value && 'base' in value) return varying(value as Varying, renames);
    if ('kind' in value && value.kind === 'temperature') return inCelsius(value as Reading);
    return 'kind' in value && value.kind === 'quantity' ? inOneUnit(value as Quantity) : value;
  });
}

interface Varying {
  readonly base: unknown;
  readonly overrides: readonly { readonly value: { readonly key: string }; readonly then: unknown }[];
}

/** Without overrides that say what the base says. */
function varying({ base, overrides }: Varying, renames: Renames): unknown {
  const shape = shapeOf(base, renames);
  const others = overrides
    .map(({ value, then }) => `${renames.get(value.key) ?? value.key} ${shapeOf(then, renames)}`)
    .filter((_, index) => shapeOf(overrides[index]?.then, renames) !== shape);
  return [shape, ...others.sort()];
}

const inCelsius = ({ low, high, unit }: Reading) => `${ten(celsius(low, unit))}..${ten(celsius(high, unit))} °C`;

/** No thermometer tells a hundredth of a degree. */
const ten = (value: number): string => (Number.isFinite(value) ? (Math.round(value * 10) / 10).toString() : String(value));

function inOneUnit({ low, high, unit, each }: Quantity): string {
  const [factor, word] = isMass(unit) ? [gramsPer[unit], 'g'] : isVolume(unit) ? [millilitresPer[unit], 'ml'] : [1, unit];
  const round = (value: number) => Math.round(value * factor * 1e4) / 1e4;
  return `${round(low)}..${round(high)} ${word}${each ? ' each' : ''}`;
}

/** One thing a step says, beside its verb and who takes part. */
export interface Facet {
  readonly name: 'to' | 'at' | 'for' | 'until' | 'additions' | 'losing' | 'check' | 'amount' | 'text' | 'manner' | 'guard';
  readonly shape: string;
  /** As written, single spaces. */
  readonly text: string;
  /** The unit or kind of what it gives, for telling temperatures from times. */
  readonly celsius: boolean;
}

export interface StepShape {
  /** Verb and who takes part, in whatever order they are named; the order counts for `layer` alone. */
  readonly parties: string;
  readonly facets: readonly Facet[];
  /** Everything. */
  readonly whole: string;
}

/** `guard` is when the step is there, as told by `guardKey`. */
export function stepShape(node: StepLine, guard: string, renames: Renames): StepShape {
  const inOrder = (operands: StepLine['operands']): string => {
    const shapes = operands.map((operand) => shapeOf(operand, renames));
    return (node.verb === 'layer' ? shapes : shapes.sort()).join();
  };
  const parties = [node.verb, inOrder(node.operands)];
  const facets: Facet[] = [];
  const add = (name: Facet['name'], part: unknown, span: { start: number; end: number }, celsius = false): void => {
    facets.push({ name, shape: shapeOf(part, renames), text: written(node.text, span), celsius });
  };
  for (const clause of node.clauses) {
    const facet = facetOf(clause);
    if (clause.word === 'with') parties.push(`with ${inOrder(clause.operands)}`);
    else if (facet === null) parties.push(shapeOf(clause, renames));
    else add(facet, clause, clause, isTemperature(clause));
  }
  if (node.amount) add('amount', node.amount, node.amount);
  if (node.check) add('check', node.check, node.check, node.check.base.kind === 'temperature');
  if (node.doing) add('text', node.doing.text, node.doing);
  if (node.guard && guard !== 'always')
    facets.push({ name: 'guard', shape: guard, text: written(node.text, node.guard), celsius: false });
  facets.sort((a, b) => a.name.localeCompare(b.name) || a.shape.localeCompare(b.shape));
  const said = parties.join(' ');
  return { parties: said, facets, whole: `${said} ${facets.map(({ name, shape }) => `${name}:${shape}`).join(' ')}` };
}

/** Which facet a clause is; null where it says who takes part. */
function facetOf(clause: Clause): Facet['name'] | null {
  switch (clause.word) {
    case 'to':
      return 'to';
    case 'at':
    case 'at room':
      return 'at';
    case 'for':
      return 'for';
    case 'until':
      return 'until';
    case 'losing':
      return 'losing';
    case 'in':
      return 'kind' in clause.target ? (clause.target.kind === 'additions' ? 'additions' : 'manner') : null;
    case 'with tool':
    case 'while whipping':
    case 'on':
    case 'using':
      return 'manner';
    default:
      return null;
  }
}

const isTemperature = (clause: Clause): boolean =>
  (clause.word === 'to' || clause.word === 'at') && clause.target.base.kind === 'temperature';

/** The source between two columns, runs of spaces as one. */
export const written = (text: string, { start, end }: { start: number; end: number }): string =>
  text.slice(start, end).split(/\s+/).join(' ').trim();
