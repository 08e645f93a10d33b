/**
 * Slab: how the middle of a mass that is not stirred cools by conduction alone.
 *
 * Formula: series for a plane wall cooled on both faces, θ = Σ C·exp(-ζ² Fo), ζ tan ζ = Bi, C = 4 sin ζ / (2ζ + sin 2ζ), Bi = h L/k,
 *   Fo = α t/L², L half the thickness (Çengel, Heat Transfer; Incropera). A block that also cools at its sides is the product of a slab
 *   for each direction.
 * Range: properties that do not change with temperature, an even start. Error: exact for the block; what is round is taken as a square
 *   of the same area, ±10 %.
 */
import { inverse } from './curve.ts';

export interface SlabMatter {
  /** W/(m·K). */
  readonly conductivity: number;
  /** J/(m³·K). */
  readonly heatPerVolume: number;
}

/** Half the thickness in metres across each direction in which the mass loses heat, and W/(m²·K) at those faces. */
export interface Faces {
  readonly halfThickness: readonly number[];
  readonly transfer: number;
}

/** A slab made ready: its series in each direction. */
export interface Slab {
  readonly directions: readonly Direction[];
  /** How fast the middle nears its surroundings once it does so evenly, as a share each second: the first terms' ζ² α/L². */
  readonly rate: number;
}

interface Direction {
  /** L²/α in seconds. */
  readonly period: number;
  readonly biot: number;
  /** As many as were asked for so far. */
  readonly terms: Term[];
}

interface Term {
  readonly c: number;
  readonly rate: number;
}

export function slabOf(matter: SlabMatter, faces: Faces): Slab {
  const ready = new Map<number, Direction>();
  const directions = faces.halfThickness.map((half) => {
    const known = ready.get(half);
    if (known) return known;
    const biot = (faces.transfer * half) / matter.conductivity;
    const direction: Direction = { period: (matter.heatPerVolume * half ** 2) / matter.conductivity, biot, terms: [] };
    ready.set(half, direction);
    return direction;
  });
  return { directions, rate: directions.reduce((sum, direction) => sum + termOf(direction, 0).rate, 0) };
}

/** Seconds until the middle has gone all but `remaining` (0-1) of the way to its surroundings; 0 where it starts there. */
export function slabSeconds({ directions, rate }: Slab, remaining: number): number {
  if (remaining >= 1) return 0;
  const gone = (seconds: number): number => 1 - directions.reduce((product, d) => product * left(d, seconds), 1);
  // The first terms alone never cool quicker than the whole series.
  const largest = directions.reduce((product, direction) => product * termOf(direction, 0).c, 1);
  const longest = Math.log(largest / remaining) / rate;
  const tolerance = longest * 1e-8;
  // Late enough, the first terms are the whole series.
  if (gone(longest) - (1 - remaining) < remaining * rate * tolerance) return longest;
  return inverse(gone, 1 - remaining, 0, longest, tolerance);
}

/** θ of one direction. Before Fo = 0.02 nothing has reached the middle; from there fifteen terms are exact. */
function left(direction: Direction, seconds: number): number {
  const fourier = seconds / direction.period;
  if (fourier < 0.02) return 1;
  let sum = 0;
  for (let n = 0; n < 15; n++) {
    // ζ is at least nπ: from here on nothing is left to add.
    if (n > 0 && (n * Math.PI) ** 2 * fourier > 40) break;
    const { c, rate } = termOf(direction, n);
    sum += c * Math.exp(-rate * seconds);
  }
  return Math.min(1, sum);
}

function termOf(direction: Direction, n: number): Term {
  const known = direction.terms[n];
  if (known) return known;
  const { biot, period } = direction;
  const sign = n % 2 === 0 ? 1 : -1;
  // ζ tan ζ = Bi, without its pole.
  const above = (z: number): number => sign * (z * Math.sin(z) - biot * Math.cos(z));
  const zeta = inverse(above, 0, n * Math.PI, (n + 0.5) * Math.PI, 1e-10);
  const term = { c: (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta)), rate: zeta ** 2 / period };
  direction.terms[n] = term;
  return term;
}
