/** Making matter: from an ingredient line, from several matters together, from a part of one. All functions are pure but for the id. */

import { type Composition, compose, nothing, plus, scaled } from '../matter/composition.ts';
import { as200, gradeOf } from '../matter/gelatin.ts';
import { logReduction } from '../matter/lethality.ts';
import { add, type Interval, interval, middle, times } from '../quantities/interval.ts';
import type { Settings, SourceLine, Step } from '../resolve/model.ts';
import { heatOfLayers, heatReckoned, heatTogether } from './heat.ts';
import { once } from './once.ts';
import type { Foam, GelatinState, Heat, Matter, Part, StepRecord } from './trace.ts';

let lastId = 0;
const freshId = (): number => ++lastId;

/** A copy with other fields; a new identity. */
export const withMatter = (matter: Matter, changes: Partial<Omit<Matter, 'id'>>): Matter =>
  Object.assign({ ...matter, id: freshId() }, changes);

/** log10 reduction of Salmonella in a part so far. */
export const log10Of = (part: Part): number => logReduction(...part.holds);

const storageCelsius = { chilled: interval(2, 8), ambient: interval(18, 24), frozen: interval(-20, -15) } as const;

/** Bloom assumed where a line gives none: what most kitchens buy (common practice, no source). */
export const assumedBloom = 200;

export function matterOfLine(line: SourceLine, grams: Interval, settings: Settings): Matter {
  if (line.substance.is !== 'kind') throw new Error('matterOfLine: not a kind');
  const { kind } = line.substance;
  const part: Part = {
    line,
    grams: middle(grams),
    reached: Number.NEGATIVE_INFINITY,
    holds: [],
    baked: kind.traits.includes('baked'),
  };
  const gelatin = kind.traits.includes('gelatin')
    ? 'dry'
    : kind.traits.includes('gelatin mass')
      ? 'bloomed'
      : kind.traits.includes('instant gelatin')
        ? 'dissolved'
        : 'none';
  const written = line.celsius;
  const stored =
    kind.storage === 'ambient' ? settings.room : kind.storage === 'chilled' ? storageCelsius.chilled : storageCelsius.frozen;
  const heat: Heat = {
    celsius: written ? withThermometer(closed(written), written.low !== written.high, settings) : stored,
    basis: written ? 'written' : 'stored',
    written,
    heated: null,
    cooledSince: false,
  };
  const chocolate = kind.traits.some(
    (trait) => trait === 'dark chocolate' || trait === 'milk chocolate' || trait === 'white chocolate',
  );
  const { composition, unknownGrams } = compositionOf([part], 0);
  return {
    id: freshId(),
    made: null,
    parts: [part],
    evaporated: interval(0),
    grams,
    composition,
    unknownGrams,
    heat,
    phase: line.phase,
    foam: null,
    gelatin,
    gelatin200: gelatin200Of(part, settings),
    chocolate: chocolate ? 'solid' : 'none',
    eggCurdled: false,
    frozen: line.phase === 'frozen' || kind.storage === 'frozen' || heat.celsius.high < -5,
    smoothed: false,
    baked: kind.traits.includes('baked'),
    stays: [],
    layers: null,
  };
}

/** Grams of gelatin as 200 bloom in one part; ready gelatin mass carries one part in seven (trade practice, facts sec. 5). */
function gelatin200Of(part: Part, settings: Settings): number {
  if (part.line.substance.is !== 'kind') return 0;
  const { traits } = part.line.substance.kind;
  const dry = traits.includes('gelatin mass')
    ? part.grams / 7
    : traits.includes('instant gelatin')
      ? part.grams * carried(part)
      : traits.includes('gelatin')
        ? part.grams
        : 0;
  if (dry === 0) return 0;
  return as200(dry, bloomOf(part.line), settings.gelatinLaw);
}

/** Instant gelatin comes on a carrier of sugar: its share of gelatin, by protein (gelatin holds 85.6 %, USDA SR28 19177). */
const carried = ({ line }: Part): number =>
  line.substance.is === 'kind' ? Math.min(1, (line.substance.kind.composition?.protein ?? 0.856) / 0.856) : 0;

/** Bloom as written, of the grade the kind is named for, or what most kitchens buy. */
function bloomOf({ bloom, substance }: SourceLine): number {
  const grade = substance.is === 'kind' ? gradeOf(substance.kind.name) : null;
  return bloom ? middle(bloom) : grade ? middle(grade.bloom) : assumedBloom;
}

/** `below 5 °C` and `above 80 °C` as physics takes them: no colder than ice, no hotter than a boil unless the other end says so. */
export const closed = (written: Interval): Interval =>
  interval(
    Number.isFinite(written.low) ? written.low : Math.min(written.high, 0),
    Number.isFinite(written.high) ? written.high : Math.max(written.low, 105),
  );

/** A single reading means itself give or take the thermometer; a range is taken as it stands. */
export function withThermometer(written: Interval, ranged: boolean, settings: Settings): Interval {
  return ranged ? written : interval(written.low - settings.thermometer, written.high + settings.thermometer);
}

