/** The timeline for other programs: JSON in its published shape, version 1. */
import type { Timeline } from './model.ts';

export const timelineJson = ({ ready, tasks, conflicts }: Timeline): object => ({
  version: 1,
  ready,
  tasks: tasks.map(({ id, formula, line, text, startMinutes, endMinutes, estimated, waiting, uses, needs, dayBefore }) => ({
    id,
    formula,
    line,
    text,
    startMinutes,
    endMinutes,
    estimated,
    waiting,
    uses,
    needs,
    dayBefore,
  })),
  conflicts,
});
