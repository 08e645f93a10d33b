/** The timeline drawn: a lane a component, a bar a step, waits compressed; in panels that fit a page, each with a text equivalent. */
import { scaleLinear } from 'd3-scale';
import type { Element, ElementContent } from 'hast';
import { s } from 'hastscript';
import { plain } from '../card/text.ts';
import type { Task, Timeline } from './model.ts';
import { daysBefore, dayTitle, durationText, remarksOf, timeText } from './words.ts';

/** Units of the drawing; a panel is printed about as wide as it is here in CSS pixels. */
const size = { width: 760, labels: 168, row: 24, bar: 18, gap: 8, line: 15, top: 26, shortest: 17, longest: 84 } as const;

export function charts(plan: Timeline, prefix: string): readonly Element[] {
  const events = [...new Set(plan.tasks.flatMap(({ startMinutes, endMinutes }) => [startMinutes, endMinutes]))].sort(
    (a, b) => a - b,
  );
  return panelsOf(events).map((times, index) => panel(plan, times, `${prefix}panel-${index + 1}`));
}

/** As wide as the logarithm of the minutes: a step of two minutes and a night both have room. */
const widthOf = (minutes: number): number => Math.min(size.longest, Math.max(size.shortest, 11 * Math.log2(1 + minutes)));

/** Times cut into rows that fit the width; each begins with the last of the one before. */
function panelsOf(events: readonly number[]): readonly (readonly number[])[] {
  const panels: number[][] = [];
  let open: number[] = [];
  let width = 0;
  for (const time of events) {
    const last = open.at(-1);
    const step = last === undefined ? 0 : widthOf(time - last);
    if (last !== undefined && width + step > size.width - size.labels - 24) {
      panels.push(open);
      open = [last];
      width = 0;
    }
    width += open.length === 0 ? 0 : widthOf(time - (open.at(-1) ?? time));
    open.push(time);
  }
  return open.length > 1 ? [...panels, open] : panels;
}

interface Lane {
  readonly component: string;
  /** Only where there are several. */
  readonly formula: string | null;
  /** Rows of tasks that do not overlap. */
  readonly rows: readonly (readonly Task[])[];
}

function panel(plan: Timeline, times: readonly number[], id: string): Element {
  const [first = 0] = times;
  const last = times.at(-1) ?? first;
  let at = size.labels;
  const places = times.map((time, index) => {
    at += index === 0 ? 0 : widthOf(time - (times[index - 1] ?? time));
    return at;
  });
  const x = scaleLinear([...times], places).clamp(true);
  const tasks = plan.tasks.filter(({ startMinutes, endMinutes }) => startMinutes < last && endMinutes > first);
  const lanes = lanesOf(plan, tasks);
  const drawn: ElementContent[] = [];
  let y = size.top;
  for (const lane of lanes) {
    const height = Math.max(lane.rows.length * size.row, lane.formula === null ? 0 : 2 * size.line);
    drawn.push(
      s('line', { class: 'rule', x1: 0, x2: size.width, y1: y - size.gap / 2, y2: y - size.gap / 2 }),
      ...labelOf(lane, y),
    );
    for (const [row, inRow] of lane.rows.entries())
      for (const task of inRow) drawn.push(...bar(plan, task, x(task.startMinutes), x(task.endMinutes), y + row * size.row));
    y += height + size.gap;
  }
  const [from, to] = [timeText(plan, first), timeText(plan, last)];
  const title = `${plan.ready === null ? '' : `${dayTitle(daysBefore(plan, first))}, `}${from} to ${to}`;
  return s(
    'svg',
    { class: 'plan', viewBox: `0 0 ${size.width} ${y}`, role: 'img', 'aria-labelledby': `${id}-title ${id}-desc` },
    [
      s('title', { id: `${id}-title` }, title),
      s('desc', { id: `${id}-desc` }, tasks.map((task) => spoken(plan, task)).join(' ')),
      s('defs', [
        s('pattern', { id: `${id}-wait`, width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, [
          s('line', { class: 'hatch', x1: 0, x2: 0, y1: 0, y2: 6 }),
        ]),
      ]),
      ...ticks(plan, times, places, y),
      ...drawn.map((node) => withPattern(node, id)),
    ],
  );
}

const spoken = (plan: Timeline, task: Task): string =>
  plain(`${task.number}, ${timeText(plan, task.startMinutes)} to ${timeText(plan, task.endMinutes)}: ${task.text}`);

/** Formula by formula, in each the components in order of time. */
function lanesOf(plan: Timeline, tasks: readonly Task[]): readonly Lane[] {
  const several = plan.orders.length > 1;
  const formulas = [...new Set(plan.orders.map(({ formula }) => formula))];
  return formulas.flatMap((formula) => {
    const lanes = new Map<string, Task[][]>();
    for (const task of tasks) {
      if (task.formula !== formula) continue;
      const rows = lanes.get(task.component) ?? [];
      lanes.set(task.component, rows);
      const row = rows.find((inRow) => (inRow.at(-1)?.endMinutes ?? 0) <= task.startMinutes);
      if (row) row.push(task);
      else rows.push([task]);
    }
    return [...lanes].map(([component, rows]) => ({ component, formula: several ? formula : null, rows }));
  });
}

function labelOf({ component, formula }: Lane, y: number): readonly ElementContent[] {
  const lines = [component, ...(formula === null ? [] : [formula])];
  return lines.map((line, index) =>
    s('text', { class: index === 0 ? 'lane' : 'of', x: 0, y: y + 13 + index * size.line }, cut(plain(line))),
  );
}

const cut = (line: string): string => ([...line].length > 23 ? `${[...line].slice(0, 22).join('')}…` : line);

function bar(plan: Timeline, task: Task, from: number, to: number, y: number): readonly ElementContent[] {
  const width = Math.max(2, to - from - 1);
  const number = String(task.number);
  const marks = [durationText(task), ...remarksOf(task)].join(', ');
  return [
    s('g', { class: task.waiting ? 'wait' : 'hands' }, [
      s('title', `${spoken(plan, task)} (${marks})`),
      s('rect', { x: from + 0.5, y, width, height: size.bar, rx: 2 }),
      ...(width >= number.length * 8 ? [s('text', { class: 'number', x: from + width / 2 + 0.5, y: y + 14 }, number)] : []),
    ]),
  ];
}

/** A time wherever there is room for one. */
function ticks(plan: Timeline, times: readonly number[], places: readonly number[], bottom: number): readonly ElementContent[] {
  let free = Number.NEGATIVE_INFINITY;
  const wide = plan.ready === null ? 48 : 42;
  return times.flatMap((time, index) => {
    const x = places[index] ?? 0;
    if (x < free || x > size.width - wide / 2 + 14) return [];
    free = x + wide;
    return [
      s('line', { class: 'tick', x1: x, x2: x, y1: 18, y2: bottom }),
      s('text', { class: 'time', x, y: 13 }, timeText(plan, time)),
    ];
  });
}

/** Waits are hatched, so that they are told from work without colour. */
function withPattern(node: ElementContent, id: string): ElementContent {
  if (node.type !== 'element' || node.properties.className === undefined) return node;
  if (![node.properties.className].flat().includes('wait')) return node;
  const children = node.children.map((child) =>
    child.type === 'element' && child.tagName === 'rect'
      ? { ...child, properties: { ...child.properties, fill: `url(#${id}-wait)` } }
      : child,
  );
  return { ...node, children };
}
