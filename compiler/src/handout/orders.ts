/** Requests of a handout resolved: which formula an entry means, at which size, and what the checker says of it. */
import { nameKey, type RequestEntry } from 'nappe-grammar';
import { type Card, makeCard } from '../card/index.ts';
import { type Order, orderOf } from '../card/order.ts';
import { type Checked, checkUnit } from '../diagnostics/check.ts';
import { selectionWith } from '../resolve/choices.ts';
import type { Formula, Place, Selection, Unit } from '../resolve/model.ts';
import { locate } from '../resolve/paths.ts';
import type { Positions } from '../run/trace-json.ts';
import type { HandoutInput } from './model.ts';

export interface Problem {
  readonly problem: string;
}

/** A formula under its choices. */
export interface Meant {
  readonly unit: Unit;
  readonly formula: Formula;
  readonly selection: Selection;
}

/** The formula an entry asks for; `above` is the one in the handout itself, for entries without a path. */
export function meantBy(entry: RequestEntry, above: Formula | null, input: HandoutInput): Meant | Problem {
  const { workspace, path } = input;
  const { reference } = entry;
  if (reference === null)
    return above
      ? chosen(entry, above, workspace.unit(path))
      : { problem: 'No formula stands above; write which file it is of.' };
  const located = locate(reference.path, path, workspace.files.root);
  if ('outside' in located) return { problem: `“${reference.path}” is not read: ${located.outside}.` };
  const source = workspace.source(located.path);
  if ('refused' in source) return { problem: `“${reference.path}”: ${sentence(source.why)}` };
  const unit = workspace.unit(located.path);
  const wanted = reference.formula === null ? null : nameKey(reference.formula);
  const found = unit.formulas.filter(({ name }) => wanted === null || nameKey(name) === wanted);
  if (found.length > 1) {
    const names = found.map(({ name }) => `"${reference.path}#${name}"`).join(', ');
    return { problem: `“${reference.path}” holds several formulas; write one of ${names}.` };
  }
  if (!found[0])
    return { problem: `“${reference.path}” holds no formula${reference.formula === null ? '' : ` “${reference.formula}”`}.` };
  return chosen(entry, found[0], unit);
}

/** With one full stop. */
export const sentence = (why: string): string => `${why.replace(/\.$/u, '')}.`;

function chosen(entry: RequestEntry, formula: Formula, unit: Unit): Meant | Problem {
  const { selection, unknown } = selectionWith(
    formula,
    entry.choices.map(({ text }) => text),
  );
  if (unknown.length > 0) return { problem: `${formula.name} has no choice value ${unknown.join(', ')}.` };
  if (formula.unreadable) return { problem: `A line of ${formula.name} cannot be read, so nothing can be made of it.` };
  return { unit, formula, selection };
}

/** Orders and cards of one handout; the checker is asked once for a formula under its choices. */
export class Counter {
  private readonly checks = new Map<string, Checked>();

  constructor(private readonly input: HandoutInput) {}

  order(meant: Meant, { yield: size }: Pick<RequestEntry, 'yield'>): Order | Problem {
    return orderOf({ ...this.base(meant) }, size === null ? {} : { for: size });
  }

  card(meant: Meant, { yield: size }: Pick<RequestEntry, 'yield'>): Card | Problem {
    const { diagnostics, allowed } = this.checked(meant);
    return makeCard(
      { ...this.base(meant), diagnostics, allowed },
      { date: this.input.date, detail: 'full', ...(size !== null && { for: size }) },
    );
  }

  hasErrors(meant: Meant): boolean {
    return this.checked(meant).diagnostics.some(({ severity }) => severity === 'error');
  }

  private base(meant: Meant) {
    return { workspace: this.input.workspace, ...meant, positions: this.positionsIn(meant.unit) };
  }

  private positionsIn(unit: Unit): Positions {
    const at = (place: Place) => this.input.workspace.locate(place, unit);
    return {
      fileOf: (place) => this.input.fileName(at(place)?.path ?? unit.path),
      lineOf: (place) => (at(place)?.line ?? 0) + 1,
    };
  }

  private checked({ unit, formula, selection }: Meant): Checked {
    const key = `${formula.id} ${JSON.stringify(selection)}`;
    const known = this.checks.get(key);
    if (known) return known;
    const checked = checkUnit(this.input.workspace, unit.path, {
      with: Object.values(selection),
      only: formula,
      fileName: this.input.fileName,
    });
    this.checks.set(key, checked);
    return checked;
  }
}
