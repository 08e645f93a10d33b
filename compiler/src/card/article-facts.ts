/** What stands below the work: other choices, allergens, nutrition, storage, cautions, and what was allowed by hand. */
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { allergenWords } from './nutrition.ts';
import { nutritionTable } from './nutrition-table.ts';
import { heading, named, type Sheet } from './sheet.ts';

export function factSections(sheet: Sheet): Element[] {
  return [
    ...(sheet.full ? differences(sheet) : []),
    h('div', { className: ['grid'] }, [
      allergens(sheet),
      ...cautions(sheet),
      ...(sheet.full ? nutrition(sheet) : []),
      ...allowed(sheet),
    ]),
  ];
}

function differences(sheet: Sheet): Element[] {
  const { card, language } = sheet;
  const { labels } = language;
  if (card.differences.length === 0) return [];
  return [
    h('section', { className: ['differences'] }, [
      heading(sheet, 1, {}, labels.differences),
      ...card.differences.map(({ choice, value, changes }) =>
        h('section', [
          heading(sheet, 2, {}, [`${choice}: `].join(''), named(value)),
          h(
            'ul',
            changes.map(({ what, now, other }) =>
              h('li', [
                h('b', named(what)),
                ': ',
                named(other),
                ...(now === '' ? [] : [h('span', { className: ['quiet'] }, [` (${labels.instead} `, named(now), ')'])]),
              ]),
            ),
          ),
        ]),
      ),
    ]),
  ];
}

function box(sheet: Sheet, title: string, className: string, children: ElementContent[]): Element {
  return h('section', { className: ['box', className] }, [heading(sheet, 1, {}, title), ...children]);
}

function allergens(sheet: Sheet): Element {
  const { card, language } = sheet;
  const { labels } = language;
  const { contains, unknown, claims } = card.allergens;
  return box(sheet, labels.allergens, 'allergens', [
    contains.length === 0
      ? h('p', labels.noAllergens)
      : h('p', [`${labels.contains} `, h('strong', allergenWords(contains, language)), '.']),
    ...(unknown.length === 0 ? [] : [h('p', [`${labels.unknownAllergens}: `, named(unknown.join(', ')), '.'])]),
    ...(claims.length === 0 ? [] : [h('p', `${labels.freeFrom} ${allergenWords(claims, language)}.`)]),
  ]);
}

/** The last caution is the footer's. */
function cautions(sheet: Sheet): Element[] {
  const { card, language } = sheet;
  const own = card.cautions.slice(0, -1);
  if (own.length === 0 && !card.keeps) return [];
  return [
    box(sheet, language.labels.cautions, 'cautions', [
      h('ul', [
        ...(card.keeps ? [h('li', [h('b', `${language.labels.keeps}: `), card.keeps])] : []),
        ...own.map((caution) => h('li', caution)),
      ]),
    ]),
  ];
}

function nutrition(sheet: Sheet): Element[] {
  const { labels } = sheet.language;
  const table = nutritionTable(sheet.card, sheet.language, sheet.measures);
  if (!table) {
    const { unknown } = sheet.card.nutrition;
    return unknown.length === 0
      ? []
      : [box(sheet, labels.nutrition, 'nutrition', [h('p', [`${labels.nutritionUnknown} `, named(unknown.join(', ')), '.'])])];
  }
  return [
    box(sheet, labels.nutrition, 'nutrition', [
      h('table', [
        h('thead', [h('tr', [h('td'), ...table.columns.map((column) => h('th', { scope: 'col' }, column))])]),
        h(
          'tbody',
          table.rows.map(({ name, cells, inner }) =>
            h('tr', [
              h('th', { scope: 'row', ...(inner && { className: ['inner'] }) }, name),
              ...cells.map((cell) => h('td', cell)),
            ]),
          ),
        ),
      ]),
      h('p', { className: ['quiet'] }, [labels.nutritionBasis, ...(table.remark ? [` ${table.remark}`] : [])].join('')),
    ]),
  ];
}

function allowed(sheet: Sheet): Element[] {
  const { card, language } = sheet;
  if (card.allowed.length === 0) return [];
  return [
    box(sheet, language.labels.allowed, 'allowed', [
      h(
        'ul',
        card.allowed.map(({ code, line, file, reason }) =>
          h('li', [
            h('code', code),
            ` (${file === card.file ? '' : `${file}, `}${language.labels.line} ${line}): `,
            named(reason || language.labels.noReason),
          ]),
        ),
      ),
    ]),
  ];
}
