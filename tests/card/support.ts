/** Cards for the tests: made from the samples or from a text, with the checker's findings as the command line does it. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Card, type CardOptions, makeCard } from '../../compiler/src/card/index.ts';
import {
  checkUnit,
  createWorkspace,
  type Files,
  runFormula,
  selectionWith,
  type Unit,
  type Workspace,
} from '../../compiler/src/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/u, '');

/** Names of the well-made samples that hold a formula. */
export const samples: readonly string[] = readdirSync(`${root}/samples`)
  .filter((name) => name.endsWith('.nappe') && name !== 'bases.nappe')
  .sort();

export const date = '2025-11-25';

export type Wanted = Partial<CardOptions> & { readonly with?: readonly string[]; readonly formula?: number };

/** What the card is, or why there is none. */
export function tryCard(
  source: string | { readonly text: string },
  { with: values = [], formula: index = 0, ...options }: Wanted = {},
): ReturnType<typeof makeCard> {
  const { workspace, unit } = opened(source);
  const formula = unit.formulas[index];
  if (!formula) throw new Error('the file holds no such formula');
  const { selection, unknown } = selectionWith(formula, values);
  if (unknown.length > 0) throw new Error(`no choice has ${unknown.join(', ')}`);
  const fileName = (path: string): string => path.replace(`${root}/`, '');
  const at = (place: Unit['formulas'][number]['place']) => workspace.locate(place, unit);
  const positions = {
    fileOf: (place: Parameters<typeof at>[0]) => fileName(at(place)?.path ?? unit.path),
    lineOf: (place: Parameters<typeof at>[0]) => (at(place)?.line ?? 0) + 1,
  };
  const { diagnostics, allowed } = checkUnit(workspace, unit.path, { with: Object.values(selection), only: formula, fileName });
  return makeCard({ workspace, unit, formula, selection, positions, diagnostics, allowed }, { date, ...options });
}

export function card(source: string | { readonly text: string }, wanted: Wanted = {}): Card {
  const made = tryCard(source, wanted);
  if ('problem' in made) throw new Error(made.problem);
  return made;
}

/** The run of a formula as written, first choices. */
export function run(source: string | { readonly text: string }) {
  const formula = opened(source).unit.formulas[0];
  if (!formula) throw new Error('the file holds no formula');
  return runFormula(formula, selectionWith(formula, []).selection);
}

function opened(source: string | { readonly text: string }): { readonly workspace: Workspace; readonly unit: Unit } {
  const path = `${root}/samples/${typeof source === 'string' ? source : 'written-here.nappe'}`;
  const files: Files = {
    root,
    read(wanted) {
      if (typeof source !== 'string' && wanted === path) return { text: source.text };
      try {
        return { text: readFileSync(wanted, 'utf8') };
      } catch {
        return { refused: 'missing', why: 'there is no such file' };
      }
    },
  };
  const workspace = createWorkspace(files);
  return { workspace, unit: workspace.unit(path) };
}
