/** How rules look at gelling agents beside gelatin: which there are, whether they dissolved, what else holds the gel. */
import { type Agent, gellingAgents } from '../matter/gelling.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, StepRecord } from '../run/trace.ts';
import { lifeOf, massOf, shareOfTraits, traitsOf } from './look.ts';
import { heats, isIn, thickening } from './look-egg.ts';

const agents = Object.keys(gellingAgents) as Agent[];

export function agentOf(part: Part): Agent | null {
  const traits = traitsOf(part);
  return agents.find((agent) => traits.includes(agent)) ?? null;
}

/** Something else holds or thickens it too, so that its share may be small. */
export const isHelped = (body: Matter, agent: Agent): boolean =>
  body.gelatin200 > 0 ||
  thickening(body) >= 0.01 ||
  shareOfTraits(body, 'gum') > 0 ||
  agents.some((other) => other !== agent && shareOfTraits(body, other) > 0);

/** The body of matter a part sits in. */
export const bodyWith = (matter: Matter, part: Part): Matter => bodiesOf(matter).find((body) => isIn(body, part)) ?? matter;

/** Mass % of a part in its body, at the least and the most that may have boiled off. */
export const percentIn = (body: Matter, part: Part) => ({
  low: (100 * part.grams) / Math.max(1e-9, body.grams.high),
  high: (100 * part.grams) / Math.max(1e-9, body.grams.low),
  middle: (100 * part.grams) / massOf(body),
});

/** The step that should have dissolved it, where it certainly did not get hot enough; null where it did, or where nobody can tell. */
export function undissolvedAt(result: Matter, part: Part, from: number): StepRecord | null {
  if (part.baked || part.reached >= from) return null;
  const life = lifeOf(result, part);
  const heated = life.filter(heats);
  if (heated.some((record) => record.written === null && record.result.heat.celsius.high >= from)) return null;
  const hottest = heated.sort((a, b) => (b.written?.high ?? 0) - (a.written?.high ?? 0))[0];
  return hottest ?? life.at(-1) ?? null;
}
