/** Composition: what matter is made of, in grams (of a mixture) or mass fractions (of a kind, summing to 1). */

export interface Composition {
  readonly water: number;
  readonly milkFat: number;
  readonly cocoaButter: number;
  readonly otherFat: number;
  readonly sucrose: number;
  readonly otherSugars: number;
  readonly starch: number;
  readonly protein: number;
  readonly fibre: number;
  readonly ash: number;
  readonly alcohol: number;
}

export type Constituent = keyof Composition;

export const constituents: readonly Constituent[] = [
  'water',
  'milkFat',
  'cocoaButter',
  'otherFat',
  'sucrose',
  'otherSugars',
  'starch',
  'protein',
  'fibre',
  'ash',
  'alcohol',
];

export const nothing: Composition = {
  water: 0,
  milkFat: 0,
  cocoaButter: 0,
  otherFat: 0,
  sucrose: 0,
  otherSugars: 0,
  starch: 0,
  protein: 0,
  fibre: 0,
  ash: 0,
  alcohol: 0,
};

/** A new composition from one figure a constituent. */
export function compose(figure: (name: Constituent) => number): Composition {
  return {
    water: figure('water'),
    milkFat: figure('milkFat'),
    cocoaButter: figure('cocoaButter'),
    otherFat: figure('otherFat'),
    sucrose: figure('sucrose'),
    otherSugars: figure('otherSugars'),
    starch: figure('starch'),
    protein: figure('protein'),
    fibre: figure('fibre'),
    ash: figure('ash'),
    alcohol: figure('alcohol'),
  };
}

export const plus = (a: Composition, b: Composition): Composition => compose((name) => a[name] + b[name]);

export const scaled = (a: Composition, factor: number): Composition => compose((name) => a[name] * factor);

export const total = (a: Composition): number => constituents.reduce((sum, name) => sum + a[name], 0);

export const fatOf = (a: Composition): number => a.milkFat + a.cocoaButter + a.otherFat;

export const sugarsOf = (a: Composition): number => a.sucrose + a.otherSugars;
