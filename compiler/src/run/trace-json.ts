/** The trace as other programs read it: the shape of `nappe trace --format json`, from a run. */
import { fatOf, sugarsOf } from '../matter/composition.ts';
import { logReduction, organism, reference } from '../matter/lethality.ts';
import { type Interval, middle } from '../quantities/interval.ts';
import type { Place, Selection } from '../resolve/model.ts';
import type { BlockRun, Foam, Matter, Run, StepRecord, WeighedLine } from './trace.ts';

export interface TraceJson {
  readonly version: 1;
  readonly file: string;
  readonly formula: string;
  readonly choices: Selection;
  readonly ingredients: readonly TraceIngredient[];
  readonly steps: readonly TraceStep[];
}

export interface TraceIngredient {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly name: string;
  /** Name of its catalogue entry or of the component it is a batch of; null where neither is known. */
  readonly kind: string | null;
  /** Null for `some`. */
  readonly grams: number | null;
}

/** `[low, high]`; null where not known. */
export type Range = readonly [number, number] | null;

export interface TraceStep {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  /** The component's name, or `assembly`. */
  readonly block: string;
  readonly verb: string;
  readonly text: string;
  readonly result: string | null;
  readonly inputs: readonly { readonly id: string; readonly name: string; readonly grams: number }[];
  readonly grams: Range;
  readonly celsius: Range;
  readonly millilitres: Range;
  readonly seconds: { readonly range: Range; readonly estimated: boolean } | null;
  readonly phase: string;
  /** Grams at the middle; `unknown` is what no composition is known of. */
  readonly composition: Readonly<Record<string, number>>;
  readonly gelatin: { readonly state: string; readonly grams200: number };
  readonly gelatin200: number;
  readonly foam?: { readonly kind: string; readonly stage: string; readonly overrun: Range };
  /** Of the least heated egg in it; null where there is none. */
  readonly lethality: { readonly log10: number | null; readonly organism: string; readonly reference: string } | null;
  readonly allergens: readonly string[];
  readonly additions?: readonly { readonly grams: Range; readonly celsius: Range }[];
  readonly assumptions: readonly string[];
}

/** Where a block stands: its file as shown to people, and the line (from 1) of a place in it. */
export interface Positions {
  fileOf(place: Place): string;
  lineOf(place: Place): number;
}

/** One run (one combination) as JSON data; figures that are not finite become null. */
export function traceJson(run: Run, positions: Positions): TraceJson {
  const ids = idsOf(run);
  return {
    version: 1,
    file: positions.fileOf(run.formula.place),
    formula: run.formula.name,
    choices: run.selection,
    ingredients: run.blocks.flatMap((block) => block.lines.map((weighed) => ingredient(weighed, ids, positions))),
    steps: run.records.map((record) => step(record, ids, positions)),
  };
}

/** The same of one step alone. */
export const traceStep = (run: Run, record: StepRecord, positions: Positions): TraceStep => step(record, idsOf(run), positions);

const known = new WeakMap<Run, Ids>();

function idsOf(run: Run): Ids {
  let ids = known.get(run);
  if (!ids) {
    ids = new Ids(run);
    known.set(run, ids);
  }
  return ids;
}

function ingredient(weighed: WeighedLine, ids: Ids, positions: Positions): TraceIngredient {
  const { line } = weighed;
  const { substance } = line;
  const measure = line.amount.base.measure;
  return {
    id: ids.ofLine(weighed),
    file: positions.fileOf(line.place),
    line: positions.lineOf(line.place),
    name: line.label,
    kind:
      substance.is === 'kind'
        ? substance.known
          ? substance.kind.name
          : null
        : substance.is === 'batch'
          ? substance.taken.component.name
          : substance.component.name,
    grams: measure === 'some' || measure === 'unknown' ? null : round(middle(weighed.grams), 3),
  };
}

