/**
 * Thermal properties of food from its composition: specific heat, density and thermal conductivity.
 *
 * Formula: cp = Σ x·cp, 1/ρ = Σ x/ρ, k = Σ v·k (x mass share, v volume share), each constituent a quadratic in °C.
 * Source: Choi & Okos 1986, as in ASHRAE Refrigeration, "Thermal Properties of Foods", tables 1 and 2; the constant of
 *   water's specific heat is 4.1762 (prints with 4.1289 are 1 % low). Ethanol is not in that table: specific heat
 *   2.44 J/(g·K) (NIST Chemistry WebBook, 112.3 J/(mol·K)), density 0.7893 g/ml at 20 °C (CRC Handbook, 91st edition),
 *   falling by 0.00086 per K, conductivity 0.167 W/(m·K) (both from memory).
 * Range: -40 to 150 °C, liquid water throughout, air-free; beyond, the property is held at the end of the range.
 * Error: specific heat ±3 % for watery foods, but 4-7 % low for syrups of 50-70 %; density ±1 %; conductivity ±10 %;
 *   water with alcohol shrinks by up to 3.5 % in volume and takes up to 15 % more heat, which is left out.
 * Melting and freezing are not in here: see melting.ts.
 */
import { type Composition, fatOf, sugarsOf, total } from './composition.ts';

export type ThermalPart = 'protein' | 'fat' | 'carbohydrate' | 'fibre' | 'ash' | 'water' | 'ice' | 'alcohol';

type Quadratic = readonly [constant: number, linear: number, square: number];

const lowest = -40;
const highest = 150;

/** J/(g·K). Water has a row of its own below 0 °C. */
const heatCapacity: Record<ThermalPart | 'coldWater', Quadratic> = {
  protein: [2.0082, 1.2089e-3, -1.3129e-6],
  fat: [1.9842, 1.4733e-3, -4.8008e-6],
  carbohydrate: [1.5488, 1.9625e-3, -5.9399e-6],
  fibre: [1.8459, 1.8306e-3, -4.6509e-6],
  ash: [1.0926, 1.8896e-3, -3.6817e-6],
  water: [4.1762, -9.0864e-5, 5.4731e-6],
  coldWater: [4.0817, -5.3062e-3, 9.9516e-4],
  ice: [2.0623, 6.0769e-3, 0],
  alcohol: [2.44, 0, 0],
};

/** kg/m³. */
const densities: Record<ThermalPart, Quadratic> = {
  protein: [1329.9, -0.5184, 0],
  fat: [925.59, -0.41757, 0],
  carbohydrate: [1599.1, -0.31046, 0],
  fibre: [1311.5, -0.36589, 0],
  ash: [2423.8, -0.28063, 0],
  water: [997.18, 3.1439e-3, -3.7574e-3],
  ice: [916.89, -0.13071, 0],
  alcohol: [806.5, -0.86, 0],
};

/** W/(m·K). */
const conductivities: Record<ThermalPart, Quadratic> = {
  protein: [0.17881, 1.1958e-3, -2.7178e-6],
  fat: [0.18071, -2.7604e-4, -1.7749e-7],
  carbohydrate: [0.20141, 1.3874e-3, -4.3312e-6],
  fibre: [0.18331, 1.2497e-3, -3.1683e-6],
  ash: [0.32962, 1.4011e-3, -2.9069e-6],
  water: [0.57109, 1.7625e-3, -6.7036e-6],
  ice: [2.2196, -6.2489e-3, 1.0154e-4],
  alcohol: [0.167, 0, 0],
};

/** Specific heat in J/(g·K), no phase change counted; NaN for nothing at all. */
export function specificHeat(c: Composition, celsius: number): number {
  return sum(c, (part) => quadratic(capacityRow(part, celsius), celsius)) / total(c);
}

/** Density in g/ml without air; NaN for nothing at all. */
export function density(c: Composition, celsius: number): number {
  return total(c) / millilitres(c, celsius);
}

/** Thermal conductivity in W/(m·K), the constituents taken as lying side by side (the parallel model). */
export function conductivity(c: Composition, celsius: number): number {
  const volumeTimesK = sum(c, (part) => (quadratic(conductivities[part], celsius) / quadratic(densities[part], celsius)) * 1000);
  return volumeTimesK / millilitres(c, celsius);
}

/** Heat in J that one gram of a part holds above its own state at 0 °C. */
export const heatAboveZero = (part: ThermalPart, celsius: number): number => integral(capacityRow(part, celsius), celsius);

/** Heat capacity of a whole mixture in J/K, below and above 0 °C; no phase change counted. */
export interface HeatCapacity {
  readonly cold: Quadratic;
  readonly warm: Quadratic;
}

/** Of a mixture given in grams, its water liquid throughout. */
export function heatCapacityOf(c: Composition): HeatCapacity {
  const dry = (power: 0 | 1 | 2): number =>
    c.protein * heatCapacity.protein[power] +
    fatOf(c) * heatCapacity.fat[power] +
    (sugarsOf(c) + c.starch) * heatCapacity.carbohydrate[power] +
    c.fibre * heatCapacity.fibre[power] +
    c.ash * heatCapacity.ash[power] +
    c.alcohol * heatCapacity.alcohol[power];
  const constant = dry(0);
  const linear = dry(1);
  const square = dry(2);
  const withWater = (row: Quadratic): Quadratic => [
    constant + c.water * row[0],
    linear + c.water * row[1],
    square + c.water * row[2],
  ];
  return { cold: withWater(heatCapacity.coldWater), warm: withWater(heatCapacity.water) };
}

/** Heat in J that a mixture holds above itself at 0 °C: the integral of its heat capacity. */
export const sensibleHeat = ({ cold, warm }: HeatCapacity, celsius: number): number =>
  integral(celsius < 0 ? cold : warm, celsius);

function integral([constant, linear, square]: Quadratic, celsius: number): number {
  const t = clamp(celsius);
  const withinRange = t * (constant + t * (linear / 2 + (t * square) / 3));
  return withinRange + (constant + t * (linear + t * square)) * (celsius - t);
}

const millilitres = (c: Composition, celsius: number): number => sum(c, (part) => 1000 / quadratic(densities[part], celsius));

/** Over the constituents as the tables know them. */
function sum(c: Composition, perGram: (part: ThermalPart) => number): number {
  const of = (part: ThermalPart, grams: number): number => (grams === 0 ? 0 : grams * perGram(part));
  return (
    of('protein', c.protein) +
    of('fat', fatOf(c)) +
    of('carbohydrate', sugarsOf(c) + c.starch) +
    of('fibre', c.fibre) +
    of('ash', c.ash) +
    of('water', c.water) +
    of('alcohol', c.alcohol)
  );
}

const capacityRow = (part: ThermalPart, celsius: number): Quadratic =>
  heatCapacity[part === 'water' && celsius < 0 ? 'coldWater' : part];

function quadratic([a, b, c]: Quadratic, celsius: number): number {
  const t = clamp(celsius);
  return a + b * t + c * t * t;
}

const clamp = (celsius: number): number => Math.min(highest, Math.max(lowest, celsius));
