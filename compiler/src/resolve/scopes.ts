/** Scopes: the blocks of each formula as named components, and what a name means to each. */
import { type Line, nameKey } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import { type Group, headingPlace, type NamedBlock, sameItems } from './blocks.ts';
import type { ComponentSource, Declared, InheritedHeader } from './component.ts';
import { type Headers, headersOf } from './headers.ts';
import type { BlockId, Choice, Component, Formula } from './model.ts';
import type { EntryMeaning, Meaning, Names } from './names.ts';
import { takenOf } from './takes.ts';
import type { Takings } from './takings.ts';

/** One formula of a file, or what stands above any formula. */
export interface Scope {
  readonly group: Group;
  /** Null above any formula. */
  readonly headers: Headers | null;
  /** In the order written, the assembly included. */
  readonly sources: readonly ComponentSource[];
  readonly byKey: ReadonlyMap<string, ComponentSource>;
  /** Taken by lines of this scope. */
  readonly takings: Takings;
  /** What stands above any formula; null where that is this. */
  readonly above: Scope | null;
  /** Components and taken things a slip of the pen may have meant. */
  readonly all: ReadonlyMap<string, EntryMeaning>;
  /** Changes whenever `choices` or the names of `all` do. */
  readonly signature: string;
}

/** The earlier scope where neither the group nor what is taken changed. */
export function scopeOf(path: string, group: Group, takings: Takings, above: Scope | null, earlier: Scope | undefined): Scope {
  if (earlier && earlier.takings === takings && sameAbove(earlier.above, above)) return earlier;
  const headers = group.head && headersOf(group.head);
  const sources = sourcesOf(path, group, headers);
  const byKey = new Map<string, ComponentSource>();
  for (const source of sources)
    if (!source.isAssembly && !byKey.has(nameKey(source.name))) byKey.set(nameKey(source.name), source);
  const all = new Map<string, EntryMeaning>();
  if (group.head !== null) for (const key of byKey.keys()) all.set(key, { is: 'own component', key });
  for (const thing of [...takings.things.values(), ...(above?.takings.things.values() ?? [])])
    if (thing.is === 'component' && !all.has(thing.key)) all.set(thing.key, { is: 'taken', taken: thing.taken });
  const choices = (headers?.choices ?? []).map(({ name, values }) => [name, ...values].join('\u0001')).join('\u0002');
  const signature = `${choices}\u0003${[...all.keys()].join('\u0001')}`;
  return { group, headers, sources, byKey, takings, above, all, signature };
}

/** A scope asks only for what is taken above it; components there are looked up in the file as it is. */
const sameAbove = (a: Scope | null, b: Scope | null): boolean => a === b || (a !== null && b !== null && a.takings === b.takings);

function sourcesOf(path: string, { head, blocks }: Group, headers: Headers | null): readonly ComponentSource[] {
  const own = blocks.filter(({ heading }) => heading?.word === 'component' || heading?.word === 'assembly');
  const holdsLines = head?.lines.some(isLineOfComponent) ?? false;
  const basis = headers?.inherited.filter(({ line }) => line.word === 'basis') ?? [];
  const loss = headers?.inherited.filter(({ line }) => line.word === 'loss') ?? [];
  const result = own.find(({ heading }) => heading?.word === 'assembly') ?? (holdsLines ? head : own.at(-1));
  const source = (block: NamedBlock, name: string, isFormulaBlock: boolean): ComponentSource => ({
    block,
    file: path,
    name,
    isAssembly: block.heading?.word === 'assembly',
    isFormulaBlock,
    inherited: block === result ? [...basis, ...loss] : basis,
  });
  const assemblies = new Set<NamedBlock>();
  const components = own.flatMap((block) => {
    // A second assembly is a finding, not a component.
    if (block.heading?.word === 'assembly' && (head === null || assemblies.size > 0)) return [];
    if (block.heading?.word === 'assembly') assemblies.add(block);
    return [source(block, block.heading?.word === 'assembly' ? 'assembly' : (block.heading?.name?.text ?? ''), false)];
  });
  const all = holdsLines && head !== null ? [source(head, head.heading?.name?.text ?? '', true), ...components] : components;
  return head === null ? all : all.slice(0, mostComponents);
}

/** Of one formula; each knows every other by name. */
export const mostComponents = 1000;

export const isLineOfComponent = (line: Line): boolean => line.kind === 'ingredient' || line.kind === 'step';

/** How the file answers what only it can: resolved components and formulas, each made when first asked for. */
export interface Answers {
  readonly path: string;
  readonly scopes: readonly Scope[];
  index(): ScopeIndex;
  /** Null while it is being made, since what asks draws on itself, and where it is too deep in to be made. */
  component(source: ComponentSource): Component | null;
  formula(scope: Scope): Formula | null;
  /** Nothing more is made here; what is too deep in is said of the formula as a whole. */
  isTooDeep(): boolean;
  houseKind(key: string): Kind | null;
}

