/** Which foam whipping this matter makes, and what is left of it after folding. */

import type { Trait } from '../catalogue/kind.ts';
import { gasAfterFolding, gasVolume, type FoamKind as ModelledFoam, overrunAt, overrunOfGas } from '../matter/foam.ts';
import { add, interval, middle } from '../quantities/interval.ts';
import type { Step } from '../resolve/model.ts';
import type { Foam, FoamKind, FoamStage, Matter } from '../run/trace.ts';
import { liquidMillilitres } from '../run/volume-of.ts';

/** Grams of parts with any of these traits. */
export function gramsWith(matter: Matter, ...traits: readonly Trait[]): number {
  let grams = 0;
  for (const part of matter.parts) {
    if (part.line.substance.is === 'kind' && part.line.substance.kind.traits.some((trait) => traits.includes(trait)))
      grams += part.grams;
  }
  return grams;
}

const sharesOf = (matter: Matter) => {
  const mass = Math.max(
    1e-9,
    matter.parts.reduce((sum, part) => sum + part.grams, 0),
  );
  return (...traits: readonly Trait[]): number => gramsWith(matter, ...traits) / mass;
};

/** By composition, never by name. Italian and Swiss meringue are told apart by how the heat came, see `air.ts`. */
export function foamKindOf(matter: Matter): FoamKind {
  const share = sharesOf(matter);
  const white = share('egg white');
  const yolk = share('egg yolk');
  const whole = share('whole egg');
  const cream = share('cream');
  const plant = share('plant cream', 'coconut');
  const chocolate = share('dark chocolate', 'milk chocolate', 'white chocolate');
  if (cream + plant > 0.25 && chocolate > 0.1) return 'ganache';
  if (cream >= Math.max(white, yolk, whole, plant) && cream > 0.25) return 'cream';
  if (plant > 0.25) return 'plant cream';
  if (white > 0 && white >= yolk && white >= whole) return matter.heat.heated ? 'swiss white' : 'french white';
  if (whole > 0 && whole >= yolk) return 'whole egg';
  if (yolk > 0) return 'yolk';
  if (share('butter', 'solid fat') > 0.2) return 'fat';
  if (matter.gelatin !== 'none') return 'gelatin';
  return 'sugar';
}

export function foamAt(kind: FoamKind, low: FoamStage, high: FoamStage, whipped: Step): Foam {
  return { kind, low, high, overrun: overrunAt(modelled(kind), low, high), whipped, waited: interval(0) };
}

/** The foam two parties leave when folded: the airier party's kind, its gas less what folding knocks out, over all the liquid. */
export function foldedFoam(parties: readonly Matter[], together: Matter): Foam | null {
  const foams = parties.filter((matter) => matter.foam !== null);
  const main = foams.reduce<Matter | null>((a, b) => (a === null || gasOf(b) > gasOf(a) ? b : a), null);
  if (!main?.foam) return null;
  const liquid = Math.max(1e-9, middle(liquidMillilitres(together)));
  const gas = foams
    .map((matter) =>
      gasAfterFolding(modelled(matter.foam!.kind), gasVolume(middle(liquidMillilitres(matter)), matter.foam!.overrun)),
    )
    .reduce(add);
  return { ...main.foam, overrun: overrunOfGas(gas, liquid) };
}

/** Kinds without figures of their own whip like a kind that has them (common practice, no source). */
function modelled(kind: FoamKind): ModelledFoam {
  if (kind === 'plant cream' || kind === 'ganache') return 'cream';
  return kind === 'sugar' ? 'gelatin' : kind;
}

const gasOf = (matter: Matter): number =>
  matter.foam ? (middle(liquidMillilitres(matter)) * middle(matter.foam.overrun)) / 100 : 0;
