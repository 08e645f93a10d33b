/** What a line says of its ingredient (`35 % fat`, `64 % cocoa`, `10 % sugar`, `80 % solids`, `12 brix`, `40 % alcohol`) worked into its composition. */
import { type Composition, compose, fatOf, nothing, plus, scaled, sugarsOf, total } from '../matter/composition.ts';
import { density as densityOf } from '../matter/thermal.ts';
import { volumeToMass } from './abv.ts';
import type { Kind, Trait } from './kind.ts';

/** Why a figure makes no sense for a kind, in a sentence for a cook. */
export interface Refusal {
  readonly error: string;
}

/**
 * The kind at so much fat, in mass %. Everything that is not fat keeps its proportions, as when cream is separated, so
 * cream at 36 % agrees with SR28's heavy cream; several fats keep their proportions too.
 */
export function withFat(kind: Kind, percent: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(percent)) return outside('fat', percent);
  if (has(kind, 'dark chocolate', 'milk chocolate', 'white chocolate')) {
    return refuse(`Chocolate is told by its cocoa: write “64 % cocoa”, not “${percent} % fat”`);
  }
  const fat = fatOf(c);
  const dairy = has(kind, 'milk', 'cream', 'cultured dairy', 'fresh cheese');
  if (fat < 0.01 && !(dairy && fat > 0))
    return refuse(`${capital(kind.name)} holds no fat to speak of, so “${percent} % fat” says nothing`);
  if (fat > 0.999 && percent < 99.9) return refuse(`${capital(kind.name)} is all fat`);
  const share = percent / 100;
  const lean = Math.max(0, total(c) - share) / (total(c) - fat);
  const composition = compose((name) => c[name] * (isFat(name) ? share / fat : fat > 0.999 ? 0 : lean));
  return adjusted(kind, composition, `${percent} % fat`, fat > 0.999 ? 1 : lean);
}

/**
 * Chocolate by the percentage on its label: cocoa butter and dry cocoa together, the rest sugar (and milk).
 *
 * Dark: cocoa butter by the label, between SR28's 45–59, 60–69 and 70–85 % rows, each taken at the middle of its range, and
 * its cocoa mass at 100 %; estimate, ±4 points of fat. Milk: four fifths of the label are cocoa butter (common practice, no
 * source; SR28 19120 agrees at 30 %), ±4 points; its milk is 21.4 % whole milk powder. White: the label is cocoa butter alone.
 */
export function withCocoa(kind: Kind, percent: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(percent)) return outside('cocoa', percent);
  if (has(kind, 'cocoa mass', 'cocoa powder', 'cocoa butter')) {
    return percent === 100 ? kind : refuse(`${capital(kind.name)} is all cocoa; “${percent} % cocoa” is said of chocolate`);
  }
  const made = chocolateOf(kind, c, percent);
  if (!made) return refuse(`“${percent} % cocoa” is said of chocolate; ${kind.name} is none`);
  const kindOf = has(kind, 'dark chocolate') ? 'dark' : has(kind, 'milk chocolate') ? 'milk' : 'white';
  const [least, most] = cocoaRange[kindOf];
  if (percent < least || percent > most) {
    return refuse(`No ${kindOf} chocolate has ${percent} % cocoa; it lies between ${least} and ${most} %`);
  }
  return adjusted(kind, made, `${percent} % cocoa, split estimated`, 1);
}

/**
 * The kind with so much sugar, in mass %. For what is sweetened before it is sold (fruit and purée, egg, cream, fresh cheese)
 * it is the sucrose added, as the trade labels a purée “10 % sugar”; for what is made of sugar (syrup, chocolate, nut paste,
 * condensed milk) it is all the sugar there is.
 */
