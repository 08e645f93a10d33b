/** Two files made ready for comparison: their formulas paired by name, else in order. */
import { nameKey } from 'nappe-grammar';
import { checkUnit } from '../diagnostics/check.ts';
import type { Formula } from '../resolve/model.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { type CompareInput, compareFormulas } from './compare.ts';
import { kitchenChanges } from './kitchen.ts';
import type { Comparison } from './model.ts';
import { paired } from './pairing.ts';

export interface Side {
  readonly workspace: Workspace;
  readonly path: string;
  /** As people name it. */
  readonly file: string;
  /** Only the formula of this name. */
  readonly formula?: string | null;
}

/** A comparison a pair of formulas or bases, and one of house ingredients, equipment and prices where those differ; a formula that only one side has is compared with nothing and so not told. */
export function comparableOf(
  old: Side,
  next: Side,
): { readonly comparisons: readonly Comparison[]; readonly added: readonly string[]; readonly dropped: readonly string[] } {
  const { pairs, left, come } = paired(
    inputsOf(old),
    inputsOf(next),
    (a, b) => nameKey(a.formula.name) === nameKey(b.formula.name),
    // Renamed, or copied to a file of its own under another name.
    (a, b, free) => free.left.indexOf(a) === free.come.indexOf(b),
  );
  const kitchen = old.formula == null && next.formula == null ? kitchenOf(old, next) : [];
  return {
    comparisons: [...kitchen, ...pairs.map(([a, b]) => compareFormulas(a, b))],
    added: come.map(({ formula }) => formula.name),
    dropped: left.map(({ formula }) => formula.name),
  };
}

/** A comparison of what stands outside formulas, where something there differs. */
function kitchenOf(old: Side, next: Side): readonly Comparison[] {
  const [before, after] = [old, next].map(({ workspace, path }) => workspace.source(path));
  if (!before || !after || 'refused' in before || 'refused' in after) return [];
  const changes = kitchenChanges(before.file, after.file);
  return changes.length === 0 ? [] : [{ old: old.file, new: next.file, formula: next.file, changes }];
}

/** Formulas, and file-level components, each as a formula of one component. */
function inputsOf({ workspace, path, file, formula: wanted }: Side): CompareInput[] {
  const unit = workspace.unit(path);
  return [...unit.formulas, ...workspace.bases(path)]
    .filter(({ name }) => wanted == null || nameKey(name) === nameKey(wanted))
    .map((formula) => ({
      file,
      formula,
      lineOf: (place) => {
        const at = workspace.locate(place, unit);
        return at?.path === path ? at.line + 1 : null;
      },
      lineAt: (place) => {
        const at = workspace.locate(place, unit);
        const source = at && workspace.source(at.path);
        return source && 'file' in source ? (source.file.lines[at.line] ?? null) : null;
      },
      diagnostics: diagnosticsOf(workspace, path, formula),
    }));
}

/** Only what stands in this file: a base's own faults are told where the base is compared. */
function diagnosticsOf(workspace: Workspace, path: string, formula: Formula) {
  const { diagnostics } = checkUnit(workspace, path, { only: formula, fileName: (at) => at });
  return diagnostics.filter(({ file, severity }) => file === path && severity !== 'notice');
}
