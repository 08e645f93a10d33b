/** The timeline for a terminal. */
import { plain } from '../card/text.ts';
import type { Timeline } from './model.ts';
import { daysOf, durationText, orderLines, remarks, remarksOf, timeText, titleOf } from './words.ts';

export function timelineText(plan: Timeline): string {
  const rows = plan.tasks.map((task) => ({
    task,
    span: `${timeText(plan, task.startMinutes)} – ${timeText(plan, task.endMinutes)}`,
    takes: durationText(task),
  }));
  const width = (of: 'span' | 'takes'): number => Math.max(0, ...rows.map((row) => [...row[of]].length));
  const lines = [titleOf(plan), ...orderLines(plan).map((line) => `  ${line}`), ...remarks(plan).map((line) => `  ${line}`)];
  for (const { title, tasks } of daysOf(plan)) {
    lines.push('', title);
    for (const { task, span, takes } of rows.filter((row) => tasks.includes(row.task))) {
      const marks = remarksOf(task);
      lines.push(
        `  ${span.padStart(width('span'))}  ${takes.padStart(width('takes'))}  ${task.text} (${plan.orders.length > 1 ? `${task.formula}: ` : ''}${task.component}${marks.length > 0 ? `; ${marks.join(', ')}` : ''})`,
      );
    }
  }
  lines.push(
    '',
    plan.conflicts.length === 0 ? 'No conflicts.' : 'Conflicts',
    ...plan.conflicts.map(({ message }) => `  ${message}`),
  );
  return `${lines.map((line) => plain(line).trimEnd()).join('\n')}\n`;
}
