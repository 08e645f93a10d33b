/** The files of one root: who names whom, and what each file's check said, kept as long as nothing it rests on changed. */
import { type Checked, checkUnit, createWorkspace, type Files, locate, type Unit, type Workspace } from 'nappe';
import type { Block, File } from 'nappe-grammar';
import { type Offered, offeredIn } from './names/offered.ts';
import { referencesIn } from './names/references-in.ts';
import type { Project } from './project.ts';

export class RootProject implements Project {
  readonly root: string;
  readonly workspace: Workspace;
  private readonly known = new Set<string>();
  private sorted: readonly string[] | null = null;
  private readonly targets = new Map<string, readonly string[]>();
  private readonly importers = new Map<string, Set<string>>();
  private readonly offered = new Map<string, readonly Offered[]>();
  /** Files whose last report still holds, and of which nothing else is kept. */
  private readonly settled = new Set<string>();
  private readonly interfaces = new Map<string, readonly unknown[]>();
  private readonly checks = new Map<string, Check>();

  constructor(
    root: string,
    files: Files,
    private readonly naming: (path: string) => string,
    /** Give or take of a written reading, K. */
    thermometer: number,
    private readonly mostKept: number,
  ) {
    this.root = root;
    this.workspace = createWorkspace(files, { thermometer });
  }

  uriOf(path: string): string {
    return this.naming(path);
  }

  fileAt(path: string): File | null {
    const source = this.workspace.source(path);
    return 'file' in source ? source.file : null;
  }

  paths(): readonly string[] {
    this.sorted ??= [...this.known].sort();
    return this.sorted;
  }

  offeredBy(path: string): readonly Offered[] {
    return this.offered.get(path) ?? none;
  }

  importersOf(path: string): readonly string[] {
    return [...(this.importers.get(path) ?? [])].sort();
  }

  /** Makes a file that can be read one of the project's, and says whether it is new. */
  know(path: string): boolean {
    if (this.known.has(path) || this.fileAt(path) === null) return false;
    this.known.add(path);
    this.sorted = null;
    this.link(path);
    return true;
  }

  /**
   * Lets go of a file that is not open and that nobody takes from: of thousands of files the reports are kept and not the trees. A
   * project of few files keeps everything. Says whether it let go.
   */
  release(path: string): boolean {
    if (this.known.size <= this.mostKept || (this.importers.get(path)?.size ?? 0) > 0) return false;
    this.workspace.forget(path);
    this.interfaces.delete(path);
    this.checks.delete(path);
    return true;
  }

  /** The report of a file as it now stands is made: it holds until the file, or one it rests on, changes. */
  settle(path: string): void {
    if (this.release(path)) this.settled.add(path);
  }

  isSettled(path: string): boolean {
    return this.settled.has(path);
  }

  /** Reports are to be made anew, of other settings. */
  unsettle(): void {
    this.settled.clear();
  }

  /**
   * A file's text may be another, or gone. Gives it and the files whose answers may be others for it, nearest first; where what the
   * file offers to others is what it was, it alone.
   */
  changed(path: string): readonly string[] {
    const before = this.interfaces.get(path);
    this.settled.delete(path);
    this.workspace.changed(path);
    this.checks.get(path)?.doubt();
    if (this.fileAt(path) === null) {
      this.known.delete(path);
      this.sorted = null;
    } else this.know(path);
    this.link(path);
    const now = this.interfaceOf(path);
    if (before && sameItems(before, now)) return [path];
    const reached = this.reached(path);
    for (const other of reached) {
      this.checks.get(other)?.doubt();
      this.settled.delete(other);
    }
    return reached;
  }

  /** What the file's check says now. Nothing is checked again that rests on the same objects as before. */
  checked(path: string): Checked {
    let check = this.checks.get(path);
    if (!check) {
      check = new Check(this.workspace, path, () => this.targets.get(path) ?? []);
      this.checks.set(path, check);
    }
    if (!this.interfaces.has(path)) this.interfaceOf(path);
    return check.answer();
  }

