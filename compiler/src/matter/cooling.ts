/**
 * Cooling: how long matter takes to cool in air, cold or a bath, and how cold it is after a time; always an interval.
 *
 * Formula: what is stirred, or thin (Bi < 0.1), by Newton's law, dt = C dT/(h A (T - T_surroundings)), C with melting fat and ice
 *   (melting.ts); what is not stirred by conduction to its middle (slab.ts). Where nothing says whether it is stirred, the quick end is
 *   Newton's and the slow end conduction.
 * Source: heat-transfer coefficients after Çengel, Heat Transfer (free convection in gas 2-25 W/(m²·K), forced 25-250; in liquid 50-1000),
 *   with 5-6 for radiation; the ranges for refrigerators, blast chillers and baths are from memory. Uncovered hot matter also loses heat by
 *   its steam, which the upper end for air allows for.
 * Range: 100 to -30 °C, in one vessel; the lid, plastic and foam of a container are not counted (3 mm of plastic are 3 mm of food, Dickerson
 *   & Read 1973). Error: the interval; the assumptions say what it rests on.
 */
import { type Interval, interval } from '../quantities/interval.ts';
import { type Composition, total } from './composition.ts';
import { inverse } from './curve.ts';
import { enthalpyOf } from './melting.ts';
import { type Slab, slabOf, slabSeconds } from './slab.ts';
import { conductivity, specificHeat } from './thermal.ts';

export type CoolingMedium = 'still air' | 'fridge' | 'freezer' | 'blast chiller' | 'ice bath' | 'water bath';

export interface MediumRow {
  /** W/(m²·K) between a well-mixed mass and its surroundings. */
  readonly mixed: Interval;
  /** W/(m²·K) outside the vessel alone, for a mass that is not stirred. */
  readonly outside: Interval;
  /** °C where nothing more is known. */
  readonly celsius: Interval;
  /** A bath touches bottom and sides but not the top. */
  readonly bath: boolean;
}

export const coolingMedia: Readonly<Record<CoolingMedium, MediumRow>> = {
  'still air': { mixed: interval(8, 20), outside: interval(8, 20), celsius: interval(18, 24), bath: false },
  fridge: { mixed: interval(6, 20), outside: interval(6, 20), celsius: interval(1, 6), bath: false },
  freezer: { mixed: interval(6, 20), outside: interval(6, 20), celsius: interval(-24, -15), bath: false },
  'blast chiller': { mixed: interval(20, 60), outside: interval(20, 60), celsius: interval(-30, 0), bath: false },
  'ice bath': { mixed: interval(50, 500), outside: interval(200, 1000), celsius: interval(0, 4), bath: true },
  'water bath': { mixed: interval(40, 300), outside: interval(100, 500), celsius: interval(10, 20), bath: true },
};

export interface Vessel {
  /** Depth of the mass in it; at most this where the vessel's own depth is meant. */
  readonly depthMm?: number;
  /** Width across; for what is not round the width of a circle of the same area. */
  readonly diameterMm?: number;
  /** True where it is known to stand deep (bucket, bain-marie pot). */
  readonly deep?: boolean;
}

/** A mass that cools. `composition` may be any amount of it; `grams` is what it weighs. */
export interface CoolingMass {
  readonly composition: Composition;
  readonly grams: number;
  readonly millilitres: number;
  readonly medium: CoolingMedium;
  readonly vessel?: Vessel;
  /** Left out: not known. */
  readonly stirred?: boolean;
  /** °C of the surroundings, where better known than the medium's. */
  readonly surroundings?: Interval;
}

export interface CoolingTime {
  /** `high` is Infinity where the warmest surroundings are not colder than the reading. */
  readonly seconds: Interval;
  readonly assumptions: string[];
  /** True where the slow end is conduction to the middle of a mass that is not stirred. */
  readonly conduction: boolean;
}

/** Time to cool to a reading; null where `whyNoCoolingTime` gives a reason. */
export function coolingTime(task: CoolingMass & { readonly from: Interval; readonly to: number }): CoolingTime | null {
  if (whyNoCoolingTime(task) !== null) return null;
  return {
    seconds: { low: quickest(task, task.from.low, task.to), high: slowest(task, task.from.high, task.to) },
    assumptions: assumptionsOf(task),
    conduction: casesOf(task, 'slow').some((c) => c.slab !== null),
  };
}

/** The quick end of `coolingTime` alone, for less work; null where there is none. */
export function quickestSeconds(task: CoolingMass & { readonly from: number; readonly to: number }): number | null {
  return whyNoCoolingTime(task) === null ? quickest(task, task.from, task.to) : null;
}

/** Seconds within which it is there, stirred, at its quick end: a bound above `quickestSeconds` for a quarter of the work. */
export function surelyWithin(task: CoolingMass & { readonly from: number; readonly to: number }): number | null {
  if (whyNoCoolingTime(task) !== null) return null;
  return Math.min(...casesOf({ ...task, stirred: true }, 'quick').map((c) => mostSecondsIn(c, task.from, task.to)));
}

