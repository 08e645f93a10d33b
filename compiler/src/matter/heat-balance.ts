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
import { type Composition, plus, total } from './composition.ts';
import { inverse } from './curve.ts';
import { enthalpyOf, fusionOfFat } from './melting.ts';
import { heatCapacityOf, sensibleHeat } from './thermal.ts';

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
function balance(parts: readonly HeatPart[], celsiusOf: (part: HeatPart) => number, choose: Choose): number {
  const celsius = parts.map(celsiusOf);
  const low = Math.min(...celsius);
  const high = Math.max(...celsius);
  const heatNeeded = low >= 0 ? iceFree(parts, celsius, choose) : withIce(parts, celsius, choose);
  return inverse(heatNeeded, 0, low, high, tolerance);
}

type Choose = (crystallised: number, melted: number) => number;

/** Without ice, heat but for that of the fat is one polynomial over everything. */
function iceFree(parts: readonly HeatPart[], celsius: readonly number[], choose: Choose): (celsius: number) => number {
  const capacity = heatCapacityOf(
    parts.length === 1 ? parts[0]!.composition : parts.map((part) => part.composition).reduce(plus),
  );
  let brought = 0;
  const fats: { readonly part: HeatPart; readonly solid: number }[] = [];
  parts.forEach((part, i) => {
    const { composition } = part;
    const own = celsius[i]!;
    brought += sensibleHeat(heatCapacityOf(composition), own);
    if (composition.milkFat > 0 || composition.cocoaButter > 0) fats.push({ part, solid: fusionOfFat(composition, own) });
  });
  return (at) => {
    let needed = sensibleHeat(capacity, at) - brought;
    for (const { part, solid } of fats) {
      const melting = solid - fusionOfFat(part.composition, at);
      needed += part.coldFat ? melting : choose(melting, 0);
    }
    return needed;
  };
}

function withIce(parts: readonly HeatPart[], celsius: readonly number[], choose: Choose): (celsius: number) => number {
  const own = parts.map((part, i) => {
    const heat = enthalpyOf(part.composition);
    const at = celsius[i]!;
    return { coldFat: part.coldFat ?? false, heat, crystallised: heat(at, 'crystallised'), melted: heat(at, 'melted') };
  });
  return (at) => {
    let needed = 0;
    for (const { coldFat, heat, crystallised, melted } of own) {
      const asCrystallised = heat(at, 'crystallised') - crystallised;
      needed += coldFat ? asCrystallised : choose(asCrystallised, heat(at, 'melted') - melted);
    }
    return needed;
  };
}
