/**
 * Steam: the vapour pressure of water and the pressure of the air at an altitude, which together say when water boils.
 *
 * Formulas: Antoine, ln(p/mmHg) = A - B/(C + t), with B = 3797.06 and C = 226.28 °C (the constants Starzak & Peacock's
 *   boiling-point equation is printed with, Saska 2002, Int. Sugar J. 104:500) and A set so that water boils at 100 °C at
 *   101.325 kPa; International Standard Atmosphere (ISO 2533), p = 101325 (1 - 2.25577e-5 h)^5.25588.
 * Range: 20-150 °C, 0-11 000 m. Error: 0.6 % of the pressure from 40 °C (1.5 % at 20 °C), 0.2 K of the boiling point;
 *   weather shifts it by up to 1 K.
 */

const b = 3797.06;
const c = 226.28;

export const standardPressure = 101_325;

/** Vapour pressure of pure water in Pa. */
export const vapourPressure = (celsius: number): number => standardPressure * Math.exp(b / (c + 100) - b / (c + celsius));

/** Air pressure in Pa at an altitude in metres. */
export const airPressure = (altitudeMetres: number): number => standardPressure * (1 - 2.25577e-5 * altitudeMetres) ** 5.25588;

/** Boiling point of pure water in °C at an altitude in metres. */
export const boilingPointOfWater = (altitudeMetres: number): number =>
  b / (b / (c + 100) - Math.log(airPressure(altitudeMetres) / standardPressure)) - c;
