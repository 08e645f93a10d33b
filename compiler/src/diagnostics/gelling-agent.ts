/** `gelling-agent`: agar, carrageenan, gellan or pectin that will not gel, or gels wrong. */

import { total } from '../matter/composition.ts';
import { agarSetsBelow, gellingAgents, highMethoxylNeeds } from '../matter/gelling.ts';
import { formatCelsius, formatNumber } from '../quantities/format.ts';
import type { Matter, Part, Run } from '../run/trace.ts';
import { coldest, factorOf, isFold, lifeBefore, massOf, placeOfStep, shareOfTraits, traitsOf } from './look.ts';
import { agentOf, bodyWith, isHelped, percentIn, undissolvedAt } from './look-gelling.ts';
import { otherAmount, otherReading } from './repair.ts';
import type { Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  foldedTooCold(run, report);
  const { result } = run;
  if (!result) return;
  for (const part of result.parts) {
    const agent = agentOf(part);
    if (agent === null || part.grams <= 0) continue;
    const { dissolvesFrom, advised, share } = gellingAgents[agent];
    const name = part.line.label;
    const undissolved = dissolvesFrom === null ? null : undissolvedAt(result, part, dissolvesFrom);
    if (undissolved && dissolvesFrom !== null)
      report({
        severity: 'warning',
        place: placeOfStep(undissolved.step),
        numbers: { name, problem: 'cool', celsius: Number.isFinite(part.reached) ? part.reached : null, limit: dissolvesFrom },
        related: [{ place: part.line.place, message: 'weighed here' }],
        fixes: advised && undissolved.written ? otherReading(run, undissolved, advised.low, advised.high) : [],
      });
    const body = bodyWith(result, part);
    if (body.frozen || result.frozen || body.unknownGrams > 0.1 * massOf(body)) continue;
    const lacks = agent === 'high-methoxyl pectin' && !isHelped(body, agent) ? lacking(body) : null;
    if (lacks) {
      report({ severity: 'warning', place: part.line.place, numbers: { name, problem: 'sugar and acid', ...lacks } });
      continue;
    }
    const percent = percentIn(body, part);
    const least = isHelped(body, agent) || fruity(body, part) ? 0 : share.low;
    if (percent.low <= share.high && percent.high >= least) continue;
    const much = percent.low > share.high;
    report({
      severity: 'warning',
      place: part.line.place,
      numbers: { name, problem: much ? 'much' : 'little', percent: round(percent.middle), low: share.low, high: share.high },
      fixes: otherAmount(part.line, ((Math.sqrt(share.low * share.high) / 100) * massOf(body)) / factorOf(run, part.line)),
    });
  }
}

/** An agar base that has begun to set and is folded: its gel breaks into crumbs. */
function foldedTooCold(run: Run, report: Report): void {
  for (const record of run.records.filter(isFold)) {
    const base = record.inputs.find(({ role, matter }) => role !== 'with' && matter.foam === null && isSetByAgar(matter));
    if (!base || coldest(base.matter.heat) >= agarSetsBelow) continue;
    const cooled = base.matter.made;
    report({
      severity: 'error',
      place: placeOfStep(record.step),
      numbers: { name: 'agar', problem: 'fold', celsius: Math.round(coldest(base.matter.heat) * 10) / 10, limit: agarSetsBelow },
      related: cooled ? [{ place: cooled.step.place, message: 'cooled here' }] : [],
      fixes: cooled?.step.node.verb === 'cool' ? otherReading(run, cooled, agarSetsBelow + 1, agarSetsBelow + 3) : [],
    });
  }
}

/** Dissolved agar in one mass: not smoothed since, and not cut into pieces that are folded in whole. */
const isSetByAgar = (matter: Matter): boolean =>
  shareOfTraits(matter, 'agar') * 100 >= gellingAgents.agar.share.low &&
  !matter.smoothed &&
  !lifeBefore(matter).some(({ step }) => step.node.verb === 'cut');

