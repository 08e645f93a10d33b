/** Orders for the tests of lists, timelines and labels: from samples or from texts, as the command line makes them. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Order, orderOf } from '../../compiler/src/card/order.ts';
import { createWorkspace, type Files, type Place, selectionWith } from '../../compiler/src/index.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/u, '');

export interface Wanted {
  readonly for?: string;
  readonly with?: readonly string[];
  /** Which formula of the file, from 0. */
  readonly formula?: number;
}

/** `source` is a path below the repository, or a text. */
export function order(source: string | { readonly text: string }, wanted: Wanted = {}): Order {
  const found = tryOrder(source, wanted);
  if ('problem' in found) throw new Error(found.problem);
  return found;
}

export function tryOrder(
  source: string | { readonly text: string },
  { for: size, with: values = [], formula: index = 0 }: Wanted,
) {
  const path = typeof source === 'string' ? `${root}/${source}` : `${root}/samples/written-here.nappe`;
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
  const unit = workspace.unit(path);
  const formula = unit.formulas[index];
  if (!formula) throw new Error('the file holds no such formula');
  const { selection, unknown } = selectionWith(formula, values);
  if (unknown.length > 0) throw new Error(`no choice has ${unknown.join(', ')}`);
  const at = (place: Place) => workspace.locate(place, unit);
  const positions = {
    fileOf: (place: Place) => (at(place)?.path ?? unit.path).replace(`${root}/`, ''),
    lineOf: (place: Place) => (at(place)?.line ?? 0) + 1,
  };
  return orderOf({ workspace, unit, formula, selection, positions }, size === undefined ? {} : { for: size });
}

/** The well-made samples that hold a formula, the course's lessons among them. */
export const samples: readonly string[] = [
  'samples/blackcurrant-mousse.nappe',
  'samples/chocolate-mousse.nappe',
  'samples/harbour-entremets.nappe',
  'samples/hojicha-bavarois.nappe',
  'samples/lemon-tart.nappe',
  'samples/mirror-glaze.nappe',
  'samples/panna-cotta.nappe',
  'samples/pastry-cream.nappe',
  'samples/sable-diamonds.nappe',
  'samples/course/lesson-1-custard.nappe',
  'samples/course/lesson-2-ganache.nappe',
  'samples/course/lesson-3-meringue.nappe',
  'samples/course/lesson-4-two-storeys.nappe',
];
