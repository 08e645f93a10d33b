/** One file resolved: blocks become components and formulas, and what did not change stays the identical object. */
import type { File } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import { allowsIn } from './allows.ts';
import { type Group, type Grouped, groupsOf, kept, problemsIn } from './blocks.ts';
import { type ComponentSource, duplicates, type Resolved, resolveComponent } from './component.ts';
import { type Environment, sameEnvironment } from './environment.ts';
import { type Item, itemsIn, pricesIn, repeatedItems } from './equipment.ts';
import { mostNested } from './extent.ts';
import { baseOf, formulaOf, rememberUnreadable } from './formula.ts';
import { HouseKinds, type RememberedKind } from './house.ts';
import { looseFindings } from './loose-lines.ts';
import type { BlockId, Choice, Component, Formula, Price, RawFinding, Unit } from './model.ts';
import { type Lookup, recorded, stillHolds } from './names.ts';
import { type Outlines, requestsIn } from './requests.ts';
import { type Answers, indexOf, namesFor, type Scope, type ScopeIndex, sameSource, scopeOf, titleDeclared } from './scopes.ts';
import type { Exports, Library } from './takes.ts';
import { gatherTakings, type Takings } from './takings.ts';

/** What is kept of a file from one edit to the next; filled and read by `resolveFile` alone. */
export interface FileMemo {
  groups: readonly Group[];
  takings: ReadonlyMap<Group, Takings>;
  scopes: ReadonlyMap<Group, Scope>;
  components: Map<BlockId, RememberedComponent>;
  formulas: Map<BlockId, RememberedFormula>;
  bases: Map<BlockId, Formula>;
  kinds: Map<BlockId, RememberedKind>;
  environment: Environment | null;
  kitchen: Kitchen;
}

interface RememberedComponent {
  readonly source: ComponentSource;
  readonly signature: string;
  readonly log: readonly Lookup[];
  /** Those of the log whose answer stands in the file itself. */
  readonly inner: readonly Lookup[];
  /** The choices, where a finding points at their places; else null. */
  readonly choices: readonly Choice[] | null;
  readonly resolved: Resolved;
}

interface RememberedFormula {
  readonly scope: Scope;
  readonly formula: Formula;
}

/** Equipment and prices that every formula of the file has: the file's own and those taken above. */
interface Kitchen {
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
}

export const newMemo = (): FileMemo => ({
  groups: [],
  takings: new Map(),
  scopes: new Map(),
  components: new Map(),
  formulas: new Map(),
  bases: new Map(),
  kinds: new Map(),
  environment: null,
  kitchen: { items: [], prices: [] },
});

export function resolveFile(path: string, file: File, library: Library & Outlines, memo: FileMemo): Exports {
  return new FileResolver(path, file, library, memo).resolve();
}

/** Looking up what names mean goes no further in than this: room for the longest row, through components and their formulas. */
const deepest = 2 * mostNested + 10;

class FileResolver implements Answers {
  readonly scopes: readonly Scope[];
  private readonly grouped: Grouped;
  private readonly takings: ReadonlyMap<Group, Takings>;
  private readonly kinds: HouseKinds;
  private readonly scopeOfSource: ReadonlyMap<ComponentSource, Scope>;
  private readonly environment: Environment;
  /** No name of the file means anything else than last time, but for what stands in the file itself. */
  private readonly sameAround: boolean;
  private readonly kitchen: Kitchen;
  private readonly components: FileMemo['components'] = new Map();
  private readonly formulas: FileMemo['formulas'] = new Map();
  private readonly bases: FileMemo['bases'] = new Map();
  private readonly madeKinds: FileMemo['kinds'] = new Map();
  private readonly underway = new Set<BlockId>();
  private scopeIndex: ScopeIndex | null = null;

