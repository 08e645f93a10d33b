/**
 * Heat balance: the temperature of a mixture from the heat its parts bring.
 *
 * Formula: Σ (H(t) - H(t_i)) = 0 over the parts (enthalpy from melting.ts), each part keeping its own fat and ice.
 * Source: conservation of energy; constants as in thermal.ts and melting.ts.
 * Range: -40-150 °C, mixed quickly, no heat lost to bowl or air, no heat of dissolving (sugar cools water by at most 2 K).
 * Error: the interval of the inputs, and ±1 K beside it. Fat that melts takes its heat up at once; fat that ought to crystallise
 *   may do so at once or hours later, so that the interval covers both.
 */
import type { Interval } from '../quantities/interval.ts';
import { type Composition, total } from './composition.ts';
import { inverse } from './curve.ts';
import { enthalpyOf } from './melting.ts';

/** Matter to be mixed. */
export interface HeatPart {
  /** In grams. */
  readonly composition: Composition;
  readonly celsius: Interval;
  /** True where its fat has crystallised as far as it will (kept cold, whipped); otherwise it may also be all melted still. */
  readonly coldFat?: boolean;
}

/** Temperature of the mixture: never colder than the coldest part nor warmer than the warmest; NaN for parts without mass. */
export function mixtureTemperature(parts: readonly HeatPart[]): Interval {
  const weighed = parts.filter((part) => total(part.composition) > 0);
  if (weighed.length === 0) return { low: Number.NaN, high: Number.NaN };
  const low = balance(weighed, (part) => part.celsius.low, Math.max);
  const high = balance(weighed, (part) => part.celsius.high, Math.min);
  // Where both are one figure, the bisection may cross them by its tolerance.
  return { low: Math.min(low, high), high };
}

/** K; far below what a thermometer or the models can tell. */
const tolerance = 1e-9;

/** Of the two states of fat, `choose` takes the one that needs more heat (a colder mixture) or less (a warmer one). */
function balance(
  parts: readonly HeatPart[],
  celsiusOf: (part: HeatPart) => number,
  choose: (crystallised: number, melted: number) => number,
): number {
  const own = parts.map((part) => {
    const heat = enthalpyOf(part.composition);
    const celsius = celsiusOf(part);
    return { coldFat: part.coldFat ?? false, heat, crystallised: heat(celsius, 'crystallised'), melted: heat(celsius, 'melted') };
  });
  const heatNeeded = (celsius: number): number => {
    let needed = 0;
    for (const { coldFat, heat, crystallised, melted } of own) {
      const asCrystallised = heat(celsius, 'crystallised') - crystallised;
      needed += coldFat ? asCrystallised : choose(asCrystallised, heat(celsius, 'melted') - melted);
    }
    return needed;
  };
  const celsius = parts.map(celsiusOf);
  return inverse(heatNeeded, 0, Math.min(...celsius), Math.max(...celsius), tolerance);
}