/** Why a cooling time cannot be told, for a cook to read; null where it can. */
export function whyNoCoolingTime(task: CoolingMass & { readonly to: number }): string | null {
  if (!known(task)) return 'its mass or volume is not known';
  const coldest = surroundingsOf(task).low;
  if (coldest >= task.to) return `its surroundings are at ${coldest} °C and cannot cool it to ${task.to} °C`;
  return null;
}

/**
 * °C after a time. What starts colder than its surroundings, or whose mass or volume is not known, lies between its own and their
 * temperature, whatever the time.
 */
export function temperatureAfter(task: CoolingMass & { readonly from: Interval; readonly seconds: Interval }): Interval {
  const around = surroundingsOf(task);
  const { from, seconds } = task;
  if (!known(task)) return { low: Math.min(from.low, around.low), high: Math.max(from.high, around.high) };
  const low = from.low <= around.low ? from.low : cooledTo(casesOf(task, 'quick'), Math.min, from.low, seconds.high);
  const high = from.high <= around.high ? around.high : cooledTo(casesOf(task, 'slow'), Math.max, from.high, seconds.low);
  // Close to the surroundings the two ends may cross by the tolerance of the search.
  return { low: Math.min(low, high), high };
}

/** Seconds the two-stage rule asks about (57 to 21 °C, and 57 to 5 °C) at the quickest this mass can cool; Infinity where it cannot. */
export function fastestCooling(mass: CoolingMass): { readonly to21: number; readonly to5: number } {
  const secondsTo = (to: number): number => (whyNoCoolingTime({ ...mass, to }) === null ? quickest(mass, 57, to) : Infinity);
  return { to21: secondsTo(21), to5: secondsTo(5) };
}

/** Limits of that rule in seconds: FDA Food Code 2022, 3-501.14(A), 2 h and 6 h in all. */
export const twoStageLimits = { to21: 2 * 3600, to5: 6 * 3600 } as const;

const known = (mass: CoolingMass): boolean => mass.grams > 0 && mass.millilitres > 0 && total(mass.composition) > 0;

/** One way the mass may stand: everything not known taken at its quick or its slow end. */
interface Case {
  /** Heat in J between two whole degrees. */
  readonly heatBetween: (lower: number, upper: number) => number;
  /** W/K over the whole surface. */
  readonly conductance: number;
  readonly celsius: number;
  /** J/K, at 20 °C. */
  readonly capacity: number;
  /** Null where it cools as one. */
  readonly slab: Slab | null;
}

const quickest = (mass: CoolingMass, from: number, to: number): number =>
  Math.min(...casesOf(mass, 'quick').map((c) => secondsIn(c, from, to)));

const slowest = (mass: CoolingMass, from: number, to: number): number =>
  Math.max(...casesOf(mass, 'slow').map((c) => secondsIn(c, from, to)));

/** Shallow or deep, stirred or not, as far as either is possible. */
function casesOf(mass: CoolingMass, end: 'quick' | 'slow'): readonly Case[] {
  const depth = depthOf(mass);
  const depths = depth.low === depth.high ? [depth.low] : [depth.low, depth.high];
  const stirrings = mass.stirred === undefined ? [true, false] : [mass.stirred];
  return depths.flatMap((d) => stirrings.map((stirred) => caseOf(mass, end, d, stirred)));
}

function caseOf(mass: CoolingMass, end: 'quick' | 'slow', depth: number, stirred: boolean): Case {
  const pick = (x: Interval): number => (end === 'quick' ? x.high : x.low);
  const row = coolingMedia[mass.medium];
  const cubicMetres = mass.millilitres / 1e6;
  const base = cubicMetres / depth;
  const half = Math.sqrt(base) / 2;
  const across = row.bath ? depth : depth / 2;
  // The wall of a round vessel: its circumference times the depth.
  const wall = 2 * Math.sqrt(Math.PI * base) * depth;
  const k = conductivity(mass.composition, 20);
  const capacity = mass.grams * specificHeat(mass.composition, 20);
  const thin = (row.outside.high * Math.min(across, half)) / k < 0.1;
  const transfer = pick(row.outside);
  const perGram = mass.grams / total(mass.composition);
  const heat = heatAtDegrees(mass.composition);
  const around = surroundingsOf(mass);
  return {
    heatBetween: (lower, upper) => perGram * (heat(upper) - heat(lower)),
    conductance: pick(row.mixed) * ((row.bath ? 1 : 2) * base + wall),
    celsius: end === 'quick' ? around.low : around.high,
    capacity,
    slab:
      stirred || thin
        ? null
        : slabOf({ conductivity: k, heatPerVolume: capacity / cubicMetres }, { halfThickness: [across, half, half], transfer }),
  };
}

const surroundingsOf = (mass: CoolingMass): Interval => mass.surroundings ?? coolingMedia[mass.medium].celsius;

