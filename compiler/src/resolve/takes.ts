/** `take … from "path.nappe"`: what another file gives, and what goes wrong on the way. */
import { type FileReference, type Name, nameKey, type TakeLine } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import { placeIn } from './blocks.ts';
import type { Item } from './equipment.ts';
import type { BlockId, Component, Fix, Formula, Place, Price, RawFinding, Taken, Unit } from './model.ts';
import { nearestNames } from './nearest.ts';
import { locate } from './paths.ts';

/** A file resolved, with what others may take from it beside the unit's own tables. */
export interface Exports {
  readonly unit: Unit;
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
  /** File-level components, each as a formula by itself. */
  readonly bases: readonly Formula[];
  /** Keys of names that `take` lines should have brought. */
  readonly missing: ReadonlySet<string>;
}

/** The other files of the workspace, as one file sees them. */
export interface Library {
  readonly root: string;
  /** Give or take of a written reading, K. */
  readonly thermometer: number;
  /** Resolved, or why it cannot be had. */
  exportsOf(path: string): Exports | { readonly refused: 'missing' | 'outside' | 'unreadable'; readonly why: string };
  /** Whether what stands at `to` takes, over however many files, from `from`. */
  leadsBack(from: string, to: string): boolean;
  /** Why a file takes from too many others in a row to be taken from itself; null where it does not. */
  tooDeep(path: string): string | null;
}

export type TakenThing = { readonly key: string; readonly name: string; readonly place: Place } & (
  | { readonly is: 'component'; readonly taken: Taken }
  | { readonly is: 'kind'; readonly kind: Kind }
);

export interface Takings {
  readonly things: readonly TakenThing[];
  readonly items: readonly Item[];
  readonly prices: readonly Price[];
  readonly findings: readonly RawFinding[];
  /** Keys of names that the line should have brought. */
  readonly missing: readonly string[];
  /** The file, where there is one. */
  readonly path: string | null;
}

export function takingsOf(line: TakeLine, block: BlockId, index: number, from: string, library: Library): Takings {
  const things: TakenThing[] = [];
  const items: Item[] = [];
  const prices: Price[] = [];
  const findings: RawFinding[] = [];
  const missing = line.items.map(({ name, as }) => (as ?? name).key);
  if (line.from === null) return { things, items, prices, findings, missing, path: null };
  const found = fileFor(line.from, placeIn(block, index, line.from), from, library);
  if ('finding' in found) return { things, items, prices, findings: [found.finding], missing, path: found.path };
  const { given, path } = found;
  const source = { given, path, reference: line.from, referencePlace: placeIn(block, index, line.from) };
  const formula = formulaFor(source, findings);
  if (formula === undefined) return { things, items, prices, findings, missing, path };
  for (const { name, as } of line.items) {
    const place = placeIn(block, index, name);
    const thing = kitchenOf(name, given) ?? thingFor(name, formula, given.unit);
    if ('lacks' in thing) findings.push(missingThing(thing, name, place, path));
    else if (thing.is === 'kitchen') {
      items.push(...thing.items);
      prices.push(...thing.prices);
    } else things.push({ ...thing, key: (as ?? name).key, name: (as ?? name).text, place: placeIn(block, index, as ?? name) });
  }
  const brought = new Set(things.map(({ key }) => key));
  return { things, items, prices, findings, missing: missing.filter((key) => !brought.has(key)), path };
}

/** The words `equipment` and `prices` mean those blocks. */
function kitchenOf(
  name: Name,
  given: Exports,
): { readonly is: 'kitchen'; readonly items: readonly Item[]; readonly prices: readonly Price[] } | Lacking | null {
  if (name.quoted || (name.key !== 'equipment' && name.key !== 'prices')) return null;
  const items = name.key === 'equipment' ? given.items : [];
  const prices = name.key === 'prices' ? given.prices : [];
  return items.length + prices.length > 0 ? { is: 'kitchen', items, prices } : { lacks: 'block', near: [] };
}

/** Reads the file a reference names, or says why not. */
export function fileFor(
  reference: FileReference,
  place: Place,
  from: string,
  library: Library,
): { readonly given: Exports; readonly path: string } | { readonly finding: RawFinding; readonly path: string | null } {
  const located = locate(reference.path, from, library.root);
  if ('outside' in located) return { finding: outsideWorkspace(reference.path, located.outside, place), path: null };
  const { path } = located;
  if (path === from || library.leadsBack(from, path))
    return { finding: { code: 'import-cycle', place, numbers: { path: reference.path, self: path === from } }, path };
  const deep = library.tooDeep(path);
  if (deep !== null) return { finding: refusal(reference.path, { refused: 'unreadable', why: deep }, place), path: null };
  const given = library.exportsOf(path);
  if ('refused' in given) return { finding: refusal(reference.path, given, place), path };
  return { given, path };
}

