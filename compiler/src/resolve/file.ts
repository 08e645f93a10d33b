/** One file resolved: blocks become components and formulas, and what did not change stays the identical object. */
import { type File, type Line, nameKey, type TakeLine } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import { allowsIn } from './allows.ts';
import { type Group, groupsOf, headingPlace, type NamedBlock, placeIn, problemsIn, sameItems } from './blocks.ts';
import { type ComponentSource, duplicates, type Resolved, resolveComponent } from './component.ts';
import { type Item, itemsIn, pricesIn, repeatedItems } from './equipment.ts';
import { baseOf, formulaOf, rememberUnreadable } from './formula.ts';
import { headersOf } from './headers.ts';
import { HouseKinds, type RememberedKind } from './house.ts';
import type { BlockId, Component, Formula, Price, RawFinding, Request, Unit } from './model.ts';
import { type Lookup, type Names, recorded, stillHolds } from './names.ts';
import { type Outlines, requestFindings } from './requests.ts';
import {
  type Answers,
  indexOf,
  isLineOfComponent,
  namesFor,
  type Scope,
  type ScopeIndex,
  sameSource,
  scopeOf,
} from './scopes.ts';
import { type Exports, type Library, type TakenThing, takingsOf } from './takes.ts';

/** What is kept of a file from one edit to the next; filled and read by `resolveFile` alone. */
export interface FileMemo {
  components: Map<BlockId, RememberedComponent>;
  formulas: Map<BlockId, Formula>;
  bases: Map<BlockId, Formula>;
  /** What a block's lines alone decide: headers, equipment, prices. */
  blocks: Map<BlockId, { readonly lines: readonly Line[]; readonly value: unknown }>;
  kinds: Map<BlockId, RememberedKind>;
}

interface RememberedComponent {
  readonly source: ComponentSource;
  readonly signature: string;
  readonly log: readonly Lookup[];
  readonly resolved: Resolved;
}

export const newMemo = (): FileMemo => ({
  components: new Map(),
  formulas: new Map(),
  bases: new Map(),
  blocks: new Map(),
  kinds: new Map(),
});

export function resolveFile(path: string, file: File, library: Library & Outlines, memo: FileMemo): Exports {
  return new FileResolver(path, file, library, memo).resolve();
}

/** Components that draw on each other are followed so many deep. */
const deepest = 100;

class FileResolver implements Answers {
  readonly scopes: readonly Scope[];
  readonly index: ScopeIndex;
  private readonly scopeOfBlock: ReadonlyMap<BlockId, Scope>;
  private readonly groups: readonly Group[];
  private readonly blocks: readonly NamedBlock[];
  private readonly takings: readonly Takings[];
  private readonly kinds: HouseKinds;
  private readonly fresh = newMemo();
  private readonly underway = new Set<BlockId>();

  constructor(
    readonly path: string,
    private readonly file: File,
    private readonly library: Library & Outlines,
    private readonly memo: FileMemo,
  ) {
    this.groups = groupsOf(path, file);
    this.blocks = this.groups.flatMap(({ head, blocks }) => (head ? [head, ...blocks] : blocks));
    this.takings = this.groups.map((group) => gatherTakings(group, path, library));
    const takenKinds = new Map(
      this.takings
        .flatMap(({ things }) => [...things.values()])
        .flatMap((thing) => (thing.is === 'kind' ? [[thing.key, thing.kind] as const] : [])),
    );
    this.kinds = new HouseKinds(this.blocks, takenKinds, memo.kinds, this.fresh.kinds);
    const scopes: Scope[] = [];
    this.groups.forEach((group, i) => {
      const headers = group.head && this.ofBlock(group.head, headersOf);
      scopes.push(scopeOf(path, group, headers, this.takings[i] ?? nothingTaken, scopes[0] ?? null));
    });
    this.scopes = scopes;
    this.scopeOfBlock = new Map(scopes.flatMap((scope) => scope.sources.map((source) => [source.block.id, scope] as const)));
    this.index = indexOf(scopes);
  }