/** Depth in m the mass may lie at. */
function depthOf({ millilitres, vessel }: CoolingMass): Interval {
  const cubicMetres = millilitres / 1e6;
  const byDepth = vessel?.depthMm === undefined ? Infinity : vessel.depthMm / 1000;
  const byWidth = vessel?.diameterMm === undefined ? Infinity : cubicMetres / ((Math.PI / 4) * (vessel.diameterMm / 1000) ** 2);
  const told = Math.min(byDepth, byWidth);
  if (Number.isFinite(told)) return interval(told);
  // A bowl half as deep as a cube of it to one as deep as wide; what is called deep from there to one and a half times that.
  const edge = Math.cbrt(cubicMetres);
  return vessel?.deep ? interval(0.9 * edge, 1.6 * edge) : interval(0.5 * edge, 1.1 * edge);
}

function secondsIn(c: Case, from: number, to: number): number {
  if (from <= to) return 0;
  // A hair above the surroundings is never reached either.
  if (c.celsius >= to - 0.01) return Infinity;
  // ∫ C/(T - T_surroundings) dT in J/K, over whole degrees, so that a longer way is never quicker.
  let heat = 0;
  for (let degree = Math.floor(to); degree < from; degree += 1) {
    const upper = Math.min(degree + 1, from);
    const lower = Math.max(degree, to);
    heat += c.heatBetween(degree, degree + 1) * Math.log((upper - c.celsius) / (lower - c.celsius));
  }
  if (c.slab === null) return heat / c.conductance;
  // The slab's own heat capacity is constant; what melting fat and ice add to it goes at the first term's pace.
  const way = (from - c.celsius) / (to - c.celsius);
  return Math.max(0, slabSeconds(c.slab, 1 / way) + (heat / c.capacity - Math.log(way)) / c.slab.rate);
}

/** No less than `secondsIn` of what cools as one: over a few steps, each at the pace of its cold end. */
function mostSecondsIn(c: Case, from: number, to: number): number {
  if (from <= to) return 0;
  if (c.celsius >= to - 0.01) return Infinity;
  const last = Math.floor(to);
  let heat = 0;
  for (let upper = Math.ceil(from); upper > last; ) {
    const lower = Math.max(last, upper - Math.max(1, Math.floor((upper - c.celsius) / 5)));
    heat += c.heatBetween(lower, upper) / (Math.max(lower, to) - c.celsius);
    upper = lower;
  }
  return heat / c.conductance;
}

/** °C it has come to: of the quickest of the ways at the quick end, of the slowest at the slow end. */
function cooledTo(cases: readonly Case[], choose: (...celsius: number[]) => number, from: number, seconds: number): number {
  if (seconds <= 0) return from;
  return choose(...cases.map((c) => (c.slab === null ? mixedTo(c, from, seconds) : slabTo(c, from, seconds))));
}

/** A hair above the surroundings, which are never reached. */
const nearest = ({ celsius }: Case): number => celsius + 0.01;

const slabTo = (c: Case, from: number, seconds: number): number =>
  inverse((celsius) => -secondsIn(c, from, celsius), -seconds, nearest(c), from, 1e-3);

/** What cools as one, degree by degree: as `secondsIn`, the other way round. */
function mixedTo(c: Case, from: number, seconds: number): number {
  const coldest = nearest(c);
  let left = seconds * c.conductance;
  let upper = from;
  while (upper > coldest) {
    const degree = Math.ceil(upper) - 1;
    const lower = Math.max(degree, coldest);
    const heat = c.heatBetween(degree, degree + 1);
    const needed = heat * Math.log((upper - c.celsius) / (lower - c.celsius));
    if (needed >= left) return c.celsius + (upper - c.celsius) * Math.exp(-left / heat);
    left -= needed;
    upper = lower;
  }
  return Math.min(from, coldest);
}

const tables = new WeakMap<Composition, Map<number, number>>();

/** Heat in J at whole degrees, remembered by what it is of: each way it may stand asks for the same ones. */
function heatAtDegrees(c: Composition): (degree: number) => number {
  let table = tables.get(c);
  if (!table) {
    table = new Map();
    tables.set(c, table);
  }
  const known = table;
  let heat: ReturnType<typeof enthalpyOf> | null = null;
  return (degree) => {
    let joules = known.get(degree);
    if (joules === undefined) {
      heat ??= enthalpyOf(c);
      joules = heat(degree, 'crystallised');
      known.set(degree, joules);
    }
    return joules;
  };
}

function assumptionsOf(task: CoolingMass): string[] {
  const around = surroundingsOf(task);
  const depth = depthOf(task);
  const centimetres = (metres: number): string => (metres * 100).toFixed(1);
  const deep =
    depth.low === depth.high
      ? `lying ${centimetres(depth.low)} cm deep`
      : `lying ${centimetres(depth.low)}–${centimetres(depth.high)} cm deep, as nothing says how wide its vessel is`;
  const slow = casesOf(task, 'slow');
  const stirring = slow.every((c) => c.slab === null)
    ? 'well mixed, or thin enough to cool as one'
    : task.stirred === false
      ? 'not stirred, so that heat leaves the middle by conduction alone'
      : 'stirred at the quick end, left alone at the slow end, where heat leaves the middle by conduction alone';
  return [`${task.medium} at ${around.low}–${around.high} °C`, deep, stirring, 'uncovered, in one vessel'];
}
