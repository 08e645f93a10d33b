/** The words of a timeline: times of day, days, durations and remarks, the same in every output. */
import { formatDuration } from '../quantities/format.ts';
import type { Task, Timeline } from './model.ts';
import { clockOf } from './timeline.ts';

export const titleOf = ({ ready }: Timeline): string => (ready === null ? 'Timeline' : `Timeline: ready at ${ready}`);

export const orderLines = ({ orders }: Timeline): readonly string[] =>
  orders.map(({ formula, makes, choices }) =>
    [formula, ...(makes === '' ? [] : [makes]), ...(choices.length > 0 ? [choices.join(', ')] : [])].join(' · '),
  );

/** Days before the day it must be ready on; 0 for that day, and where no time of day is known. */
export function daysBefore({ ready }: Pick<Timeline, 'ready'>, minutes: number): number {
  const clock = ready === null ? null : clockOf(ready);
  return clock === null ? 0 : Math.max(0, -Math.floor((clock + minutes) / 1440));
}

/** `14:05`; without a time of day hours and minutes before the end, `−4:10`. */
export function timeText({ ready }: Pick<Timeline, 'ready'>, minutes: number): string {
  const clock = ready === null ? null : clockOf(ready);
  if (clock === null) return minutes === 0 ? '0:00' : `−${hoursAndMinutes(-minutes)}`;
  const at = (((clock + minutes) % 1440) + 1440) % 1440;
  return hoursAndMinutes(at).padStart(5, '0');
}

const hoursAndMinutes = (minutes: number): string => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;

export const dayTitle = (days: number): string =>
  days === 0 ? 'On the day' : days === 1 ? 'The day before' : `${days} days before`;

export const durationText = ({ startMinutes, endMinutes, estimated }: Task): string =>
  `${estimated ? '≈ ' : ''}${formatDuration((endMinutes - startMinutes) * 60)}`;

/** `waiting`, `oven`, `may be done the day before`. */
export const remarksOf = (task: Task): readonly string[] => [
  ...(task.waiting ? ['waiting'] : []),
  ...task.uses,
  ...(task.dayBefore ? ['day before'] : []),
];

export interface Day {
  readonly title: string;
  readonly tasks: readonly Task[];
}

export function daysOf(plan: Timeline): readonly Day[] {
  const days = new Map<number, Task[]>();
  for (const task of plan.tasks) {
    const day = daysBefore(plan, task.startMinutes);
    const known = days.get(day);
    if (known) known.push(task);
    else days.set(day, [task]);
  }
  return [...days]
    .sort(([a], [b]) => b - a)
    .map(([day, tasks]) => ({ title: plan.ready === null ? 'Steps' : dayTitle(day), tasks }));
}

/** What stands under the title. */
export function remarks(plan: Timeline): readonly string[] {
  const { orders, tasks, cooks, ready } = plan;
  const early = orders.flatMap(({ formula }) => {
    const components = [
      ...new Set(tasks.filter((task) => task.dayBefore && task.formula === formula).map((task) => task.component)),
    ];
    return components.length === 0 ? [] : [`${formula}: ${components.join(', ')}`];
  });
  const whole = orders.flatMap(({ formula, keeps }) => (keeps === null ? [] : [`${formula} (${keeps})`]));
  return [
    ...orders
      .filter(({ checked }) => !checked)
      .map(({ formula, file }) => `${formula} is not checked through: nappe check ${file} says why.`),
    `For ${cooks === 1 ? 'one cook' : `${cooks} cooks`}. A time with ≈ is an estimate, off by half or double; weighing out, washing up and ovens heating are not in it.${ready === null ? ' Times are hours and minutes before it is ready.' : ' Nobody works from 22:00 to 6:00.'}`,
    ...(early.length > 0
      ? [`Steps marked “day before” leave something that keeps, and may be done then. ${early.join('. ')}.`]
      : []),
    ...(whole.length > 0 ? [`The whole of it keeps a day and more: ${whole.join('; ')}.`] : []),
  ];
}
