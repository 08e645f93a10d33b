/** `enzyme-fruit`: raw fruit whose enzyme eats gelatin meets gelatin. */
import { endsEnzymes, enzymesEnd } from '../matter/gelatin.ts';
import { formatCelsius } from '../quantities/format.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Input, Matter, Part, Run, StepRecord } from '../run/trace.ts';
import { lifeAfter, placeOfStep, traitsOf } from './look.ts';
import { isIn } from './look-egg.ts';
import { activeIn, heldByOthers } from './look-enzyme.ts';
import { lineBefore, nameText, operandText, readingText } from './repair.ts';
import type { Fix, Report, Rule } from './rule.ts';

const [atOnce, held] = enzymesEnd;

/** Fruit and gelatin in one mass, or gelatin still liquid poured over the fruit. */
function metIn(record: StepRecord): readonly Part[] {
  const bodies = bodiesOf(record.result);
  const mixed = bodies.find((body) => body.gelatin200 > 0 && !heldByOthers(body) && activeIn(body).length > 0);
  if (mixed) return activeIn(mixed);
  const poured = record.step.node.verb === 'pour' || record.step.node.verb === 'portion';
  if (!poured) return [];
  const below = bodies.slice(0, -1).flatMap(activeIn);
  return bodies.at(-1)?.gelatin === 'dissolved' ? below : [];
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    const active = metIn(record);
    const part = active[0];
    if (!part || record.inputs.some(({ matter }) => metBefore(matter, part)) || endedLater(run, record, part)) continue;
    const purée = traitsOf(part).includes('purée') && part.line.state === null;
    report({
      severity: purée ? 'warning' : 'error',
      place: placeOfStep(record.step),
      numbers: {
        fruit: part.line.label,
        limit: atOnce?.celsius ?? 85,
        holdCelsius: held?.celsius ?? 75,
        holdMinutes: (held?.seconds ?? 300) / 60,
        state: part.line.state,
        purée,
      },
      related: [{ place: part.line.place, message: 'weighed here' }],
      fixes: heatedFirst(record, part),
    });
  }
}

const metBefore = (matter: Matter, part: Part): boolean =>
  matter.made !== null && metIn(matter.made).some(({ line }) => line === part.line);

/** Judged at the end of its life: the whole may still be heated. */
const endedLater = (run: Run, record: StepRecord, part: Part): boolean =>
  lifeAfter(run, record).some(({ result }) =>
    result.parts.some(({ line, reached, baked }) => line === part.line && (baked || endsEnzymes(reached, 0))),
  );

function heatedFirst(record: StepRecord, part: Part): readonly Fix[] {
  const { line } = part;
  if (traitsOf(part).includes('purée') && line.state === null) {
    const at = line.namePlace.end;
    return [{ title: 'Weigh it pasteurised', edits: [{ ...line.namePlace, start: at, end: at, text: ', pasteurised' }] }];
  }
  const fruit = record.inputs.find(
    ({ matter, partial }) => !partial && matter.made === null && matter.parts.length === 1 && isIn(matter, part),
  );
  return fruit ? heated(record, fruit) : [];
}

/** Heating it makes it the current matter, so that an `add` must then say what it goes into. */
function heated(record: StepRecord, fruit: Input): readonly Fix[] {
  const fix = lineBefore(record.step, `heat ${nameText(fruit.name)} to ${readingText(record, 85, 90)}`);
  const { node, place } = record.step;
  if (node.clauses.some(({ word }) => word === 'into' || word === 'over')) return [fix];
  const base = record.inputs.find(({ role }) => role === 'base');
  if (node.verb !== 'add' || !base || node.operands.length !== 1 || operandText(base) === '') return [];
  const into = ` into${operandText(base)}`;
  const end = node.operands[0]!.end;
  return [{ ...fix, edits: [...fix.edits, { ...place, start: end, end, text: into }] }];
}

const start = `  300 g  water
   80 g  caster sugar
    8 g  gelatin, sheet, 200 bloom
   48 g  water, 10 °C, as cold water
`;
const middle = `  bloom gelatin in cold water for 10 min
  heat water, caster sugar to 60 °C as syrup
  add gelatin
`;
const end = `  pour into jar
  chill to 4 °C for 6 h
`;

export const enzymeFruit: Rule = {
  code: 'enzyme-fruit',
  severities: ['error', 'warning'],
  title: 'Raw fruit keeps the gelatin from setting',
  decides: 'An error for fruit that is raw or fresh; a warning for a purée that says neither raw nor pasteurised.',
  why: 'Pineapple, kiwi, papaya, fig, melon and ginger hold an enzyme that cuts gelatin to pieces, so that it never sets or turns liquid again. Freezing does not end it. Heat does, and canned fruit has been heated. Agar and pectin are not harmed.',
  remedy:
    'Heat the fruit to 85 °C (or to 75 °C for 5 min) before it meets the gelatin, weigh it canned, or set it with agar or pectin.',
  source:
    'Proteases of these fruits: McGee 2004 and others; ginger from memory. Bromelain ends at about 82 °C (cookery text); the limits are an estimate. Some cultivars hold little: a gold kiwi none (J. Home Econ. Jpn 53(10):1001, 2002).',
  examples: {
    bad: `formula Pineapple jelly on raw fruit
${start}  200 g  pineapple, raw
${middle}  add pineapple   // expect: enzyme-fruit
${end}`,
    good: `formula Pineapple jelly on heated fruit
${start}  200 g  pineapple, raw
${middle}  heat pineapple to 85 °C
  stir pineapple into syrup
${end}`,
  },
  message: (n) =>
    `The ${n.fruit} ${n.purée ? 'may be raw; raw, its' : 'is raw, and its'} enzyme keeps gelatin from setting. Heat it to ${formatCelsius(Number(n.limit))} (or to ${formatCelsius(Number(n.holdCelsius))} for ${n.holdMinutes} min) before it meets the gelatin, or weigh it ${n.purée ? 'pasteurised' : 'canned'}.`,
  check,
};