export function compositionOf(parts: readonly Part[], evaporated: number): { composition: Composition; unknownGrams: number } {
  let sum = nothing;
  let unknownGrams = 0;
  for (const part of parts) {
    const known = part.line.substance.is === 'kind' ? part.line.substance.kind.composition : null;
    if (known) sum = plus(sum, scaled(known, part.grams));
    else unknownGrams += part.grams;
  }
  const composition =
    evaporated === 0 ? sum : compose((name) => (name === 'water' ? Math.max(0, sum.water - evaporated) : sum[name]));
  return { composition, unknownGrams };
}

/** Grams of dextrins: what the catalogue counts as starch in syrups and fondant, and what is sugar to a boil and a gel. */
export function dextrinsOf({ parts }: Matter): number {
  let grams = 0;
  for (const { line, grams: weighed } of parts) {
    if (line.substance.is !== 'kind') continue;
    const { traits, composition } = line.substance.kind;
    // Icing sugar's starch is real starch, against caking.
    if (traits.includes('sugar') && !traits.includes('icing sugar')) grams += weighed * (composition?.starch ?? 0);
  }
  return grams;
}

/** Mass share of water from which matter wets what lies in it: cream, egg, purée and spirits do, butter and honey do not (common practice, no source). */
const wets = 0.4;

export const isWatery = ({ composition, grams }: Matter): boolean =>
  composition.water >= wets * middle(grams) && composition.water > 0;

/** A share (0–1) of matter; everything extensive in proportion. */
export function portionOf(matter: Matter, share: number): Matter {
  if (share >= 1) return matter;
  return withMatter(matter, {
    parts: matter.parts.map((part) => ({ ...part, grams: part.grams * share })),
    evaporated: times(matter.evaporated, share),
    grams: times(matter.grams, share),
    composition: scaled(matter.composition, share),
    unknownGrams: matter.unknownGrams * share,
    gelatin200: matter.gelatin200 * share,
    layers: matter.layers?.map((layer) => portionOf(layer, share)) ?? null,
  });
}

/** Several matters as one homogeneous mass. */
export function mixed(matters: readonly Matter[], step: StepRecord | null = null): Matter {
  const first = matters[0];
  if (!first) throw new Error('mixed: nothing to mix');
  if (matters.length === 1) return flattened(first);
  const { parts, evaporated, grams, composition, unknownGrams, gelatin200 } = totalsOf(matters);
  // In the same order as of a line, so that both are of one shape to the engine.
  return {
    id: freshId(),
    made: step,
    parts,
    evaporated,
    grams,
    composition,
    unknownGrams,
    heat: heatTogether(matters),
    phase: phaseTogether(matters),
    foam: null,
    gelatin: gelatinTogether(matters),
    gelatin200,
    chocolate: chocolateTogether(matters),
    eggCurdled: matters.some((matter) => matter.eggCurdled),
    frozen: false,
    smoothed: false,
    baked: matters.every((matter) => matter.baked),
    stays: [],
    layers: null,
  };
}

/** Matters on, in or around each other, bottom to top; each keeps its own state. */
export function layered(matters: readonly Matter[], step: StepRecord | null = null): Matter {
  const layers = matters.flatMap((matter) => matter.layers ?? [matter]);
  const last = layers.at(-1);
  if (!last) throw new Error('layered: nothing to lay');
  if (layers.length === 1) return last;
  const bulk = layers.reduce((a, b) => (middle(b.grams) > middle(a.grams) ? b : a));
  return {
    ...bulk,
    id: freshId(),
    made: step,
    ...totalsOf(layers),
    heat: heatOfLayers(layers, bulk),
    layers,
    frozen: layers.every((layer) => layer.frozen) || bulk.frozen,
    baked: layers.every((layer) => layer.baked),
    stays: bulk.stays,
  };
}

/** Layers broken down into one mass. */
function flattened(matter: Matter): Matter {
  return matter.layers ? withMatter(matter, { layers: null }) : matter;
}

/** The masses matter consists of: its layers, or itself. */
export const bodiesOf = (matter: Matter): readonly Matter[] => matter.layers ?? [matter];

/** Does the same to each layer. */
export function eachBody(matter: Matter, change: (body: Matter) => Matter): Matter {
  if (!matter.layers) return change(matter);
  const whole = layered(matter.layers.map(change), matter.made);
  return whole;
}

function totalsOf(matters: readonly Matter[]) {
  const evaporated = matters.map((matter) => matter.evaporated).reduce(add);
  const parts = mergedParts(matters);
  return {
    parts,
    evaporated,
    grams: matters.map((matter) => matter.grams).reduce(add),
    composition: matters.map((matter) => matter.composition).reduce(plus),
    unknownGrams: matters.reduce((sum, matter) => sum + matter.unknownGrams, 0),
    gelatin200: matters.reduce((sum, matter) => sum + matter.gelatin200, 0),
  };
}

