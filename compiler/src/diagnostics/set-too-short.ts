/** `set-too-short`: what gelatin sets is served, turned out or cut before it has set. */

import { formatDuration } from '../quantities/format.ts';
import { middle } from '../quantities/interval.ts';
import { clauseOf } from '../run/clauses.ts';
import { bodiesOf } from '../run/matter-of.ts';
import type { Matter, Run, StepRecord } from '../run/trace.ts';
import { gelatinPercent, lifeAfter, placeOfStep, servingOf } from './look.ts';
import type { Report, Rule } from './rule.ts';

/** Seconds at up to 6 °C by how it is served (common practice, no source); 2 h where nothing says. */
const needed = { glass: 2 * 3600, mould: 4 * 3600, cut: 6 * 3600, none: 2 * 3600 } as const;
const coldest = 6;

/** Less gelatin than this sets nothing. */
const leastPercent = 0.2;

const ends: ReadonlySet<string> = new Set(['serve', 'unmould', 'cut']);

/** What is chilled and then served, turned out or cut; or chilled last, in its glass or mould. */
function servings(run: Run): readonly { readonly record: StepRecord | null; readonly matter: Matter }[] {
  const last = run.records.at(-1);
  const found = run.records.flatMap((record) =>
    ends.has(record.step.node.verb) ? record.inputs.slice(0, 1).map(({ matter }) => ({ record, matter })) : [],
  );
  const ended = run.records.some((record) => ends.has(record.step.node.verb) && !laterChilled(run, record));
  if (run.result && last?.mould && !ended) return [...found, { record: null, matter: run.result }];
  return found;
}

const laterChilled = (run: Run, record: StepRecord): boolean =>
  lifeAfter(run, record).some(({ step }) => step.node.verb === 'chill');

interface Rest {
  readonly seconds: number;
  readonly last: StepRecord['step'];
}

/** Time in the cold, at the shorter end of what is written; null where none is written for some stay, or it was frozen. */
function restOf(body: Matter): Rest | null {
  let seconds = 0;
  let last: Rest['last'] | null = null;
  if (body.frozen) return null;
  for (const stay of body.stays) {
    if (stay.step.node.verb === 'freeze' || stay.celsius.high < -5) return null;
    if (stay.celsius.high > coldest) continue;
    if (!clauseOf(stay.step.node, 'for')) return null;
    seconds += stay.seconds.low;
    last = stay.step;
  }
  return last ? { seconds, last } : null;
}

function check(run: Run, report: Report): void {
  const serving = servingOf(run) ?? 'none';
  const limit = needed[serving];
  for (const { record, matter } of servings(run)) {
    const short = bodiesOf(matter).flatMap((body) => {
      const rest = gelatinPercent(body) >= leastPercent ? restOf(body) : null;
      return rest && rest.seconds < limit ? [rest] : [];
    });
    const rest = short.sort((a, b) => a.seconds - b.seconds)[0];
    if (!rest) continue;
    report({
      severity: 'warning',
      place: placeOfStep(rest.last),
      numbers: { seconds: rest.seconds, limit, serving, verb: record?.step.node.verb ?? 'serve' },
      related: record ? [{ place: record.step.place, message: 'taken from the cold here' }] : [],
      fixes: longer(rest, limit),
    });
  }
}

/** The last stay made long enough with those before it. */
function longer({ seconds, last }: Rest, limit: number) {
  const clause = clauseOf(last.node, 'for');
  if (!clause || clause.target.overrides.length > 0) return [];
  const hours = Math.ceil((limit - seconds + middle(clause.target.base)) / 3600);
  return [
    { title: `Chill for ${hours} h`, edits: [{ ...last.place, start: clause.start, end: clause.end, text: `for ${hours} h` }] },
  ];
}

const jelly = (time: string, mark: string): string => `formula Orange jelly
  makes 5 glasses of 110 g
  served at 4-6 °C
  500 g  orange juice, pasteurised, 20 °C
   50 g  caster sugar
    5 g  gelatin, sheet, 200 bloom
   30 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat orange juice, caster sugar to 60 °C
  add gelatin
  portion 110 g into glass
  chill to 4 °C for ${time}${mark}
  serve
`;

export const setTooShort: Rule = {
  code: 'set-too-short',
  severities: ['warning'],
  title: 'The gelatin has not had time to set',
  served: true,
  why: 'Gelatin keeps on knitting for hours after it has stopped flowing: at refrigerator temperature it comes to most of its strength in five to eight hours. A small glass may be served after two, what must stand by itself needs four, and what is cut needs six, for a young gel tears.',
  remedy: 'Chill longer: two hours for small glasses, four before turning out, six before cutting.',
  source: 'Full strength after 5–8 h at 5 °C (gelatin maker’s page); the limits: common practice, no source.',
  examples: { bad: jelly('1 h', '   // expect: set-too-short'), good: jelly('2 h', '') },
  message: (n) => {
    const what = { glass: 'in a glass', mould: 'that is turned out', cut: 'that is cut', none: '' }[String(n.serving)] ?? '';
    return `What gelatin sets ${what ? `${what} ` : ''}is taken from the cold after ${formatDuration(Number(n.seconds))}; it needs at least ${formatDuration(Number(n.limit))}.`;
  },
  check,
};