  resolve(): Exports {
    const above = this.scopes[0]?.sources ?? [];
    const components = above.flatMap((source) => this.component(source) ?? []);
    const formulas = this.scopes.slice(1).flatMap((scope) => this.formula(scope) ?? []);
    const { requests, findings } = this.requests(formulas);
    const unit: Unit = {
      path: this.path,
      formulas,
      components,
      houseKinds: this.kinds.all(),
      requests,
      findings: [
        ...this.apartFindings(),
        ...above.flatMap(({ block }) => this.fresh.components.get(block.id)?.resolved.findings ?? []),
        ...duplicates(
          components.map(({ key, name, condition, place }) => ({ key, text: name, condition, place })),
          [],
        ),
        ...duplicates(
          formulas.map(({ name, place }) => ({ key: nameKey(name), text: name, condition: null, place })),
          [],
        ),
        ...findings,
      ],
      blockLines: new Map(this.blocks.map((block) => [block.id, block.first])),
      allows: allowsIn(this.file, this.blocks),
      imports: [...new Set(this.takings.flatMap(({ paths }) => paths))],
    };
    const exports: Exports = {
      unit,
      items: this.groups.flatMap((group) => this.itemsOf(group)),
      prices: this.groups.flatMap((group) => this.pricesOf(group)),
      bases: above.flatMap(({ block }) => this.fresh.components.get(block.id)?.resolved ?? []).map((one) => this.base(one)),
      missing: new Set(this.takings.flatMap(({ missing }) => [...missing])),
    };
    Object.assign(this.memo, this.fresh);
    return exports;
  }

  component(source: ComponentSource): Component | null {
    const { id } = source.block;
    const done = this.fresh.components.get(id);
    if (done) return done.resolved.component;
    if (this.underway.has(id) || this.underway.size >= deepest) return null;
    this.underway.add(id);
    const remembered = this.resolved(source);
    this.underway.delete(id);
    this.fresh.components.set(id, remembered);
    return remembered.resolved.component;
  }

  private resolved(source: ComponentSource): RememberedComponent {
    const { id } = source.block;
    const scope = this.scopeOfBlock.get(id);
    if (scope === undefined) throw new Error(`${id} stands in no scope`);
    const names: Names = namesFor(this, scope, id);
    const earlier = this.memo.components.get(id);
    if (earlier && earlier.signature === scope.signature && sameSource(earlier.source, source) && stillHolds(earlier.log, names))
      return earlier;
    const log: Lookup[] = [];
    const resolved = resolveComponent(source, recorded(names, log));
    rememberUnreadable(resolved);
    return { source, signature: scope.signature, log, resolved };
  }

  formula(scope: Scope): Formula | null {
    const { head } = scope.group;
    const { headers } = scope;
    if (head === null || headers === null) return null;
    const done = this.fresh.formulas.get(head.id);
    if (done) return done;
    const mark = `formula ${head.id}`;
    if (this.underway.has(mark) || this.underway.size >= deepest) return null;
    this.underway.add(mark);
    const resolved = scope.sources.flatMap((source) => {
      this.component(source);
      return this.fresh.components.get(source.block.id)?.resolved ?? [];
    });
    const i = this.scopes.indexOf(scope);
    const formula = formulaOf(
      {
        path: this.path,
        scope,
        above: this.scopes[0] ?? null,
        head,
        headers,
        resolved,
        items: this.itemsFor(i),
        prices: this.pricesFor(i),
      },
      this.memo.formulas.get(head.id),
    );
    this.underway.delete(mark);
    this.fresh.formulas.set(head.id, formula);
    return formula;
  }

  /** A file-level component as a formula of its own. */
  private base(resolved: Resolved): Formula {
    const { component } = resolved;
    const earlier = this.memo.bases.get(component.id);
    const made = baseOf(resolved, this.itemsFor(0), this.pricesFor(0), earlier);
    this.fresh.bases.set(component.id, made);
    return made;
  }

  houseKind(key: string): Kind | null {
    return this.kinds.kind(key);
  }

  /** What a block's lines alone decide, remembered while they stay the same. */
  private ofBlock<T>(block: NamedBlock, make: (block: NamedBlock) => T): T {
    const done = this.fresh.blocks.get(block.id);
    if (done) return done.value as T;
    const earlier = this.memo.blocks.get(block.id);
    const entry = earlier && sameItems(earlier.lines, block.lines) ? earlier : { lines: block.lines, value: make(block) };
    this.fresh.blocks.set(block.id, entry);
    return entry.value as T;
  }

  private itemsOf(group: Group | undefined): readonly Item[] {
    return (group?.blocks ?? []).flatMap((block) => (block.heading?.word === 'equipment' ? this.ofBlock(block, itemsIn) : []));
  }

  private pricesOf(group: Group | undefined): readonly Price[] {
    return (group?.blocks ?? []).flatMap((block) => (block.heading?.word === 'prices' ? this.ofBlock(block, pricesIn) : []));
  }