export function withSugar(kind: Kind, percent: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(percent)) return outside('sugar', percent);
  const share = percent / 100;
  if (c.sucrose < 0.15 && has(kind, ...sweetened)) {
    return adjusted(
      kind,
      plus(scaled(c, 1 - share), { ...nothing, sucrose: share * total(c) }),
      `${percent} % sugar added`,
      1 - share,
    );
  }
  const sugar = sugarsOf(c);
  if (sugar < 0.01) return refuse(`${capital(kind.name)} holds no sugar to speak of; weigh the sugar on a line of its own`);
  const rest = total(c) - sugar;
  if (rest < 0.01) return percent >= 99 ? kind : refuse(`${capital(kind.name)} is all sugar`);
  const other = Math.max(0, total(c) - share) / rest;
  return adjusted(
    kind,
    compose((name) => c[name] * (isSugar(name) ? share / sugar : other)),
    `${percent} % sugar`,
    other,
  );
}

/** The kind with so much dry matter, in mass %: water makes way for all the rest, or the other way round. */
export function withSolids(kind: Kind, percent: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(percent)) return outside('solids', percent);
  if (c.alcohol > 0.01) return refuse(`${capital(kind.name)} holds alcohol: write its strength, “40 % alcohol”`);
  const solids = total(c) - c.water;
  if (solids < 0.002) return refuse(`${capital(kind.name)} has no solids`);
  const factor = percent / 100 / solids;
  const composition = compose((name) => (name === 'water' ? Math.max(0, total(c) - percent / 100) : c[name] * factor));
  return adjusted(kind, composition, `${percent} % solids`, factor);
}

/**
 * Fruit, juice or wine at so many °Brix: dissolved solids in mass %, read as sugar, salts, dissolved protein and up to 2 % of
 * acids and pectin (which gives mango 16, strawberry 8, orange juice 11, as refractometers read; estimate, ±2 °Brix). What is
 * above the kind's own reading is sucrose in place of water; what is below is taken from its sugars. Of a syrup, °Brix is all
 * that is not water.
 */
export function withBrix(kind: Kind, brix: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(brix)) return refuse(`${brix} °Brix cannot be: it is a share of the mass, 0–100`);
  const sugar = sugarsOf(c);
  if (c.water < 0.02 || sugar < 0.01) return refuse(`°Brix is read of a juice, a purée or a syrup; ${kind.name} is none`);
  if (has(kind, 'syrup')) return withSolids(kind, brix);
  const wanted = brix / 100 - (c.ash + c.protein + Math.min(c.fibre, 0.02));
  if (wanted < 0) return refuse(`${capital(kind.name)} reads more than ${brix} °Brix without any sugar`);
  const left = Math.min(1, wanted / sugar);
  const sucrose = c.sucrose * left + Math.max(0, wanted - sugar);
  const water = c.water + sugar - wanted;
  if (water < 0) return refuse(`${capital(kind.name)} cannot reach ${brix} °Brix: its other solids leave no room`);
  return adjusted(kind, { ...c, water, sucrose, otherSugars: c.otherSugars * left }, `${brix} °Brix`, 1);
}

/** A spirit, liqueur or wine of so much alcohol by volume, as labels have it; its sugar stays. */
export function withAlcohol(kind: Kind, percentByVolume: number): Kind | Refusal {
  const c = kind.composition;
  if (!c) return unknown(kind);
  if (!isPercent(percentByVolume)) return outside('alcohol', percentByVolume);
  if (!has(kind, 'alcohol') || c.alcohol === 0) return refuse(`${capital(kind.name)} holds no alcohol`);
  const solids = total(c) - c.water - c.alcohol;
  const { mass, density } = volumeToMass(percentByVolume, solids);
  const water = total(c) - solids - mass;
  if (water < -0.001) return refuse(`${capital(kind.name)} cannot be ${percentByVolume} % alcohol: its sugar leaves no room`);
  const composition = { ...c, water: Math.max(0, water), alcohol: mass };
  return { ...adjusted(kind, composition, `${percentByVolume} % alcohol by volume`, 1), density };
}

/** Kinds that are sold with sugar added. */
const sweetened: readonly Trait[] = [
  'fruit',
  'purée',
  'juice',
  'coconut',
  'whole egg',
  'egg yolk',
  'egg white',
  'milk',
  'cream',
  'cultured dairy',
  'mascarpone',
  'fresh cheese',
  'plant cream',
  'plant milk',
];

