/** Row helpers: how the family files write a kind in a line or two, and how a published analysis becomes a composition. */
import { type Composition, type Constituent, compose, total } from '../matter/composition.ts';
import type { Allergen, Kind, Phase, Storage, Trait } from './kind.ts';

/** What stands beside name, phase and composition in a row; what is left out is "not known" or "none". */
export interface More {
  readonly storage?: Storage;
  /** g/ml as measured out. */
  readonly density?: number;
  /** Grams of one piece. */
  readonly piece?: number;
  readonly allergens?: readonly Allergen[];
  readonly traits?: readonly Trait[];
  readonly pH?: number;
  readonly absorbs?: number;
  /** Grams of saturated fatty acids in 100 g of the kind's fat. */
  readonly saturated?: number;
  /** Milligrams of sodium in 100 g of the kind. */
  readonly sodium?: number;
  readonly pasteurised?: boolean;
}

/** A composition with where it is from. */
export interface Basis {
  readonly composition: Composition | null;
  readonly source: string;
}

/**
 * One kind. `synonyms` are separated by commas; a spelling without accents is added to every name that has some,
 * so that `puree` finds `purée`.
 */
export function row(name: string, fr: string, synonyms: string, phase: Phase, basis: Basis, more: More = {}): Kind {
  const given = synonyms === '' ? [] : synonyms.split(',').map((synonym) => synonym.trim());
  const plain = [name, ...given].map(withoutAccents).filter((spelling) => spelling !== name && !given.includes(spelling));
  return {
    name,
    synonyms: [...given, ...plain],
    composition: basis.composition,
    density: more.density ?? null,
    piece: more.piece ?? null,
    phase,
    storage: more.storage ?? 'ambient',
    allergens: more.allergens ?? [],
    traits: more.traits ?? [],
    pH: more.pH ?? null,
    absorbs: more.absorbs ?? null,
    saturated: (more.saturated ?? 0) / 100,
    // Salt is sodium x 2.5 (Regulation (EU) 1169/2011, Annex I).
    salt: ((more.sodium ?? 0) * 2.5) / 100_000,
    pasteurised: more.pasteurised ?? false,
    source: { text: basis.source },
    fr,
  };
}

const withoutAccents = (text: string): string => text.normalize('NFD').replace(/\p{Mn}/gu, '');

/** Where the figures go that an abbreviated analysis does not tell apart; grams are per 100 g of the food. */
export interface Split {
  /** The fat there is, but for `milkFat` grams. */
  readonly fat?: 'milkFat' | 'cocoaButter' | 'otherFat';
  /** Grams of milk fat where the fat is mixed. */
  readonly milkFat?: number;
  /** Sucrose's share of the sugars (0–1), after `lactose`. */
  readonly sucrose?: number;
  /** Grams of lactose among the sugars. */
  readonly lactose?: number;
  /** Share of starch (0–1) in the carbohydrate that is neither sugar nor fibre; what remains counts as fibre. */
  readonly starch?: number;
  /** That carbohydrate is sugar the analysis missed (lactose of cheese, sucrose of syrup). */
  readonly restIsSugar?: boolean;
  /** What is missing to 100 g is ethanol: the abbreviated file has no column for it. */
  readonly alcohol?: boolean;
}

/** water, protein, fat, carbohydrate by difference, sugars, fibre, ash: grams in 100 g. */
export type Analysis = readonly [number, number, number, number, number, number, number];

/**
 * A row of the USDA National Nutrient Database for Standard Reference, release 28 (2015/16), abbreviated file.
 *
 * Its carbohydrate is what is missing to 100 g, so analysed sugars can exceed it (whole milk 5.05 against 4.80): sugars are
 * cut to it, and the row keeps summing to 100. Carbohydrate that is neither sugar nor fibre is starch in cereals; in fruit and
 * dairy it is acids, pectin and error, and is counted with fibre so that no model takes it for starch.
 */
export function sr28(ndb: string, analysis: Analysis, split: Split = {}, note = ''): Basis {
  return { composition: fromAnalysis(analysis, split), source: `USDA SR28 ${ndb}${note === '' ? '' : `, ${note}`}` };
}

/** The same, where the figures were written down from memory and not compared with the file. */
export function recalled(ndb: string, analysis: Analysis, split: Split = {}, note = ''): Basis {
  const basis = sr28(ndb, analysis, split, note);
  return { ...basis, source: `from memory, ${basis.source}` };
}

/** A composition in grams per 100 g; the constituent `rest` takes what the others leave. */
export function made(rest: Constituent, parts: Partial<Composition>, source: string): Basis {
  const figures = compose((name) => (parts[name] ?? 0) / 100);
  const left = 1 - total(figures);
  return { composition: compose((name) => figures[name] + (name === rest ? left : 0)), source };
}

/** A mixture of bases by weight, for house goods and trade mixtures: parts are grams, in any total. */
export function mixed(parts: readonly (readonly [number, Basis])[], source: string): Basis {
  const whole = parts.reduce((sum, [grams]) => sum + grams, 0);
  const composition = compose((name) =>
    parts.reduce((sum, [grams, basis]) => sum + (grams / whole) * (basis.composition?.[name] ?? 0), 0),
  );
  return { composition, source };
}

/** Text for the source of a figure the trade uses and nobody published. */
export const practice = 'common practice, no source';

function fromAnalysis([water, protein, fat, carbohydrate, sugars, fibre, ash]: Analysis, split: Split): Composition {
  const counted = Math.min(sugars, carbohydrate);
  const rest = Math.max(0, carbohydrate - counted - fibre);
  const sugar = counted + (split.restIsSugar ? rest : 0);
  const unresolved = split.restIsSugar ? 0 : rest;
  const lactose = Math.min(split.lactose ?? 0, sugar);
  const sucrose = (sugar - lactose) * (split.sucrose ?? 0);
  const starch = unresolved * (split.starch ?? 0);
  const milkFat = split.fat === 'milkFat' ? fat : (split.milkFat ?? 0);
  const main = fat - milkFat;
  const grams: Composition = {
    water,
    milkFat,
    cocoaButter: split.fat === 'cocoaButter' ? main : 0,
    otherFat: split.fat === 'cocoaButter' || split.fat === 'milkFat' ? 0 : main,
    sucrose,
    otherSugars: sugar - sucrose,
    starch,
    protein,
    fibre: Math.min(fibre, carbohydrate - counted) + unresolved - starch,
    ash,
    alcohol: 0,
  };
  const missing = 100 - total(grams);
  return compose((name) => (name === 'alcohol' && split.alcohol ? missing : grams[name]) / 100);
}
