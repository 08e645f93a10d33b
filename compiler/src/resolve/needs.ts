/** What a block draws on, by its lines and by the names in its steps. */
import type { Name, StepLine } from 'nappe-grammar';
import type { Component, Taken } from './model.ts';

export interface Needs {
  /** Keys of own components that lines or steps name. */
  readonly own: readonly string[];
  /** A batch for each line of something taken, and for each taken thing that only steps name. */
  readonly taken: readonly Taken[];
}

const known = new WeakMap<Component, Needs>();

export function needsOf(component: Component): Needs {
  let needs = known.get(component);
  if (!needs) {
    needs = read(component);
    known.set(component, needs);
  }
  return needs;
}

function read(component: Component): Needs {
  const own = new Set<string>();
  const taken: Taken[] = [];
  for (const { substance } of component.lines) {
    if (substance.is === 'own component') own.add(substance.component.key);
    else if (substance.is === 'batch') taken.push(substance.taken);
  }
  const weighed = new Set(component.lines.map(({ key }) => key));
  for (const { key } of component.steps.flatMap(({ node }) => namesIn(node))) {
    const entry = component.scope.get(key);
    if (entry?.is === 'own component') own.add(entry.key);
    else if (entry && !weighed.has(key)) taken.push(entry.taken);
  }
  return { own: [...own], taken };
}

/** Every name a step holds: what it acts on, what takes that in, what goes on it. */
export function namesIn({ operands, clauses }: StepLine): readonly Name[] {
  const others = clauses.flatMap((clause) =>
    clause.word === 'with'
      ? clause.operands.map(({ name }) => name)
      : 'target' in clause && 'key' in clause.target
        ? [clause.target]
        : [],
  );
  return [...operands.map(({ name }) => name), ...others];
}
