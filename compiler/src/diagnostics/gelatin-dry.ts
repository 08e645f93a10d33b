/** `gelatin-dry`: sheets or powder go into something warm before they have swollen in water. */
import { formatCelsius } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import type { Amount, SourceLine } from '../resolve/model.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import { insertBefore, namedWarmth, placeOfStep } from './look.ts';
import { isGelatin, isOwnLine, wettingsOf } from './look-gelatin.ts';
import { nameText, spoken } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

function check(run: Run, report: Report): void {
  for (const { record, gelatin, liquid, hydrates } of wettingsOf(run)) {
    if (hydrates) continue;
    const line = gelatin.matter.parts.find(isGelatin)?.line;
    if (!line) continue;
    report({
      place: placeOfStep(record.step),
      numbers: {
        gelatin: line.label,
        form: line.phase === 'sheet' ? 'sheets' : 'powder',
        liquid: spoken(liquid, 'mixture'),
        celsius: Math.round(namedWarmth(liquid.matter.heat)),
        warm: namedWarmth(liquid.matter.heat) > 30,
      },
      related: [{ place: line.place, message: 'weighed dry here' }],
      fixes: bloomFirst(run, record, line),
    });
  }
}

/** Grams of water to a gram of gelatin. */
const water = 6;

/** A line of cold water above the gelatin, and a step that blooms it before all others. */
function bloomFirst(run: Run, record: StepRecord, line: SourceLine): readonly Fix[] {
  const { component } = record;
  const first = component.steps[0];
  const grams = waterText(line);
  if (!first || grams === null || !isOwnLine(run, line) || line.place.block !== record.step.place.block) return [];
  const blooms = component.steps.some(
    ({ node }) => (node.verb === 'bloom' || node.verb === 'soak') && node.operands.some(({ name }) => name.key === line.key),
  );
  if (blooms) return [];
  const taken = (key: string): boolean => component.scope.has(key) || component.lines.some((other) => other.key === key);
  const guard = line.condition?.guard;
  const when = guard ? `  ${guard.word} ${guard.values.map(({ text }) => nameText(text)).join(', ')}` : '';
  const name = taken('cold water') ? 'gelatin water' : 'cold water';
  const declared = name === 'cold water' ? 'cold water, 10 °C' : 'water, 10 °C, as gelatin water';
  const above = { ...line.place, start: 0, end: 0, text: `${' '.repeat(line.place.start)}${grams}  ${declared}${when}\n` };
  const step = insertBefore(first, `bloom ${nameText(line.name)} in ${name} for 10 min${when}`);
  return [{ title: `Weigh ${grams} of cold water and bloom the ${line.label} in it first`, edits: [above, step] }];
}

/** `30 g (cut 42 g)`; null where the gelatin is not weighed in grams. */
function waterText({ amount }: SourceLine): string | null {
  const all = [amount.base, ...amount.overrides.map(({ then }) => then)];
  if (all.some(({ measure, each }) => measure !== 'grams' || each)) return null;
  const text = ({ value }: Amount): string => `${Math.round(water * middle(value) * 10) / 10} g`;
  const others = amount.overrides.map(({ value, then }) => `${nameText(value)} ${text(then)}`);
  return others.length === 0 ? text(amount.base) : `${text(amount.base)} (${others.join(', ')})`;
}

const pannaCotta = (lines: string, steps: string): string => `formula Panna cotta
  400 g  cream, 35 % fat, 4 °C
   40 g  caster sugar
    4 g  gelatin, sheet, 200 bloom
${lines}${steps}
  pour into glass
  chill to 4 °C for 4 h
`;

export const gelatinDry: Rule = {
  code: 'gelatin-dry',
  severities: ['error'],
  title: 'The gelatin goes in dry',
  why: 'A grain or sheet of gelatin must drink several times its mass of cold water before it can dissolve. Put dry into something warm, its surface melts to a glue that keeps the water from its core: lumps and strings stay that no stirring takes out, and the dessert sets too softly. Fat wets nothing: gelatin soaked in oil or butter is still dry. Powder that is mixed with five times its sugar is kept apart by the sugar and may go into hot liquid.',
  remedy: 'Bloom it first: five to ten minutes in cold water, six times its mass.',
  source:
    'Takes up 5–10 times its mass, makers’ pages; swell at 10–25 °C and dissolve at 50–60 °C, a gelatin maker. How much cold liquid still blooms it: common practice, no source.',
  examples: {
    bad: pannaCotta('', '  heat cream, caster sugar to 60 °C\n  add gelatin   // expect: gelatin-dry'),
    good: pannaCotta(
      '   24 g  cold water, 10 °C\n',
      '  bloom gelatin in cold water for 10 min\n  heat cream, caster sugar to 60 °C\n  add gelatin',
    ),
  },
  message: (n) =>
    `The ${n.gelatin} goes dry into the ${n.liquid}${n.warm ? ` at ${formatCelsius(Number(n.celsius))}` : ''}: ${n.form === 'sheets' ? 'sheets' : 'grains'} that have not swollen in cold water first clot instead of dissolving.`,
  check,
};