/** One part a line; where a line meets itself again the less treated of the two decides. */
function mergedParts(matters: readonly Matter[]): readonly Part[] {
  const byLine = new Map<SourceLine, Part>();
  for (const matter of matters)
    for (const part of matter.parts) {
      const known = byLine.get(part.line);
      byLine.set(
        part.line,
        known
          ? {
              line: part.line,
              grams: known.grams + part.grams,
              reached: Math.min(known.reached, part.reached),
              holds: logReduction(...known.holds) <= logReduction(...part.holds) ? known.holds : part.holds,
              baked: known.baked && part.baked,
            }
          : part,
      );
    }
  return [...byLine.values()];
}

function phaseTogether(matters: readonly Matter[]): Matter['phase'] {
  const watery = matters.find((matter) => matter.phase === 'liquid' || matter.phase === 'gel');
  if (watery) {
    const dry = matters.filter((matter) => matter.phase === 'powder').reduce((sum, matter) => sum + middle(matter.grams), 0);
    const all = matters.reduce((sum, matter) => sum + middle(matter.grams), 0);
    return dry > 0.45 * all ? 'dough' : 'liquid';
  }
  if (matters.some((matter) => matter.phase === 'paste' || matter.phase === 'batter' || matter.phase === 'foam')) return 'paste';
  return matters.reduce((a, b) => (middle(b.grams) > middle(a.grams) ? b : a)).phase;
}

/** Dry gelatin that meets water takes it up; whether it does so without lumps is for a rule to say. */
function gelatinTogether(matters: readonly Matter[]): GelatinState {
  const wet = matters.some(isWatery);
  const states = new Set(matters.map(({ gelatin }) => (gelatin === 'dry' && wet ? 'bloomed' : gelatin)));
  for (const state of ['dry', 'bloomed', 'dissolved', 'set'] as const) if (states.has(state)) return state;
  return 'none';
}

function chocolateTogether(matters: readonly Matter[]): Matter['chocolate'] {
  const states = new Set(matters.map((matter) => matter.chocolate));
  for (const state of ['seized', 'solid', 'melted', 'in temper'] as const) if (states.has(state)) return state;
  return 'none';
}

/** Matter after a reading was taken (or a heating or cooling ended at one). */
export function atReading(
  matter: Matter,
  written: Interval,
  ranged: boolean,
  settings: Settings,
  direction: 'heated' | 'cooled' | 'read',
  step: Step,
): Matter {
  const celsius = withThermometer(closed(written), ranged, settings);
  return eachBody(matter, (body) =>
    withMatter(body, {
      heat: {
        celsius,
        basis: 'written',
        written,
        heated: direction === 'heated' ? { step, written } : body.heat.heated,
        cooledSince: direction === 'cooled' ? true : direction === 'heated' ? false : body.heat.cooledSince,
      },
    }),
  );
}

/** Matter whose temperature was computed or only bounded; reckoned when first asked for, where that is work. */
export function atComputed(
  matter: Matter,
  celsius: Interval | (() => Interval),
  basis: 'computed' | 'unknown',
  changes: { heated?: Step; cooled?: boolean } = {},
): Matter {
  const reckon = typeof celsius === 'function' ? once(celsius) : () => celsius;
  return eachBody(matter, (body) =>
    withMatter(body, {
      heat: heatReckoned(basis, reckon, {
        written: null,
        heated: changes.heated ? { step: changes.heated, written: null } : body.heat.heated,
        cooledSince: changes.heated ? false : changes.cooled ? true : body.heat.cooledSince,
      }),
    }),
  );
}

/** Takes water off as steam; composition at the middle. */
export function evaporate(matter: Matter, water: Interval): Matter {
  if (matter.layers) {
    // Steam leaves the layers as they have water to give.
    const perWater = 1 / Math.max(1e-9, matter.composition.water);
    return eachBody(matter, (body) => evaporate(body, times(water, perWater * body.composition.water)));
  }
  const most = Math.max(0, Math.min(matter.composition.water * 0.98, matter.grams.low));
  const gone = interval(Math.min(water.low, most), Math.min(water.high, most));
  if (gone.high <= 0) return matter;
  return withMatter(matter, {
    evaporated: add(matter.evaporated, gone),
    grams: interval(matter.grams.low - gone.high, matter.grams.high - gone.low),
    composition: compose((name) => (name === 'water' ? matter.composition.water - middle(gone) : matter.composition[name])),
  });
}

/** Keeps a share of everything (what stays behind in the sieve is taken off evenly). */
export function keeping(matter: Matter, share: Interval): Matter {
  if (share.low >= 1) return matter;
  if (matter.layers) return eachBody(matter, (body) => keeping(body, share));
  const grams = interval(matter.grams.low * share.low, matter.grams.high * share.high);
  // Parts and composition stand for the middle of what is left.
  return withMatter(portionOf(matter, middle(grams) / Math.max(1e-9, middle(matter.grams))), { grams });
}

export const foamless = (matter: Matter): Matter => (matter.foam ? withMatter(matter, { foam: null }) : matter);

export const withFoam = (matter: Matter, foam: Foam): Matter => withMatter(matter, { foam, phase: 'foam' });
