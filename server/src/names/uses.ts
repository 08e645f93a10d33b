/** The names on a line and what each does there: declares, refers, or picks a value of a choice. */
import {
  type Clause,
  type FileReference,
  type Guard,
  type Line,
  type Name,
  nameKey,
  type Span,
  type Varying,
} from 'nappe-grammar';

export type Use =
  /** An ingredient line's own name: what it is and, without `as`, how steps call it. */
  | 'line'
  /** An ingredient line's own name where `as` gives another one to the steps. */
  | 'label'
  /** `as NAME`, of a line or a step. */
  | 'as'
  | 'component'
  | 'formula'
  | 'house'
  | 'equipment'
  | 'choice'
  | 'choice value'
  /** Matter a step or `basis` names. */
  | 'matter'
  /** After `into`, `over`, `in`: matter or a vessel. */
  | 'party'
  | 'vessel'
  /** `is NAME`, `like NAME`, a price's ingredient. */
  | 'kind'
  /** A value of a choice in a guard, an override or a request. */
  | 'value'
  | 'taken'
  | 'alias'
  /** After `#` in a file reference. */
  | 'formula reference';

export interface NameUse {
  readonly use: Use;
  readonly name: Name;
  /** For `taken`: the other name it gets here. */
  readonly alias?: Name;
  /** For `value` in a request: which entry. */
  readonly entry?: number;
  /** For `formula reference`: the file it is in. */
  readonly file?: string;
}

const known = new WeakMap<Line, readonly NameUse[]>();

/** In the order they stand; remembered by the line. */
export function usesIn(line: Line): readonly NameUse[] {
  let uses = known.get(line);
  if (!uses) {
    uses = [...found(line)].sort((a, b) => a.name.start - b.name.start);
    known.set(line, uses);
  }
  return uses;
}

/** The name under a column, its end included, as a cursor stands behind a word. */
export const useAt = (line: Line, column: number): NameUse | null =>
  usesIn(line).find(({ name }) => name.start <= column && column <= name.end) ?? null;

function* found(line: Line): Generator<NameUse> {
  switch (line.kind) {
    case 'ingredient': {
      const hasAlias = line.attributes.some(({ kind }) => kind === 'as');
      yield { use: hasAlias ? 'label' : 'line', name: line.name };
      for (const attribute of line.attributes) {
        if (attribute.kind === 'as') yield { use: 'as', name: attribute.name };
        if (attribute.kind === 'is') yield { use: 'kind', name: attribute.name };
      }
      yield* overridesOf(line.quantity);
      break;
    }
    case 'step':
      for (const operand of line.operands) {
        yield { use: 'matter', name: operand.name };
        if (operand.part?.kind === 'quantity') yield* overridesOf(operand.part.quantity);
      }
      if (line.amount) yield* overridesOf(line.amount);
      if (line.check) yield* overridesOf(line.check);
      for (const clause of line.clauses) yield* clauseUses(clause);
      break;
    case 'block':
      if (line.name && line.word === 'formula') yield { use: 'formula', name: line.name };
      if (line.name && line.word === 'component') yield { use: 'component', name: line.name };
      if (line.name && line.word === 'ingredient') yield { use: 'house', name: line.name };
      break;
    case 'take':
      for (const { name, as } of line.items) {
        yield { use: 'taken', name, ...(as && { alias: as }) };
        if (as) yield { use: 'alias', name: as };
      }
      yield* referenceUses(line.text, line.from);
      break;
    case 'request':
      for (const [entry, { reference, choices }] of line.entries.entries()) {
        yield* referenceUses(line.text, reference);
        for (const name of choices) yield { use: 'value', name, entry };
      }
      break;
    case 'header':
      if (line.word === 'choice') {
        yield { use: 'choice', name: line.name };
        for (const name of line.values) yield { use: 'choice value', name };
      }
      if (line.word === 'basis' && line.name) yield { use: 'matter', name: line.name };
      break;
    case 'fact':
      if (line.word === 'like') yield { use: 'kind', name: line.name };
      break;
    case 'equipment':
      yield { use: 'equipment', name: line.name };
      break;
    case 'price':
      yield { use: 'kind', name: line.name };
      break;
  }
  if ('guard' in line) yield* guardUses(line.guard);
}

/** The title after `#`, where there is one. */
function* referenceUses(text: string, reference: FileReference | null): Generator<NameUse> {
  const mark = reference ? text.indexOf('#', reference.start) : -1;
  if (!reference || reference.formula === null || mark < 0 || mark >= reference.end) return;
  const end = reference.end - (text[reference.end - 1] === '"' ? 1 : 0);
  const title = text.slice(mark + 1, end);
  const name = { start: mark + 1, end, text: title, key: nameKey(title), quoted: false };
  yield { use: 'formula reference', name, file: reference.path };
}

function* clauseUses(clause: Clause): Generator<NameUse> {
  switch (clause.word) {
    case 'to':
    case 'at':
    case 'for':
      yield* overridesOf(clause.target);
      break;
    case 'losing':
      yield* overridesOf(clause.percent);
      break;
    case 'into':
    case 'over':
      if (!('kind' in clause.target)) yield { use: 'party', name: clause.target };
      break;
    case 'in':
      if (!('kind' in clause.target)) yield { use: 'party', name: clause.target };
      else if (clause.target.kind === 'additions') yield* overridesOf(clause.target.count);
      break;
    case 'with':
      for (const operand of clause.operands) {
        yield { use: 'matter', name: operand.name };
        if (operand.part?.kind === 'quantity') yield* overridesOf(operand.part.quantity);
      }
      break;
    case 'using':
      yield { use: 'vessel', name: clause.vessel };
      break;
    case 'as':
      yield { use: 'as', name: clause.name };
      break;
  }
}

function* overridesOf(varying: Varying<Span>): Generator<NameUse> {
  for (const { value } of varying.overrides) yield { use: 'value', name: value };
}

function* guardUses(guard: Guard | null): Generator<NameUse> {
  for (const name of guard?.values ?? []) yield { use: 'value', name };
}