  constructor(
    readonly path: string,
    private readonly file: File,
    private readonly library: Library & Outlines,
    private readonly memo: FileMemo,
  ) {
    this.grouped = groupsOf(path, file, memo.groups);
    const { groups, blocks } = this.grouped;
    this.takings = new Map(groups.map((group) => [group, gatherTakings(group, path, library, memo.takings.get(group))]));
    this.kinds = new HouseKinds(blocks, kindsIn(this.takings), memo.kinds, this.madeKinds);
    const scopes: Scope[] = [];
    for (const [group, takings] of this.takings)
      scopes.push(scopeOf(path, group, takings, scopes[0] ?? null, memo.scopes.get(group)));
    this.scopes = scopes;
    this.scopeOfSource = new Map(scopes.flatMap((scope) => scope.sources.map((source) => [source, scope] as const)));
    this.environment = { scopes, kinds: this.kinds.all() };
    this.kitchen = this.kitchenAbove();
    this.sameAround = memo.environment !== null && sameEnvironment(memo.environment, this.environment);
  }

  resolve(): Exports {
    const { groups, firsts } = this.grouped;
    const above = this.scopes[0]?.sources ?? [];
    const components = above.flatMap((source) => this.component(source) ?? []);
    const resolved = above.flatMap(({ block }) => this.components.get(block.id)?.resolved ?? []);
    const formulas = this.scopes.slice(1).flatMap((scope) => this.formula(scope) ?? []);
    const bases = resolved.map((one) => this.base(one));
    const takings = [...this.takings.values()];
    const { requests, findings } = requestsIn(groups, this.formulas, this.path, this.library);
    const unit: Unit = {
      path: this.path,
      formulas,
      components,
      houseKinds: this.environment.kinds,
      requests,
      findings: [
        ...this.apartFindings(),
        ...bases.flatMap((base) => base.findings),
        ...duplicates(
          components.map(({ key, name, condition, place }) => ({ key, text: name, condition, place })),
          [],
        ),
        ...duplicates(this.scopes.flatMap(titleDeclared), []),
        ...findings,
      ],
      blockLines: firsts,
      allows: allowsIn(this.file, this.grouped),
      imports: [...new Set(takings.flatMap(({ paths }) => paths))],
    };
    const exports: Exports = {
      unit,
      items: groups.flatMap((group) => itemsOf(group)),
      prices: groups.flatMap((group) => pricesOf(group)),
      bases,
      missing: new Set(takings.flatMap(({ missing }) => [...missing])),
    };
    this.remember();
    return exports;
  }

  component(source: ComponentSource): Component | null {
    const { id } = source.block;
    const done = this.components.get(id);
    if (done) return done.resolved.component;
    if (this.underway.has(id) || this.isTooDeep()) return null;
    this.underway.add(id);
    const remembered = this.resolved(source);
    this.underway.delete(id);
    this.components.set(id, remembered);
    return remembered.resolved.component;
  }

  isTooDeep(): boolean {
    return this.underway.size >= deepest;
  }

  private resolved(source: ComponentSource): RememberedComponent {
    const { id } = source.block;
    const scope = this.scopeOfSource.get(source);
    if (scope === undefined) throw new Error(`${id} stands in no scope`);
    const names = namesFor(this, scope, id);
    const earlier = this.memo.components.get(id);
    if (earlier && earlier.signature === scope.signature && sameSource(earlier.source, source)) {
      const asked = this.sameAround ? earlier.inner : earlier.log;
      if (stillHolds(asked, names) && (earlier.choices === null || earlier.choices === names.choices)) return earlier;
    }
    const log: Lookup[] = [];
    const resolved = resolveComponent(source, recorded(names, log, this.path));
    rememberUnreadable(resolved);
    const choices = resolved.findings.some(({ code }) => code === 'unknown-choice') ? names.choices : null;
    return { source, signature: scope.signature, log, inner: log.filter(({ inner }) => inner), choices, resolved };
  }

  formula(scope: Scope): Formula | null {
    const { head } = scope.group;
    const { headers } = scope;
    if (head === null || headers === null) return null;
    const done = this.formulas.get(head.id);
    if (done) return done.formula;
    const mark = `formula ${head.id}`;
    if (this.underway.has(mark) || this.isTooDeep()) return null;
    this.underway.add(mark);
    const resolved = scope.sources.flatMap((source) => {
      this.component(source);
      return this.components.get(source.block.id)?.resolved ?? [];
    });
    this.underway.delete(mark);
    const formula = this.unchanged(scope, resolved) ?? this.made(scope, resolved);
    this.formulas.set(head.id, { scope, formula });
    return formula;
  }