function step(record: StepRecord, ids: Ids, positions: Positions): TraceStep {
  const { result } = record;
  const { node } = record.step;
  return {
    id: ids.ofRecord(record),
    file: positions.fileOf(record.step.place),
    line: positions.lineOf(record.step.place),
    block: record.component.isAssembly ? 'assembly' : record.component.name,
    verb: node.verb,
    text: node.text
      .slice(node.span.start, node.guard?.start ?? node.span.end)
      .trim()
      .replace(/\s+/g, ' '),
    result: record.names[0] ?? null,
    inputs: record.inputs.flatMap((input) =>
      ids.ofMatter(input.matter, record).map((from) => ({ ...from, name: from.name ?? input.name })),
    ),
    grams: range(result.grams, 2),
    celsius: range(result.heat.celsius, 2),
    millilitres: record.millilitres && range(record.millilitres, 1),
    seconds: record.seconds && { range: range(record.seconds.range, 0), estimated: record.seconds.estimated },
    phase: result.phase,
    composition: composition(result),
    gelatin: { state: result.gelatin, grams200: round(result.gelatin200, 3) },
    gelatin200: round(result.gelatin200, 3),
    ...(result.foam && { foam: foam(result.foam) }),
    lethality: lethality(result),
    allergens: allergensOf(result),
    ...(record.additions.length > 0 && {
      additions: record.additions.map((addition) => ({ grams: range(addition.grams, 2), celsius: range(addition.celsius, 2) })),
    }),
    assumptions: record.assumptions,
  };
}

function composition(matter: Matter): Readonly<Record<string, number>> {
  const c = matter.composition;
  const figures = {
    water: c.water,
    fat: fatOf(c),
    milkFat: c.milkFat,
    cocoaButter: c.cocoaButter,
    otherFat: c.otherFat,
    sugars: sugarsOf(c),
    sucrose: c.sucrose,
    otherSugars: c.otherSugars,
    starch: c.starch,
    protein: c.protein,
    fibre: c.fibre,
    ash: c.ash,
    alcohol: c.alcohol,
    unknown: matter.unknownGrams,
  };
  return Object.fromEntries(Object.entries(figures).map(([name, grams]) => [name, round(grams, 2)]));
}

const foam = ({ kind, low, high, overrun }: Foam) => ({
  kind,
  stage: low === high ? low : `${low}-${high}`,
  overrun: range(overrun, 0),
});

function lethality(matter: Matter): TraceStep['lethality'] {
  const eggs = matter.parts.filter((part) =>
    traitsOf(part.line).some((trait) => trait === 'whole egg' || trait === 'egg yolk' || trait === 'egg white'),
  );
  if (eggs.length === 0) return null;
  // What was baked, dried or fried through is heated enough; by how much, no reading says.
  const least = Math.min(...eggs.map((part) => (part.baked ? Number.POSITIVE_INFINITY : logReduction(...part.holds))));
  return { log10: Number.isFinite(least) ? round(least, 1) : null, organism, reference };
}

export function allergensOf(matter: Matter): readonly string[] {
  return [
    ...new Set(matter.parts.flatMap(({ line }) => (line.substance.is === 'kind' ? line.substance.kind.allergens : []))),
  ].sort();
}

const traitsOf = (line: WeighedLine['line']): readonly string[] =>
  line.substance.is === 'kind' ? line.substance.kind.traits : [];

/** `i1`, `i2` … for what was weighed and `s1`, `s2` … for steps, in the order of the run. */
class Ids {
  private readonly records = new Map<StepRecord, string>();
  private readonly lines = new Map<WeighedLine, string>();
  private readonly blockOf: ReadonlyMap<StepRecord, BlockRun>;
  private readonly blocks: readonly BlockRun[];

  constructor(run: Run) {
    this.blocks = run.blocks;
    this.blockOf = run.blockOf;
    for (const record of run.records) this.records.set(record, `s${this.records.size + 1}`);
    for (const block of run.blocks) for (const weighed of block.lines) this.lines.set(weighed, `i${this.lines.size + 1}`);
  }

  ofRecord(record: StepRecord): string {
    return this.records.get(record) ?? record.id;
  }

  ofLine(weighed: WeighedLine): string {
    return this.lines.get(weighed) ?? weighed.line.id;
  }

  /** What left this matter: the step that made it, or each ingredient line it was weighed from. */
  ofMatter(matter: Matter, taker: StepRecord): { readonly id: string; readonly name?: string; readonly grams: number }[] {
    if (matter.made) return [{ id: this.ofRecord(matter.made), grams: round(middle(matter.grams), 2) }];
    return matter.parts.map((part) => {
      const own = this.blockOf.get(taker);
      const weighed = [...(own ? [own] : []), ...this.blocks]
        .flatMap((block) => block.lines)
        .find(({ line }) => line === part.line);
      return {
        id: weighed ? this.ofLine(weighed) : part.line.id,
        ...(matter.parts.length > 1 && { name: part.line.name }),
        grams: round(part.grams, 2),
      };
    });
  }
}

function range(x: Interval, digits: number): Range {
  return Number.isFinite(x.low) && Number.isFinite(x.high) ? [round(x.low, digits), round(x.high, digits)] : null;
}

function round(value: number, digits: number): number {
  const factor = 10 ** digits;
  return Math.round(value * factor) / factor;
}