export const outsideWorkspace = (path: string, why: string, place: Place): RawFinding => ({
  code: 'outside-workspace',
  place,
  numbers: { path, why },
});

/** A file that is not read, as a finding: outside where a link leads out, else missing. */
export const refusal = (
  path: string,
  { refused, why }: { readonly refused: string; readonly why: string },
  place: Place,
): RawFinding =>
  refused === 'outside'
    ? outsideWorkspace(path, why, place)
    : { code: 'import-missing', place, numbers: { what: 'file', path, why, reason: refused } };

interface Source {
  readonly given: Exports;
  readonly path: string;
  readonly reference: FileReference;
  readonly referencePlace: Place;
}

/** The formula `#name` picks; null where none is picked; undefined where it is not there (and a finding says so). */
function formulaFor({ given, path, reference, referencePlace }: Source, findings: RawFinding[]): Formula | null | undefined {
  if (reference.formula === null) return null;
  const key = nameKey(reference.formula);
  const formula = given.unit.formulas.find(({ name }) => nameKey(name) === key);
  if (formula === undefined)
    findings.push(
      missingFormula(
        reference,
        given.unit.formulas.map(({ name }) => name),
        path,
        referencePlace,
      ),
    );
  return formula;
}

export function missingFormula(reference: FileReference, formulas: readonly string[], path: string, place: Place): RawFinding {
  const name = reference.formula ?? '';
  const near = nearestNames(
    nameKey(name),
    formulas.map((text) => ({ key: nameKey(text), text })),
    3,
  );
  const numbers = { what: 'formula', name, path, nearest: near[0] ?? null, known: formulas.join(', ') };
  const fixes = near.map(
    (text): Fix => ({ title: `Change to ${text}`, edits: [{ ...place, text: `"${reference.path}#${text}"` }] }),
  );
  return { code: 'import-missing', place, numbers, fixes };
}

type Found = { readonly is: 'component'; readonly taken: Taken } | { readonly is: 'kind'; readonly kind: Kind };

interface Lacking {
  readonly lacks: 'name' | 'block' | 'several components' | 'several formulas';
  readonly near: readonly string[];
}

function thingFor(name: Name, formula: Formula | null, unit: Unit): Found | Lacking {
  const { key } = name;
  const formulas = formula ? [formula] : unit.formulas;
  const alone = formula ? undefined : unit.components.find((component) => component.key === key);
  if (alone) return { is: 'component', taken: takenOf(alone, null, unit.path) };
  const whole = formulas.find((one) => nameKey(one.name) === key);
  const [only, ...more] = whole?.components ?? [];
  if (whole && only && more.length === 0 && whole.assembly === null)
    return { is: 'component', taken: takenOf(only, whole, unit.path) };
  const within = formulas.flatMap((one) =>
    one.components.filter((component) => component.key === key).map((component) => ({ one, component })),
  );
  const [first, second] = within;
  if (first && second && first.one !== second.one) return { lacks: 'several formulas', near: within.map(({ one }) => one.name) };
  if (first) return { is: 'component', taken: takenOf(first.component, first.one, unit.path) };
  const kind = formula ? undefined : unit.houseKinds.get(key);
  if (kind) return { is: 'kind', kind };
  if (whole) return { lacks: 'several components', near: whole.components.map((component) => component.name) };
  return { lacks: 'name', near: nearestNames(key, offered(formulas, formula ? null : unit)) };
}

function* offered(formulas: readonly Formula[], unit: Unit | null): Generator<{ key: string; text: string }> {
  for (const component of unit?.components ?? []) yield { key: component.key, text: component.name };
  for (const kind of unit?.houseKinds.values() ?? []) yield { key: nameKey(kind.name), text: kind.name };
  for (const formula of formulas) {
    for (const component of formula.components) yield { key: component.key, text: component.name };
    if (formula.components.length === 1 && formula.assembly === null) yield { key: nameKey(formula.name), text: formula.name };
  }
}

function missingThing({ lacks, near }: Lacking, name: Name, place: Place, path: string): RawFinding {
  const fixable = lacks === 'name' || lacks === 'several components';
  return {
    code: 'import-missing',
    place,
    numbers: { what: lacks, name: name.text, path, nearest: near[0] ?? null, known: near.join(', ') },
    fixes: fixable ? near.map((text) => ({ title: `Change to ${text}`, edits: [{ ...place, text }] })) : [],
  };
}

const takenBefore = new WeakMap<Component, Taken>();

/** The one `Taken` of a component, as long as its formula is the same object. */
export function takenOf(component: Component, formula: Formula | null, file: string): Taken {
  const earlier = takenBefore.get(component);
  if (earlier !== undefined && earlier.formula === formula && earlier.file === file) return earlier;
  const taken: Taken = { component, formula, file };
  takenBefore.set(component, taken);
  return taken;
}
