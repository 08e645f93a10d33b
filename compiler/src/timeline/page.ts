/** The timeline as HTML nodes, with its chart, and as Markdown: a table a day. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { BlockContent, Heading, Root } from 'mdast';
import { bullets, headingAt, paragraph, strong, table, text } from '../card/mdast.ts';
import { pageHtml } from '../card/page.ts';
import { named } from '../card/sheet.ts';
import { typeset } from '../card/typeset.ts';
import { charts } from './chart.ts';
import type { Task, Timeline } from './model.ts';
import { daysOf, durationText, orderLines, remarks, remarksOf, timeText, titleOf } from './words.ts';

export const timelineHtml = (plan: Timeline): string =>
  pageHtml({
    language: 'en',
    title: `${titleOf(plan)}: ${plan.orders.map(({ formula }) => formula).join(', ')}`,
    main: [timelineArticle(plan)],
    style: timelineStyle,
  });

/** To stand alone or in a handout; `prefix` stands before every id. Its look is the card's with `timelineStyle`. */
export function timelineArticle(plan: Timeline, level = 1, prefix = ''): Element {
  return typeset(
    h('article', { className: ['card', 'timeline'], lang: 'en' }, [
      h('header', [
        h(tag(level), { className: ['title'] }, titleOf(plan)),
        h(
          'ul',
          { className: ['orders'] },
          orderLines(plan).map((line) => h('li', named(line))),
        ),
        ...remarks(plan).map((line) => h('p', { className: ['meta'] }, named(line))),
      ]),
      ...conflictSection(plan, level + 1),
      h('section', { className: ['component', 'drawing'] }, [
        h(
          'p',
          { className: ['key'] },
          'Filled: work. Hatched: waiting. The numbers are those of the steps below; long waits are drawn short.',
        ),
        ...charts(plan, prefix).map((chart, index) =>
          h('div', { className: ['panel', 'scroll'], role: 'group', tabIndex: 0, ariaLabel: `Chart, part ${index + 1}` }, chart),
        ),
      ]),
      ...daysOf(plan).map(({ title, tasks }) =>
        h('section', { className: ['component'] }, [
          h('div', { className: ['head'] }, h(tag(level + 1), title)),
          dayTable(plan, title, tasks),
        ]),
      ),
    ]),
    'en',
  );
}

const tag = (level: number): string => `h${Math.min(6, level)}`;

function conflictSection(plan: Timeline, level: number): readonly Element[] {
  if (plan.conflicts.length === 0) return [];
  return [
    h('section', { className: ['unchecked'] }, [
      h(tag(level), 'Conflicts'),
      h(
        'ul',
        plan.conflicts.map(({ message }) => h('li', named(message))),
      ),
    ]),
  ];
}

const partOf = (plan: Timeline, task: Task): string =>
  plan.orders.length > 1 ? `${task.formula}: ${task.component}` : task.component;

function dayTable(plan: Timeline, title: string, tasks: readonly Task[]): Element {
  return h('table', { className: ['tasks'] }, [
    h('caption', { className: ['unseen'] }, title),
    h(
      'thead',
      h(
        'tr',
        ['Time', 'Takes', 'Step', 'Remarks'].map((label) => h('th', { scope: 'col' }, label)),
      ),
    ),
    h(
      'tbody',
      tasks.map((task) =>
        h('tr', { className: [task.waiting ? 'waits' : 'works'] }, [
          h('td', { className: ['when'] }, [
            h('b', timeText(plan, task.startMinutes)),
            h('span', { className: ['quiet'] }, ` – ${timeText(plan, task.endMinutes)}`),
          ]),
          h('td', { className: ['takes'] }, durationText(task)),
          h('th', { scope: 'row' }, [
            h('b', `${task.number} `),
            named(task.text),
            h('span', { className: ['part'] }, [' ', named(partOf(plan, task))]),
          ]),
          h('td', { className: ['remarks'] }, remarksOf(task).join(', ')),
        ]),
      ),
    ),
  ]);
}

/** Scoped to the article. */
export const timelineStyle = `
.card.timeline .orders { list-style: none; padding: 0; margin-top: .5rem; }
.card.timeline .meta { font-size: .92rem; max-width: 52rem; }
.card.timeline .key { font-size: .92rem; color: var(--quiet); margin-bottom: .4rem; }
.card.timeline .panel { break-inside: avoid; margin-bottom: .7rem; }
.card.timeline .plan { display: block; width: 100%; min-width: 40rem; max-width: 60rem; height: auto; color: var(--ink); }
.card.timeline .plan text { font-size: 13.5px; fill: currentColor; } .card.timeline .plan .time { text-anchor: middle; font-size: 13px; } .card.timeline .plan .number { text-anchor: middle; font-weight: 700; }
.card.timeline .plan .lane { font-weight: 600; } .card.timeline .plan .of { fill-opacity: .75; font-size: 13.5px; }
.card.timeline .plan .tick { stroke: currentColor; stroke-opacity: .14; } .card.timeline .plan .rule { stroke: currentColor; stroke-opacity: .3; }
.card.timeline .plan .hands rect { fill: var(--ink); } .card.timeline .plan .hands .number { fill: #fff; }
.card.timeline .plan .wait rect { stroke: var(--ink); stroke-width: 1.2; } .card.timeline .plan .wait .number { paint-order: stroke; stroke: #fff; stroke-width: 5px; }
.card.timeline .plan .hatch { stroke: var(--ink); stroke-width: 1.2; stroke-opacity: .45; }
.card.timeline .tasks .when, .card.timeline .tasks .takes { white-space: nowrap; } .card.timeline .tasks .takes { color: var(--quiet); }
.card.timeline .tasks .part { display: block; color: var(--quiet); font-size: .9rem; }
.card.timeline .tasks .waits .when b { font-weight: 400; }
.card.timeline .tasks .remarks { color: var(--quiet); font-size: .92rem; }
@media print { .card.timeline .plan { min-width: 0; max-width: none; } .card.timeline :is(.part, .remarks, .key) { font-size: 9.2pt; } .card.timeline .tasks .part { display: inline; } .card.timeline .tasks :is(th, td) { padding-top: .12rem; padding-bottom: .12rem; }
  .card.timeline .plan { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
@media (max-width: 46rem) { .card.timeline .tasks .remarks, .card.timeline .tasks thead th:last-child { display: none; } }
`;

/** As a tree, its heading at `level`. */
export function timelineMdast(plan: Timeline, level = 1): Root {
  const children: (BlockContent | Heading)[] = [
    headingAt(level, titleOf(plan)),
    bullets(orderLines(plan).map((line) => [text(line)])),
    ...remarks(plan).map((line) => paragraph(text(line))),
    ...(plan.conflicts.length > 0
      ? [headingAt(level + 1, 'Conflicts'), bullets(plan.conflicts.map(({ message }) => [text(message)]))]
      : []),
    ...daysOf(plan).flatMap(({ title, tasks }) => [
      headingAt(level + 1, title),
      table(
        ['Time', 'Takes', 'Step', 'Part', 'Remarks'],
        tasks.map((task) => [
          [strong(timeText(plan, task.startMinutes)), text(` – ${timeText(plan, task.endMinutes)}`)],
          [text(durationText(task))],
          [text(task.text)],
          [text(partOf(plan, task))],
          [text(remarksOf(task).join(', '))],
        ]),
        ['left', 'right', 'left', 'left', 'left'],
      ),
    ]),
  ];
  return { type: 'root', children };
}