/** Fruit brings pectin and sets with less. */
const fruity = (body: Matter, part: Part): boolean =>
  traitsOf(part).some((trait) => trait.endsWith('pectin')) && shareOfTraits(body, 'fruit') >= 0.3;

/** °C above which what boils is thick enough with sugar: a syrup of 55 % boils at 102 °C, jam near 105 °C. */
const jamFrom = 103;

/** Sugar and acid that high-methoxyl pectin lacks, at the most that may have boiled off; null where it has both. */
function lacking(body: Matter) {
  const dry = total(body.composition) - body.composition.water;
  const solids = (100 * dry) / Math.max(1e-9, body.grams.low);
  const thick = solids >= highMethoxylNeeds.solidsPercent || body.parts.some(({ reached }) => reached >= jamFrom);
  const sour = body.parts.some(isSour);
  return thick && sour ? null : { solids: Math.round(solids), solidsNeeded: highMethoxylNeeds.solidsPercent, sour, thick };
}

function isSour(part: Part): boolean {
  const traits = traitsOf(part);
  const pH = part.line.pH ?? (part.line.substance.is === 'kind' ? part.line.substance.kind.pH : null);
  return traits.includes('acid') || (traits.includes('fruit') && pH !== null && pH <= 4.2);
}

const round = (percent: number): number => Math.round(percent * 1e3) / 1e3;

const start = `  500 g  orange juice
   80 g  caster sugar
    4 g  agar
  whisk agar, caster sugar, orange juice until smooth
`;
const end = `  pour into jar
  chill to 4 °C for 4 h
`;

export const gellingAgent: Rule = {
  code: 'gelling-agent',
  severities: ['error', 'warning'],
  title: 'The gelling agent does not set as it should',
  decides: 'An agar base folded after it began to set is an error; the rest are warnings.',
  served: true,
  why: 'Each agent dissolves only from a temperature of its own: agar and gellan near the boil, carrageenan from 75 °C. Too little gives a sauce, too much a rubber. Agar sets below about 40 °C and its gel, once broken, does not knit again. High-methoxyl pectin gels only with acid and at least 55 % of solids.',
  remedy:
    'Boil agar for two minutes, fold its base at 38–42 °C, keep the share within the range, give high-methoxyl pectin acid and sugar or take NH or low-methoxyl pectin in its place.',
  source:
    'Agar: McGee 2004 (from memory). Temperatures for carrageenan and gellan and all shares: common practice, no source. High-methoxyl pectin: textbooks of confectionery (from memory).',
  examples: {
    bad: `formula Orange jelly on agar that never boiled
${start}  heat to 70-75 °C   // expect: gelling-agent
${end}`,
    good: `formula Orange jelly on agar
${start}  boil for 2 min
${end}`,
  },
  message: (n) => {
    switch (n.problem) {
      case 'cool':
        return `${capital(String(n.name))} ${n.celsius === null ? 'is never heated' : `reaches ${formatCelsius(Number(n.celsius))}`} and dissolves only from ${formatCelsius(Number(n.limit))}: it will not set. Heat it higher.`;
      case 'fold':
        return `The agar base may be at ${formatCelsius(Number(n.celsius))} as it is folded; below ${formatCelsius(Number(n.limit))} it has begun to set and breaks into crumbs. Fold it warmer, or blend it smooth first.`;
      case 'sugar and acid':
        return `${capital(String(n.name))} gels only with acid and ${n.solidsNeeded} % of solids; here are ${n.solids} %${n.sour ? '' : ' and nothing sour'}. Take NH or low-methoxyl pectin, or add what it lacks.`;
      default:
        return `${capital(String(n.name))} is ${formatNumber(Number(n.percent), 2)} % of what it sets; ${formatNumber(Number(n.low), 2)}–${formatNumber(Number(n.high), 2)} % gives a gel${n.problem === 'much' ? ', more gives rubber' : ', less a sauce'}. Weigh ${n.problem === 'much' ? 'less' : 'more'}.`;
    }
  },
  check,
};

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
