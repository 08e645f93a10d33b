/** The weigh-out as HTML nodes and as Markdown: by storage, then a bag a component, then what it costs. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { BlockContent, Heading, Root } from 'mdast';
import { bullets, headingAt, paragraph, strong, table, text } from '../card/mdast.ts';
import { pageHtml } from '../card/page.ts';
import { named } from '../card/sheet.ts';
import { typeset } from '../card/typeset.ts';
import { fullName } from './data.ts';
import type { Bag, WeighOut } from './model.ts';
import { costSentences, hasPrices, orderLines, type Row, sectionsOf, title, uncheckedSentences } from './words.ts';

export const weighOutHtml = (list: WeighOut): string =>
  pageHtml({
    language: 'en',
    title: `${title}: ${list.orders.map(({ formula }) => formula).join(', ')}`,
    main: [weighOutArticle(list)],
    style: weighOutStyle,
  });

/** To stand alone or in a handout; its look is the card's with `weighOutStyle`. */
export function weighOutArticle(list: WeighOut, level = 1): Element {
  const costs = costSentences(list);
  return typeset(
    h('article', { className: ['card', 'weigh-out'], lang: 'en' }, [
      h('header', [
        h(tag(level), { className: ['title'] }, title),
        h(
          'ul',
          { className: ['orders'] },
          orderLines(list).map((line) => h('li', named(line))),
        ),
        ...uncheckedSentences(list).map((sentence) => h('p', h('strong', sentence))),
      ]),
      ...sectionsOf(list).map((section) =>
        h('section', { className: ['component'] }, [
          h('div', { className: ['head'] }, h(tag(level + 1), section.title)),
          itemTable(section.title, section.rows, list),
        ]),
      ),
      ...(costs.length > 0
        ? [
            h('section', { className: ['component'] }, [
              h('div', { className: ['head'] }, h(tag(level + 1), 'Cost')),
              ...costs.map((sentence) => h('p', named(sentence))),
            ]),
          ]
        : []),
      ...(list.bags.length > 0
        ? [
            h('section', { className: ['component'] }, [
              h('div', { className: ['head'] }, h(tag(level + 1), 'Bags')),
              h(
                'div',
                { className: ['bags'] },
                list.bags.map((bag) => bagSection(bag, level + 2)),
              ),
            ]),
          ]
        : []),
    ]),
    'en',
  );
}

const tag = (level: number): string => `h${Math.min(6, level)}`;

function columnsOf(list: WeighOut): readonly { readonly title: string; readonly of: keyof Row }[] {
  return [
    { title: 'Weigh', of: 'amount' },
    { title: 'Ingredient', of: 'name' },
    ...(hasPrices(list)
      ? ([
          { title: 'Buy', of: 'buy' },
          { title: 'Cost', of: 'cost' },
          { title: 'Share', of: 'share' },
        ] as const)
      : []),
    ...(list.orders.length > 1 ? [{ title: 'For', of: 'for' } as const] : []),
  ];
}

function itemTable(caption: string, rows: readonly Row[], list: WeighOut): Element {
  const columns = columnsOf(list);
  return h('table', { className: ['weigh'] }, [
    h('caption', { className: ['unseen'] }, `${title}: ${caption}`),
    h(
      'thead',
      h(
        'tr',
        columns.map(({ title: column, of }) => h('th', { scope: 'col', className: [`col-${of}`] }, column)),
      ),
    ),
    h(
      'tbody',
      rows.map((row) =>
        h(
          'tr',
          columns.map(({ of }) =>
            of === 'name'
              ? h('th', { scope: 'row', className: ['col-name'] }, named(row.name))
              : h('td', { className: [`col-${of}`, ...(of === 'amount' ? ['amount'] : [])] }, named(row[of])),
          ),
        ),
      ),
    ),
  ]);
}

function bagSection(bag: Bag, level: number): Element {
  return h('section', { className: ['bag'] }, [
    h(tag(level), [named(bag.component)]),
    h('p', { className: ['quiet'] }, [named(bag.formula), ...(bag.from === null ? [] : [', from ', named(bag.from)])]),
    h('table', { className: ['weigh'] }, [
      h('caption', { className: ['unseen'] }, `${bag.formula}: ${bag.component}`),
      h(
        'thead',
        { className: ['unseen'] },
        h('tr', [h('th', { scope: 'col' }, 'Weigh'), h('th', { scope: 'col' }, 'Ingredient')]),
      ),
      h(
        'tbody',
        bag.lines.map((line) =>
          h('tr', [h('td', { className: ['amount'] }, named(line.written)), h('th', { scope: 'row' }, named(fullName(line)))]),
        ),
      ),
    ]),
  ]);
}

/** Scoped to the article. */
export const weighOutStyle = `
.card.weigh-out .orders { list-style: none; padding: 0; margin-top: .5rem; }
.card.weigh-out .weigh .amount { font-size: 1.02rem; }
.card.weigh-out :is(.col-buy, .col-cost, .col-share) { text-align: right; white-space: nowrap; color: var(--ink); padding-right: .7rem; }
.card.weigh-out thead th:is(.col-name, .col-for), .card.weigh-out .weigh thead th:last-child.col-for { text-align: left; white-space: normal; padding-left: 0; }
.card.weigh-out .col-for { font-size: .9rem; }
.card.weigh-out .bags { columns: 19rem; column-gap: 2rem; margin-top: .6rem; }
.card.weigh-out .bag { break-inside: avoid; padding: .1rem 0 1rem; }
.card.weigh-out .bag > :first-child { font-size: 1.1rem; }
.card.weigh-out .bag .weigh .amount { width: 1%; }
@media (max-width: 46rem) { .card.weigh-out :is(.col-share, .col-buy, .col-for) { display: none; } .card.weigh-out .bags { columns: 1; } }
@media print { .card.weigh-out .bags { columns: 2; column-gap: 9mm; } .card.weigh-out :is(th, td) { padding-top: .15rem; padding-bottom: .15rem; } }
`;

/** As a tree, its heading at `level`. */
export function weighOutMdast(list: WeighOut, level = 1): Root {
  const columns = columnsOf(list);
  const costs = costSentences(list);
  const right = new Set<keyof Row>(['amount', 'buy', 'cost', 'share']);
  const children: (BlockContent | Heading)[] = [
    headingAt(level, title),
    bullets(orderLines(list).map((line) => [text(line)])),
    ...uncheckedSentences(list).map((sentence) => paragraph(strong(sentence))),
    ...sectionsOf(list).flatMap((section) => [
      headingAt(level + 1, section.title),
      table(
        columns.map((column) => column.title),
        section.rows.map((row) => columns.map(({ of }) => (of === 'amount' ? [strong(row[of])] : [text(row[of])]))),
        columns.map(({ of }) => (right.has(of) ? 'right' : 'left')),
      ),
    ]),
    ...(costs.length > 0 ? [headingAt(level + 1, 'Cost'), bullets(costs.map((sentence) => [text(sentence)]))] : []),
    ...(list.bags.length > 0
      ? [
          headingAt(level + 1, 'Bags'),
          table(
            ['Bag', 'Weigh', 'Ingredient'],
            list.bags.flatMap((bag) =>
              bag.lines.map((line, index) => [
                index === 0 ? [strong(bag.component), text(`, ${bag.formula}`)] : [text('')],
                [text(line.written)],
                [text(fullName(line))],
              ]),
            ),
            ['left', 'right', 'left'],
          ),
        ]
      : []),
  ];
  return { type: 'root', children };
}