/** What names mean to one block of a scope. */
export function namesFor(answers: Answers, scope: Scope, self: BlockId): Names {
  const above = answers.scopes[0];
  const other = (sources: ReadonlyMap<string, ComponentSource>, key: string): ComponentSource | null => {
    const source = sources.get(key);
    return source === undefined || source.block.id === self ? null : source;
  };
  const ofFile = (key: string): Meaning | null => {
    const source = above === undefined ? null : other(above.byKey, key);
    if (source === null) return null;
    const component = answers.component(source);
    return component === null ? notMade(answers) : { is: 'taken', taken: takenOf(component, null, answers.path) };
  };
  const isFormula = scope.group.head !== null;
  return {
    choices: scope.headers?.choices ?? noChoices,
    all: scope.all,
    meaning: (key) => {
      const own = isFormula ? other(scope.byKey, key) : null;
      if (own) {
        const component = answers.component(own);
        return component === null && answers.isTooDeep() ? notMade(answers) : { is: 'own component', key, component };
      }
      const thing = scope.takings.things.get(key) ?? above?.takings.things.get(key);
      if (thing) return thing.is === 'kind' ? { is: 'house', kind: thing.kind } : { is: 'taken', taken: thing.taken };
      if (scope.takings.missing.has(key) || above?.takings.missing.has(key)) return { is: 'missing' };
      const kind = answers.houseKind(key);
      return kind ? { is: 'house', kind } : (ofFile(key) ?? wholeFormula(answers, scope, key));
    },
    late: (key) => elsewhere(answers, scope, key),
    entry: (key) => {
      if (isFormula && other(scope.byKey, key)) return { is: 'own component', key };
      const thing = scope.takings.things.get(key) ?? above?.takings.things.get(key);
      if (thing?.is === 'component') return { is: 'taken', taken: thing.taken };
      const found = ofFile(key);
      return found?.is === 'taken' ? found : null;
    },
  };
}

const noChoices: readonly Choice[] = [];

/** The formulas of a file by their title, and by the components they have. */
export interface ScopeIndex {
  readonly byTitle: ReadonlyMap<string, readonly Scope[]>;
  readonly byComponent: ReadonlyMap<string, readonly Scope[]>;
}

export function indexOf(scopes: readonly Scope[]): ScopeIndex {
  const byTitle = new Map<string, Scope[]>();
  const byComponent = new Map<string, Scope[]>();
  const put = (map: Map<string, Scope[]>, key: string, scope: Scope): void => {
    const known = map.get(key);
    if (known) known.push(scope);
    else map.set(key, [scope]);
  };
  for (const scope of scopes) {
    if (scope.group.head === null) continue;
    put(byTitle, titleKey(scope), scope);
    for (const key of scope.byKey.keys()) put(byComponent, key, scope);
  }
  return { byTitle, byComponent };
}

/** Another formula of the file that is one component and has the name. */
function wholeFormula(answers: Answers, asking: Scope, key: string): Meaning | null {
  const scope = answers
    .index()
    .byTitle.get(key)
    ?.find((one) => one !== asking && one.sources.length === 1);
  const [source] = scope?.sources ?? [];
  return scope && source && !source.isAssembly ? fromFormula(answers, scope, source) : null;
}

/** A component of another formula of the file, where only one formula has it. */
function elsewhere(answers: Answers, asking: Scope, key: string): Meaning | null {
  const [scope, second] =
    answers
      .index()
      .byComponent.get(key)
      ?.filter((one) => one !== asking) ?? [];
  const source = scope?.byKey.get(key);
  return scope && source && second === undefined ? fromFormula(answers, scope, source) : null;
}

function fromFormula(answers: Answers, scope: Scope, { block }: ComponentSource): Meaning {
  const formula = answers.formula(scope);
  const component = formula?.components.find(({ id }) => id === block.id);
  return formula && component ? { is: 'taken', taken: takenOf(component, formula, answers.path) } : notMade(answers);
}

const notMade = (answers: Answers): Meaning => (answers.isTooDeep() ? { is: 'missing' } : { is: 'circle', file: answers.path });

/** The key of a formula's title. */
export const titleKey = ({ group }: Scope): string => group.head?.heading?.name?.key ?? '';

/** A formula's title as a name it declares in the file. */
export function titleDeclared({ group: { head } }: Scope): readonly Declared[] {
  const name = head?.heading?.name;
  return head && name ? [{ key: name.key, text: name.text, condition: null, place: headingPlace(head) }] : [];
}

/** Whether a component would be resolved from the same lines and headers as before. */
export const sameSource = (a: ComponentSource, b: ComponentSource): boolean =>
  a.name === b.name &&
  a.isAssembly === b.isAssembly &&
  a.isFormulaBlock === b.isFormulaBlock &&
  sameItems(a.block.lines, b.block.lines) &&
  a.inherited.length === b.inherited.length &&
  a.inherited.every((header, i) => sameHeader(header, b.inherited[i]));

const sameHeader = (a: InheritedHeader, b: InheritedHeader | undefined): boolean =>
  a.line === b?.line && a.index === b.index && a.block === b.block;
