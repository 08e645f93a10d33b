/** The card as one self-contained HTML page: no script to run, nothing to fetch. */
import type { Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { cardArticle } from './article.ts';
import { recipeOf } from './json-ld.ts';
import type { Card } from './model.ts';
import { cardStyle, pageStyle } from './style.ts';

export function cardHtml(card: Card): string {
  const page: Root = {
    type: 'root',
    children: [
      { type: 'doctype' },
      h('html', { lang: card.language }, [
        h('head', [
          h('meta', { charSet: 'utf-8' }),
          h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
          h('title', titleOf(card)),
          h('style', `${pageStyle}${cardStyle}`),
          h('script', { type: 'application/ld+json' }, scriptJson(recipeOf(card))),
        ]),
        h('body', [h('main', [cardArticle(card)])]),
      ]),
    ],
  };
  return `${toHtml(page)}\n`;
}

/** Titles of browsers and print jobs are cut anyway; a name of ten thousand characters need not stand there whole. */
const titleOf = (card: Card): string =>
  [...card.formula].length > 120 ? `${[...card.formula].slice(0, 119).join('')}…` : card.formula;

/** JSON inside a script element: `<` is written as an escape, so that no text can end the element. */
export const scriptJson = (value: object): string => JSON.stringify(value).replace(/</gu, '\\u003c');
