/** Every place that names a thing, over its own file and those that can name it. */
import type { File, Name } from 'nappe-grammar';
import type { Analysis, Project } from '../project.ts';
import { blockAt, type Group, groupOf, groupsOf, linesOf } from './groups.ts';
import { thingOf } from './symbols.ts';
import { choiceIn, type NamedThing, valueIn } from './things.ts';
import { type NameUse, useAt, usesIn } from './uses.ts';

export interface Occurrence {
  readonly path: string;
  readonly line: number;
  readonly use: NameUse;
  readonly name: Name;
  readonly declares: boolean;
}

/** The use of a name under a position, and what it means (null: of the catalogue, or of nothing). */
export interface Pointed {
  readonly line: number;
  readonly use: NameUse;
  readonly thing: NamedThing | null;
}

export function pointedAt({ project, path, file }: Analysis, line: number, column: number): Pointed | null {
  const node = file.lines[line];
  const use = node ? useAt(node, column) : null;
  return use ? { line, use, thing: thingOf(project, path, line, use) } : null;
}

/** In the order of files and lines, its own file first. `within` keeps to one file. */
export function occurrencesOf(project: Project, thing: NamedThing, within?: string): readonly Occurrence[] {
  const things = thing.kind === 'value' || thing.kind === 'choice' ? linked(project, thing) : [thing];
  const found: Occurrence[] = [];
  const seen = new Set<string>();
  for (const one of things) {
    const ids = new Set(things.map(({ id }) => id));
    const paths = one.shared ? [one.path, ...project.importersOf(one.path)] : [one.path];
    for (const path of new Set(paths)) {
      if (within !== undefined && path !== within) continue;
      const file = project.fileAt(path);
      if (!file) continue;
      const [from, to] = path === one.path ? [one.from, Math.min(one.to, file.lines.length)] : [0, file.lines.length];
      for (const occurrence of inLines(project, path, file, one.key, ids, from, to)) {
        const key = `${path} ${occurrence.line} ${occurrence.name.start}`;
        if (seen.has(key)) continue;
        seen.add(key);
        found.push(occurrence);
      }
    }
  }
  return found;
}

function* inLines(
  project: Project,
  path: string,
  file: File,
  key: string,
  ids: ReadonlySet<string>,
  from: number,
  to: number,
): Generator<Occurrence> {
  for (let number = from; number < to; number++) {
    const line = file.lines[number];
    if (!line) continue;
    for (const use of usesIn(line)) {
      if (use.name.key !== key) continue;
      const thing = thingOf(project, path, number, use);
      if (thing && ids.has(thing.id)) yield { path, line: number, use, name: use.name, declares: declares(use, thing) };
    }
  }
}

const declares = ({ use }: NameUse, { kind }: NamedThing): boolean =>
  (use === kind && use !== 'value') ||
  (use === 'choice value' && kind === 'value') ||
  (use === 'line' && kind === 'ingredient') ||
  (use === 'as' && (kind === 'result' || kind === 'ingredient'));

/** A base's choice follows its taker's choice of the same name: values and choices so tied, over however many files. */
function linked(project: Project, thing: NamedThing): readonly NamedThing[] {
  const found = new Map([[thing.id, thing]]);
  for (const one of found.values())
    for (const { path, group } of neighbours(project, one)) {
      const other = thing.kind === 'choice' ? choiceIn(path, group, thing.key) : valueIn(path, group, thing.key);
      if (other && other.choice === thing.choice) found.set(other.id, other);
    }
  return [...found.values()];
}

interface GroupAt {
  readonly path: string;
  readonly group: Group;
}

/** Formulas that the thing's formula takes from, and those that take from it. */
function neighbours(project: Project, { path, from }: NamedThing): readonly GroupAt[] {
  const file = project.fileAt(path);
  const own = file && groupsOf(file).find(({ head }) => head?.first === from);
  if (!own) return [];
  const takers = project.importersOf(path).flatMap((other) => {
    const theirs = project.fileAt(other);
    return (theirs ? groupsOf(theirs) : [])
      .filter(
        (group) =>
          group.head && takenBy(project, { path: other, group }).some((taken) => taken.path === path && taken.group === own),
      )
      .map((group) => ({ path: other, group }));
  });
  return [...takenBy(project, { path, group: own }), ...takers];
}

/** Formulas of other files that a formula takes something of. */
function takenBy(project: Project, { path, group }: GroupAt): readonly GroupAt[] {
  const file = project.fileAt(path);
  if (!file) return [];
  const found: GroupAt[] = [];
  for (const part of [group, groupsOf(file)[0] as Group])
    for (const { line, number } of linesOf(part))
      for (const use of line.kind === 'take' ? usesIn(line) : []) {
        if (use.use !== 'taken') continue;
        const thing = thingOf(project, path, number, use);
        const other = thing && project.fileAt(thing.path);
        if (thing && other) found.push({ path: thing.path, group: groupOf(other, blockAt(other, thing.line)) });
      }
  return found.filter(({ group: theirs }) => theirs.head !== null);
}