  /** The formula's own, then the file's, then what either took. */
  private itemsFor(i: number): readonly Item[] {
    return [
      ...this.itemsOf(this.groups[i]),
      ...this.itemsOf(this.groups[0]),
      ...(this.takings[i]?.items ?? []),
      ...(this.takings[0]?.items ?? []),
    ];
  }

  private pricesFor(i: number): readonly Price[] {
    return [
      ...this.pricesOf(this.groups[i]),
      ...this.pricesOf(this.groups[0]),
      ...(this.takings[i]?.prices ?? []),
      ...(this.takings[0]?.prices ?? []),
    ];
  }

  /** Findings of what stands apart from components and formulas. */
  private apartFindings(): readonly RawFinding[] {
    const apart = this.blocks.filter(
      ({ heading }) =>
        heading === null || (heading.word !== 'formula' && heading.word !== 'component' && heading.word !== 'assembly'),
    );
    return [
      ...apart.flatMap(problemsIn),
      ...this.looseFindings(),
      ...this.takings.flatMap(({ findings }) => findings),
      ...this.kinds.findings(),
      ...this.groups.flatMap((group) => repeatedItems(this.itemsOf(group))),
    ];
  }

  /** Lines that need a block above them, and an assembly that needs a formula. */
  private looseFindings(): readonly RawFinding[] {
    const findings: RawFinding[] = [];
    for (const block of this.groups[0]?.blocks ?? []) {
      if (block.heading?.word === 'assembly') {
        const message = 'An assembly brings the components of a formula together; no `formula` stands above it.';
        findings.push({ code: 'syntax', place: headingPlace(block), numbers: { message } }, ...problemsIn(block));
      }
      if (block.heading !== null) continue;
      const index = block.lines.findIndex((line) => isLineOfComponent(line) || line.kind === 'header');
      const line = block.lines[index];
      if (line === undefined) continue;
      const message = 'This line stands under no `formula` and no `component`; begin with a line `formula` and its name.';
      const place = placeIn(block.id, index, line.span);
      const edits = [{ block: block.id, line: index, start: 0, end: 0, text: 'formula Untitled\n' }];
      findings.push({ code: 'syntax', place, numbers: { message }, fixes: [{ title: 'Begin a formula here', edits }] });
    }
    return findings;
  }

  private requests(formulas: readonly Formula[]): {
    readonly requests: readonly Request[];
    readonly findings: readonly RawFinding[];
  } {
    const requests: Request[] = [];
    const findings: RawFinding[] = [];
    for (const group of this.groups) {
      const above = formulas.find(({ id }) => id === group.head?.id) ?? null;
      for (const block of group.head ? [group.head, ...group.blocks] : group.blocks)
        block.lines.forEach((line, index) => {
          if (line.kind !== 'request') return;
          requests.push({ place: placeIn(block.id, index, line.span), line, above });
          findings.push(...requestFindings(line, block.id, index, this.path, above, this.library));
        });
    }
    return { requests, findings };
  }
}

interface Takings {
  readonly things: ReadonlyMap<string, TakenThing>;
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
  readonly findings: readonly RawFinding[];
  readonly missing: ReadonlySet<string>;
  readonly paths: readonly string[];
}

const nothingTaken: Pick<Takings, 'things' | 'missing'> = { things: new Map(), missing: new Set() };

/** All that the `take` lines of a group bring in. */
function gatherTakings({ head, blocks }: Group, path: string, library: Library): Takings {
  const takes: { line: TakeLine; block: NamedBlock; index: number }[] = [];
  for (const block of head ? [head, ...blocks] : blocks)
    block.lines.forEach((line, index) => {
      if (line.kind === 'take') takes.push({ line, block, index });
    });
  const all = takes.map(({ line, block, index }) => takingsOf(line, block.id, index, path, library));
  const taken = all.flatMap(({ things }) => things);
  const things = new Map<string, TakenThing>();
  for (const thing of taken) if (!things.has(thing.key)) things.set(thing.key, thing);
  const repeated = duplicates(
    taken.map(({ key, name, place }) => ({ key, text: name, condition: null, place })),
    [],
  );
  return {
    things,
    items: all.flatMap(({ items }) => items),
    prices: all.flatMap(({ prices }) => prices),
    findings: [...all.flatMap(({ findings }) => findings), ...repeated],
    missing: new Set(all.flatMap(({ missing }) => missing)),
    paths: all.flatMap((one) => one.path ?? []),
  };
}
