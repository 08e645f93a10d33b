/** `gelatin-share`: a gelled mass holds too little gelatin to stand as it is served, or so much that it is rubber. */
import { from200 } from '../matter/gelatin.ts';
import { formatNumber } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import { assumedBloom, bodiesOf } from '../run/matter-of.ts';
import type { Matter, Part, Run } from '../run/trace.ts';
import { massOf, servingOf, shareOfTraits } from './look.ts';
import { cocoaButterShare, isStarchBound } from './look-fold.ts';
import { bringsGelatin, isGelatin, isOwnLine, lawOf, ownLineOf, sugarSolidsShare } from './look-gelatin.ts';
import { otherAmount } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

/** Percent of the mass, as 200 bloom. */
interface Range {
  readonly for: string;
  readonly low: number;
  readonly high: number;
}

/** Common practice, no source, within makers' doses of 1.2-2.4 % for jellies and creams. */
const ranges = {
  glass: { for: 'a glass', low: 0.3, high: 1.2 },
  mould: { for: 'turning out', low: 0.7, high: 1.8 },
  cut: { for: 'cutting', low: 0.9, high: 2.4 },
  none: { for: 'a dessert', low: 0.2, high: 2.5 },
  sweet: { for: 'so sweet a mass (glaze, marshmallow)', low: 1.2, high: 10 },
} as const satisfies Record<string, Range>;

const sweetFrom = 0.45;

function check(run: Run, report: Report): void {
  if (!run.result) return;
  for (const body of bodiesOf(run.result)) {
    const part = strongest(body);
    if (!part || body.gelatin200 <= 0) continue;
    const fault = faultOf(run, body);
    if (!fault) continue;
    const line = ownLineOf(run, part.line);
    const { range, percent } = fault;
    report({
      place: line.place,
      numbers: { name: part.line.label, share: percent, low: range.low, high: range.high, for: range.for, law: lawOf(run) },
      related: body.made ? [{ place: body.made.step.place, message: 'the mass it sets was made here' }] : [],
      fixes:
        line === part.line && isOwnLine(run, line)
          ? enough(run, body, part, percent < range.low ? range.low * 1.1 : range.high * 0.9)
          : [],
    });
  }
}

/** The line that brings most gelatin into it. */
const strongest = (body: Matter): Part | null =>
  body.parts.filter(bringsGelatin).reduce<Part | null>((a, b) => (a && a.grams >= b.grams ? a : b), null);

/** What rests on an estimate (water boiled off) counts at its most favourable end; null where the share fits some range that may apply. */
function faultOf(run: Run, body: Matter): { readonly range: Range; readonly percent: number } | null {
  const of = ({ grams }: Matter) => ({
    low: (100 * body.gelatin200) / Math.max(1e-9, grams.high),
    high: (100 * body.gelatin200) / Math.max(1e-9, grams.low),
  });
  const share = of(body);
  const waived = holdsOtherwise(run, body);
  const fits = ({ low, high }: Range): boolean => share.low <= high + 1e-6 && (waived || share.high >= low - 1e-6);
  const possible = rangesOf(run, body);
  if (possible.some(fits)) return null;
  const range = possible[0]!;
  return { range, percent: share.low > range.high ? share.low : share.high };
}

function rangesOf(run: Run, body: Matter): readonly Range[] {
  const sugar = sugarSolidsShare(body) * massOf(body);
  const usual = ranges[servingOf(run) ?? 'none'];
  if (sugar / Math.max(1e-9, body.grams.low) < sweetFrom) return [usual];
  return sugar / Math.max(1e-9, body.grams.high) >= sweetFrom ? [ranges.sweet] : [ranges.sweet, usual];
}

/** Something else holds it, so that there may be as little gelatin as one likes. */
function holdsOtherwise(run: Run, body: Matter): boolean {
  const servedFrozen = body.frozen || run.formula.served.some(({ value }) => value.high <= -5);
  const foam = body.foam !== null && shareOfTraits(body, 'cream', 'plant cream', 'mascarpone') >= 0.6;
  return (
    servedFrozen ||
    foam ||
    cocoaButterShare(body) >= 0.05 ||
    isStarchBound(body) ||
    shareOfTraits(body, 'fresh cheese', 'mascarpone') >= 0.25 ||
    shareOfTraits(body, 'agar', 'carrageenan', 'gellan', 'high-methoxyl pectin', 'low-methoxyl pectin', 'gum') > 0
  );
}

/** As much of the line as brings the mass to so many percent; what other lines bring stays. */
function enough(run: Run, body: Matter, part: Part, percent: number): readonly Fix[] {
  if (!isGelatin(part)) return [];
  const bloom = part.line.bloom ? middle(part.line.bloom) : assumedBloom;
  const lacking = (percent / 100) * massOf(body) - body.gelatin200;
  const grams = part.grams + from200(lacking, bloom, run.formula.settings.gelatinLaw);
  // More powder would lack water to swell in; only sheets may simply be more.
  return grams > 0 && (lacking < 0 || part.line.phase === 'sheet') ? otherAmount(part.line, grams) : [];
}

const jelly = (grams: string, mark: string): string => `formula Blackcurrant jelly
  choice serving: glass
  400 g  blackcurrant purée, pasteurised, 20 °C
   60 g  caster sugar
  ${grams}  gelatin, sheet, 200 bloom${mark}
   60 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat blackcurrant purée, caster sugar to 60 °C
  add gelatin
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinShare: Rule = {
  code: 'gelatin-share',
  severities: ['warning'],
  title: 'Too little or too much gelatin for how it is served',
  served: true,
  why: 'A gel grows stronger with the square of its gelatin. What stays in a glass may just hold, what is turned out must carry itself, and what is cut must not tear; beyond that it turns to rubber. In a mass that is nearly half sugar there is little water to set, so that glazes and marshmallows need far more. Cocoa butter, cooked starch, fresh cheese, another gelling agent or the freezer hold a dessert by themselves.',
  remedy: 'Weigh gelatin for the mass it sets: about 0.7 % for a glass, 1.2 % to turn out, 1.6 % to cut, as 200 bloom.',
  source:
    'Makers’ doses of 1.2 to 2.4 % for creams and jellies (no bloom named); the ranges by serving: common practice, no source. Grades compared by the law the formula chooses.',
  examples: { bad: jelly(' 14 g', '   // expect: gelatin-share'), good: jelly('  6 g', '') },
  message: (n) => {
    const few = Number(n.share) < Number(n.low);
    return `The mass that the ${n.name} sets holds ${formatNumber(Number(n.share), 2)} % of gelatin as 200 bloom (grades compared ${n.law}): ${few ? `less than the ${n.low} %` : `more than the ${n.high} %`} that ${n.for} ${few ? 'needs' : 'bears'}.`;
  },
  check,
};