  private interfaceOf(path: string): readonly unknown[] {
    const source = this.workspace.source(path);
    const file = 'file' in source ? source.file : null;
    const offered = [
      'refused' in source ? source.refused : source.file.eol,
      ...interfaceOf(this.workspace.unit(path), file),
      ...(this.targets.get(path) ?? []),
    ];
    this.interfaces.set(path, offered);
    return offered;
  }

  /** The file, those that name it, those that name them, and so on. */
  private reached(path: string): readonly string[] {
    const found = new Set([path]);
    for (const one of found) for (const other of this.importers.get(one) ?? []) found.add(other);
    return [...found];
  }

  /** Keeps who is named by a file. */
  private link(path: string, file: File | null = this.fileAt(path)): void {
    const now = file ? targetsIn(file, path, this.root) : [];
    if (file) this.offered.set(path, offeredIn(file));
    else this.offered.delete(path);
    const before = this.targets.get(path) ?? [];
    for (const target of before) if (!now.includes(target)) this.importers.get(target)?.delete(path);
    for (const target of now) {
      const named = this.importers.get(target);
      if (named) named.add(path);
      else this.importers.set(target, new Set([path]));
    }
    this.targets.set(path, now);
  }
}

const none: readonly Offered[] = [];

/** One file's check, answered anew only where something it rests on is another object. */
class Check {
  private last: { readonly rests: readonly unknown[]; readonly checked: Checked } | null = null;
  private isSure = false;

  constructor(
    private readonly workspace: Workspace,
    private readonly path: string,
    /** Files that its takes and its requests name. */
    private readonly named: () => readonly string[],
  ) {}

  doubt(): void {
    this.isSure = false;
  }

  answer(): Checked {
    if (this.last && this.isSure) return this.last.checked;
    const rests = this.rests();
    if (!this.last || !sameItems(this.last.rests, rests))
      this.last = { rests, checked: checkUnit(this.workspace, this.path, { fileName: (path) => path }) };
    this.isSure = true;
    return this.last.checked;
  }

  /** Of this file the tree, since places move with its lines; of files it names or takes from, over however many, the same. */
  private rests(): readonly unknown[] {
    const rests: unknown[] = [];
    const units = [this.path, ...this.named()].map((path) => this.workspace.unit(path));
    for (const one of new Set(units.flatMap((unit) => this.workspace.reachable(unit)))) {
      const source = this.workspace.source(one.path);
      rests.push(
        'file' in source ? source.file : null,
        ...one.formulas,
        ...one.components,
        ...one.findings,
        ...this.workspace.bases(one.path),
      );
    }
    return rests;
  }
}

/**
 * What others can have of a file or point at in it, all by identity: formulas, components, house ingredients, kit, prices and allows,
 * and where its blocks stand.
 */
function interfaceOf(unit: Unit, file: File | null): readonly unknown[] {
  const offered: unknown[] = [...unit.formulas, ...unit.components, ...unit.houseKinds.values()];
  for (const { heading, first, lines } of file?.blocks ?? []) {
    offered.push(first, ...factsOf(lines).allows);
    if (heading?.word === 'equipment' || heading?.word === 'prices') offered.push(...lines);
  }
  return offered;
}

function targetsIn(file: File, path: string, root: string): readonly string[] {
  const targets = new Set<string>();
  for (const { lines } of file.blocks)
    for (const written of factsOf(lines).references) {
      const located = locate(written, path, root);
      if ('path' in located && located.path !== path) targets.add(located.path);
    }
  return [...targets];
}

/** What a block's lines alone say of other files, and to them: allows, each with its place, and paths named. */
interface BlockFacts {
  readonly allows: readonly unknown[];
  readonly references: readonly string[];
}

const known = new WeakMap<Block['lines'], BlockFacts>();

/** Remembered by the lines, which a block keeps while none of them changes. */
function factsOf(lines: Block['lines']): BlockFacts {
  let facts = known.get(lines);
  if (!facts) {
    facts = {
      allows: lines.flatMap((line, index) => (line.kind === 'comment' && line.allow ? [line, index] : [])),
      references: lines.flatMap(referencesIn).map(({ path }) => path),
    };
    known.set(lines, facts);
  }
  return facts;
}

export const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);
