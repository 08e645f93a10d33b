/** House ingredients: a kind from what an `ingredient` block says of it. */
import { type Composition, type Constituent, compose, constituents, nothing } from '../matter/composition.ts';
import type { Refusal } from './adjust.ts';
import type { Allergen, Kind, Phase, Storage } from './kind.ts';

export interface HouseFacts {
  readonly name: string;
  /** What it is like: everything not written comes from there. */
  readonly like?: Kind | null;
  /** Mass %, as written. */
  readonly percent?: Partial<Readonly<Record<Constituent, number>>>;
  /** g/ml. */
  readonly density?: number | null;
  /** Grams of one piece. */
  readonly each?: number | null;
  readonly phase?: Phase | null;
  readonly pH?: number | null;
  /** These beside those of `like`. */
  readonly allergens?: readonly Allergen[];
  /** Mass %. */
  readonly absorbs?: number | null;
  readonly stored?: Storage | null;
}

/** The kind, or why its figures cannot be. Figures written stand; what `like` brings fills the rest in its own proportions. */
export function houseKind(facts: HouseFacts): Kind | Refusal {
  const { like = null } = facts;
  const composition = compositionOf(facts.percent ?? {}, like);
  if (composition && 'error' in composition) return composition;
  return {
    name: facts.name,
    synonyms: [],
    composition,
    density: facts.density ?? like?.density ?? null,
    piece: facts.each ?? like?.piece ?? null,
    phase: facts.phase ?? like?.phase ?? 'paste',
    storage: facts.stored ?? like?.storage ?? 'ambient',
    allergens: [...new Set([...(like?.allergens ?? []), ...(facts.allergens ?? [])])],
    traits: like?.traits ?? (composition && composition.alcohol > 0 ? ['alcohol'] : []),
    pH: facts.pH ?? like?.pH ?? null,
    absorbs: facts.absorbs != null ? facts.absorbs / 100 : (like?.absorbs ?? null),
    saturated: like?.saturated ?? (composition ? saturatedShare(composition) : 0),
    salt: like?.salt ?? 0,
    pasteurised: like?.pasteurised ?? false,
    source: { text: like ? `written in the formula, else as ${like.name} (${like.source.text})` : 'written in the formula' },
    fr: facts.name,
  };
}

function compositionOf(percent: Partial<Record<Constituent, number>>, like: Kind | null): Composition | null | Refusal {
  const written = constituents.filter((name) => percent[name] !== undefined);
  const base = like?.composition ?? null;
  if (written.length === 0) return base;
  const share = (name: Constituent) => (percent[name] ?? 0) / 100;
  if (written.some((name) => !(share(name) >= 0 && share(name) <= 1))) {
    return { error: 'A share lies between 0 and 100 %.' };
  }
  const told = written.reduce((sum, name) => sum + share(name), 0);
  if (told > 1 + slack) return { error: `The figures add up to ${inPercent(told)} %, more than the whole.` };
  const others = constituents.filter((name) => percent[name] === undefined);
  const brought = base ? others.reduce((sum, name) => sum + base[name], 0) : 0;
  if (told < 1 - slack && brought <= 0) {
    return {
      error: `The figures add up to ${inPercent(told)} %; write what the other ${inPercent(1 - told)} % are, or what it is “like”.`,
    };
  }
  const fill = brought > 0 ? Math.max(0, 1 - told) / brought : 0;
  return compose((name) => (percent[name] !== undefined ? share(name) : (base ?? nothing)[name] * fill));
}

/** Figures of a packet are rounded, so they may miss 100 % by half a point. */
const slack = 0.005;

const inPercent = (share: number) => Math.round(share * 1000) / 10;

/** Saturated share of the fat, where nothing says: milk fat 0.62, cocoa butter 0.60 (SR28), other fat 0.15 (estimate). */
function saturatedShare(c: Composition): number {
  const fat = c.milkFat + c.cocoaButter + c.otherFat;
  return fat > 0 ? (0.62 * c.milkFat + 0.6 * c.cocoaButter + 0.15 * c.otherFat) / fat : 0;
}
