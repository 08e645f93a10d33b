/** What a name means: the thing it refers to, over blocks and files, decided by the trees alone so that files with faults answer too. */
import { findKind, locate } from 'nappe';
import { type Block, type File, type Name, nameKey, type TakeLine } from 'nappe-grammar';
import type { Project } from '../project.ts';
import { blockAt, type Group, groupOf, groupsOf } from './groups.ts';
import {
  above,
  choiceIn,
  declaredIn,
  equipmentIn,
  exported,
  headed,
  houseIn,
  isOneComponent,
  type NamedThing,
  takesOf,
  valueIn,
} from './things.ts';
import type { NameUse } from './uses.ts';

/** The thing that a use of a name on a line of a file means; null for catalogue kinds and for names of nothing. */
export function thingOf(project: Project, path: string, line: number, use: NameUse): NamedThing | null {
  const file = project.fileAt(path);
  if (!file) return null;
  return new Scope(project, path, file, line).thing(use);
}

class Scope {
  private readonly block: Block;
  private readonly group: Group;

  constructor(
    private readonly project: Project,
    private readonly path: string,
    private readonly file: File,
    private readonly line: number,
  ) {
    this.block = blockAt(file, line);
    this.group = groupOf(file, this.block);
  }

  thing(use: NameUse): NamedThing | null {
    const { name } = use;
    switch (use.use) {
      case 'line':
        return this.meaning(name.key) ?? this.local(name.key);
      case 'label':
        return this.meaning(name.key);
      case 'as':
        return this.local(name.key);
      case 'matter':
        return this.matter(name.key);
      case 'party':
        return this.matter(name.key) ?? this.equipment(name.key);
      case 'vessel':
        return this.equipment(name.key);
      case 'kind':
        return this.house(name.key);
      case 'component':
      case 'formula':
      case 'house':
        return headed(this.path, this.file, this.block);
      case 'equipment':
        return this.equipment(name.key);
      case 'choice':
        return this.choice(name);
      case 'choice value':
        return valueIn(this.path, this.group, name.key);
      case 'value':
        return use.entry === undefined ? valueIn(this.path, this.group, name.key) : this.requested(name.key, use.entry);
      case 'taken':
        return this.taken(name);
      case 'alias':
        return this.alias(name.key, this.group) ?? this.alias(name.key, above(this.file));
      case 'formula reference':
        return this.titled(use.file ?? '', name.key);
    }
  }

  /** Declared by a line or an `as` of the block. */
  private local(key: string): NamedThing | null {
    const found = declaredIn(this.block).get(key);
    if (!found) return null;
    return {
      id: `local ${this.path} ${this.block.first} ${key}`,
      kind: found.isStep ? 'result' : 'ingredient',
      path: this.path,
      key,
      line: this.block.first + found.index,
      name: found.name,
      from: this.block.first,
      to: this.block.end,
      shared: false,
    };
  }

  /** As a step finds it: what the block declares, else a component. */
  private matter(key: string): NamedThing | null {
    const declared = declaredIn(this.block).get(key);
    if (declared) return (declared.isOwnName ? this.meaning(key) : null) ?? this.local(key);
    return this.component(key) ?? this.takenThing(key) ?? this.fileComponent(key);
  }

  /** What an ingredient line of that name weighs out beside kinds of the catalogue. */
  private meaning(key: string): NamedThing | null {
    return (
      this.component(key) ??
      this.takenThing(key) ??
      this.ownHouse(key) ??
      this.fileComponent(key) ??
      this.wholeFormula(key) ??
      this.elsewhere(key)
    );
  }

  private component(key: string): NamedThing | null {
    return this.group.head === null ? null : this.componentIn(this.group, key);
  }

  private fileComponent(key: string): NamedThing | null {
    return this.componentIn(above(this.file), key);
  }

  private componentIn(group: Group, key: string): NamedThing | null {
    const block = group.blocks.find(
      (one) => one !== this.block && one.heading?.word === 'component' && one.heading.name?.key === key,
    );
    return block ? headed(this.path, this.file, block) : null;
  }

  private house(key: string): NamedThing | null {
    return this.ownHouse(key) ?? this.takenThing(key);
  }

