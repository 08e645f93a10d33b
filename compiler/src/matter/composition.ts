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

// Spelled out, as these are asked most of all.
export const plus = (a: Composition, b: Composition): Composition => ({
  water: a.water + b.water,
  milkFat: a.milkFat + b.milkFat,
  cocoaButter: a.cocoaButter + b.cocoaButter,
  otherFat: a.otherFat + b.otherFat,
  sucrose: a.sucrose + b.sucrose,
  otherSugars: a.otherSugars + b.otherSugars,
  starch: a.starch + b.starch,
  protein: a.protein + b.protein,
  fibre: a.fibre + b.fibre,
  ash: a.ash + b.ash,
  alcohol: a.alcohol + b.alcohol,
});

export const scaled = (a: Composition, factor: number): Composition => ({
  water: a.water * factor,
  milkFat: a.milkFat * factor,
  cocoaButter: a.cocoaButter * factor,
  otherFat: a.otherFat * factor,
  sucrose: a.sucrose * factor,
  otherSugars: a.otherSugars * factor,
  starch: a.starch * factor,
  protein: a.protein * factor,
  fibre: a.fibre * factor,
  ash: a.ash * factor,
  alcohol: a.alcohol * factor,
});

export const total = (a: Composition): number =>
  a.water +
  a.milkFat +
  a.cocoaButter +
  a.otherFat +
  a.sucrose +
  a.otherSugars +
  a.starch +
  a.protein +
  a.fibre +
  a.ash +
  a.alcohol;

export const fatOf = (a: Composition): number => a.milkFat + a.cocoaButter + a.otherFat;

export const sugarsOf = (a: Composition): number => a.sucrose + a.otherSugars;
