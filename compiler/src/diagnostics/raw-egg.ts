/** `raw-egg`: egg reaches the table raw. */
import type { Run } from '../run/trace.ts';
import { type UnsafeEgg, unsafeEggs } from './look-raw-egg.ts';
import type { Fix, Report, Rule } from './rule.ts';
import { isOrAre } from './words.ts';

/** Tags that say who eats it: people whom Salmonella may kill. */
const vulnerable: ReadonlySet<string> = new Set(['children', 'pregnant', 'hospital']);

function check(run: Run, report: Report): void {
  const tag = run.formula.settings.tags.find((word) => vulnerable.has(word.toLowerCase())) ?? null;
  for (const egg of unsafeEggs(run)) {
    if (egg.cooked) continue;
    const { line, grams } = egg.part;
    const syrup = hotSyrup(run, egg);
    report({
      severity: tag === null ? 'warning' : 'error',
      place: line.place,
      numbers: { egg: line.label, grams: Math.round(grams * 10) / 10, tag, syrup: syrup !== null },
      related: syrup ? [{ place: syrup, message: 'the syrup leaves it at 55–58 °C' }] : [],
      fixes: pasteurised(egg),
    });
  }
}

/** Where hot syrup was poured on it, and left it at 55-58 °C. */
const hotSyrup = (run: Run, { part }: UnsafeEgg) =>
  run.records.find(
    ({ step, inputs, result }) =>
      step.node.clauses.some(({ word }) => word === 'while whipping') &&
      result.heat.celsius.high <= 58 &&
      inputs.some(({ matter }) => matter.parts.some(({ line }) => line === part.line)),
  )?.step.place ?? null;

/** Weighs it pasteurised, where the line does not say what state it is in. */
function pasteurised({ part }: UnsafeEgg): readonly Fix[] {
  const { line } = part;
  if (line.state !== null) return [];
  const at = line.namePlace.end;
  return [{ title: 'Weigh it pasteurised', edits: [{ ...line.namePlace, start: at, end: at, text: ', pasteurised' }] }];
}

const end = `   80 g  caster sugar
  250 g  mascarpone, 4 °C
  whip egg yolk, caster sugar until ribbon as yolks
  fold mascarpone into yolks in 2 additions: whisk, spatula
  pour into jar
`;

export const rawEgg: Rule = {
  code: 'raw-egg',
  severities: ['error', 'warning'],
  title: 'Raw egg reaches the table',
  decides: 'An error where the formula is `tagged` `children`, `pregnant` or `hospital`; else a warning.',
  safety: true,
  served: true,
  why: 'Raw egg may carry Salmonella. Whipping, sugar, alcohol and cold do not end it. Syrup poured over whipping egg does not either: the foam comes out at 55–58 °C and cools at once.',
  remedy:
    'Weigh pasteurised egg (`egg yolk, pasteurised`), or heat the egg as far as its lethality needs, for most mixtures 71 °C.',
  source:
    'Italian meringue comes out at 55–58 °C (McGee 2004). Pasteurised egg in place of raw in meringue, ice cream and the like: FDA Food Code 2022, 3-302.13; for those at risk 3-801.11. No food-safety plan: the local food code decides.',
  examples: {
    bad: `formula Mascarpone cream on raw yolks
  100 g  egg yolk   // expect: raw-egg
${end}`,
    good: `formula Mascarpone cream on pasteurised yolks
  100 g  egg yolk, pasteurised
${end}`,
  },
  message: (n) => {
    const name = String(n.egg);
    const many = isOrAre(name) === 'are';
    const it = many ? 'them' : 'it';
    return `The ${name} ${isOrAre(name)} not pasteurised and never heated enough${n.syrup ? `; hot syrup leaves ${it} at 55–58 °C` : ''}, so ${many ? 'they are' : 'it is'} eaten raw${n.tag ? `, and this is tagged ${n.tag}` : ''}. Weigh ${it} pasteurised, or cook ${it}.`;
  },
  check,
};
