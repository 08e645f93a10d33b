/** The card as one self-contained HTML page: no script to run, nothing to fetch. */
import { h } from 'hastscript';
import { cardArticle } from './article.ts';
import { recipeOf } from './json-ld.ts';
import type { Card } from './model.ts';
import { pageHtml } from './page.ts';

export const cardHtml = (card: Card): string =>
  pageHtml({
    language: card.language,
    title: card.formula,
    main: [cardArticle(card)],
    head: [h('script', { type: 'application/ld+json' }, scriptJson(recipeOf(card)))],
  });

/** JSON inside a script element: `<` is written as an escape, so that no text can end the element. */
export const scriptJson = (value: object): string => JSON.stringify(value).replace(/</gu, '\\u003c');
