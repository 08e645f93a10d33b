/** Shapes: trees without places and spacing, so that two lines that mean the same compare equal. */
import type { Clause, StepLine } from 'nappe-grammar';

/** Old names (by key) that are now called something else. */
export type Renames = ReadonlyMap<string, string>;

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

/** A node as text without places; names by their key, as they are called now. */
export function shapeOf(node: unknown, renames: Renames): string {
  return JSON.stringify(node, function (this: unknown, key, value: unknown) {
    if (places.has(key)) return undefined;
    if (value !== null && typeof value === 'object' && 'key' in value && typeof value.key === 'string')
      return renames.get(value.key) ?? value.key;
    if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return String(value);
    return typeof value === 'number' ? Math.round(value * 1e6) / 1e6 : value;
  });
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
  /** Verb and who takes part. */
  readonly parties: string;
  readonly facets: readonly Facet[];
  /** Everything. */
  readonly whole: string;
}

export function stepShape(node: StepLine, renames: Renames): StepShape {
  const parties = [node.verb, shapeOf(node.operands, renames)];
  const facets: Facet[] = [];
  const add = (name: Facet['name'], part: unknown, span: { start: number; end: number }, celsius = false): void => {
    facets.push({ name, shape: shapeOf(part, renames), text: written(node.text, span), celsius });
  };
  for (const clause of node.clauses) {
    const facet = facetOf(clause);
    if (facet === null) parties.push(shapeOf(clause, renames));
    else add(facet, clause, clause, isTemperature(clause));
  }
  if (node.amount) add('amount', node.amount, node.amount);
  if (node.check) add('check', node.check, node.check, node.check.base.kind === 'temperature');
  if (node.doing) add('text', node.doing.text, node.doing);
  if (node.guard) add('guard', { word: node.guard.word, values: node.guard.values }, node.guard);
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
