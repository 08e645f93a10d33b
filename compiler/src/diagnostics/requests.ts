/** What requests ask for and no formula can give: a file of several formulas or of none, a yield that cannot be compared. */
import { nameKey, type RequestEntry } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import { selectionWith } from '../resolve/choices.ts';
import type { Formula, RawFinding, Request, Unit } from '../resolve/model.ts';
import { locate } from '../resolve/paths.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { makesOf } from '../run/makes.ts';
import { runFormula } from '../run/run.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { factorFor } from '../scale/factor.ts';

/** Missing files, formulas and choice values are the resolver's to find. */
export function requestFindings(workspace: Workspace, unit: Unit): readonly RawFinding[] {
  return unit.requests
    .filter(({ line }) => line.word !== 'compare' && line.problems.length === 0)
    .flatMap((request) => request.line.entries.flatMap((entry) => entryFindings(workspace, unit, request, entry)));
}

function entryFindings(workspace: Workspace, unit: Unit, request: Request, entry: RequestEntry): readonly RawFinding[] {
  const found = formulasOf(workspace, unit, request, entry);
  if (found === null) return [];
  const { reference } = entry;
  const place = { ...request.place, start: (reference ?? entry).start, end: (reference ?? entry).end };
  const [formula, ...more] = found;
  if (!formula) return [{ code: 'import-missing', place, numbers: { what: 'no formula', path: reference?.path ?? '' } }];
  if (more.length > 0) {
    const known = found.map(({ name }) => `\`"${reference?.path}#${name}"\``).join(', ');
    return [{ code: 'import-missing', place, numbers: { what: 'which formula', path: reference?.path ?? '', known } }];
  }
  return sizeFindings(formula, request, entry);
}

/** Null where the file or the formula is missing, which is said already. */
function formulasOf(workspace: Workspace, unit: Unit, request: Request, { reference }: RequestEntry): readonly Formula[] | null {
  if (reference === null) return request.above ? [request.above] : null;
  const located = locate(reference.path, unit.path, workspace.files.root);
  if ('outside' in located || 'refused' in workspace.source(located.path)) return null;
  const { formulas } = workspace.unit(located.path);
  if (reference.formula === null) return formulas;
  const wanted = nameKey(reference.formula);
  const named = formulas.filter(({ name }) => nameKey(name) === wanted);
  return named.length === 0 ? null : named;
}

function sizeFindings(formula: Formula, request: Request, entry: RequestEntry): readonly RawFinding[] {
  if (entry.yield === null || formula.unreadable) return [];
  const { selection } = selectionWith(
    formula,
    entry.choices.map(({ text }) => text),
  );
  const { result } = runFormula(formula, selection);
  const scaling = factorFor(entry.yield, {
    written: makesOf(formula, selection)?.yield ?? null,
    grams: result ? middle(result.grams) : null,
    millilitres: result ? middle(millilitresOf(result)) : null,
  });
  if (!('problem' in scaling)) return [];
  const { start, end } = entry.yield;
  return [
    { code: 'import-missing', place: { ...request.place, start, end }, numbers: { what: 'yield', problem: scaling.problem } },
  ];
}
