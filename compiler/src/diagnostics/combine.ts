/** Findings over combinations: one finding a place, with the worst severity's words and the combinations it holds in. */
import type { Selection } from '../resolve/model.ts';
import type { Figures, Fix, Place, Related, Severity } from './rule.ts';

/** One finding under one combination, worded. */
export interface Worded {
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  readonly message: string;
  readonly numbers: Figures;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
}

export interface Combined extends Worded {
  /** Absent where it holds in every combination. */
  readonly when?: readonly Selection[];
}

/** `found[i]` holds what was found under `selections[i]`. In the order first found. */
export function combine(found: readonly (readonly Worded[])[], selections: readonly Selection[]): readonly Combined[] {
  const byKey = new Map<string, { worst: Worded; in: Set<number> }>();
  found.forEach((findings, index) => {
    for (const finding of findings) {
      const key = keyOf(finding);
      const known = byKey.get(key);
      if (!known) byKey.set(key, { worst: finding, in: new Set([index]) });
      else {
        known.in.add(index);
        if (rank(finding.severity) < rank(known.worst.severity)) known.worst = finding;
      }
    }
  });
  return [...byKey.values()].map(({ worst, in: indices }) => {
    const when = reduced(indices, selections);
    return when === null ? worst : { ...worst, when };
  });
}

export const keyOf = ({ code, place }: { readonly code: string; readonly place: Place }): string =>
  `${code} ${place.start} ${place.end} ${place.line} ${place.block}`;

/** Worst first. */
export const rank = (severity: Severity): number => (severity === 'error' ? 0 : severity === 'warning' ? 1 : 2);

/** The combinations named by the choices that decide; null where it holds in all. */
export function reduced(indices: ReadonlySet<number>, selections: readonly Selection[]): readonly Selection[] | null {
  if (indices.size === selections.length) return null;
  let names = Object.keys(selections[0] ?? {});
  // A choice decides nothing where combinations that agree in all the others agree in the answer.
  for (const name of names) {
    const others = names.filter((other) => other !== name);
    if (decides(others, indices, selections)) names = others;
  }
  const seen = new Map<string, Selection>();
  for (const index of indices) {
    const selection = selections[index] ?? {};
    const short = Object.fromEntries(names.map((name) => [name, selection[name] ?? '']));
    seen.set(JSON.stringify(short), short);
  }
  return [...seen.values()];
}

function decides(names: readonly string[], indices: ReadonlySet<number>, selections: readonly Selection[]): boolean {
  const answers = new Map<string, boolean>();
  return selections.every((selection, index) => {
    const key = JSON.stringify(names.map((name) => selection[name]));
    const holds = indices.has(index);
    const known = answers.get(key);
    answers.set(key, holds);
    return known === undefined || known === holds;
  });
}