/** Label percentages that can be bought; beyond them nothing is left for sugar and milk. */
const cocoaRange = { dark: [30, 100], milk: [20, 70], white: [18, 45] } as const;

/** Middles of the label ranges of SR28 19902, 19903, 19904 and 19078, with their fat; below the first in proportion. */
const cocoaButterOfDark = [
  [0, 0],
  [52, 31.28],
  [64.5, 38.31],
  [77.5, 42.63],
  [100, 52.31],
] as const;

/** Cocoa without its fat and water: SR28 19165 in shares, 60 % of its unresolved carbohydrate taken as starch (see chocolate.ts). */
const dryCocoa: Composition = scaled(
  { ...nothing, protein: 19.6, sucrose: 0.87, otherSugars: 0.88, starch: 11.49, fibre: 44.66, ash: 5.8 },
  1 / 83.3,
);

/** Whole milk powder, SR28 01090. */
const milkPowder: Composition = { ...nothing, water: 0.0247, protein: 0.2632, milkFat: 0.2671, otherSugars: 0.3842, ash: 0.0608 };

/** Chocolate holds about one per cent of water (SR28: 0.97–1.50) and 0.4 % of lecithin and vanilla (common practice, no source). */
const water = 0.012;
const lecithin = 0.004;

function chocolateOf(kind: Kind, c: Composition, percent: number): Composition | null {
  const label = percent / 100;
  if (has(kind, 'white chocolate')) {
    return { ...c, cocoaButter: label, sucrose: Math.max(0, c.sucrose + c.cocoaButter - label) };
  }
  const dark = has(kind, 'dark chocolate');
  if (!dark && !has(kind, 'milk chocolate')) return null;
  const cocoaButter = dark ? between(cocoaButterOfDark, percent) / 100 : label * 0.8;
  const moisture = water * label;
  const cocoa = plus({ ...nothing, cocoaButter, water: moisture }, scaled(dryCocoa, label - cocoaButter - moisture));
  const milk = dark ? nothing : scaled(milkPowder, 0.214);
  const solid = plus(plus(cocoa, milk), { ...nothing, otherFat: percent < 99 ? lecithin : 0, water: (1 - label) * 0.005 });
  return plus(solid, { ...nothing, sucrose: Math.max(0, 1 - total(solid)) });
}

function between(points: readonly (readonly [number, number])[], at: number): number {
  const upper = points.findIndex(([x]) => x >= at);
  const [x1, y1] = points[upper] ?? points[points.length - 1]!;
  if (upper <= 0) return y1;
  const [x0, y0] = points[upper - 1]!;
  return y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
}

/** The kind with a new composition; `salt` scales with what carries it, the density of a liquid with what it is made of. */
function adjusted(kind: Kind, composition: Composition, what: string, saltFactor: number): Kind {
  const fluid = kind.phase === 'liquid' || kind.phase === 'paste' || kind.phase === 'gel';
  const was = kind.composition ?? composition;
  return {
    ...kind,
    composition,
    density: kind.density !== null && fluid ? (kind.density * densityOf(composition, 20)) / densityOf(was, 20) : kind.density,
    salt: kind.salt * saltFactor,
    source: { text: `${kind.source.text}; set to ${what}` },
  };
}

const isFat = (name: keyof Composition) => name === 'milkFat' || name === 'cocoaButter' || name === 'otherFat';
const isSugar = (name: keyof Composition) => name === 'sucrose' || name === 'otherSugars';
const has = (kind: Kind, ...traits: readonly Trait[]) => traits.some((trait) => kind.traits.includes(trait));
const isPercent = (figure: number) => Number.isFinite(figure) && figure >= 0 && figure <= 100;
const refuse = (sentence: string): Refusal => ({ error: `${sentence}.` });
const outside = (what: string, percent: number) => refuse(`${percent} % ${what} cannot be: a share lies between 0 and 100 %`);
const unknown = (kind: Kind) => refuse(`What ${kind.name} is made of is not known, so it cannot be worked out`);
const capital = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);
