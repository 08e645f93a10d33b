/** Heat of matter whose temperature was reckoned: only when someone asks for it, as a written reading often takes its place unasked. */
import { mixtureTemperature } from '../matter/heat-balance.ts';
import { hull, type Interval } from '../quantities/interval.ts';
import { thermalComposition } from './thermal-composition.ts';
import type { Basis, Heat, Matter } from './trace.ts';

/** What happened to it before, where that is not for its temperature to say. */
type History = Pick<Heat, 'written' | 'heated' | 'cooledSince'>;

class Reckoned implements Heat {
  private known: Interval | null = null;
  private past: History | null = null;

  constructor(
    readonly basis: Basis,
    private readonly reckon: () => Interval,
    private readonly history: () => History,
  ) {}

  get celsius(): Interval {
    this.known ??= this.reckon();
    return this.known;
  }

  get written(): Interval | null {
    return this.before.written;
  }

  get heated(): Heat['heated'] {
    return this.before.heated;
  }

  get cooledSince(): boolean {
    return this.before.cooledSince;
  }

  private get before(): History {
    this.past ??= this.history();
    return this.past;
  }
}

/** A temperature that is reckoned when first asked for. */
export const heatReckoned = (basis: Basis, celsius: () => Interval, history: History): Heat =>
  new Reckoned(basis, celsius, () => history);

/** Of several matters as one mass. */
export function heatTogether(all: readonly Matter[]): Heat {
  const weighed = all.filter((matter) => matter.grams.high > 0);
  const matters = weighed.length > 0 ? weighed : all.slice(0, 1);
  const only = matters.length === 1 ? matters[0] : undefined;
  if (only) return only.heat;
  const balanced = (): Interval =>
    mixtureTemperature(
      matters.map((matter) => ({
        composition: thermalComposition(matter),
        celsius: matter.heat.celsius,
        coldFat: matter.heat.celsius.high <= 10,
      })),
    );
  return new Reckoned(basisOf(matters), balanced, () => {
    const { heat } = matters.reduce((a, b) => (b.heat.celsius.high > a.heat.celsius.high ? b : a));
    return { written: null, heated: heat.heated, cooledSince: heat.cooledSince };
  });
}

function basisOf(matters: readonly Matter[]): Basis {
  let stored = true;
  let unknown = false;
  for (const { heat } of matters) {
    if (heat.basis !== 'stored') stored = false;
    if (heat.basis === 'unknown') unknown = true;
  }
  return stored ? 'stored' : unknown ? 'unknown' : 'computed';
}

/** Of matters that lie on each other: the history of the largest, any temperature among them. */
export function heatOfLayers(layers: readonly Matter[], bulk: Matter): Heat {
  const weighed = layers.filter((layer) => layer.grams.high > 0);
  const counted = weighed.length > 0 ? weighed : layers;
  return new Reckoned(
    bulk.heat.basis,
    () => counted.map((layer) => layer.heat.celsius).reduce(hull),
    () => bulk.heat,
  );
}
