/** What a block draws on, by its lines and by the names in its steps. */
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
  for (const key of namedIn(component)) {
    const entry = component.scope.get(key);
    if (entry?.is === 'own component') own.add(entry.key);
    else if (entry && !weighed.has(key)) taken.push(entry.taken);
  }
  return { own: [...own], taken };
}

function namedIn({ steps }: Component): ReadonlySet<string> {
  const named = new Set<string>();
  for (const { node } of steps) {
    for (const operand of node.operands) named.add(operand.name.key);
    for (const clause of node.clauses) {
      if ((clause.word === 'into' || clause.word === 'over' || clause.word === 'in') && !('kind' in clause.target))
        named.add(clause.target.key);
      if (clause.word === 'with') for (const operand of clause.operands) named.add(operand.name.key);
    }
  }
  return named;
}
