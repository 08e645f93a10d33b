/**
 * Volume: what a mould holds from its measurements, and what a mixture fills from composition, temperature and overrun.
 *
 * Formulas: Euclid's solids; mixture V = m/ρ(t) · (1 + overrun/100) with ρ from thermal.ts.
 * Range: measures are the inside of the mould, in millimetres, straight-sided (a tart ring is a cylinder; a flared tin holds up to
 *   15 % less than its upper edge says). Mixtures from 0 to 150 °C; powders and crystals lie loose and take more room.
 * Error: geometry exact; mixture ±2 % beside its overrun.
 */
import type { Interval } from '../quantities/interval.ts';
import { type Composition, total } from './composition.ts';
import { density } from './thermal.ts';

/** Shapes and the lengths that measure them, in the order they are written. */
export const shapes = {
  ring: ['diameter', 'height'],
  cylinder: ['diameter', 'height'],
  tart: ['diameter', 'height'],
  cone: ['diameter', 'height'],
  sphere: ['diameter'],
  'half-sphere': ['diameter'],
  frame: ['length', 'width', 'height'],
  tray: ['length', 'width', 'height'],
  bar: ['length', 'width', 'height'],
  cube: ['length'],
} as const satisfies Record<string, readonly string[]>;

export type Shape = keyof typeof shapes;

/** Millilitres of a shape from its lengths in millimetres; null where their number is not the shape's. */
export function shapeMillilitres(shape: Shape, millimetres: readonly number[]): number | null {
  if (millimetres.length !== shapes[shape].length) return null;
  const [a, b, c] = millimetres as [number, number, number];
  return cubicMillimetres(shape, a, b, c) / 1000;
}

/** Millilitres of a mixture, given in grams, with so much air in it; the two ends of its temperature and overrun give the interval. */
export function mixtureMillilitres(c: Composition, celsius: Interval, overrunPercent: Interval): Interval {
  const grams = total(c);
  if (grams <= 0) return { low: 0, high: 0 };
  // Density falls with temperature but for the first few degrees of water, so both ends are tried.
  const volumes = [grams / density(c, celsius.low), grams / density(c, celsius.high)];
  return {
    low: Math.min(...volumes) * (1 + overrunPercent.low / 100),
    high: Math.max(...volumes) * (1 + overrunPercent.high / 100),
  };
}

function cubicMillimetres(shape: Shape, a: number, b: number, c: number): number {
  switch (shape) {
    case 'ring':
    case 'cylinder':
    case 'tart':
      return (Math.PI / 4) * a ** 2 * b;
    case 'cone':
      return (Math.PI / 12) * a ** 2 * b;
    case 'sphere':
      return (Math.PI / 6) * a ** 3;
    case 'half-sphere':
      return (Math.PI / 12) * a ** 3;
    case 'frame':
    case 'tray':
    case 'bar':
      return a * b * c;
    case 'cube':
      return a ** 3;
  }
}
