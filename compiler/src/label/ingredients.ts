/**
 * The list of ingredients: everything weighed, through all bases, by what of it is in what is made.
 *
 * Descending order of weight at the time of use (Regulation (EU) 1169/2011, Article 18(1); 21 CFR 101.4(a)); added water counts with what
 * is left of it: the steam is taken off (Annex VII, part A, 1).
 */
import type { Order } from '../card/order.ts';
import { plain } from '../card/text.ts';
import type { Kind } from '../catalogue/kind.ts';
import { middle } from '../quantities/interval.ts';
import { pick } from '../resolve/choices.ts';
import type { SourceLine } from '../resolve/model.ts';
import { allergensOfKind, containsNames, type Named } from './allergens.ts';
import type { Declared, Region } from './model.ts';
import { declaredName, isCompound } from './names.ts';
import { isPromised, promisedWords } from './quid.ts';

export function ingredientsOf({ context: { run }, formula, selection }: Order, region: Region): readonly Declared[] {
  const { result } = run;
  const made = result ? middle(result.grams) : 0;
  const groups = new Map<string, Group>();
  const groupOf = (line: SourceLine): Group | null => {
    if (line.substance.is !== 'kind') return null;
    const kind = line.substance.known ? line.substance.kind : null;
    const name = plain(declaredName(line.substance.house ? null : kind, line.label, region));
    let group = groups.get(name);
    if (!group) {
      group = {
        name,
        grams: 0,
        some: false,
        kinds: new Set(),
        labels: new Set(),
        compound: line.substance.house || isCompound(kind),
      };
      groups.set(name, group);
    }
    if (kind) group.kinds.add(kind);
    group.labels.add(line.label);
    return group;
  };
  for (const { line, grams } of result?.parts ?? []) {
    const group = groupOf(line);
    if (group) group.grams += grams;
  }
  // Steeped and strained out, greased with, `some`: used, and perhaps still there.
  for (const { lines, selection: chosen } of run.blocks)
    for (const { line, used } of lines) {
      const some = pick(line.amount, chosen).measure === 'some';
      const group = used || some ? groupOf(line) : null;
      if (group) group.some ||= some;
    }
  const water = groups.get('water');
  if (water && result) water.grams = Math.max(0, water.grams - middle(result.evaporated));
  // All boiled off: it is no ingredient any more.
  if (water && result && water.grams < 1e-6) groups.delete('water');
  const promised = region === 'eu' ? promisedWords(formula, selection) : new Set<string>();
  return [...groups.values()]
    .sort((a, b) => b.grams - a.grams || a.name.localeCompare(b.name, 'en'))
    .map((group) => declared(group, made, region, promised));
}

/** One name of the list; it may stand for several kinds. */
interface Group {
  readonly name: string;
  grams: number;
  some: boolean;
  readonly kinds: Set<Kind>;
  readonly labels: Set<string>;
  readonly compound: boolean;
}

function declared(group: Group, made: number, region: Region, promised: ReadonlySet<string>): Declared {
  const share = made > 0 ? (100 * group.grams) / made : 0;
  const kinds = [...group.kinds];
  const names = [group.name, ...group.labels, ...kinds.map(({ name }) => name)];
  const there = group.grams > 1e-6;
  return {
    name: group.name,
    grams: there || !group.some ? group.grams : null,
    share,
    percent: there && isPromised(names, kinds[0] ?? null, share, promised) ? share : null,
    compound: group.compound,
    strained: !there && !group.some,
    allergens: [...new Set(kinds.flatMap((kind) => allergensOfKind(kind, region).map(({ name }) => name)))],
  };
}

/** Of everything weighed, also what is only strained out or dusted with. */
export const containsOf = ({ context: { run } }: Order, region: Region): readonly Named[] =>
  containsNames(
    run.blocks.flatMap(({ lines }) =>
      lines.flatMap(({ line: { substance } }) => (substance.is === 'kind' ? allergensOfKind(substance.kind, region) : [])),
    ),
    region,
  );
