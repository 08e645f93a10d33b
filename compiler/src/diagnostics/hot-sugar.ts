/** `hot-sugar`: matter or fat so hot that it burns the cook badly. */
import { fatOf, total } from '../matter/composition.ts';
import { formatCelsius } from '../quantities/format.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { massOf, placeOfStep } from './look.ts';
import { heats, warmth } from './look-egg.ts';
import type { Report, Rule } from './rule.ts';

/** °C above which to warn: anything watery or sugary, and fat. A bare syrup at the boil is no hotter than water. */
const above = { anything: 100, fat: 120, computed: 105 } as const;

const onFlame: ReadonlySet<string> = new Set(['heat', 'cook', 'boil', 'reduce', 'melt', 'caramelise', 'hold', 'fry']);

const isFat = ({ composition }: Matter): boolean => fatOf(composition) > 0.6 * Math.max(1e-9, total(composition));

/** How hot this step makes it, where that is too hot; the fat of a deep fryer counts as 170 °C. */
function tooHot(record: StepRecord): { readonly celsius: number; readonly fat: boolean } | null {
  const { verb } = record.step.node;
  if (!onFlame.has(verb) || record.medium === 'torch' || record.medium === 'oven') return null;
  if (verb === 'fry') return { celsius: fryer, fat: true };
  const { heat } = record.result;
  const fat = isFat(record.result);
  const celsius = warmth(heat);
  const limit = fat ? above.fat : heat.basis === 'written' ? above.anything : above.computed;
  return massOf(record.result) > 1 && celsius > limit ? { celsius, fat } : null;
}

const fryer = 170;

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const hot =
      heats(record) || record.step.node.verb === 'caramelise' || record.step.node.verb === 'melt' ? tooHot(record) : null;
    if (!hot) continue;
    report({
      place: placeOfStep(record.step),
      numbers: { celsius: Math.round(hot.celsius), limit: hot.fat ? above.fat : above.anything, fat: hot.fat },
    });
  }
}

export const hotSugar: Rule = {
  code: 'hot-sugar',
  severities: ['notice'],
  title: 'Hot sugar or fat burns',
  why: 'Boiled sugar and hot fat are hotter than boiling water, stick to the skin and hold their heat. Water that falls in turns to steam at once and throws them about.',
  remedy:
    'Long sleeves, a dry pan and spoon, a bowl of cold water at hand, nobody beside the pan. Pour liquids in slowly and at arm’s length. Never put out burning fat with water.',
  source: 'Common practice, no source.',
  examples: {
    bad: `formula Dry caramel
  200 g  caster sugar
  caramelise caster sugar to 172 °C until amber   // expect: hot-sugar
`,
    good: `formula Light syrup
  200 g  caster sugar
  200 g  water
  heat caster sugar, water to 95 °C until dissolved
`,
  },
  message: (n) =>
    `${n.fat ? 'Fat' : 'This'} at ${formatCelsius(Number(n.celsius))} burns deeply and spits when anything wet goes in: keep cold water at hand and children away.`,
  check,
};
