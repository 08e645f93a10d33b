/** A formula put together from its headers and resolved components. */
import { headingPlace, kept, type NamedBlock, placeIn, problemsIn } from './blocks.ts';
import { duplicates, type Resolved } from './component.ts';
import { type Item, settingsOf } from './equipment.ts';
import { extentFindings } from './extent.ts';
import type { Headers } from './headers.ts';
import type { Component, Formula, Place, Price, RawFinding } from './model.ts';
import { nearestNames } from './nearest.ts';
import { mostComponents, type Scope } from './scopes.ts';

/** What every formula of a file is run with. */
export interface Kitchen {
  /** Nearest first: the formula's own, the file's, those taken. */
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
  /** Give or take of a written reading, K. */
  readonly thermometer: number;
}

export interface FormulaParts extends Kitchen {
  readonly path: string;
  readonly scope: Scope;
  readonly head: NamedBlock;
  readonly headers: Headers;
  readonly resolved: readonly Resolved[];
}

/** The formula; the earlier object where nothing in it changed. */
export function formulaOf(parts: FormulaParts, earlier: Formula | undefined): Formula {
  const { path, head, headers, resolved, items, prices, thermometer } = parts;
  const components = resolved.map(({ component }) => component);
  const tooMuch = extentFindings(components);
  const findings = [
    ...headers.findings,
    ...resolved.flatMap((one) => one.findings),
    ...wholeFindings(parts, components),
    ...tooMuch,
  ];
  const formula: Formula = {
    id: head.id,
    name: head.heading?.name?.text ?? 'untitled',
    file: path,
    place: headingPlace(head),
    by: headers.by,
    version: headers.version,
    notes: headers.notes,
    choices: headers.choices,
    makes: headers.makes,
    served: headers.served,
    keeps: headers.keeps,
    freeFrom: headers.freeFrom,
    components: kept(
      earlier?.components,
      components.filter((component) => !component.isAssembly),
    ),
    assembly: components.find((component) => component.isAssembly) ?? null,
    settings: settingsOf(items, { gelatinLaw: headers.gelatinLaw, tags: headers.tags, thermometer }, earlier?.settings),
    prices: kept(earlier?.prices, prices),
    findings: sameFindings(earlier?.findings, findings),
    unreadable: findings.some(({ code }) => code === 'syntax') || kitchenUnreadable(parts) || components.some(takesUnreadable),
    tooLarge: tooMuch.length > 0,
  };
  return earlier !== undefined && sameFields(formula, earlier) ? earlier : formula;
}

/** A component that stands by itself as a formula that makes nothing else; the earlier object where nothing in it changed. */
export function baseOf(
  { component, findings }: Resolved,
  { items, prices, thermometer }: Kitchen,
  earlier: Formula | undefined,
): Formula {
  const tooMuch = extentFindings([component]);
  const formula: Formula = {
    id: component.id,
    name: component.name,
    file: component.file,
    place: component.place,
    by: null,
    version: null,
    notes: component.notes,
    choices: none,
    makes: none,
    served: none,
    keeps: none,
    freeFrom: none,
    components: kept(earlier?.components, [component]),
    assembly: null,
    settings: settingsOf(items, { gelatinLaw: 'concentration', tags: none, thermometer }, earlier?.settings),
    prices: kept(earlier?.prices, prices),
    findings: sameFindings(earlier?.findings, [...findings, ...tooMuch]),
    unreadable: unreadableComponents.has(component) || takesUnreadable(component) || tooMuch.length > 0,
    tooLarge: tooMuch.length > 0,
  };
  return earlier !== undefined && sameFields(formula, earlier) ? earlier : formula;
}

const none: readonly never[] = [];