  private ownHouse(key: string): NamedThing | null {
    return houseIn(this.path, this.file, key);
  }

  private takenThing(key: string): NamedThing | null {
    for (const group of this.group.head ? [this.group, above(this.file)] : [this.group])
      for (const { line } of takesOf(group))
        for (const item of line.items) {
          if ((item.as ?? item.name).key !== key) continue;
          return item.as ? this.alias(key, group) : this.remote(item.name, line);
        }
    return null;
  }

  private alias(key: string, group: Group): NamedThing | null {
    for (const { line, number } of takesOf(group))
      for (const { as } of line.items)
        if (as?.key === key) {
          const from = group.head?.first ?? 0;
          const to = group.head ? (group.blocks.at(-1)?.end ?? from) : this.file.lines.length;
          return {
            id: `alias ${this.path} ${from} ${key}`,
            kind: 'alias',
            path: this.path,
            key,
            line: number,
            name: as,
            from,
            to,
            shared: false,
          };
        }
    return null;
  }

  private taken(name: Name): NamedThing | null {
    const line = this.file.lines[this.line];
    return line?.kind === 'take' ? this.remote(name, line) : null;
  }

  private remote(name: Name, line: TakeLine): NamedThing | null {
    const other = line.from ? this.other(line.from.path) : null;
    return other && line.from ? exported(other.path, other.file, name.key, line.from.formula) : null;
  }

  private other(written: string): { readonly path: string; readonly file: File } | null {
    const located = locate(written, this.path, this.project.root);
    const file = 'path' in located ? this.project.fileAt(located.path) : null;
    return file && 'path' in located ? { path: located.path, file } : null;
  }

  /** Another formula of the file that is one component and has the title. */
  private wholeFormula(key: string): NamedThing | null {
    const group = groupsOf(this.file).find(
      (one) => one !== this.group && one.head?.heading?.name?.key === key && isOneComponent(one),
    );
    return group?.head ? headed(this.path, this.file, group.head) : null;
  }

  /** A component of another formula of the file, where only one has it. */
  private elsewhere(key: string): NamedThing | null {
    const found = groupsOf(this.file).flatMap((group) =>
      group.head && group !== this.group
        ? group.blocks.filter(({ heading }) => heading?.word === 'component' && heading.name?.key === key)
        : [],
    );
    const [block, second] = found;
    return block && !second && !isInCatalogue(key) ? headed(this.path, this.file, block) : null;
  }

  private titled(written: string, key: string): NamedThing | null {
    const other = this.other(written);
    const head = other && groupsOf(other.file).find((group) => group.head?.heading?.name?.key === key)?.head;
    return other && head ? headed(other.path, other.file, head) : null;
  }

  private equipment(key: string): NamedThing | null {
    const own =
      equipmentIn(this.path, this.group.head ? this.group : above(this.file), key) ??
      equipmentIn(this.path, above(this.file), key);
    if (own) return own;
    for (const group of [this.group, above(this.file)])
      for (const { line } of takesOf(group)) {
        if (!line.from || !line.items.some(({ name }) => name.key === 'equipment' && !name.quoted)) continue;
        const other = this.other(line.from.path);
        for (const theirs of other ? groupsOf(other.file) : []) {
          const found = equipmentIn(other?.path ?? '', theirs, key);
          if (found) return found;
        }
      }
    return null;
  }

  private choice(name: Name): NamedThing | null {
    return choiceIn(this.path, this.group, name.key);
  }

  /** A value that a request gives: of the formula it names, or of the one above. */
  private requested(key: string, entry: number): NamedThing | null {
    const line = this.file.lines[this.line];
    if (line?.kind !== 'request') return null;
    const reference = line.entries[entry]?.reference;
    if (!reference) return valueIn(this.path, this.group, key);
    const other = this.other(reference.path);
    if (!other) return null;
    const wanted = reference.formula === null ? null : nameKey(reference.formula);
    for (const group of groupsOf(other.file)) {
      if (wanted !== null && group.head?.heading?.name?.key !== wanted) continue;
      const found = valueIn(other.path, group, key);
      if (found) return found;
    }
    return null;
  }
}

const isInCatalogue = (key: string): boolean => Boolean(findKind(key));
