/** `egg-undercooked`: a reading was written as the cooking of the egg and does not make it safe. */
import { targetLog } from '../matter/lethality.ts';
import { formatCelsius, formatDuration, formatNumber } from '../quantities/format.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { holdsYolk } from './look-egg.ts';
import { type UnsafeEgg, unsafeEggs, whatWouldDo } from './look-raw-egg.ts';
import { otherReading } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  const told = new Set<StepRecord>();
  for (const egg of unsafeEggs(run)) {
    const { cooked, part } = egg;
    if (!cooked?.written || told.has(cooked)) continue;
    told.add(cooked);
    const { atOnce, celsius, seconds } = whatWouldDo(egg);
    report({
      place: placeOfStep(cooked.step),
      numbers: {
        egg: part.line.label,
        celsius: Math.round((Number.isFinite(cooked.written.low) ? cooked.written.low : cooked.written.high) * 10) / 10,
        log: Math.round(egg.log * 10) / 10,
        neededLog: targetLog,
        sugar: Math.round(egg.sugar),
        needed: atOnce,
        holdCelsius: celsius,
        holdSeconds: seconds,
      },
      related: [{ place: part.line.place, message: 'the egg' }],
      fixes: hotter(run, cooked, egg),
    });
  }
}

function hotter(run: Run, cooked: StepRecord, { part }: UnsafeEgg): readonly Fix[] {
  const { verb } = cooked.step.node;
  if (verb === 'hold' || verb === 'check') return [];
  const [low, high] = verb === 'bake' ? [80, 82] : !holdsYolk(part) ? [72, 75] : verb === 'cook' ? [82, 84] : [78, 80];
  return otherReading(run, cooked, low, high);
}

const start = `  120 g  egg yolk
  100 g  caster sugar
  100 g  orange juice
`;

export const eggUndercooked: Rule = {
  code: 'egg-undercooked',
  severities: ['error'],
  title: 'The egg is heated, but not enough to be safe',
  safety: true,
  served: true,
  why: 'How many Salmonella die depends on temperature and time together: some degrees more do in a second what takes half an hour below. Sugar protects them, in yolk tenfold at 10 %. The reading is counted at its lower end for one second; only a `hold`, or `boil … for`, counts its time.',
  remedy:
    'Take the egg to 71 °C or more, hold it longer at what is written (`hold at 63 °C for 10 min`), or weigh pasteurised egg.',
  source:
    'D and z of Salmonella in egg: Jordan 2011, Gurtler 2018, Schuman & Sheldon 1997, Garibaldi 1969; 5 powers of ten; or a published time and temperature that is in force (FDA Food Code 2022, 3-401.11; Grade "A" PMO). No food-safety plan: the local food code decides.',
  examples: {
    bad: `formula Sabayon, only warmed
${start}  whisk egg yolk, caster sugar, orange juice in bain-marie to 54-56 °C until thick   // expect: egg-undercooked
`,
    good: `formula Sabayon, cooked
${start}  whisk egg yolk, caster sugar, orange juice in bain-marie to 72-74 °C until thick
`,
  },
  message: (n) => {
    const log = Number(n.log);
    const killed = log < 0.5 ? 'hardly any Salmonella' : `${formatNumber(log)} powers of ten of Salmonella`;
    const needed = log < 0.5 ? `${formatNumber(log)} powers of ten, ${n.neededLog} are needed` : `${n.neededLog} are needed`;
    return `${formatCelsius(Number(n.celsius))}, as written, kills ${killed} in the ${n.egg} (${needed}). Take it to ${formatCelsius(Number(n.needed))}, or hold it at ${formatCelsius(Number(n.holdCelsius))} for ${formatDuration(Number(n.holdSeconds))}.`;
  },
  check,
};
