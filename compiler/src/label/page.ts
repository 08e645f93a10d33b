/** The label as a page: the declaration in a frame to copy from, the allergens in bold, and below it what the seller still owes. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import { pageHtml } from '../card/page.ts';
import { named } from '../card/sheet.ts';
import { typeset } from '../card/typeset.ts';
import type { Label } from './model.ts';
import { allergenStatement, factLines, ingredientPieces, titleOf, unchecked } from './words.ts';

export const labelHtml = (label: Label): string =>
  pageHtml({ language: 'en', title: `Label: ${label.formula}`, main: [labelArticle(label)], style: labelStyle });

function labelArticle(label: Label): Element {
  const { nutrition } = label;
  return typeset(
    h('article', { className: ['card', 'label'], lang: 'en' }, [
      h('section', { className: ['declaration'] }, [
        h('h1', named(titleOf(label))),
        ...(label.checked ? [] : [h('p', { className: ['stamp'] }, unchecked)]),
        h('p', [
          h('b', 'Ingredients: '),
          ...ingredientPieces(label).map(({ text, allergen }) => (allergen ? h('strong', text) : h('span', named(text)))),
        ]),
        ...allergenStatement(label).map((sentence) => h('p', h('b', named(sentence)))),
        h(
          'dl',
          { className: ['facts'] },
          factLines(label).map(([term, value]) => h('div', [h('dt', term), h('dd', value)])),
        ),
        ...(nutrition
          ? [
              h('table', [
                h('caption', 'Nutrition'),
                h('thead', h('tr', [h('td'), ...nutrition.columns.map((column) => h('th', { scope: 'col' }, column))])),
                h(
                  'tbody',
                  nutrition.rows.map(({ name, inner, cells }) =>
                    h('tr', [
                      h('th', { scope: 'row', ...(inner && { className: ['inner'] }) }, name),
                      ...cells.map((cell) => h('td', cell)),
                    ]),
                  ),
                ),
              ]),
              ...(nutrition.remark ? [h('p', { className: ['quiet'] }, nutrition.remark)] : []),
            ]
          : []),
      ]),
      h('section', { className: ['owed'] }, [
        h('h2', 'To fill in'),
        h(
          'ul',
          label.toFill.map((one) => h('li', one)),
        ),
        h('h2', 'Before it is used'),
        ...label.cautions.map((caution) => h('p', named(caution))),
      ]),
    ]),
    'en',
  );
}

const labelStyle = `
.card.label .declaration { border: 2px solid var(--ink); padding: 1rem 1.2rem; max-width: 40rem; } .card.label .declaration > * + * { margin-top: .6rem; }
.card.label h1 { font-size: 1.6rem; } .card.label h2 { font-size: 1.2rem; margin-top: 1.2rem; }
.card.label strong { font-weight: 800; text-decoration: underline; text-underline-offset: .15em; }
.card.label caption { text-align: left; font-weight: 700; } .card.label :is(td, thead th) { text-align: right; } .card.label .inner { padding-left: 1rem; }
.card.label .owed { max-width: 40rem; } .card.label .owed p + p { margin-top: .4rem; } .card.label .owed ul { padding-left: 1.1rem; }
`;
