/** One formula of one file, opened for a command: `FILE` or `FILE#Formula name`, and the choices it is wanted with. */
import { existsSync } from 'node:fs';
import { nameKey } from 'nappe-grammar';
import { selectionWith } from '../resolve/choices.ts';
import type { Formula, Place, Selection, Unit } from '../resolve/model.ts';
import { createWorkspace, type Workspace } from '../resolve/workspace.ts';
import type { Positions } from '../run/trace-json.ts';
import { UsageError } from './failure.ts';
import { display, filesOnDisk, slashed, Unreadable } from './files.ts';
import { standardInput, type Target, targetOf } from './targets.ts';

export interface Opened {
  readonly workspace: Workspace;
  readonly unit: Unit;
  readonly formula: Formula;
  readonly positions: Positions;
  /** The file as people name it. */
  readonly shown: string;
}

/** @throws Unreadable, UsageError where the file holds no such formula, or several and none is named. */
export function openFormula(named: string): Opened {
  const { file, formula: wanted } = split(named);
  const target = targetOf(file);
  const workspace = workspaceOf(target);
  const path = slashed(target.path);
  const source = workspace.source(path);
  if ('refused' in source) throw new Unreadable(display(target.path), source.why);
  const unit = workspace.unit(path);
  const shown = shownPath(target.path);
  return { workspace, unit, formula: choose(unit.formulas, wanted, shown), positions: positionsIn(workspace, unit), shown };
}

export function workspaceOf({ root, path, given }: Target): Workspace {
  return createWorkspace(filesOnDisk(root, given === undefined ? undefined : new Map([[slashed(path), given]])));
}

/** @throws UsageError for a value that no choice of the formula declares. */
export function selectionFor(formula: Formula, values: readonly string[]): Selection {
  const { selection, unknown } = selectionWith(formula, values);
  if (unknown.length === 0) return selection;
  const known = formula.choices.flatMap((choice) => choice.values);
  throw new UsageError(
    known.length === 0
      ? `${formula.name} offers no choices, so --with ${unknown.join(', ')} means nothing here.`
      : `${formula.name} has no choice value ${unknown.join(', ')}; it has ${known.join(', ')}.`,
  );
}

/** For `--with VALUE,…`, which may be given more than once. */
export const values = (text: string, before: readonly string[] = []): string[] => [
  ...before,
  ...text
    .split(',')
    .map((value) => value.trim())
    .filter((value) => value !== ''),
];

export function positionsIn(workspace: Workspace, unit: Unit): Positions {
  const at = (place: Place) => workspace.locate(place, unit);
  return { fileOf: (place) => shownPath(at(place)?.path ?? unit.path), lineOf: (place) => (at(place)?.line ?? 0) + 1 };
}

/** Standard input is named as it was on the command line. */
export const shownPath = (path: string): string => (path.endsWith(`/${standardInput}`) ? standardInput : display(path));

function split(named: string): { readonly file: string; readonly formula: string | null } {
  const mark = named.indexOf('#');
  if (mark < 0 || existsSync(named)) return { file: named, formula: null };
  return { file: named.slice(0, mark), formula: named.slice(mark + 1) };
}

function choose(formulas: readonly Formula[], wanted: string | null, shown: string): Formula {
  const names = formulas.map(({ name }) => `${shown}#${name}`).join(', ');
  if (wanted !== null) {
    const found = formulas.find(({ name }) => nameKey(name) === nameKey(wanted));
    if (found) return found;
    throw new UsageError(`${shown} holds no formula ${wanted}${names === '' ? '.' : `; it holds ${names}.`}`);
  }
  if (formulas.length > 1) throw new UsageError(`${shown} holds several formulas; name one of ${names}.`);
  if (!formulas[0])
    throw new UsageError(`${shown} holds no formula; a formula begins with a line such as: formula Vanilla custard`);
  return formulas[0];
}
