/** `heat-treat`: raw flour or frozen berries are eaten without having been boiled. */
import type { Part, Run } from '../run/trace.ts';
import { traitsOf } from './look.ts';
import { heatings, isPasteurised } from './look-egg.ts';
import type { Report, Rule } from './rule.ts';

/** °C that counts as boiled: frozen berries 85 °C and more for a minute, or boiled (public advice). */
const boiled = 90;

/** °C in the middle of what is baked, wet: Salmonella and Escherichia coli do not outlast a second of it (FDA Food Code 2022, 3-401.11: 70 °C). */
const baked = 70;

type Cause = 'flour' | 'berries';

function causeOf(part: Part): Cause | null {
  const traits = traitsOf(part);
  if (traits.includes('flour') || traits.includes('wheat flour')) return 'flour';
  const { line } = part;
  const frozen = line.phase === 'frozen' || (line.substance.is === 'kind' && line.substance.kind.storage === 'frozen');
  return traits.includes('berry') && frozen && line.state !== 'canned' && !isPasteurised(part) ? 'berries' : null;
}

function check(run: Run, report: Report): void {
  const { result } = run;
  if (!result) return;
  for (const part of result.parts) {
    const cause = causeOf(part);
    if (cause === null || part.baked || part.reached >= boiled) continue;
    if (
      cause === 'flour' &&
      heatings(result, part).some(({ step, written }) => step.node.verb === 'bake' && (written?.low ?? 0) >= baked)
    )
      continue;
    if (heatings(result, part).some((record) => record.written === null && record.result.heat.celsius.high >= boiled)) continue;
    report({ place: part.line.place, numbers: { name: part.line.label, cause, limit: boiled } });
  }
}

const end = `  120 g  butter, 18 °C
   80 g  caster sugar
  cream butter, caster sugar until smooth as dough
  add plain flour
`;

export const heatTreat: Rule = {
  code: 'heat-treat',
  severities: ['notice'],
  title: 'Raw flour or frozen berries are eaten unboiled',
  served: true,
  why: 'Flour is milled from raw grain and may carry Salmonella and harmful Escherichia coli. Frozen berries have carried norovirus and hepatitis A, which the freezer keeps alive. Boiling or baking ends them; drying and sugar do not.',
  remedy: 'Bake it, toast the flour through, boil frozen berries for a minute, or buy them heat-treated.',
  source:
    'Frozen berries: boil for one minute (food safety authorities of Ireland and Denmark), or over 85 °C for a minute (New Zealand). Raw flour: advice of FDA (from memory); baked wet it is done at 70 °C (FDA Food Code 2022, 3-401.11). No food-safety plan: the local food code decides.',
  examples: {
    bad: `formula Spoonable biscuit dough
  150 g  plain flour   // expect: heat-treat
${end}`,
    good: `formula Biscuits
  150 g  plain flour
${end}  bake at 160 °C for 20 min until golden
`,
  },
  message: (n) =>
    n.cause === 'flour'
      ? `The ${n.name} is eaten raw: raw flour may carry harmful bacteria. Bake it, or toast the flour through first.`
      : `The frozen ${n.name} is eaten without having been boiled: frozen berries may carry viruses. Boil it for a minute, or buy it heat-treated.`,
  check,
};
