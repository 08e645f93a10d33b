/** The temperature line as data: the way of what is served, and of what joins it, through its steps. */
import { lifeBefore } from '../diagnostics/look.ts';
import { type Interval, middle } from '../quantities/interval.ts';
import type { Input, Matter, Run, StepRecord } from '../run/trace.ts';
import type { CardStep, Move, Strand, TemperatureLine, TimeMark } from './model.ts';
import { reasonsOf } from './reasons.ts';

/** Null where nothing on the way has a reading: there is nothing to draw. */
export function temperatureLine(run: Run, stepOf: (record: StepRecord) => CardStep | null): TemperatureLine | null {
  if (!run.result) return null;
  const main = wayTo(run.result, run, new Set());
  const records = new Set(main);
  const schedule = new Map<StepRecord, { readonly start: number; readonly end: number }>();
  let clock = 0;
  for (const record of main) {
    schedule.set(record, { start: clock, end: clock + secondsOf(record) });
    clock += secondsOf(record);
  }
  const ways: { readonly records: readonly StepRecord[]; readonly joins: StepRecord | null }[] = [{ records: main, joins: null }];
  for (let at = 0; at < ways.length && ways.length < mostStrands; at++) {
    for (const joined of ways[at]!.records) {
      for (const input of joined.inputs) {
        const side = wayTo(input.matter, run, records);
        const last = side[side.length - 1];
        if (!last || (run.blockOf.get(last) === run.blockOf.get(joined) && !comesFromElsewhere(side, run))) continue;
        for (const record of side) records.add(record);
        let end = schedule.get(joined)?.start ?? 0;
        for (const record of [...side].reverse()) {
          schedule.set(record, { start: end - secondsOf(record), end });
          end -= secondsOf(record);
        }
        ways.push({ records: side, joins: joined });
        if (ways.length >= mostStrands) break;
      }
    }
  }
  if (![...records].some((record) => record.written !== null)) return null;
  const first = Math.min(...[...schedule.values()].map(({ start }) => start));
  const times = [
    ...new Set([...schedule.values()].flatMap(({ start, end }) => [start - first, end - first].map(Math.round))),
  ].sort((a, b) => a - b);
  const indexOf = (seconds: number): number => times.indexOf(Math.round(seconds - first));
  const strands = ways.map(
    ({ records: way }): Strand => ({
      name: run.blockOf.get(way[0]!)?.component.name ?? '',
      moves: way.flatMap((record, index): Move[] => {
        const planned = schedule.get(record);
        const step = stepOf(record);
        if (!planned || !step) return [];
        return [moveOf(record, step, index === 0 ? null : way[index - 1]!, indexOf(planned.start), indexOf(planned.end))];
      }),
    }),
  );
  const points = times.map((seconds): TimeMark => ({ seconds }));
  return { strands: strands.reverse(), points };
}

/** What was made in another component counts; what is only put ready in the same one would clutter the drawing. */
const comesFromElsewhere = (way: readonly StepRecord[], run: Run): boolean =>
  new Set(way.map((record) => run.blockOf.get(record))).size > 1;

/** More would not be told apart in print. */
const mostStrands = 6;

/** Drawn for steps whose time nobody wrote and nothing estimates. */
const unknownSeconds = 120;

const secondsOf = (record: StepRecord): number =>
  Math.max(1, record.seconds && Number.isFinite(record.seconds.range.high) ? middle(record.seconds.range) : unknownSeconds);

/** The steps that led to a matter, first to last: at each meeting the input with the most critical readings behind it, then the most readings, then the heaviest. */
function wayTo(matter: Matter, run: Run, taken: ReadonlySet<StepRecord>): readonly StepRecord[] {
  const way: StepRecord[] = [];
  let next = makerOf(matter, run);
  while (next && !taken.has(next) && !way.includes(next)) {
    way.unshift(next);
    const inputs = next.inputs.filter((input) => makerOf(input.matter, run) !== null);
    next =
      inputs.length === 0
        ? null
        : makerOf(inputs.reduce((best, input) => (weight(input, run) > weight(best, run) ? input : best)).matter, run);
  }
  return way;
}

function makerOf(matter: Matter, run: Run): StepRecord | null {
  if (matter.made) return matter.made;
  const layers = (matter.layers ?? []).filter((layer) => layer.made);
  return layers.length === 0
    ? null
    : layers.reduce((best, layer) => (readings(layer, run) > readings(best, run) ? layer : best)).made;
}

/** Critical readings count before others: the line that is drawn boldest is the one to watch. */
const readings = (matter: Matter, run: Run): number =>
  lifeBefore(matter).reduce((sum, record) => sum + (record.written === null ? 0 : reasonsOf(record, run).length > 0 ? 10 : 1), 0);

const weight = (input: Input, run: Run): number => readings(input.matter, run) * 1e6 + middle(input.matter.grams);

function moveOf(record: StepRecord, step: CardStep, before: StepRecord | null, from: number, to: number): Move {
  const together =
    foldBase(record) ?? record.computed ?? before?.result.heat.celsius ?? record.inputs[0]?.matter.heat.celsius ?? null;
  return {
    step: step.number,
    text: step.text,
    from,
    to,
    start: pair(together),
    end: pair(record.written && record.result.heat.basis === 'written' ? record.written : record.result.heat.celsius),
    window: pair(record.written),
    additions: record.additions.flatMap(({ celsius }) => {
      const reading = pair(celsius);
      return reading ? [reading] : [];
    }),
    seconds: pair(record.seconds?.range ?? null),
    estimated: record.seconds?.estimated !== false,
  };
}

/** Before the first addition a fold's base is what it was; what is computed for it is the end. */
const foldBase = (record: StepRecord): Interval | null =>
  record.additions.length < 2 ? null : (record.inputs.find(({ role }) => role === 'base')?.matter.heat.celsius ?? null);

const pair = (x: Interval | null): readonly [number, number] | null =>
  x && Number.isFinite(x.low) && Number.isFinite(x.high) ? [x.low, x.high] : null;
