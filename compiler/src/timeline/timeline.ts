/** Makes the timeline: jobs from the orders, a schedule for the kitchen they name, and what it cannot avoid. */
import type { Order } from '../card/order.ts';
import { plain } from '../card/text.ts';
import { conflictsOf } from './conflicts.ts';
import type { Task, Timeline } from './model.ts';
import { type Kitchen, type Placed, schedule } from './schedule.ts';
import { type Job, jobsOf, keepsWords } from './tasks.ts';

export interface TimelineOptions {
  /** A time of day, `18:30`; without one, times count backwards from the end and nobody sleeps. */
  readonly ready?: string;
  /** Pairs of hands; 1 where it is not given. */
  readonly cooks?: number;
  readonly unchecked?: ReadonlySet<Order>;
}

/** Steps of all orders together: every one is tried against every other. */
export const mostSteps = 400;

/** Why these orders are too long to lay out; null where they are not. */
export function tooLong(orders: readonly Order[]): string | null {
  const steps = orders.reduce((sum, { context }) => sum + context.run.records.length, 0);
  return steps > mostSteps
    ? `A timeline lays out at most ${mostSteps} steps, and these are ${steps}: ask for fewer formulas at a time.`
    : null;
}

export function timeline(orders: readonly Order[], { ready, cooks = 1, unchecked }: TimelineOptions = {}): Timeline {
  const clock = ready === undefined ? null : clockOf(ready);
  const jobs = jobsOf(orders);
  const plan = schedule(jobs, kitchenOf(orders, clock, cooks));
  const inTime = [...jobs].sort((a, b) => byTime(a, b, plan));
  const ids: string[] = [];
  for (const [number, job] of inTime.entries()) ids[job.index] = `t${number + 1}`;
  return {
    ready: clock === null ? null : textOf(clock),
    cooks,
    orders: orders.map((order) => ({
      formula: plain(order.formula.name),
      file: order.positions.fileOf(order.formula.place),
      makes: order.makes.text,
      choices: Object.values(order.selection).map(plain),
      checked: !unchecked?.has(order),
      keeps: keepsWords(order),
    })),
    tasks: inTime.map((job, number) => taskOf(job, number + 1, plan, ids)),
    conflicts: conflictsOf(jobs, plan, ids, cooks),
  };
}

/** Minutes since midnight; null for what is no time of day. */
export function clockOf(text: string): number | null {
  const parts = /^(\d{1,2}):(\d{2})$/u.exec(text);
  if (!parts) return null;
  const [hours, minutes] = [Number(parts[1]), Number(parts[2])];
  return hours > 23 || minutes > 59 ? null : hours * 60 + minutes;
}

const textOf = (clock: number): string =>
  `${String(Math.floor(clock / 60)).padStart(2, '0')}:${String(clock % 60).padStart(2, '0')}`;

function taskOf(job: Job, number: number, plan: readonly Placed[], ids: readonly string[]): Task {
  const { order, record } = job;
  const placed = plan[job.index];
  return {
    id: ids[job.index] ?? '',
    number,
    formula: plain(order.formula.name),
    component: job.component,
    file: order.positions.fileOf(record.step.place),
    line: order.positions.lineOf(record.step.place),
    text: job.text,
    startMinutes: placed?.start ?? 0,
    endMinutes: placed?.end ?? 0,
    estimated: job.estimated,
    waiting: job.waiting,
    uses: job.uses,
    needs: job.needs.map(({ of }) => ids[of] ?? ''),
    dayBefore: job.dayBefore,
  };
}

function byTime(a: Job, b: Job, plan: readonly Placed[]): number {
  const [first, second] = [plan[a.index], plan[b.index]];
  return (first?.start ?? 0) - (second?.start ?? 0) || (first?.end ?? 0) - (second?.end ?? 0) || a.index - b.index;
}

/** One of each device, and more where `equipment` lists more: every item whose name has the device's word in it. */
function kitchenOf(orders: readonly Order[], clock: number | null, cooks: number): Kitchen {
  const items = new Set(orders.flatMap(({ formula }) => formula.settings.vessels.map(({ key }) => key)));
  const count = (word: string): number => Math.max(1, [...items].filter((key) => key.includes(word)).length);
  return {
    cooks,
    devices: new Map(['oven', 'mixer'].map((word) => [word, count(word)])),
    nights: clock === null ? [] : nightsBefore(clock),
  };
}

/** Nobody works from ten at night to six in the morning, unless it is then that it must be ready (common practice, no source). */
const night = { from: 22 * 60, to: 6 * 60 } as const;

function nightsBefore(clock: number): readonly (readonly [number, number])[] {
  if (clock > night.from || clock < night.to) return [];
  return Array.from({ length: 16 }, (_, days) => {
    const midnight = -clock - days * 1440;
    return [midnight - (1440 - night.from), midnight + night.to] as const;
  });
}
