/** How rules look at ganache: where chocolate and liquid become one, and the ganache as it is piped or moulded. */
import { bodiesOf, isWatery } from '../run/matter-of.ts';
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import { lifeAfter } from './look.ts';
import { chocolateShare, eggShare } from './look-chocolate.ts';
import { isStarchBound } from './look-fold.ts';
import { meeting } from './look-gelatin.ts';

/** Where chocolate and something watery first are one mass, and the step that first stirs it. */
export interface Emulsion {
  readonly met: StepRecord;
  readonly stirred: StepRecord;
}

/** Chocolate, share of the mass, from which it makes the mass (common practice, no source). */
const chocolateFrom = 0.2;

/** Shear that makes the emulsion; pouring only brings the two together. */
const emulsifying: ReadonlySet<string> = new Set(['blend', 'stir', 'whisk', 'mix', 'combine', 'add', 'smooth']);
const moulds: ReadonlySet<string> = new Set(['mould', 'frame', 'sphere', 'half-sphere', 'bar', 'cube', 'cone']);

/** Yolk and starch hold a chocolate cream together by themselves; the oven does too. */
const isGanache = (matter: Matter): boolean =>
  chocolateShare(matter) >= chocolateFrom &&
  eggShare(matter) < 0.05 &&
  !isStarchBound(matter) &&
  !matter.baked &&
  (matter.foam === null || matter.foam.kind === 'ganache');

export function emulsionsOf(run: Run): readonly Emulsion[] {
  return run.records.flatMap((met) => {
    if (met.inputs.length < 2 || !isGanache(met.result)) return [];
    const parties = meeting(met);
    const chocolate = parties.some(({ matter }) => chocolateShare(matter) >= 0.6);
    const liquid = parties.some(({ matter }) => isWatery(matter) && chocolateShare(matter) < chocolateFrom);
    if (!chocolate || !liquid) return [];
    const stirred = emulsifying.has(met.step.node.verb)
      ? met
      : (lifeAfter(run, met).find(({ step, result }) => emulsifying.has(step.node.verb) && isGanache(result)) ?? met);
    return [{ met, stirred }];
  });
}

/** The ganache itself as it is piped or put into a mould or frame. */
export function shapedOf(run: Run, record: StepRecord): Matter | null {
  for (const { step, mould, inputs } of lifeAfter(run, record)) {
    if (step.node.verb !== 'pipe' && !moulds.has(mould ?? '')) continue;
    const body = inputs.flatMap(({ matter }) => bodiesOf(matter)).find((one) => isGanache(one) && isOf(one, record.result));
    if (body) return body;
  }
  return null;
}

function isOf(body: Matter, ganache: Matter): boolean {
  const lines = new Set(ganache.parts.map(({ line }) => line));
  return body.parts.some(({ line }) => lines.has(line)) && chocolateShare(body) >= chocolateFrom;
}

/** The watery party of an emulsion, where it comes as one. */
export const liquidOf = (record: StepRecord): Input | undefined =>
  meeting(record).find(({ matter }) => isWatery(matter) && chocolateShare(matter) < chocolateFrom);