/** What only the formula as a whole shows. */
function wholeFindings(
  { scope, head, headers, resolved }: FormulaParts,
  components: readonly Component[],
): readonly RawFinding[] {
  const findings: RawFinding[] = [];
  const declared = components
    .filter((component) => !component.isAssembly)
    .map(({ key, name, condition, id, place }) => ({ key, text: name, condition, place: namePlaceIn(scope, id) ?? place }));
  const taken = [...scope.takings.things.values(), ...(scope.above?.takings.things.values() ?? [])].map(
    ({ key, name, place }) => ({
      key,
      text: name,
      condition: null,
      place,
    }),
  );
  findings.push(...duplicates([...taken.filter(({ key }) => scope.byKey.has(key)), ...declared], headers.choices));
  const assemblies = scope.group.blocks.filter(({ heading }) => heading?.word === 'assembly');
  const [first, ...more] = assemblies;
  for (const second of more)
    findings.push({
      code: 'duplicate-name',
      place: headingPlace(second),
      numbers: { name: 'assembly' },
      related: first ? [{ place: headingPlace(first), message: 'the assembly stands here' }] : [],
    });
  findings.push(...more.flatMap(problemsIn));
  findings.push(...tooManyComponents(scope));
  for (const { line, index } of headers.inherited)
    if (
      line.word === 'basis' &&
      line.name !== null &&
      !components.some((one) => one.basis.kind === 'line') &&
      resolved.length > 0 &&
      components[0]?.id !== head.id
    )
      findings.push(unknownBasis(head, index, line.name, components));
  const counted = headers.makes.some(({ value }) => value.count !== null);
  if (!counted)
    for (const component of components)
      for (const { amount, quantityPlace } of component.lines)
        if (amount.base.each && (component.isAssembly || component.id === head.id))
          findings.push({ code: 'needs-mass', place: quantityPlace, numbers: { name: component.name, each: true } });
  return findings;
}

function tooManyComponents({ sources, group: { head, blocks } }: Scope): readonly RawFinding[] {
  if (sources.length < mostComponents) return [];
  const read = new Set(sources.map(({ block }) => block));
  const over = blocks.find((block) => block !== head && block.heading?.word === 'component' && !read.has(block));
  if (!over) return [];
  const message = `A formula has at most ${mostComponents} components; what comes after is not read.`;
  return [{ code: 'syntax', place: headingPlace(over), numbers: { message } }];
}

function namePlaceIn(scope: Scope, id: string) {
  const source = scope.sources.find(({ block }) => block.id === id);
  const name = source?.block.heading?.name;
  return source && name ? placeIn(source.block.id, 0, name) : null;
}

function unknownBasis(
  head: NamedBlock,
  index: number,
  name: { readonly key: string; readonly text: string; readonly start: number; readonly end: number },
  components: readonly Component[],
): RawFinding {
  const lines = components.flatMap((component) => component.lines.map((line) => ({ key: line.key, text: line.name })));
  const [near] = nearestNames(name.key, lines, 1);
  const place = placeIn(head.id, index, name);
  const fixes = near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ ...place, text: near }] }];
  return { code: 'unknown-name', place, numbers: { name: name.text, nearest: near ?? null }, fixes };
}

/** Equipment, prices or a house ingredient under the formula that cannot be read. */
const kitchenUnreadable = ({ scope }: FormulaParts): boolean =>
  scope.group.blocks.some(
    (block) =>
      block.heading !== null &&
      !['component', 'assembly'].includes(block.heading.word) &&
      problemsIn(block).some(({ code }) => code === 'syntax'),
  );

const unreadableComponents = new WeakSet<Component>();

/** Remembers components with a `syntax` finding, so that what takes them is known to be unreadable too. */
export function rememberUnreadable({ component, findings }: Resolved): void {
  if (findings.some(({ code }) => code === 'syntax')) unreadableComponents.add(component);
}

const takesUnreadable = (component: Component): boolean =>
  component.lines.some(
    ({ substance }) =>
      substance.is === 'batch' &&
      (unreadableComponents.has(substance.taken.component) || substance.taken.formula?.unreadable === true),
  );

/** Findings are compared by what they say: the places and numbers in them are made anew each time. */
function sameFindings(earlier: readonly RawFinding[] | undefined, now: readonly RawFinding[]): readonly RawFinding[] {
  return earlier !== undefined && earlier.length === now.length && JSON.stringify(earlier) === JSON.stringify(now)
    ? earlier
    : now;
}

/** Fields are compared by identity, the place by its figures. */
const sameFields = (a: Formula, b: Formula): boolean =>
  (Object.keys(a) as (keyof Formula)[]).every((key) => a[key] === b[key] || (key === 'place' && samePlace(a.place, b.place)));

const samePlace = (a: Place, b: Place): boolean =>
  a.block === b.block && a.line === b.line && a.start === b.start && a.end === b.end;
