/** Guards and overrides of a block: made ready, checked against the declared choices, with note of which choices they use. */
import { type Clause, type Guard, type Name, nameKey, type StepLine, type Varying } from 'nappe-grammar';
import { placeIn } from './blocks.ts';
import { conditionOf, valueNamed } from './choices.ts';
import type { BlockId, Choice, Condition, RawFinding, Varied } from './model.ts';
import { nearestNames } from './nearest.ts';

export interface GuardReader {
  condition(guard: Guard | null, line: number): Condition | null;
  /** `when` are the conditions under which the value given to `then` is the one in force. */
  varied<T, U>(varying: Varying<T>, line: number, then: (value: T, when: readonly Condition[]) => U): Varied<U>;
  /** Checks the overrides of every clause, operand and amount of a step, and gives their values' keys; the run picks them by value. */
  step(node: StepLine, line: number): readonly string[];
  /** Names of the choices read so far. */
  readonly used: ReadonlySet<string>;
}

export function guardReader(block: BlockId, choices: readonly Choice[], report: (finding: RawFinding) => void): GuardReader {
  const used = new Set<string>();
  const condition = (guard: Guard | null, line: number): Condition | null => {
    const made = conditionOf(guard, choices, (name) => report(unknownValue(block, line, name, choices)));
    for (const { choice } of made?.all ?? []) used.add(choice);
    return made;
  };
  const varied = <T, U>(varying: Varying<T>, line: number, then: (value: T, when: readonly Condition[]) => U): Varied<U> => {
    const overrides: { choice: string; value: string; then: U }[] = [];
    const others: Condition[] = [];
    for (const override of varying.overrides) {
      const found = valueNamed(choices, override.value.key);
      const first = overrides[0]?.choice ?? found?.choice;
      if (!found) report(unknownValue(block, line, override.value, choices));
      else if (found.choice !== first) report(otherChoice(block, line, override.value, found.choice, first ?? ''));
      else if (overrides.some(({ value }) => value === found.value)) report(saidTwice(block, line, override.value));
      else {
        used.add(found.choice);
        const condition = inForce(override.value, found, 'when');
        others.push(inForce(override.value, found, 'unless'));
        // biome-ignore lint/suspicious/noThenProperty: the model's word for the value then in force; nothing awaits it.
        overrides.push({ ...found, then: then(override.then, [condition]) });
      }
    }
    return { base: then(varying.base, others), overrides };
  };
  const step = (node: StepLine, line: number): readonly string[] => {
    const varying = varyingsOf(node).filter(({ overrides }) => overrides.length > 0);
    for (const one of varying) varied(one, line, () => null);
    return varying.flatMap(({ overrides }) => overrides.map(({ value }) => value.key));
  };
  return { condition, varied, step, used };
}

/** One value of a choice cannot have two amounts. */
const saidTwice = (block: BlockId, line: number, name: Name): RawFinding => ({
  code: 'duplicate-name',
  place: { block, line, start: name.start, end: name.end },
  numbers: { name: name.text, override: true },
});

/** An override's value as a condition: as if the line had a guard that names it. */
function inForce(
  name: Name,
  { choice, value }: { readonly choice: string; readonly value: string },
  word: Guard['word'],
): Condition {
  const guard: Guard = { word, values: [name], start: name.start, end: name.end };
  return { guard, all: [{ choice, values: [value] }], negated: word === 'unless' };
}

function varyingsOf(node: StepLine): readonly Varying<unknown>[] {
  const found: Varying<unknown>[] = [];
  for (const { part } of node.operands) if (part?.kind === 'quantity') found.push(part.quantity);
  if (node.amount) found.push(node.amount);
  if (node.check) found.push(node.check);
  for (const clause of node.clauses) found.push(...varyingsOfClause(clause));
  return found;
}

function varyingsOfClause(clause: Clause): readonly Varying<unknown>[] {
  switch (clause.word) {
    case 'to':
    case 'at':
    case 'for':
      return [clause.target];
    case 'losing':
      return [clause.percent];
    case 'in':
      return 'kind' in clause.target && clause.target.kind === 'additions' ? [clause.target.count] : [];
    case 'with':
      return clause.operands.flatMap(({ part }) => (part?.kind === 'quantity' ? [part.quantity] : []));
    default:
      return [];
  }
}

export function unknownValue(block: BlockId, line: number, name: Name, choices: readonly Choice[]): RawFinding {
  const values = choices.flatMap((choice) => choice.values.map((value) => ({ key: nameKey(value), text: value })));
  const [near] = nearestNames(name.key, values, 1);
  const place = placeIn(block, line, name);
  return {
    code: 'unknown-choice',
    place,
    numbers: { value: name.text, nearest: near ?? null, declared: values.map(({ text }) => text).join(', ') },
    related: choices.map((choice) => ({ place: choice.place, message: `${choice.name} is declared here` })),
    fixes: near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ ...place, text: near }] }],
  };
}

function otherChoice(block: BlockId, line: number, name: Name, choice: string, first: string): RawFinding {
  return { code: 'unknown-choice', place: placeIn(block, line, name), numbers: { value: name.text, choice, expected: first } };
}
