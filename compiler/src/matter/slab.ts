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
  readonly terms: readonly Term[];
}

interface Term {
  readonly c: number;
  readonly rate: number;
}

export function slabOf(matter: SlabMatter, faces: Faces): Slab {
  const directions = faces.halfThickness.map((half) => ({
    period: (matter.heatPerVolume * half ** 2) / matter.conductivity,
    terms: Array.from({ length: 15 }, (_, n) => term(matter, half, faces.transfer, n)),
  }));
  return { directions, rate: directions.reduce((sum, { terms }) => sum + terms[0]!.rate, 0) };
}

/** Seconds until the middle has gone all but `remaining` (0-1) of the way to its surroundings; 0 where it starts there. */
export function slabSeconds({ directions, rate }: Slab, remaining: number): number {
  if (remaining >= 1) return 0;
  const gone = (seconds: number): number => 1 - directions.reduce((product, d) => product * left(d, seconds), 1);
  // The first terms alone never cool quicker than the whole series.
  const largest = directions.reduce((product, { terms }) => product * terms[0]!.c, 1);
  const longest = Math.log(largest / remaining) / rate;
  return inverse(gone, 1 - remaining, 0, longest, longest * 1e-8);
}

/** θ of one direction. Before Fo = 0.02 nothing has reached the middle; from there fifteen terms are exact. */
const left = ({ period, terms }: Direction, seconds: number): number =>
  seconds < 0.02 * period
    ? 1
    : Math.min(
        1,
        terms.reduce((sum, { c, rate }) => sum + c * Math.exp(-rate * seconds), 0),
      );

function term({ conductivity, heatPerVolume }: SlabMatter, half: number, transfer: number, n: number): Term {
  const biot = (transfer * half) / conductivity;
  const zeta = inverse((z) => z * Math.tan(z), biot, n * Math.PI, (n + 0.5) * Math.PI - 1e-9);
  return {
    c: (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta)),
    rate: (zeta ** 2 * conductivity) / (heatPerVolume * half ** 2),
  };
}