  /** The earlier formula where its scope, its components and its kitchen are the identical objects. */
  private unchanged(scope: Scope, resolved: readonly Resolved[]): Formula | null {
    const earlier = this.memo.formulas.get(scope.group.head?.id ?? '');
    if (earlier?.scope !== scope || !this.sameAround || this.kitchen !== this.memo.kitchen) return null;
    return resolved.every(({ component }) => this.memo.components.get(component.id)?.resolved.component === component)
      ? earlier.formula
      : null;
  }

  private made(scope: Scope, resolved: readonly Resolved[]): Formula {
    const { group, headers, takings } = scope;
    if (group.head === null || headers === null) throw new Error('what stands above any formula is none');
    const items = [...itemsOf(group), ...takings.items, ...this.kitchen.items];
    const prices = [...pricesOf(group), ...takings.prices, ...this.kitchen.prices];
    return formulaOf(
      { path: this.path, scope, head: group.head, headers, resolved, items, prices, thermometer: this.library.thermometer },
      this.memo.formulas.get(group.head.id)?.formula,
    );
  }

  /** A file-level component as a formula of its own. */
  private base(resolved: Resolved): Formula {
    const { id } = resolved.component;
    const { items, prices } = this.kitchen;
    const made = baseOf(resolved, { items, prices, thermometer: this.library.thermometer }, this.memo.bases.get(id));
    this.bases.set(id, made);
    return made;
  }

  houseKind(key: string): Kind | null {
    return this.kinds.kind(key);
  }

  index(): ScopeIndex {
    this.scopeIndex ??= indexOf(this.scopes);
    return this.scopeIndex;
  }

  private kitchenAbove(): Kitchen {
    const [above] = this.scopes;
    const { kitchen } = this.memo;
    const items = kept(kitchen.items, [...itemsOf(above?.group), ...(above?.takings.items ?? [])]);
    const prices = kept(kitchen.prices, [...pricesOf(above?.group), ...(above?.takings.prices ?? [])]);
    return items === kitchen.items && prices === kitchen.prices ? kitchen : { items, prices };
  }

  /** Findings of what stands apart from components and formulas. */
  private apartFindings(): readonly RawFinding[] {
    const { groups, blocks } = this.grouped;
    const apart = blocks.filter(
      ({ heading }) =>
        heading === null || !(heading.word === 'formula' || heading.word === 'component' || heading.word === 'assembly'),
    );
    return [
      ...apart.flatMap(problemsIn),
      ...(groups[0] ? looseFindings(groups[0]) : []),
      ...[...this.takings.values()].flatMap(({ findings }) => findings),
      ...this.kinds.findings(),
      ...groups.flatMap((group) => repeatedItems(itemsOf(group))),
    ];
  }

  private remember(): void {
    const { memo } = this;
    memo.groups = this.grouped.groups;
    memo.takings = this.takings;
    memo.scopes = new Map(this.scopes.map((scope) => [scope.group, scope]));
    memo.components = this.components;
    memo.formulas = this.formulas;
    memo.bases = this.bases;
    memo.kinds = this.madeKinds;
    memo.environment = this.environment;
    memo.kitchen = this.kitchen;
  }
}

const itemsOf = (group: Group | undefined): readonly Item[] =>
  (group?.blocks ?? []).flatMap((block) => (block.heading?.word === 'equipment' ? itemsIn(block) : []));

const pricesOf = (group: Group | undefined): readonly Price[] =>
  (group?.blocks ?? []).flatMap((block) => (block.heading?.word === 'prices' ? pricesIn(block) : []));

/** Kinds taken anywhere in the file, for `like`. */
function kindsIn(takings: ReadonlyMap<Group, Takings>): ReadonlyMap<string, Kind> {
  const kinds = new Map<string, Kind>();
  for (const { things } of takings.values())
    for (const thing of things.values()) if (thing.is === 'kind') kinds.set(thing.key, thing.kind);
  return kinds;
}
